// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"
#include "engine/recipe/recipe.hpp"

#include <optional>
#include <string>

namespace loafwright::reading {

/// What the words of an answer say; nothing where they cannot be understood.

/// "45 minutes", "an hour and a half", "40-50"; a bare number is minutes. At most four days.
std::optional<Band<Minutes>> minutes_told(const std::string& words);

/// "220", "gas 7", "425 °F": an oven's heat, 50 to 350 °C.
std::optional<TemperatureRange> oven_told(const std::string& words);

/// "26", "26 °C", "80 °F": how warm dough stands, -5 to 60 °C.
std::optional<TemperatureRange> warmth_told(const std::string& words);

/// "500", "500 g", "1.2 kg": at most 100 kg.
std::optional<Grams> grams_told(const std::string& words);

} // namespace loafwright::reading
