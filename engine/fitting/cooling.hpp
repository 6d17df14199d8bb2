// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/family.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <cstdint>
#include <string>

namespace loafwright::fitting {

/// From out of the oven: until it can be cut, and until it is at its best.
struct Cooling {
    Band<std::int64_t> cut;
    Band<std::int64_t> best;
    std::string reason;
};

/// Rolls can be broken open after so long (common practice).
inline constexpr std::int64_t cut_of_rolls = 20;

/// When a batch of rolls is at its best: as `cooling_of` says for rolls without a time of their
/// own.
Band<std::int64_t> best_of_rolls(const Recipe& recipe, Grams mass, Celsius room);

/// `room` is where it cools, `mass` the weight of the whole dough; 0 when not known.
///
/// Promises: both 0 for a bread that is not baked, and for a flatbread whose text gives no time; a
/// loaf is never cut
///           before an hour; it is at its best when its core has come to 35 °C
///           (dough::cooling), by the table where its weight is not known; cut <= best; a stated
///           time longer than common practice stands.
Cooling cooling_of(const Recipe& recipe,
                   DoughFamily family,
                   Form form,
                   const Makeup& makeup,
                   const Knowledge& knowledge,
                   Celsius room,
                   Grams mass);

} // namespace loafwright::fitting
