// SPDX-License-Identifier: Apache-2.0
//
// The way out that every baker knows: dough that has no time left to be a loaf bakes and cools in
// less than half as rolls. Weighing, mixing and rising stay the recipe's; from shaping on the words
// would speak of a tin, so they are ours.
#include "engine/fitting/rolls.hpp"

#include "engine/dough/bake_transfer.hpp"
#include "engine/fitting/bake.hpp"
#include "engine/fitting/cooling.hpp"
#include "engine/fitting/room.hpp"
#include "engine/fitting/words.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace loafwright::fitting {

namespace {

// Dividing and rounding a piece, at a beginner's pace (common practice).
constexpr Band<double> minutes_a_roll{0.5, 1.0, 2.0};
constexpr double coolest_c = 160.0; // what the bake's model was looked at for
constexpr double hottest_c = 260.0;

std::int64_t rounded(double minutes) {
    return static_cast<std::int64_t>(std::floor(minutes + 0.5));
}

/// Which steps make the loaf a loaf.
struct Marks {
    std::size_t last_rise = 0;
    std::size_t first_bake = 0;
    std::size_t last_bake = 0;
};

std::optional<Marks> marks_of(const std::vector<FittedStep>& steps) {
    Marks marks;
    bool rises = false;
    bool bakes = false;
    for (std::size_t f = 0; f < steps.size(); ++f) {
        const StepKind kind = steps[f].kind;
        if (kind == StepKind::cook) {
            return std::nullopt; // boiled or fried: its size is in the recipe's own times
        }
        if (!bakes && (kind == StepKind::rise || kind == StepKind::prove)) {
            marks.last_rise = f;
            rises = true;
        }
        if (kind == StepKind::bake) {
            marks.first_bake = bakes ? marks.first_bake : f;
            marks.last_bake = f;
            bakes = true;
        }
    }
    return rises && bakes ? std::optional(marks) : std::nullopt;
}

/// The loaf's whole bake, carried over to one roll at the first setting.
std::optional<Band<std::int64_t>> bake_of_a_roll(const FittedRecipe& loaf, Grams roll) {
    const auto body = loaf_of(loaf.recipe, Form::loaf, loaf.dough);
    if (!body) {
        return std::nullopt;
    }
    dough::Bake stated;
    stated.loaf = *body;
    stated.vessel =
        body->form == dough::Form::tin_loaf ? dough::Vessel::dark_tin : dough::Vessel::none;
    for (const FittedStep& step : loaf.steps) {
        if (step.kind != StepKind::bake || step.minutes.likely <= 0) {
            continue;
        }
        const auto last = stated.settings.empty()
                              ? std::optional<Celsius>{}
                              : std::optional(stated.settings.back().temperature);
        const auto setting = step.oven ? step.oven : last;
        if (!setting || setting->degrees() < coolest_c || setting->degrees() > hottest_c) {
            return std::nullopt;
        }
        stated.settings.push_back({*setting, Minutes(static_cast<double>(step.minutes.likely))});
    }
    if (stated.settings.empty()) {
        return std::nullopt;
    }
    dough::Bake here = stated;
    here.loaf = dough::usual_loaf(dough::Form::roll, roll);
    here.vessel = dough::Vessel::none;
    here.settings = {stated.settings.front()};
    const auto moved = dough::transferred_bake(stated, here);
    if (!moved || !moved->within_known) {
        return std::nullopt;
    }
    return Band<std::int64_t>{whole_minutes(moved->time.low),
                              whole_minutes(moved->time.likely),
                              whole_minutes(moved->time.high)};
}

/// The text's own words give way to ours.
void reword(FittedRecipe& rolls, std::size_t fitted, std::string words, std::string cue) {
    FittedStep& step = rolls.steps[fitted];
    step.cue.reset();
    if (!cue.empty()) {
        step.cue = Cue{std::move(cue), std::nullopt};
    }
    if (step.step) {
        Step& text = rolls.recipe.steps[*step.step];
        text.text = std::move(words);
        text.reminders.clear();
        text.cue = step.cue;
    }
}

void shape_rolls(FittedRecipe& rolls, const Marks& marks, int count) {
    const double pieces = count;
    const Band<std::int64_t> minutes{rounded(minutes_a_roll.low * pieces),
                                     rounded(minutes_a_roll.likely * pieces),
                                     rounded(minutes_a_roll.high * pieces)};
    const std::string words =
        fmt::format("Divide into {}, shape into rolls and set on a lined tray", count);
    const std::string reason = fmt::format("our guess: {} rolls, a minute each", count);
    for (std::size_t f = marks.last_rise; f-- > 0;) {
        FittedStep& step = rolls.steps[f];
        if (step.kind == StepKind::shape) {
            step.minutes = minutes;
            step.basis = Basis::assumed;
            step.reason = reason;
            reword(rolls, f, words, "");
            return;
        }
        if (step.attention == Attention::wait) {
            break;
        }
    }
    FittedStep ours;
    ours.kind = StepKind::shape;
    ours.minutes = minutes;
    ours.reason = reason;
    rolls.steps.insert(rolls.steps.begin() + static_cast<std::ptrdiff_t>(marks.last_rise), ours);
}

} // namespace

std::optional<FittedRecipe> as_rolls(const FittedRecipe& loaf, const Kitchen& kitchen) {
    const auto marks = marks_of(loaf.steps);
    const bool raised = loaf.family != DoughFamily::flatbread && loaf.family != DoughFamily::quick;
    if (!marks || !raised || form_of(loaf.recipe) != Form::loaf || !(loaf.dough > Grams(0.0))) {
        return std::nullopt;
    }
    const auto count = static_cast<int>(std::clamp(
        rounded(loaf.dough / usual_roll), std::int64_t{0}, std::int64_t{most_rolls + 1}));
    if (count < fewest_rolls || count > most_rolls) {
        return std::nullopt;
    }
    const Grams roll = loaf.dough / static_cast<double>(count);
    const auto bake = bake_of_a_roll(loaf, roll);
    if (!bake) {
        return std::nullopt;
    }
    FittedRecipe rolls = loaf;
    rolls.recipe.title += " as rolls";
    rolls.recipe.pieces = static_cast<double>(count);
    rolls.recipe.reminders.clear();

    FittedStep& baked = rolls.steps[marks->first_bake];
    baked.minutes = *bake;
    baked.basis = Basis::computed;
    baked.reason = fmt::format("rolls of {:.0f} g instead of a loaf", roll.count());
    reword(
        rolls, marks->first_bake, "Bake the rolls", "golden, and hollow when knocked underneath");
    reword(rolls, marks->last_rise, "Cover and leave to prove", "a wet finger's dent fills slowly");

    const auto room = room_here(kitchen);
    const Band<std::int64_t> best =
        best_of_rolls(rolls.recipe, loaf.dough, room ? room->likely : usual_room);
    rolls.cut_after_minutes = exactly(cut_of_rolls);
    rolls.best_after_minutes = {std::max(cut_of_rolls, best.low),
                                std::max(cut_of_rolls, best.likely),
                                std::max(cut_of_rolls, best.high)};
    // Backwards, so that what is taken out moves nothing that is still to be looked at.
    bool cools = false;
    for (std::size_t f = rolls.steps.size(); f-- > 0;) {
        FittedStep& step = rolls.steps[f];
        const bool in_the_bake = f > marks->first_bake && f <= marks->last_bake;
        const auto during = step.step ? rolls.recipe.steps[*step.step].during : std::nullopt;
        const bool turned =
            during && rolls.recipe.steps[*during].kind == StepKind::bake && f != marks->first_bake;
        const bool greases =
            step.kind == StepKind::prepare && f < marks->first_bake && step.step &&
            has_any_word(lower_case(rolls.recipe.steps[*step.step].text), {"tin", "tins", "pan"});
        if (step.kind == StepKind::cool) {
            step.minutes = exactly(cools ? std::int64_t{0} : cut_of_rolls);
            step.reason = "rolls can be broken open after 20 min";
            reword(rolls, f, "Leave to cool on a rack", "");
            cools = true;
        }
        if (in_the_bake || turned || greases) {
            rolls.steps.erase(rolls.steps.begin() + static_cast<std::ptrdiff_t>(f));
        }
    }
    const auto bake_again = marks_of(rolls.steps);
    shape_rolls(rolls, bake_again ? *bake_again : *marks, count);
    for (FittedStep& step : rolls.steps) {
        if (step.kind == StepKind::finish && step.step) {
            rolls.recipe.steps[*step.step].reminders.clear();
        }
    }
    return rolls;
}

} // namespace loafwright::fitting
