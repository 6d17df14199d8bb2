// SPDX-License-Identifier: Apache-2.0
#include "engine/formula/raised_by.hpp"

#include "engine/formula/amount_words.hpp"
#include "engine/formula/dough_parts.hpp"
#include "engine/formula/leaven.hpp"
#include "engine/formula/swap.hpp"
#include "engine/recipe/words.hpp"

#include <algorithm>
#include <string>
#include <utility>

namespace loafwright {
namespace {

struct Named {
    RaisedBy raised_by;
    std::string_view name;
};
constexpr std::array<Named, all_raised_by.size()> names{{{RaisedBy::fresh, "fresh"},
                                                         {RaisedBy::active_dry, "active_dry"},
                                                         {RaisedBy::instant, "instant"},
                                                         {RaisedBy::leaven, "leaven"}}};

dough::YeastForm form_of(RaisedBy raised_by) {
    switch (raised_by) {
    case RaisedBy::active_dry:
        return dough::YeastForm::active_dry;
    case RaisedBy::instant:
        return dough::YeastForm::instant;
    case RaisedBy::fresh:
    case RaisedBy::leaven: // is no form of baker's yeast
        break;
    }
    return dough::YeastForm::fresh;
}

Diagnostics nothing_to_swap(const Recipe& recipe) {
    const std::string title = recipe.title.empty() ? "this bread" : recipe.title;
    return {{"raised_otherwise",
             Severity::error,
             "found neither yeast nor leaven in " + title + ", so there is nothing to swap",
             "",
             "Make it as it is written."}};
}

const Ingredient* yeast_in(const Recipe& recipe, const Knowledge& knowledge) {
    const auto found = std::find_if(
        recipe.ingredients.begin(), recipe.ingredients.end(), [&](const Ingredient& ingredient) {
            return formula::is_bakers_yeast(knowledge, ingredient);
        });
    return found == recipe.ingredients.end() ? nullptr : &*found;
}

// "With instant yeast instead of fresh yeast: 7 g instead of 21 g."
Phrase yeast_words(const Ingredient& before, const Ingredient& after) {
    Phrase words = phrase("With {} instead of {}", {after.item, before.item});
    if (before.grams && after.grams) {
        words += phrase(": {} instead of {}", {after.grams->likely, before.grams->likely});
    }
    words += phrase(".");
    return words;
}

} // namespace

std::string_view name_of(RaisedBy raised_by) {
    const auto* const found = std::find_if(
        names.begin(), names.end(), [&](const Named& row) { return row.raised_by == raised_by; });
    return found == names.end() ? std::string_view() : found->name;
}

std::optional<RaisedBy> raised_by_named(std::string_view name) {
    const auto* const found = std::find_if(
        names.begin(), names.end(), [&](const Named& row) { return row.name == name; });
    return found == names.end() ? std::nullopt : std::optional(found->raised_by);
}

tl::expected<Recipe, Diagnostics>
raised_by(const Recipe& recipe, RaisedBy raised_by, const Knowledge& knowledge) {
    const Ingredient* before = yeast_in(recipe, knowledge);
    const bool leavened = formula::has_leaven(recipe, knowledge);
    if (before == nullptr && !leavened) {
        return tl::make_unexpected(nothing_to_swap(recipe));
    }
    if (raised_by == RaisedBy::leaven) {
        return before == nullptr ? recipe : formula::with_leaven(recipe, knowledge);
    }
    if (before == nullptr) {
        return formula::with_yeast(recipe, form_of(raised_by), knowledge);
    }
    Recipe out = swap(recipe, form_of(raised_by), knowledge);
    const Ingredient& after =
        out.ingredients[static_cast<std::size_t>(before - recipe.ingredients.data())];
    if (after.item == before->item) {
        return recipe;
    }
    formula::forget_amounts(out, {"yeast"});
    out.changes.push_back(yeast_words(*before, after));
    return out;
}

} // namespace loafwright
