// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/doses.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/quantity/phrase.hpp"
#include "engine/recipe/recipe.hpp"

#include <optional>
#include <string>

namespace loafwright::fitting {

/// How warm a dough comes from mixing when a recipe says nothing about it (common practice: 24 to
/// 26 °C).
inline constexpr Celsius usual_dough{25.0};

/// The water for the main dough here, so that it comes out as warm as the recipe's own.
struct WaterHere {
    Grams grams;         // of the recipe's water
    Celsius temperature; // whole degrees
    /// Without a thermometer: so much just boiled and so much from the tap; or ice in it.
    Grams boiled;
    Grams tap;
    Grams ice;
    /// Why not warmer: the yeast would suffer. Empty otherwise.
    Phrase warning;
};

/// The main dough as it comes from mixing, in the kitchen the recipe was written for and here.
struct MixedDough {
    Celsius there = usual_dough;
    Celsius here = usual_dough;
    Grams mass{0.0}; // of all that is mixed; 0 where the recipe has no weights
    /// None where the recipe says how warm its water is, has no water of its own or much milk
    /// beside it, or where nobody has said how warm the kitchen is.
    std::optional<WaterHere> water;
};

/// Needs:    ingredients with their rows (`known_as`).
/// Promises: both temperatures are alike in the kitchen the recipe was written for, and where the
///           water can make up for a colder or warmer kitchen.
/// Source:   heat balance of engine/dough/dough_temperature.hpp; the recipe's kitchen has flour and
///           room of `usual_room`.
MixedDough mixed_dough(const Recipe& recipe, const Kitchen& kitchen, const Knowledge& knowledge);

/// True for what `yeast_in` counts as yeast.
bool is_yeast_of_the_dough(const Ingredient& ingredient);

/// The baker's yeast of the main dough; none where there is none, or no weight of it or of flour.
std::optional<YeastInDough> yeast_in(const Recipe& recipe, const Knowledge& knowledge);

/// "You have fresh yeast: 21 g does the work of 7 g instant." None where the kitchen's yeast is
/// the recipe's, or not known.
std::optional<Phrase> yeast_swap_words(const YeastInDough& yeast, const Kitchen& kitchen);

/// "Water at 28 °C; without a thermometer 65 g just boiled and 265 g from the tap, stirred, before
/// the yeast."
Phrase water_words(const WaterHere& water);

} // namespace loafwright::fitting
