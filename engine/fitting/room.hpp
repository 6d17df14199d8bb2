// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/kitchen/kitchen.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/quantity/phrase.hpp"
#include "engine/recipe/recipe.hpp"

#include <optional>
#include <string>

namespace loafwright::fitting {

/// What "room temperature" is taken to mean when a recipe says nothing about warmth (common
/// practice: 20 to 22 °C).
inline constexpr Celsius usual_room{21.0};

/// How warm a place is through the day: the mean over the clock, and its two ends.
struct PlaceHere {
    Band<Celsius> temperature; // low is the coldest hour
    std::string name;          // "your kitchen", "your warm spot"
};

/// Errors: nothing when nobody has said how warm the kitchen is.
std::optional<Band<Celsius>> room_here(const Kitchen& kitchen);

/// Where a dough stands that waits at `place`; a warm place without a warm spot is the room.
std::optional<PlaceHere> place_here(const Kitchen& kitchen, Place place);

/// The temperature a wait's length was written for, and how the page names it.
struct WrittenFor {
    Celsius temperature;
    Phrase name; // “a warm place” in the recipe was read as about 27 °C
};
WrittenFor written_for(const Step& step, const Knowledge& knowledge);

/// True for the waits that the warmth of the room makes longer or shorter: rises, proves and
/// preferments outside the fridge. Short rests are about slack dough and soaking flour, not about
/// gas.
bool depends_on_room(StepKind kind, Place place);

} // namespace loafwright::fitting
