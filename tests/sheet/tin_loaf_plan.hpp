// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/fit.hpp"
#include "engine/planning/plan.hpp"
#include "engine/provisions/gather.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace loafwright {

/// A bake on Saturday 28 November 2026 in UTC, made by hand for the tests of what comes after
/// planning.
struct BakeDay {
    Plan plan;
    FittedRecipe recipe;
    Provisions provisions;
    Day day;
};

/// 28 November 2026 at hour:minute; more than 24 hours lead into Sunday.
inline Instant at(int hour, int minute) {
    // 20785 days after 1970-01-01 is Saturday 28 November 2026.
    return Instant{std::int64_t{20785} * 86400 + std::int64_t{hour} * 3600 +
                   std::int64_t{minute} * 60};
}

inline Stage
stage_of(int number, std::string title, Attention attention, Instant start, Band<Instant> end) {
    Stage stage;
    stage.number = number;
    stage.bread = "Plain tin loaf";
    stage.title = std::move(title);
    stage.attention = attention;
    stage.start = start;
    stage.end = end;
    return stage;
}

inline Act act_of(Instant when, std::int64_t after, std::string text) {
    Act act;
    act.at = when;
    act.after_start_minutes = after;
    act.text = std::move(text);
    return act;
}

inline Reminder reminder_of(std::string text) {
    Reminder reminder;
    reminder.text = std::move(text);
    reminder.span = Span{1010, 1020}; // away from the cues of the fixture
    return reminder;
}

inline ToBuy bought(std::string item,
                    std::optional<Band<Grams>> grams,
                    std::string as_written = "",
                    bool optional = false) {
    ToBuy out;
    out.item = std::move(item);
    out.grams = grams;
    out.as_written = std::move(as_written);
    out.optional = optional;
    return out;
}

inline BakeDay tin_loaf_day() {
    BakeDay bake;
    bake.day.zone = Zone{};
    bake.day.now = at(12, 40);
    bake.day.eat_by = at(18, 30);

    Recipe& recipe = bake.recipe.recipe;
    recipe.title = "Plain tin loaf";
    for (const StepKind kind : {StepKind::mix,
                                StepKind::knead,
                                StepKind::rise,
                                StepKind::shape,
                                StepKind::prove,
                                StepKind::bake,
                                StepKind::cool}) {
        Step step;
        step.kind = kind;
        recipe.steps.push_back(step);
    }
    bake.recipe.notes = {phrase("Your kitchen is {}; “not too cold” in the recipe was read as "
                                "about {}: these waits take 25 "
                                "min longer in all.",
                                {Celsius(19.0), Celsius(22.0)})};
    bake.recipe.questions = {{"oven-c", "oven temperature", "How hot is a hot oven?", "220"}};

    Plan& plan = bake.plan;
    plan.proven = true;
    plan.start = at(13, 0);
    plan.out_of_oven = at(16, 25);
    plan.cut_from = at(17, 25);
    plan.best_from = at(18, 15);
    plan.eat = {at(18, 30), at(18, 30), at(18, 30)};
    plan.total_minutes = 265;
    plan.hands_on_minutes = 42;

    Stage mix =
        stage_of(1, "weigh, mix and knead", Attention::hands, at(13, 0), exactly(at(13, 30)));
    mix.cue = Cue{"until smooth and springy", Span{5, 30}};
    mix.reminders = {reminder_of("keep back a splash of water"),
                     reminder_of("slightly sticky is right")};
    mix.steps = {0, 1};
    Stage rise = stage_of(2,
                          "first rise, covered",
                          Attention::wait,
                          at(13, 30),
                          {at(14, 35), at(14, 50), at(15, 15)});
    rise.look_from = at(14, 35);
    rise.cue = Cue{"doubled", std::nullopt};
    rise.steps = {2};
    Stage shape = stage_of(
        3, "knock back, shape, into the tin", Attention::hands, at(14, 50), exactly(at(15, 0)));
    shape.reminders = {reminder_of("seam down")};
    shape.steps = {3};
    Stage prove = stage_of(
        4, "prove, covered", Attention::wait, at(15, 0), {at(15, 40), at(15, 50), at(16, 10)});
    prove.look_from = at(15, 40);
    prove.cue = Cue{"it domes 2.5 cm above the rim", Span{40, 60}};
    prove.acts = {act_of(at(15, 20), 20, "oven on, 230 °C (fan 210, gas 8)")};
    prove.acts.front().oven = Celsius(230.0);
    prove.steps = {4};
    Stage baking =
        stage_of(5, "bake", Attention::near, at(15, 50), {at(16, 20), at(16, 25), at(16, 30)});
    baking.cue = Cue{"when it sounds hollow", Span{70, 90}};
    baking.acts = {act_of(at(16, 0), 10, "oven down to 200 °C (fan 180, gas 6)")};
    baking.acts.front().oven = Celsius(200.0);
    baking.steps = {5};
    Stage cooling = stage_of(
        6, "out of the tin, on to the rack", Attention::wait, at(16, 25), exactly(at(17, 25)));
    cooling.steps = {6};
    const Stage eat = stage_of(7, "eat", Attention::none, at(18, 30), exactly(at(18, 30)));
    plan.stages = {mix, rise, shape, prove, baking, cooling, eat};
    plan.free = {{at(13, 30), at(14, 35)},
                 {at(15, 0), at(15, 20)},
                 {at(15, 20), at(15, 50)},
                 {at(16, 25), at(18, 30)}};

    Provisions& provisions = bake.provisions;
    provisions.buy = {
        bought("strong white flour", exactly(Grams(500.0))),
        bought("water", exactly(Grams(330.0))),
        bought("salt", exactly(Grams(10.0))),
        bought("instant yeast", Band<Grams>{Grams(6.0), Grams(6.9), Grams(8.0)}, "2 tsp"),
        bought("sesame seeds", std::nullopt, "a handful", true)};
    provisions.kit = {"wide bowl", "2 lb tin, well greased", "rack"};
    provisions.cautions = {
        {"raw-flour", "Flour is raw until it is baked.", "a food agency", std::nullopt},
        {"hot-tin", "The oven and the tin burn: dry gloves.", "practice", std::nullopt},
        {"seeds", "Seeds burn quickly: look in early.", "practice", std::nullopt},
        {"steam", "Steam burns: stand back from the door.", "practice", std::nullopt}};
    return bake;
}

} // namespace loafwright
