// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/curve.hpp"
#include "engine/dough/temperature_history.hpp"
#include "engine/fitting/mixing.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <optional>
#include <vector>

namespace loafwright::fitting {

/// The dough's own temperature through one wait: in the kitchen the recipe was written for, and
/// here.
struct DoughCourse {
    Celsius there_start;
    Celsius there_place;
    Celsius here_start;
    Celsius here_place;
    /// In which the lump loses 63 % of its distance to its place; 0 where its weight is not known.
    Minutes time_constant;
    /// The same for the size that the recipe was written for.
    Minutes there_time_constant;
    /// The dough stands in the oven and comes out so long before the end, to go on in the room.
    Minutes out_before_end;
    Celsius room_here;

    [[nodiscard]] dough::TemperatureHistory there() const;
    /// Here, with its place so much warmer or colder than likely.
    [[nodiscard]] dough::TemperatureHistory here(CelsiusDifference place_off = {}) const;
    /// The time here that `stated` takes there, its place here so much warmer or colder than
    /// likely.
    ///
    /// Errors: as dough::transferred.
    [[nodiscard]] std::optional<Band<Minutes>>
    carried(Minutes stated, dough::Curve curve, CelsiusDifference place_off = {}) const;
    /// Nobody could tell both apart: less than half a degree, at the start and where it stands,
    /// and no lump that warms or cools more than a twentieth slower.
    [[nodiscard]] bool is_alike() const;
};

/// True for the last rise before the bake where it stands in the oven itself: the dough comes out
/// before the oven heats, and goes on in the room.
bool leaves_the_oven(const Recipe& recipe, const Kitchen& kitchen, std::size_t index);

/// What makes the gas in this dough.
dough::Curve curve_of(DoughFamily family);

/// One entry a step, filled for every wait of a dough whose place here is known.
///
/// Needs:    steps in the order in which they are done.
/// Promises: each wait begins as warm as the one before it left the dough; the first as it came
///           from mixing. A leaven, a small lump, is as warm as its place.
std::vector<std::optional<DoughCourse>> courses_of(const Recipe& recipe,
                                                   const Kitchen& kitchen,
                                                   const Knowledge& knowledge,
                                                   DoughFamily family,
                                                   const MixedDough& mixed);

} // namespace loafwright::fitting
