// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <string>
#include <utility>
#include <vector>

/// Small recipes built by hand.
namespace loafwright::formula {

inline const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

/// An ingredient that stands in the table under its own name.
inline Ingredient some(double grams, const std::string& item) {
    Ingredient one;
    one.text = item;
    one.item = item;
    one.known_as = item;
    one.grams = exactly(Grams(grams));
    return one;
}

inline Recipe recipe_of(std::vector<Ingredient> ingredients) {
    Recipe recipe;
    recipe.ingredients = std::move(ingredients);
    return recipe;
}

} // namespace loafwright::formula
