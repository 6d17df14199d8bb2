// SPDX-License-Identifier: Apache-2.0
//
// The page of `loafwright scale`. Times are told for a usual kitchen; the plan tells them for the
// baker's own.
#include "shell/cli/scale_page.hpp"

#include "engine/fitting/fit.hpp"
#include "engine/fitting/words.hpp"
#include "engine/formula/amount_words.hpp"
#include "engine/formula/scale.hpp"
#include "shell/cli/labelled_page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace loafwright::cli {

namespace {

std::int64_t bake_minutes(const Reading& reading, const Knowledge& knowledge) {
    std::int64_t sum = 0;
    for (const FittedStep& step : fit(reading, Kitchen{}, knowledge).steps) {
        sum += step.kind == StepKind::bake ? step.minutes.likely : 0;
    }
    return sum;
}

// Beyond what the heat models know, fit leaves the recipe's own time.
bool is_other_piece(const Recipe& told, const Recipe& scaled) {
    const double times = scaled.written_for ? scaled.written_for->factor : 1.0;
    const double pieces = scaled.pieces.value_or(1.0) / told.pieces.value_or(1.0);
    constexpr double as_heavy_within = 0.1;
    return std::abs(times / pieces - 1.0) > as_heavy_within;
}

} // namespace

std::string scale_page(const Reading& told,
                       const Reading& scaled,
                       const Knowledge& knowledge,
                       std::size_t columns,
                       output::Weight weight) {
    const Recipe& recipe = scaled.recipe;
    LabelledPage page(columns, weight);
    page.heading(recipe.title.empty() ? "A recipe without a title" : recipe.title);
    for (const Phrase& change : recipe.changes) {
        page.sentence(fitting::plain_text(change));
    }
    if (recipe.changes.empty()) {
        page.sentence("The recipe as it is.");
    }
    page.gap();
    for (const Ingredient& ingredient : recipe.ingredients) {
        std::string words = ingredient.item;
        std::string amount;
        if (ingredient.grams) {
            const formula::Measured shown =
                formula::measured(ingredient.grams->likely, row_of(knowledge, ingredient));
            amount = shown.weight;
            words += shown.also.empty() ? "" : ", " + shown.also;
        }
        if (ingredient.part) {
            words += ", for the " + *ingredient.part;
        }
        if (ingredient.optional) {
            words += ", if you like";
        }
        page.figures({amount}, words);
    }
    page.gap();
    const Grams dough = dough_mass(recipe, knowledge);
    if (dough > Grams(0.0)) {
        const double pieces = std::max(1.0, recipe.pieces.value_or(1.0));
        page.labelled(
            "Dough",
            pieces > 1.0
                ? fmt::format("{:.0f} g, {:.0f} g a piece", dough.count(), dough.count() / pieces)
                : fmt::format("{:.0f} g", dough.count()));
    }
    const std::int64_t before = bake_minutes(told, knowledge);
    const std::int64_t now = bake_minutes(scaled, knowledge);
    if (now > 0) {
        page.labelled("Bake",
                      now == before && is_other_piece(told.recipe, recipe)
                          ? "the recipe's time may not do for so large a change: go by its sign"
                      : now == before ? "as long as in the recipe"
                                      : fmt::format("about {}, in the recipe {}",
                                                    fitting::duration_text(now),
                                                    fitting::duration_text(before)));
    }
    if (recipe.written_for &&
        std::any_of(recipe.steps.begin(), recipe.steps.end(), [](const Step& step) {
            return formula::names_an_amount(step.text);
        })) {
        page.gap();
        page.sentence("The steps of the recipe still name its own weights; take those above.");
    }
    return page.text();
}

} // namespace loafwright::cli
