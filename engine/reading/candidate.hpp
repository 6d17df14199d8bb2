// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/clause.hpp"
#include "engine/reading/process.hpp"

#include <vector>

namespace loafwright::reading {

/// What a clause may mean, with scores from its own words: the verb's weight, and for or against
/// each kind by the nouns, the places, the cues and the length of time beside it. No candidates for
/// a clause without an action, a negated one, or one about another bread.
std::vector<Candidate> candidates_of(const Clause& clause);

/// Does the clause hold a noun of this meaning ("sponge", "dough", "shaped", "yeast", "oven"…)?
bool names(const Clause& clause, std::string_view means);

/// Does it hold a cue of this meaning ("risen", "kneaded", "baked", "cooled")?
bool shows(const Clause& clause, std::string_view means);

/// Is it told to happen at this place ("fridge", "warm")?
bool happens_at(const Clause& clause, std::string_view means);

/// The length of time that the clause gives to its own action, if any.
const DurationPhrase* own_length(const Clause& clause);

} // namespace loafwright::reading
