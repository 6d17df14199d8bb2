// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/clause.hpp"
#include "engine/reading/draft.hpp"

#include <vector>

namespace loafwright::reading {

/// Is it a temperature of the loaf's middle, and not of the oven?
bool is_core(const std::vector<Token>& tokens,
             const Clause& clause,
             const TemperaturePhrase& temperature);

/// Where a wait stands, by the words of its clause.
Place place_of(const Clause& clause);

/// Gives a step the temperature that its clause tells: the oven's to what is in the heat, the
/// place's to a wait. One that is there already stays.
void attach_temperatures(const std::vector<Token>& tokens, const Clause& clause, Draft& draft);

} // namespace loafwright::reading
