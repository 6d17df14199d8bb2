// SPDX-License-Identifier: Apache-2.0
//
// What is unusual, in words that a beginner can act on. A figure is held against the range that is
// usual for breads of its kind; a little outside is no news, far outside is likely a misprint.

#include "engine/formula/remarks.hpp"

#include "engine/formula/dough_parts.hpp"
#include "engine/knowledge/family.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

namespace loafwright::formula {
namespace {

// What makes no other dough (assumed): a tablespoon of water and a pinch of salt on 500 g of flour.
constexpr double water_slack = 2.0;
constexpr double salt_slack = 0.3;
constexpr double share_slack = 1.0;
// Beyond these the text is likely misread or misprinted (our reference on how recipes are written).
constexpr double most_salt = 3.0;
constexpr double least_salt = 0.5;
constexpr double most_yeast_as_fresh = 8.0;
// Flour whose weight is this uncertain was measured by volume.
constexpr double weighed_within = 0.10;

struct Side {
    bool above = false;
    bool below = false;
};

Side side_of(double value, const PercentRange& usual, double slack) {
    return {value > usual.high + slack, value < usual.low - slack};
}

// "72 %", and below ten with a decimal where it says more.
std::string percent_words(double percent) {
    const double tenths = std::floor(percent * 10.0 + 0.5) / 10.0;
    return percent < 10.0 ? fmt::format("{} %", tenths)
                          : fmt::format("{} %", std::floor(percent + 0.5));
}

std::string usual_words(std::string_view bread, const PercentRange& usual) {
    return usual.low == 0.0 ? fmt::format("{} have {} at most", bread, percent_words(usual.high))
                            : fmt::format("{} have {} to {}",
                                          bread,
                                          std::round(usual.low * 10.0) / 10.0,
                                          percent_words(usual.high));
}

Diagnostic remark(const char* code, Severity severity, std::string what, std::string do_this) {
    return {code, severity, std::move(what), "", std::move(do_this)};
}

/// Collects the remarks on one formula.
class Remarks {
public:
    Remarks(const Formula& formula, const FormulaRangeRow& usual)
        : formula_(formula), usual_(usual) {}

    void on_salt(bool named) {
        if (!usual_.salt) {
            return;
        }
        const double salt = formula_.salt.count();
        const std::string words = usual_words(usual_.bread, *usual_.salt);
        if (salt <= 0.0) {
            if (!named) {
                const double middle = (usual_.salt->low + usual_.salt->high) / 2.0;
                note("salt_unusual",
                     fmt::format("no salt is named, and {}", words),
                     fmt::format("Look at the recipe again; {:.0f} g would be usual here.",
                                 formula_.flour.count() * middle / 100.0));
            }
            return;
        }
        const Side side = side_of(salt, *usual_.salt, salt_slack);
        const std::string what = fmt::format("{} salt: {}", percent_words(salt), words);
        if ((side.above && salt > most_salt) || (side.below && salt < least_salt)) {
            found_.push_back(remark("salt_unusual",
                                    Severity::warning,
                                    what,
                                    "Look at the recipe again: is it a typing error?"));
        } else if (side.above) {
            note("salt_unusual", what, "Expect a salty bread that rises slowly.");
        } else if (side.below) {
            note("salt_unusual", what, "Expect a flat taste, and a dough that rises fast.");
        }
    }
    void on_water() {
        if (!usual_.water) {
            return;
        }
        const double water = formula_.total_hydration.count();
        const Side side = side_of(water, *usual_.water, water_slack);
        const bool inside = formula_.total_hydration.count() > formula_.hydration.count() + 2.0;
        const std::string what = fmt::format("{} water{}: {}",
                                             percent_words(water),
                                             inside ? ", counting what milk and eggs bring" : "",
                                             usual_words(usual_.bread, *usual_.water));
        if (side.above) {
            note("water_unusual",
                 what,
                 "Expect a sticky dough: wet your hands, and do not add flour.");
        } else if (side.below) {
            note("water_unusual",
                 what,
                 "Expect a stiff dough; where flour stays dry, add water by the spoonful.");
        }
    }
    void on_yeast() {
        if (!usual_.yeast_as_fresh || !formula_.yeast_as_fresh) {
            return;
        }
        const double yeast = 100.0 * (formula_.yeast_as_fresh->likely / formula_.flour);
        const double low = usual_.yeast_as_fresh->low;
        const double high = usual_.yeast_as_fresh->high;
        const std::string what = fmt::format("yeast like {} of fresh: {}",
                                             percent_words(yeast),
                                             usual_words(usual_.bread, *usual_.yeast_as_fresh));
        // A dose counts by its ratio.
        if (yeast > most_yeast_as_fresh && yeast > high) {
            found_.push_back(remark("yeast_unusual",
                                    Severity::warning,
                                    what,
                                    "Look at the recipe again: is it a typing error?"));
        } else if (yeast > high * 1.25) {
            note("yeast_unusual", what, "Look early: it rises fast, and tastes of yeast.");
        } else if (yeast < low / 1.25) {
            note("yeast_unusual", what, "Give it time: so little wants most of a day, or a night.");
        }
    }
    void on_leaven() {
        if (!usual_.prefermented || formula_.prefermented.count() <= 0.0) {
            return;
        }
        const double leaven = formula_.prefermented.count();
        const Side side = side_of(leaven, *usual_.prefermented, share_slack);
        const std::string what = fmt::format("{} of the flour is in the leaven: {}",
                                             percent_words(leaven),
                                             usual_words(usual_.bread, *usual_.prefermented));
        if (side.above) {
            note("leaven_unusual", what, "Look early: it rises and sours sooner.");
        } else if (side.below) {
            note("leaven_unusual", what, "Give it time: a little leaven takes longer.");
        }
    }
    void on_richness() {
        const auto over = [this](const std::optional<PercentRange>& usual,
                                 double value,
                                 std::string_view name,
                                 std::string_view do_this) {
            if (usual && side_of(value, *usual, share_slack).above) {
                note(
                    "richness_unusual",
                    fmt::format(
                        "{} {}: {}", percent_words(value), name, usual_words(usual_.bread, *usual)),
                    std::string(do_this));
            }
        };
        over(usual_.fat,
             formula_.fat.count(),
             "fat",
             "Knead the dough smooth before the fat goes in; it rises slowly.");
        over(usual_.sugar,
             formula_.sugar.count(),
             "sugar",
             "Give it time: sugar slows the yeast, and the crust browns early.");
    }
    void on_measuring(const Band<Grams>& flour) {
        if (flour.high - flour.low < flour.likely * (2.0 * weighed_within)) {
            return;
        }
        const double water = formula_.total_hydration.count() * formula_.flour.count();
        const double wet = water / (formula_.flour + (flour.low - flour.likely)).count();
        const double dry = water / (formula_.flour + (flour.high - flour.likely)).count();
        note("flour_by_volume",
             fmt::format("the flour is measured by volume, so this may be {:.0f} to {} water",
                         dry,
                         percent_words(wet)),
             "Weigh it if you can; else go by the feel: soft, and not running.");
    }
    Diagnostics take() { return std::move(found_); }

private:
    void note(const char* code, std::string what, std::string do_this) {
        found_.push_back(remark(code, Severity::note, std::move(what), std::move(do_this)));
    }

    const Formula& formula_;
    const FormulaRangeRow& usual_;
    Diagnostics found_;
};

} // namespace

Diagnostics remarks_on(const Formula& formula, const Recipe& recipe, const Knowledge& knowledge) {
    const FormulaRangeRow* usual =
        usual_formula(knowledge, lower_case(recipe.title), family_of(recipe, knowledge));
    const FormulaRangeRow anything;
    Remarks remarks(formula, usual != nullptr ? *usual : anything);
    bool salt_named = false;
    Band<Grams> flour = exactly(Grams(0.0));
    for (const Ingredient& ingredient : recipe.ingredients) {
        const IngredientRow* row = row_of(knowledge, ingredient);
        salt_named = salt_named || (row != nullptr && row->role == "salt") ||
                     has_word(lower_case(ingredient.item), "salt");
        if (ingredient.grams && is_flour(knowledge, ingredient)) {
            flour.low += ingredient.grams->low;
            flour.likely += ingredient.grams->likely;
            flour.high += ingredient.grams->high;
        }
    }
    remarks.on_salt(salt_named);
    remarks.on_water();
    remarks.on_yeast();
    remarks.on_leaven();
    remarks.on_richness();
    remarks.on_measuring(flour);
    return remarks.take();
}

} // namespace loafwright::formula
