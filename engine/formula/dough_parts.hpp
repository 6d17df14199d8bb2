// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/yeast.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::formula {

/// What one ingredient is to the dough. All figures are for its likely weight.
///
/// Invariants: all zero where it does not go into the dough; flour + water <= grams, and
/// water_inside
///             <= grams.
struct DoughPart {
    std::string_view role; // as IngredientRow::role; of an unknown flour "flour", else empty
    bool in_dough = false; // no topping, glaze or filling, no greasing, and not only if you like
    Grams grams{0.0};
    /// Flour, and water that is listed as water; a preferment is counted as the two it is made of.
    Grams flour{0.0};
    Grams water{0.0};
    /// Water inside milk, egg, butter, honey, fresh yeast and mashed potato; flour's own is not
    /// counted, nor what whole fruit and seeds hold.
    Grams water_inside{0.0};
    bool prefermented = false; // its flour has fermented before the dough is mixed
};

/// One a ingredient, in the recipe's order.
///
/// Promises: a leaven that the recipe makes itself counts once: as its weight in the dough's own
///           list, where that has one, else as what its part lists.
std::vector<DoughPart> dough_parts(const Recipe& recipe, const Knowledge& knowledge);

/// True for what the list of one part names and another part makes: "all of the leaven".
bool is_made_here(const Ingredient& ingredient, const Recipe& recipe);

/// By its row, else by its words.
bool is_flour(const Knowledge& knowledge, const Ingredient& ingredient);
bool is_bakers_yeast(const Knowledge& knowledge, const Ingredient& ingredient);

/// "instant", "fast-action dried yeast", "active dry", "fresh": by the words on the packet.
dough::YeastForm yeast_form_named(std::string_view words);
std::string_view name_of(dough::YeastForm form);

/// How much of a preferment's weight is flour, the rest being water.
///
/// By "100 % hydration" or "80% hyd." in its own words: 100 / (100 + hydration). Else from the
/// water of its row, of which the flour brings some: with w all water, s salt and m the water in
/// flour, f = (1 - w - s) / (1 - m).
double flour_share(const Ingredient& preferment, const IngredientRow& row);

} // namespace loafwright::formula
