// SPDX-License-Identifier: Apache-2.0
//
// Fitting: each step of a recipe gets its length in one kitchen, and the three steps that every
// bake needs and few texts name (weighing, heating the oven, cooling) are put in where they are
// missing. What runs inside a wait is put behind it, so that whoever plans meets the wait first.
#include "engine/fitting/fit.hpp"

#include "engine/fitting/learned.hpp"
#include "engine/fitting/steps.hpp"
#include "engine/fitting/words.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

namespace loafwright {

namespace {

using fitting::OvenHeat;
using fitting::StepHere;
using fitting::Surroundings;
using fitting::Transfer;

// The steps in the order of the text, each followed by what runs inside it. A circle of "during"
// cannot hide a step: whatever no chain from outside reaches is taken as it stands.
std::vector<std::size_t> order_of(const std::vector<Step>& steps) {
    const auto host_of = [&steps](std::size_t i) -> std::optional<std::size_t> {
        const auto host = steps[i].during;
        return host && *host < steps.size() && *host != i ? host : std::nullopt;
    };
    std::vector<std::vector<std::size_t>> inside(steps.size());
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (const auto host = host_of(i)) {
            inside[*host].push_back(i);
        }
    }
    std::vector<bool> taken(steps.size(), false);
    std::vector<std::size_t> order;
    const auto take = [&](std::size_t first) {
        std::vector<std::size_t> pending{first};
        while (!pending.empty()) {
            const std::size_t at = pending.back();
            pending.pop_back();
            if (taken[at]) {
                continue;
            }
            taken[at] = true;
            order.push_back(at);
            pending.insert(pending.end(), inside[at].rbegin(), inside[at].rend());
        }
    };
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (!host_of(i)) {
            take(i);
        }
    }
    for (std::size_t i = 0; i < steps.size(); ++i) {
        take(i);
    }
    return order;
}

bool has_kind(const std::vector<FittedStep>& steps, StepKind kind) {
    return std::any_of(
        steps.begin(), steps.end(), [kind](const FittedStep& step) { return step.kind == kind; });
}

using Iterator = std::vector<FittedStep>::iterator;

// Cooling sets in after the last bake and what the hands do to the hot bread (brushing, tipping it
// out).
Iterator end_of_baking(std::vector<FittedStep>& steps) {
    const auto last = std::find_if(steps.rbegin(), steps.rend(), [](const FittedStep& step) {
        return step.kind == StepKind::bake;
    });
    Iterator after = last.base();
    while (after != steps.end() && after->attention == Attention::hands) {
        ++after;
    }
    return after;
}

void add_weighing(const Surroundings& here, std::vector<FittedStep>& steps) {
    if (steps.empty() || has_kind(steps, StepKind::weigh)) {
        return;
    }
    // Before the first thing that is done to the ingredients; heating the oven is placed by the
    // plan.
    const auto first = std::find_if(steps.begin(), steps.end(), [](const FittedStep& step) {
        return step.kind != StepKind::preheat;
    });
    std::vector<FittedStep> ours{fitting::our_weighing(here)};
    fitting::apply_learned(here.kitchen.factors, "", ours);
    steps.insert(first, std::move(ours.front()));
}

void add_preheat(const Surroundings& here, std::vector<FittedStep>& steps) {
    const auto& texts = here.reading.recipe.steps;
    const auto bake = std::find_if(steps.begin(), steps.end(), [](const FittedStep& step) {
        return step.kind == StepKind::bake;
    });
    if (bake == steps.end()) {
        return;
    }
    const Step& text = texts[*bake->step];
    const bool with_stone = fitting::heats_a_stone(text.text, StepKind::bake);
    if (!has_kind(steps, StepKind::preheat)) {
        if (has_any_word(lower_case(text.text), {"cold oven"})) {
            return;
        }
        const OvenHeat heat = here.heats[*bake->step].value_or(OvenHeat{
            fitting::usual_oven(here.family), fitting::usual_oven(here.family), true, false});
        FittedStep ours = fitting::our_preheat(here, heat, with_stone);
        bake->heat_up_minutes = ours.minutes.likely;
        steps.insert(bake, std::move(ours));
        return;
    }
    std::int64_t longest = 0;
    for (const FittedStep& step : steps) {
        if (step.kind == StepKind::preheat) {
            longest = std::max(longest, step.minutes.likely);
        }
    }
    if (with_stone && here.heats[*bake->step]) {
        longest = std::max(
            longest,
            fitting::heat_up_minutes(here.kitchen, here.heats[*bake->step]->setting, true));
    }
    bake->heat_up_minutes = longest;
}

// Two bakes of one bread at different heats: the oven falls or rises while the bread is out of it.
void add_oven_changes(const Surroundings& here, std::vector<FittedStep>& steps) {
    std::optional<Celsius> hot;
    bool out = false;
    for (FittedStep& step : steps) {
        if (step.kind == StepKind::bake) {
            if (hot && out && step.oven && *step.oven != *hot) {
                step.oven_change_minutes =
                    fitting::oven_change_minutes(here.kitchen, *hot, *step.oven);
            }
            hot = step.oven ? step.oven : hot;
            out = false;
        } else if (step.attention == Attention::hands || step.attention == Attention::wait) {
            out = true;
        }
    }
}

// The text's own cooling keeps its times, and a rest after the oven is cooling too. What is missing
// until the bread can be cut goes to the last cooling step without a time, or to one of ours behind
// them all.
void add_cooling(const Surroundings& here, std::vector<FittedStep>& steps) {
    if (!has_kind(steps, StepKind::bake)) {
        return;
    }
    const std::vector<Step>& texts = here.reading.recipe.steps;
    const Iterator baked = end_of_baking(steps);
    std::int64_t missing = here.cooling.cut.likely;
    Iterator last_cool = steps.end();
    Iterator last_untimed = steps.end();
    for (Iterator step = baked; step != steps.end(); ++step) {
        if (step->attention != Attention::wait) {
            continue;
        }
        if (step->kind == StepKind::cool) {
            last_cool = step;
        }
        if (texts[*step->step].minutes) {
            missing -= step->minutes.likely;
        } else if (step->kind == StepKind::cool) {
            last_untimed = step;
            step->minutes = exactly<std::int64_t>(0);
            step->reason = here.cooling.reason;
        }
    }
    missing = std::max<std::int64_t>(0, missing);
    if (last_untimed != steps.end()) {
        last_untimed->minutes = exactly(missing);
    } else if (missing > 0) {
        const Iterator place = last_cool != steps.end() ? last_cool + 1 : baked;
        steps.insert(place, fitting::our_cooling(here, missing));
    }
}

Phrase waits_note(const Transfer& transfer, std::size_t count) {
    const std::string what = count == 1 ? "the wait takes " : "these waits take ";
    const std::int64_t longer = transfer.longer_minutes;
    const std::string change =
        longer > 0
            ? what + fitting::duration_text(longer) + " longer" + (count > 1 ? " in all" : "")
        : longer < 0
            ? what + fitting::duration_text(-longer) + " less" + (count > 1 ? " in all" : "")
            : "that makes no difference to the times";
    Phrase note = with_capital(transfer.here);
    note += phrase("; ");
    note += transfer.there;
    note += phrase(": {}.", {change});
    return note;
}

std::vector<Phrase>
notes_of(const Surroundings& here, const std::vector<StepHere>& steps, std::size_t& about_waits) {
    std::vector<Phrase> notes;
    // One sentence for all waits that were moved from the same place to the same place.
    std::vector<std::pair<Transfer, std::size_t>> sums;
    for (const StepHere& step : steps) {
        if (!step.transfer) {
            continue;
        }
        const auto same = std::find_if(sums.begin(), sums.end(), [&step](const auto& sum) {
            return sum.first.here == step.transfer->here && sum.first.there == step.transfer->there;
        });
        if (same == sums.end()) {
            sums.emplace_back(*step.transfer, 1);
        } else {
            same->first.longer_minutes += step.transfer->longer_minutes;
            ++same->second;
        }
    }
    for (const auto& [transfer, count] : sums) {
        notes.push_back(waits_note(transfer, count));
    }
    about_waits = notes.size();

    const auto limited = std::find_if(here.heats.begin(), here.heats.end(), [](const auto& heat) {
        return heat && heat->is_limited;
    });
    if (limited != here.heats.end()) {
        notes.push_back(phrase(
            "Your oven stops at {} and the recipe wants {}: bake at {} and go by the colour.",
            {here.kitchen.oven.max, (*limited)->wanted, (*limited)->setting}));
    }
    const double offset = here.kitchen.oven.offset.count();
    const bool is_learned =
        here.kitchen.factors.oven.measured > 0 &&
        here.kitchen.oven.offset == fitting::learned_offset(here.kitchen.factors.oven);
    const bool bakes = std::any_of(
        here.heats.begin(), here.heats.end(), [](const auto& heat) { return heat.has_value(); });
    if (bakes && offset != 0.0) {
        notes.push_back(
            phrase("Your oven runs {} {} than it is set{}; the settings here allow for it.",
                   {CelsiusDifference(offset > 0.0 ? offset : -offset),
                    std::string(offset > 0.0 ? "hotter" : "cooler"),
                    std::string(is_learned ? ", by your thermometer" : "")}));
    }
    const auto guessed = std::find_if(here.heats.begin(), here.heats.end(), [](const auto& heat) {
        return heat && heat->is_guess;
    });
    if (guessed != here.heats.end()) {
        notes.push_back(phrase("The recipe names no oven temperature in figures; {} is our guess.",
                               {(*guessed)->wanted}));
    }
    return notes;
}

Question room_question(const Surroundings& here, const std::vector<StepHere>& steps) {
    Question question;
    question.key = "room-c";
    question.about = "room temperature";
    question.default_answer = "21";
    question.ask = "How warm is your kitchen? Until you say, the recipe's own times stand.";
    // Name the recipe's own words for warmth when there are any, so that one knows what is
    // compared.
    for (const StepHere& step : steps) {
        const Step& text = here.reading.recipe.steps[*step.fitted.step];
        const fitting::WrittenFor written = fitting::written_for(text, here.knowledge);
        if (step.wants_room && written.temperature != fitting::usual_room) {
            question.ask =
                fmt::format("How warm is your kitchen? {}; until you say, its own times stand.",
                            fitting::plain_text(with_capital(written.name)));
            break;
        }
    }
    return question;
}

// "usual for the bread" becomes the figure that the plan reckons with.
void name_defaults(const Surroundings& here,
                   const std::vector<FittedStep>& steps,
                   std::vector<Question>& questions) {
    for (const FittedStep& step : steps) {
        if (!step.step) {
            continue;
        }
        const Step& text = here.reading.recipe.steps[*step.step];
        for (Question& question : questions) {
            if (text.minutes_question && question.key == *text.minutes_question) {
                question.default_answer = fitting::duration_text(step.minutes.likely);
            }
            if (text.temperature_question && question.key == *text.temperature_question &&
                step.oven) {
                question.default_answer = fitting::degrees_text(*step.oven);
            }
        }
    }
}

/// What a rise's other ways are worked out from.
struct OtherWays {
    std::optional<fitting::YeastInDough> yeast;
    Grams mass;
    const std::vector<std::optional<fitting::DoughCourse>>& courses;
};

void add_rising(const Surroundings& here, const OtherWays& ways, FittedStep& step) {
    const bool rises = step.kind == StepKind::rise || step.kind == StepKind::prove ||
                       step.kind == StepKind::ferment;
    if (!rises || !step.step || !ways.courses[*step.step] || step.minutes.low <= 0 ||
        !(ways.mass > Grams(0.0))) {
        return;
    }
    const fitting::DoughCourse& course = *ways.courses[*step.step];
    const auto minutes = [](std::int64_t count) { return Minutes(static_cast<double>(count)); };
    fitting::Rising rising;
    rising.kind = step.kind;
    rising.place = step.place;
    rising.minutes = {
        minutes(step.minutes.low), minutes(step.minutes.likely), minutes(step.minutes.high)};
    rising.dough = course.here_start;
    rising.stands = course.here_place;
    rising.time_constant = course.time_constant;
    rising.family = here.family;
    rising.leaven = here.family == DoughFamily::sourdough;
    rising.yeast = ways.yeast;
    const double pieces = here.reading.recipe.pieces.value_or(1.0);
    rising.mass = step.kind == StepKind::prove ? ways.mass / std::max(1.0, pieces) : ways.mass;
    if (here.courses[*step.step]) {
        step.options = fitting::options_for(rising, here.kitchen);
    }
    step.rising = rising;
}

// How hot the bake begins.
std::optional<Celsius> first_bake(const Recipe& recipe,
                                  const std::vector<std::optional<OvenHeat>>& heats) {
    for (std::size_t i = 0; i < recipe.steps.size(); ++i) {
        if (recipe.steps[i].kind == StepKind::bake && heats[i]) {
            return heats[i]->wanted;
        }
    }
    return std::nullopt;
}

Celsius cool_room(const Kitchen& kitchen) {
    const auto room = fitting::room_here(kitchen);
    return room ? room->likely : fitting::usual_room;
}

} // namespace

FittedRecipe fit(const Reading& reading, const Kitchen& stated, const Knowledge& knowledge) {
    const Recipe& recipe = reading.recipe;
    const Kitchen kitchen = fitting::kitchen_as_learned(stated);
    FittedRecipe out;
    out.recipe = recipe;
    out.family = family_of(recipe, knowledge);
    const Form form = form_of(recipe);
    const Makeup makeup = makeup_of(recipe, knowledge);
    const fitting::MixedDough mixed = fitting::mixed_dough(recipe, kitchen, knowledge);
    auto heats = fitting::oven_heats(reading, kitchen, out.family);
    const auto bake =
        fitting::bake_here(recipe, kitchen, form, mixed.mass, first_bake(recipe, heats));
    const Surroundings here{
        reading,
        kitchen,
        knowledge,
        out.family,
        form,
        fitting::cooling_of(
            recipe, out.family, form, makeup, knowledge, cool_room(kitchen), mixed.mass),
        std::move(heats),
        fitting::courses_of(recipe, kitchen, knowledge, out.family, mixed),
        bake};
    out.water = mixed.water;
    out.cut_after_minutes = here.cooling.cut;
    out.best_after_minutes = here.cooling.best;

    std::vector<StepHere> steps;
    for (const std::size_t index : order_of(recipe.steps)) {
        steps.push_back(fitting::step_here(here, index));
    }
    for (std::size_t index = 0; index < recipe.steps.size(); ++index) {
        out.dough_leaves_oven =
            out.dough_leaves_oven || fitting::leaves_the_oven(recipe, kitchen, index);
    }
    const auto yeast = fitting::yeast_in(recipe, knowledge);
    out.yeast = yeast;
    out.dough = mixed.mass;
    // Stated minutes stand in a room that nobody has described: as if it were a usual one.
    Kitchen usual = kitchen;
    if (kitchen.room.empty()) {
        usual.room = {RoomPeriod{ClockTime{}, fitting::usual_room}};
    }
    const auto usual_courses =
        kitchen.room.empty() ? fitting::courses_of(recipe, usual, knowledge, out.family, mixed)
                             : std::vector<std::optional<fitting::DoughCourse>>{};
    const OtherWays ways{yeast, mixed.mass, kitchen.room.empty() ? usual_courses : here.courses};
    for (const StepHere& step : steps) {
        out.steps.push_back(step.fitted);
    }
    const std::string leaven = leaven_of(recipe, knowledge);
    fitting::apply_learned(kitchen.factors, leaven, out.steps);
    for (FittedStep& step : out.steps) {
        add_rising(here, ways, step);
    }
    // Cooling first: it looks at the text's own steps only.
    add_cooling(here, out.steps);
    add_preheat(here, out.steps);
    add_oven_changes(here, out.steps);
    add_weighing(here, out.steps);

    out.notes = notes_of(here, steps, out.notes_about_waits);
    out.notes.insert(out.notes.begin() + static_cast<std::ptrdiff_t>(out.notes_about_waits),
                     recipe.changes.begin(),
                     recipe.changes.end());
    const bool bakes = std::any_of(out.steps.begin(), out.steps.end(), [](const FittedStep& step) {
        return step.kind == StepKind::bake;
    });
    if (auto words = fitting::unknown_size_words(recipe, form, mixed.mass); words && bakes) {
        out.notes.push_back(std::move(*words));
    }
    for (Phrase& note : fitting::learned_notes(out.steps)) {
        out.notes.insert(out.notes.begin() + static_cast<std::ptrdiff_t>(out.notes_about_waits++),
                         std::move(note));
    }
    if (out.dough_leaves_oven) {
        out.notes.push_back(
            phrase("Your warm spot is the oven: the dough comes out before it heats, and stands "
                   "the last {} in the kitchen.",
                   {fitting::duration_text(fitting::whole_minutes(kitchen.oven.heat_up))}));
    }
    if (mixed.water) {
        out.notes.push_back(fitting::water_words(*mixed.water));
    }
    if (yeast) {
        if (auto swap = fitting::yeast_swap_words(*yeast, kitchen)) {
            out.notes.push_back(std::move(*swap));
        }
    }
    out.questions = reading.questions;
    name_defaults(here, out.steps, out.questions);
    const bool wants_room = std::any_of(
        steps.begin(), steps.end(), [](const StepHere& step) { return step.wants_room; });
    if (wants_room && fitting::question_named(out.questions, "room-c") == nullptr) {
        out.questions.push_back(room_question(here, steps));
    }
    return out;
}

} // namespace loafwright
