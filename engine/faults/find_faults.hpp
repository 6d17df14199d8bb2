// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/bake_log.hpp"
#include "engine/knowledge/knowledge.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loafwright {

/// Something that may have gone otherwise than it should.
///
/// Invariants: 0 < probability <= 1.
struct Finding {
    std::string key;               // of its row
    std::string cause;             // "proved too short"
    std::optional<StepKind> stage; // none: the leaven
    double probability = 0.0;
    std::vector<std::string> speaks_for; // sentences, with this bake's own numbers
    std::vector<std::string> speaks_against;
};

/// One change for the next bake.
struct TryNext {
    std::string change;
    std::string because;
    std::optional<StepKind> stage; // none: the leaven
};

/// What may be behind the signs on a bread.
struct Findings {
    std::vector<std::string> seen; // the signs that were understood, as they are shown
    std::vector<Finding> findings; // most likely first
    std::optional<TryNext> try_next;
    /// Where the baker kept to our time and the bread says that it was wrong: a sentence that says
    /// so. Empty otherwise.
    std::string our_time;
    /// Where two or more things were changed since the last bake: that it can't tell which helped.
    std::string cannot_tell;
};

/// Likely causes in order, what in the log speaks for and against each, and one change to try next.
///
/// The model: a noisy-or network (faults/network.hpp) of data/faults/; what the log shows
/// (faults/facts.hpp) multiplies the odds that a cause is there before any sign is looked at. The
/// one change is that whose causes, added up, are most likely: while that is below one half, it is
/// also the one whose outcome tells most, since the entropy of a yes or no rises up to one half. A
/// change that was made at this bake already is passed over.
/// Needs:    `symptoms` in the baker's words (symptoms_in); `log` may be null.
/// Promises: exact; signs that the log was told of count too, and so does what was picked as being
///           as it should. At most eight findings, each with a probability of 1 % and more that
///           shows one of the signs seen. No sign, no finding and no change. At most
///           faults::most_seen signs count, the first ones.
/// Never:    throws on input, blames.
Findings find_faults(const std::vector<std::string>& symptoms,
                     const BakeLog* log,
                     const Knowledge& knowledge);

} // namespace loafwright
