// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/quantity/tagged.hpp"
#include "engine/recipe/recipe.hpp"

#include <initializer_list>
#include <string>
#include <string_view>

namespace loafwright::formula {

/// So many grams of an ingredient as a kitchen measures them.
struct Measured {
    std::string weight; // "500 g"; "1.2 g" where a spoon is named beside it
    std::string also;   // "about ⅜ tsp", "2 eggs"; empty mostly
};

/// For showing, never for reckoning on: a kitchen's scale shows whole grams; below 3 g a level
/// teaspoon is surer, told in eighths, and below one of them "a pinch"; whatever comes in pieces is
/// told in whole ones where it is within a tenth of a piece of them.
///
/// Needs: grams >= 0.
Measured measured(Grams grams, const IngredientRow* row);

/// True where a number stands before a unit of weight or volume: "320 g of lukewarm water",
/// "¼ cup", "2 tbsp".
bool names_an_amount(std::string_view words);

/// Once the amounts are others than the text's, what it tells of them is no longer reminded of.
///
/// Promises: reminders of all steps that name an amount are gone; with `about`, only those that
///           also have one of these words.
void forget_amounts(Recipe& recipe, std::initializer_list<std::string_view> about = {});

} // namespace loafwright::formula
