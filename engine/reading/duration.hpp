// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"
#include "engine/quantity/time.hpp"
#include "engine/reading/token.hpp"

#include <optional>
#include <vector>

namespace loafwright::reading {

/// What a length of time is told for.
enum class DurationRole {
    length,     // how long the step takes
    total,      // "30 minutes in all": of this and the steps of its kind before it
    further,    // "another 10 minutes"
    every,      // "every 30 minutes"
    between,    // "with 20 minutes between"
    ahead,      // "half an hour before baking": an anchor, not a wait
    turning,    // "after the first 10 minutes": when something changes inside a bake
    each_side,  // "2 minutes a side"
    whole_plan, // "total time 3 hours": of the recipe
    keeps,      // "within 3 days", "up to a month": shelf life
    last,       // "the lid off for the last 20 minutes"
    limit       // "don't … for the first 15 minutes", "not over 24 hours": what not to do
};

/// A length of time as written.
///
/// Invariants: low <= high; `assumed` for words such as "overnight" that state no number.
struct DurationPhrase {
    Minutes low;
    Minutes likely;
    Minutes high;
    bool about = false;
    bool assumed = false;
    bool at_least = false;
    bool at_most = false;
    bool unit_unsaid = false; // "another 10": minutes by the one before
    DurationRole role = DurationRole::length;
    std::optional<ClockTime> from; // "from nine in the evening till six"
    std::optional<ClockTime> to;
    TokenRange range; // with its introducing words
};

/// Told in minutes, or short enough to be.
bool in_minutes(const DurationPhrase& phrase);

/// All lengths of time in a range, in order, with the role that the words next to them give.
///
/// `minutes_told`: a length in minutes stands shortly before the range, so that "for 20" is one
/// too.
///
/// Grammar:  duration := amount (("to" | "-" | "or") amount)? ("or so" | "in all" | "more" …)?
///           amount   := number unit ("and" part)? (number unit)? | "half an hour" | "a quarter of
///           an hour" | "overnight" …
std::vector<DurationPhrase>
durations_in(const std::vector<Token>& tokens, TokenRange range, bool minutes_told = false);

} // namespace loafwright::reading
