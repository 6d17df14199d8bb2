// SPDX-License-Identifier: Apache-2.0
//
// Fresh, active dry and instant yeast for each other. The spread of what they are worth is for the
// formula to show; a swap weighs the likely amount, or it would not lead back.

#include "engine/formula/swap.hpp"

#include "engine/formula/dough_parts.hpp"

#include <string>

namespace loafwright {

Recipe swap(const Recipe& recipe, dough::YeastForm form, const Knowledge& knowledge) {
    Recipe out = recipe;
    for (Ingredient& ingredient : out.ingredients) {
        if (!formula::is_bakers_yeast(knowledge, ingredient)) {
            continue;
        }
        const IngredientRow* row = row_of(knowledge, ingredient);
        const auto from = formula::yeast_form_named(
            row != nullptr ? row->item : std::string_view(ingredient.item));
        if (from == form) {
            continue;
        }
        if (ingredient.grams) {
            const double factor =
                dough::grams_for_one_fresh(form).likely / dough::grams_for_one_fresh(from).likely;
            Band<Grams>& grams = *ingredient.grams;
            grams = {grams.low * factor, grams.likely * factor, grams.high * factor};
        }
        ingredient.known_as = std::string(formula::name_of(form)) + " yeast";
        ingredient.item = ingredient.known_as;
        ingredient.substitutes.clear();
    }
    return out;
}

} // namespace loafwright
