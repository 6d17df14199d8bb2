// SPDX-License-Identifier: Apache-2.0
//
// Two cooling times: when it can be cut, which a plan must keep, and when it is at its best, which
// is a wish. Common practice: a loaf needs an hour before the knife, since its crumb is still
// setting; rolls need twenty minutes; a flatbread is eaten hot; a loaf mostly of rye is better the
// next day.
#include "engine/fitting/cooling.hpp"

#include "engine/dough/cool.hpp"
#include "engine/fitting/bake.hpp"
#include "engine/fitting/words.hpp"
#include "engine/recipe/words.hpp"

#include <algorithm>

namespace loafwright::fitting {

namespace {

constexpr std::int64_t loaf_cut = 60;
constexpr Band<std::int64_t> rolls_best{20, 30, 45};
constexpr Band<std::int64_t> rye_best{720, 1080, 1440};

struct Stated {
    std::int64_t minutes = 0;
    bool any_step = false;
    bool every_step_timed = true;
    bool completely = false;
    bool warm = false;
};

Stated stated_cooling(const Recipe& recipe) {
    Stated stated;
    for (const Step& step : recipe.steps) {
        const std::string text = lower_case(step.text);
        if (step.kind == StepKind::cool) {
            stated.any_step = true;
            if (step.minutes) {
                stated.minutes += whole_minutes(step.minutes->minutes.likely);
            } else {
                stated.every_step_timed = false;
            }
            stated.completely =
                stated.completely ||
                has_any_word(
                    text, {"completely", "quite cold", "until cold", "stone cold", "thoroughly"});
        }
        if (step.kind == StepKind::serve || step.kind == StepKind::cool) {
            stated.warm = stated.warm || has_any_word(text,
                                                      {"serve warm",
                                                       "serve hot",
                                                       "eat warm",
                                                       "eat hot",
                                                       "serve at once",
                                                       "serve immediately"});
        }
    }
    return stated;
}

// Until the core is at 35 °C, in fives.
std::optional<Band<std::int64_t>>
best_by_physics(const Recipe& recipe, Form form, Grams mass, Celsius room) {
    constexpr double coldest_c = 0.0;
    constexpr double warmest_c = 34.0; // above it nothing cools to 35 °C in a day
    const auto loaf = loaf_of(recipe, form, mass);
    if (!loaf || room.degrees() < coldest_c || room.degrees() > warmest_c) {
        return std::nullopt;
    }
    const auto cooled =
        dough::cooling(dough::plainly_baked(*loaf), room, dough::Standing::rack).to_35;
    if (!cooled) {
        return std::nullopt;
    }
    return Band<std::int64_t>{
        nearest_five(cooled->low), nearest_five(cooled->likely), nearest_five(cooled->high)};
}

} // namespace

Band<std::int64_t> best_of_rolls(const Recipe& recipe, Grams mass, Celsius room) {
    return best_by_physics(recipe, Form::rolls, mass, room).value_or(rolls_best);
}

Cooling cooling_of(const Recipe& recipe,
                   DoughFamily family,
                   Form form,
                   const Makeup& makeup,
                   const Knowledge& knowledge,
                   Celsius room,
                   Grams mass) {
    const bool baked = std::any_of(recipe.steps.begin(), recipe.steps.end(), [](const Step& step) {
        return step.kind == StepKind::bake;
    });
    if (!baked) {
        return {exactly<std::int64_t>(0), exactly<std::int64_t>(0), "eaten hot"};
    }
    const Stated stated = stated_cooling(recipe);
    const bool says_all = stated.any_step && stated.every_step_timed;

    Cooling cooling;
    if (form == Form::flat) {
        cooling.cut = exactly(stated.minutes);
        cooling.best = cooling.cut;
        cooling.reason = says_all ? "from the recipe" : "a flatbread is eaten hot";
        return cooling;
    }
    std::int64_t cut = cut_of_rolls;
    if (form == Form::rolls) {
        cooling.best = best_of_rolls(recipe, mass, room);
        cooling.reason = "rolls can be broken open after 20 min";
        if (stated.warm) {
            cut = cut_of_rolls / 2;
        }
        if (says_all) {
            cut = stated.minutes;
            cooling.reason = "from the recipe";
        }
    } else {
        const StageDefaultRow* row =
            stage_default(knowledge, StepKind::cool, family, Place::counter);
        const Band<std::int64_t> usual =
            row != nullptr ? Band<std::int64_t>{whole_minutes(row->minutes.low),
                                                whole_minutes(row->minutes.likely),
                                                whole_minutes(row->minutes.high)}
                           : Band<std::int64_t>{60, 100, 150};
        cooling.best = best_by_physics(recipe, form, mass, room).value_or(usual);
        cut = loaf_cut;
        cooling.reason = "a loaf wants an hour before it is cut";
        if (makeup.rye_share > 0.5) {
            cooling.best = rye_best;
            cooling.reason = "a loaf wants an hour before it is cut; rye is better next day";
        }
    }
    if (stated.minutes > cut) {
        cut = stated.minutes;
        cooling.reason = "from the recipe";
    }
    if (stated.completely && cut < cooling.best.likely) {
        cut = std::min<std::int64_t>(cooling.best.likely, 180);
        cooling.reason = "the recipe wants it quite cold";
    }
    cooling.cut = exactly(cut);
    cooling.best.low = std::max(cooling.best.low, cut);
    cooling.best.likely = std::max(cooling.best.likely, cut);
    cooling.best.high = std::max(cooling.best.high, cut);
    return cooling;
}

} // namespace loafwright::fitting
