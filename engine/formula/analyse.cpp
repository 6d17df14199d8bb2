// SPDX-License-Identifier: Apache-2.0
//
// Baker's percentages. What each ingredient brings is worked out in dough_parts; here it is summed
// and put on the flour.

#include "engine/formula/analyse.hpp"

#include "engine/formula/dough_parts.hpp"
#include "engine/formula/remarks.hpp"

#include <algorithm>

namespace loafwright {
namespace {

void add(Band<Grams>& sum, const Band<Grams>& more) {
    sum.low += more.low;
    sum.likely += more.likely;
    sum.high += more.high;
}

void add_item(std::vector<FormulaItem>& items, const Ingredient& ingredient, bool in_dough) {
    const auto same = std::find_if(items.begin(), items.end(), [&](const FormulaItem& item) {
        return item.part == ingredient.part && item.in_dough == in_dough &&
               (item.item == ingredient.item ||
                (!item.known_as.empty() && item.known_as == ingredient.known_as));
    });
    if (same != items.end()) {
        add(same->grams, *ingredient.grams);
        return;
    }
    items.push_back({ingredient.item,
                     ingredient.known_as,
                     ingredient.part,
                     *ingredient.grams,
                     dough::BakersPercent(0.0),
                     in_dough});
}

void add_yeast(std::optional<Band<Grams>>& sum, const Ingredient& ingredient) {
    const auto form = formula::yeast_form_named(ingredient.item);
    const Band<double> spread = dough::grams_for_one_fresh(form);
    const Band<Grams>& grams = *ingredient.grams;
    const Band<Grams> fresh{
        grams.low / spread.high, grams.likely / spread.likely, grams.high / spread.low};
    sum = sum.value_or(exactly(Grams(0.0)));
    add(*sum, fresh);
}

} // namespace

tl::expected<Formula, Diagnostics> analyse(const Recipe& recipe, const Knowledge& knowledge) {
    const std::vector<formula::DoughPart> parts = formula::dough_parts(recipe, knowledge);
    Formula out;
    Grams water(0.0);
    Grams inside(0.0);
    Grams prefermented(0.0);
    Grams salt(0.0);
    Grams fat(0.0);
    Grams sugar(0.0);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const Ingredient& ingredient = recipe.ingredients[i];
        const formula::DoughPart& part = parts[i];
        if (!ingredient.grams) {
            out.unweighed.push_back(ingredient.item);
            continue;
        }
        add_item(out.items, ingredient, part.in_dough);
        if (!part.in_dough) {
            continue;
        }
        out.flour += part.flour;
        out.dough += part.grams;
        water += part.water;
        inside += part.water_inside;
        prefermented += part.prefermented ? part.flour : Grams(0.0);
        salt += part.role == "salt" ? part.grams : Grams(0.0);
        fat += part.role == "fat" ? part.grams : Grams(0.0);
        sugar += part.role == "sugar" ? part.grams : Grams(0.0);
        if (formula::is_bakers_yeast(knowledge, ingredient)) {
            add_yeast(out.yeast_as_fresh, ingredient);
        }
    }
    if (!(out.flour > Grams(0.0))) {
        return tl::make_unexpected(
            Diagnostics{{"dough_unweighed",
                         Severity::error,
                         "no flour in this recipe has a weight, and percentages are on the flour",
                         "",
                         "Write the weight into the recipe, as in 500 g flour."}});
    }
    const auto percent = [&out](Grams grams) {
        return dough::BakersPercent(100.0 * (grams / out.flour));
    };
    out.hydration = percent(water);
    out.total_hydration = percent(water + inside);
    out.prefermented = percent(prefermented);
    out.salt = percent(salt);
    out.fat = percent(fat);
    out.sugar = percent(sugar);
    for (FormulaItem& item : out.items) {
        item.percent = percent(item.grams.likely);
    }
    out.remarks = formula::remarks_on(out, recipe, knowledge);
    return out;
}

} // namespace loafwright
