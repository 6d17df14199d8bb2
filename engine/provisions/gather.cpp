// SPDX-License-Identifier: Apache-2.0
//
// Everything to have out before the flour is touched. Ingredients are added up by item, in the
// order in which the recipe first names them; allergens come from the ingredient table, and what is
// not in the table is named as unknown, because silence would read as "free from". Cautions and kit
// have files of their own.

#include "engine/provisions/gather.hpp"

#include "engine/formula/dough_parts.hpp"
#include "engine/knowledge/family.hpp"
#include "engine/provisions/amounts.hpp"
#include "engine/provisions/cautions.hpp"
#include "engine/provisions/kit.hpp"
#include "engine/provisions/words.hpp"
#include "engine/recipe/part_word.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

namespace loafwright {
namespace {

using formula::is_made_here;
using provisions::amount_in;
using provisions::Measure;
using provisions::Words;
using provisions::words_of;
using provisions::WrittenAmount;

void add_up(std::optional<Band<Grams>>& sum, const std::optional<Band<Grams>>& more) {
    if (!more) {
        return;
    }
    if (!sum) {
        sum = more;
        return;
    }
    sum->low += more->low;
    sum->likely += more->likely;
    sum->high += more->high;
}

PartShare share_of(const Ingredient& ingredient, const Recipe& recipe) {
    return {ingredient.part ? part_word(recipe, *ingredient.part) : "",
            ingredient.item,
            ingredient.grams};
}

std::vector<ToBuy> shopping(const Recipe& recipe, const Knowledge& knowledge) {
    std::vector<ToBuy> buy;
    for (const Ingredient& ingredient : recipe.ingredients) {
        // A leaven that the recipe makes itself is not bought, though the dough's list names it.
        if (is_made_here(ingredient, recipe)) {
            continue;
        }
        const WrittenAmount amount = amount_in(ingredient.text, knowledge);
        const std::string written =
            amount.measure == Measure::grams || recipe.written_for ? "" : amount.text;
        const auto known = std::find_if(buy.begin(), buy.end(), [&](const ToBuy& one) {
            // "warm water" and "lukewarm water" come from one tap.
            return one.item == ingredient.item ||
                   (!one.known_as.empty() && one.known_as == ingredient.known_as);
        });
        if (known == buy.end()) {
            buy.push_back({ingredient.item,
                           ingredient.known_as,
                           ingredient.grams,
                           written,
                           ingredient.optional,
                           {share_of(ingredient, recipe)}});
            continue;
        }
        // "Water", of which some is to boil: the plain name stands for all of it.
        if (ingredient.item.size() < known->item.size()) {
            known->item = ingredient.item;
        }
        add_up(known->grams, ingredient.grams);
        known->shares.push_back(share_of(ingredient, recipe));
        known->optional = known->optional && ingredient.optional;
        if (!written.empty()) {
            known->as_written += (known->as_written.empty() ? "" : " + ") + written;
        }
    }
    const auto has_part = [](const ToBuy& one) {
        return std::any_of(one.shares.begin(), one.shares.end(), [](const PartShare& share) {
            return !share.part.empty();
        });
    };
    if (std::none_of(buy.begin(), buy.end(), has_part)) {
        for (ToBuy& one : buy) {
            one.shares.clear();
        }
    }
    return buy;
}

std::vector<Ahead> lead_time(const Recipe& recipe, const Knowledge& knowledge) {
    std::vector<Ahead> ahead;
    const auto unasked_or_said = [](const Words& words, const std::vector<std::string_view>& any) {
        return any.empty() || provisions::says_any(words, any);
    };
    for (const AheadRow& row : knowledge.ahead) {
        const bool called_for = std::any_of(
            recipe.ingredients.begin(), recipe.ingredients.end(), [&](const Ingredient& one) {
                const Words words = words_of(one.text + "; " + one.item);
                const IngredientRow* known = row_of(knowledge, one);
                const bool role =
                    row.any_role.empty() ||
                    (known != nullptr &&
                     std::find(row.any_role.begin(), row.any_role.end(), known->role) !=
                         row.any_role.end());
                return role && unasked_or_said(words, row.any_item) &&
                       unasked_or_said(words, row.any_word) &&
                       !provisions::says_any(words, row.unless_word) && !is_made_here(one, recipe);
            });
        if (called_for) {
            ahead.push_back({std::string(row.what), row.before.count() / 60.0});
        }
    }
    std::stable_sort(ahead.begin(), ahead.end(), [](const Ahead& a, const Ahead& b) {
        return a.hours_before > b.hours_before;
    });
    return ahead;
}

// "gluten:wheat" is shown as "wheat (gluten)", "soya?" as "soya (check the label)".
std::string shown_allergen(std::string_view code) {
    const bool unsure = !code.empty() && code.back() == '?';
    if (unsure) {
        code.remove_suffix(1);
    }
    const std::size_t mark = code.find(':');
    std::string shown = mark == std::string_view::npos
                            ? std::string(code)
                            : fmt::format("{} ({})", code.substr(mark + 1), code.substr(0, mark));
    return unsure ? shown + " (check the label)" : shown;
}

void note_allergen(std::vector<AllergenNote>& notes,
                   const std::string& allergen,
                   const std::string& item) {
    const auto known = std::find_if(notes.begin(), notes.end(), [&](const AllergenNote& note) {
        return note.allergen == allergen;
    });
    if (known == notes.end()) {
        notes.push_back({allergen, {item}});
    } else if (std::find(known->because.begin(), known->because.end(), item) ==
               known->because.end()) {
        known->because.push_back(item);
    }
}

std::vector<AllergenNote> allergens_in(const Recipe& recipe, const Knowledge& knowledge) {
    std::vector<AllergenNote> sure;
    std::vector<AllergenNote> unsure;
    for (const Ingredient& ingredient : recipe.ingredients) {
        const IngredientRow* row = row_of(knowledge, ingredient);
        if (row == nullptr) {
            note_allergen(unsure, "not known to us (check the label)", ingredient.item);
            continue;
        }
        for (const std::string_view code : row->allergens) {
            const bool open = !code.empty() && code.back() == '?';
            note_allergen(open ? unsure : sure, shown_allergen(code), ingredient.item);
        }
    }
    sure.insert(sure.end(), unsure.begin(), unsure.end());
    return sure;
}

std::vector<std::string> normal_at_steps(const Recipe& recipe, const Knowledge& knowledge) {
    const DoughFamily family = family_of(recipe, knowledge);
    std::vector<std::string> all;
    for (const Step& step : recipe.steps) {
        const NormalRow* row = normal_at(knowledge, step.kind, family);
        all.emplace_back(row != nullptr ? row->text : std::string_view());
    }
    return all;
}

} // namespace

Provisions gather(const Recipe& recipe, const Kitchen& kitchen, const Knowledge& knowledge) {
    Provisions all;
    all.buy = shopping(recipe, knowledge);
    all.kit = provisions::kit_for(recipe, kitchen, knowledge);
    all.ahead = lead_time(recipe, knowledge);
    all.allergens = allergens_in(recipe, knowledge);
    all.cautions = provisions::cautions_for(recipe, kitchen, knowledge);
    all.normal = normal_at_steps(recipe, knowledge);
    return all;
}

} // namespace loafwright
