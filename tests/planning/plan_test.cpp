// SPDX-License-Identifier: Apache-2.0
#include "tests/planning/breads.hpp"

#include <gtest/gtest.h>

namespace loafwright::planning {

namespace {

std::vector<std::string> lines(const Day& day, const Plan& plan) {
    std::vector<std::string> out;
    for (const Stage& stage : plan.stages) {
        out.push_back(clock(day, stage.start) + " " + stage.title);
        for (const Act& act : stage.acts) {
            out.push_back("  " + clock(day, act.at) + " " + act.text);
        }
    }
    return out;
}

} // namespace

TEST(plan, a_tin_loaf_begun_at_one_reads_like_a_page) {
    Day day = day_at("2026-11-28T10:00:00Z");
    day.start = at("2026-11-28T13:00:00Z");
    const FittedRecipe recipe = tin_loaf();
    const PlanOutcome outcome = plan(recipe, Kitchen{}, day);
    const Plan& found = plan_in(outcome);
    EXPECT_EQ(lines(day, found),
              (std::vector<std::string>{"13:00 Weigh, mix and knead",
                                        "13:30 First rise, covered",
                                        "14:50 Knock back, shape, into the tin",
                                        "15:00 Prove, covered",
                                        "  15:20 oven on, 230 °C (fan 210, gas 8)",
                                        "15:50 Bake",
                                        "  16:00 oven down to 200 °C (fan 180, gas 6)",
                                        "16:25 Out of the tin, on to the rack",
                                        "17:25 Eat"}));
    EXPECT_TRUE(broken_promises(recipe, day, found).empty())
        << broken_promises(recipe, day, found).front();
    EXPECT_EQ(clock(day, found.out_of_oven), "16:25");
    EXPECT_EQ(clock(day, found.cut_from), "17:25");
    EXPECT_EQ(clock(day, found.best_from), "18:15");
    EXPECT_EQ(found.total_minutes, 265);
    EXPECT_EQ(found.hands_on_minutes, 40);
    EXPECT_TRUE(found.proven);
    EXPECT_TRUE(found.warnings.empty());
    const Stage& rise = found.stages[1];
    EXPECT_EQ(clock(day, *rise.look_from), "14:35");
    EXPECT_EQ(clock(day, rise.end.likely), "14:50");
    EXPECT_EQ(clock(day, rise.end.high), "15:15");
    EXPECT_EQ(rise.cue->text, "doubled");
    EXPECT_EQ(found.stages[3].reminders.front().text, "cover again");
    ASSERT_EQ(found.free.size(), 3U);
    EXPECT_EQ(clock(day, found.free[0].from) + "-" + clock(day, found.free[0].to), "13:30-14:35");
    EXPECT_EQ(clock(day, found.free[1].from) + "-" + clock(day, found.free[1].to), "15:00-15:20");
}

TEST(plan, eat_by_begins_as_late_as_four_bakes_in_five_allow) {
    Day day = day_at("2026-11-28T10:00:00Z");
    day.eat_by = at("2026-11-28T18:30:00Z");
    const FittedRecipe recipe = tin_loaf();
    const PlanOutcome outcome = plan(recipe, Kitchen{}, day);
    const Plan& found = plan_in(outcome);
    EXPECT_TRUE(broken_promises(recipe, day, found).empty())
        << broken_promises(recipe, day, found).front();
    // At its best when eaten, by the likely times, and no later than that asks for.
    EXPECT_LE(found.best_from, *day.eat_by);
    EXPECT_GT(later_by_minutes(found.best_from, 5), *day.eat_by);
    EXPECT_EQ(found.eat.likely, *day.eat_by);
    EXPECT_EQ(found.stages.back().start, *day.eat_by);
}

TEST(plan, cooling_beyond_the_first_hour_gives_way_before_the_margin_does) {
    Day day = day_at("2026-11-28T10:00:00Z");
    const FittedRecipe recipe = tin_loaf();
    day.eat_by = at("2026-11-28T15:05:00Z");
    const Plan found = plan_in(plan(recipe, Kitchen{}, day));
    EXPECT_GT(found.best_from, *day.eat_by); // five hours do not reach to its best
    EXPECT_EQ(found.start, at("2026-11-28T10:00:00Z"));
    // The margin is what decides whether it can be: five minutes less is no.
    Instant by = *day.eat_by;
    while (std::holds_alternative<Plan>(plan(recipe, Kitchen{}, day))) {
        by = *day.eat_by;
        day.eat_by = later_by_minutes(by, -5);
    }
    day.eat_by = by;
    const Plan last = plan_in(plan(recipe, Kitchen{}, day));
    EXPECT_GE(minutes_between(last.cut_from, by), 25);
    EXPECT_LE(minutes_between(last.cut_from, by), 45);
}

TEST(plan, with_no_wish_it_begins_at_the_next_full_five_minutes) {
    const Day day = day_at("2026-11-28T10:01:20Z");
    EXPECT_EQ(plan_in(plan(tin_loaf(), Kitchen{}, day)).start, at("2026-11-28T10:05:00Z"));
    const Day full = day_at("2026-11-28T10:05:00Z");
    EXPECT_EQ(plan_in(plan(tin_loaf(), Kitchen{}, full)).start, full.now);
}

TEST(plan, an_exact_start_is_kept) {
    Day day = day_at("2026-11-28T10:00:30Z");
    day.start = at("2026-11-28T10:02:00Z");
    EXPECT_EQ(plan_in(plan(tin_loaf(), Kitchen{}, day)).start, *day.start);
    day.start = at("2026-11-28T10:00:00Z"); // the minute that is running
    EXPECT_EQ(plan_in(plan(tin_loaf(), Kitchen{}, day)).start, *day.start);
}

TEST(plan, the_oven_is_hot_at_the_early_end_of_the_prove) {
    Day day = day_at("2026-11-28T10:00:00Z");
    for (const std::int64_t heat : {10, 20, 40, 60, 90}) {
        FittedRecipe recipe = tin_loaf();
        for (FittedStep& step : recipe.steps) {
            if (step.heat_up_minutes) {
                step.heat_up_minutes = heat;
            }
        }
        const Plan found = plan_in(plan(recipe, Kitchen{}, day));
        EXPECT_TRUE(broken_promises(recipe, day, found).empty());
        const Instant early_end = *found.stages[3].look_from;
        int switched = 0;
        for (const Stage& stage : found.stages) {
            for (const Act& act : stage.acts) {
                if (act.text.rfind("oven on", 0) == 0) {
                    ++switched;
                    EXPECT_EQ(later_by_minutes(act.at, heat), early_end) << heat;
                }
            }
        }
        EXPECT_EQ(switched, 1) << heat;
    }
}

TEST(plan, a_bread_sooner_shaped_than_the_oven_is_hot_heats_it_first) {
    Day day = day_at("2026-11-28T10:00:00Z");
    const FittedRecipe recipe = soda_bread();
    const Plan found = plan_in(plan(recipe, Kitchen{}, day));
    EXPECT_EQ(lines(day, found),
              (std::vector<std::string>{"10:00 Heat the oven",
                                        "  10:00 oven on, 220 °C (fan 200, gas 7)",
                                        "10:10 Mix, shape, on to the tray",
                                        "10:20 Bake",
                                        "10:53 Out of the oven, on to the rack",
                                        "11:13 Eat"}));
    EXPECT_TRUE(broken_promises(recipe, day, found).empty())
        << broken_promises(recipe, day, found).front();
}

TEST(plan, a_bread_without_a_bake_ends_with_its_last_step) {
    BreadMaker maker("Pizza dough");
    maker.step(StepKind::mix, {5, 10, 15}, "Mix");
    maker.step(StepKind::rise, {60, 90, 120}, "Leave to rise");
    maker.step(StepKind::divide, {3, 5, 8}, "Divide in four");
    const FittedRecipe recipe = maker.bread({0, 0, 0}, {0, 0, 0});
    const Day day = day_at("2026-11-28T10:00:00Z");
    const Plan found = plan_in(plan(recipe, Kitchen{}, day));
    EXPECT_EQ(found.stages.back().title, "Divide");
    EXPECT_EQ(clock(day, found.out_of_oven), "11:45");
    EXPECT_EQ(found.cut_from, found.out_of_oven);
    EXPECT_TRUE(broken_promises(recipe, day, found).empty());
}

TEST(plan, a_flatbread_cooked_on_the_hob_is_eaten_hot) {
    BreadMaker maker("Flatbread");
    maker.step(StepKind::mix, {5, 10, 15}, "Mix");
    maker.step(StepKind::rest, {20, 30, 40}, "Rest, covered");
    maker.step(StepKind::divide, {3, 5, 8}, "Divide in eight");
    BreadMaker::More hob;
    hob.place = Place::hob;
    maker.step(StepKind::cook, {15, 20, 30}, "Fry on both sides", hob);
    maker.step(StepKind::serve, exactly<std::int64_t>(0), "Eat at once");
    const FittedRecipe recipe = maker.bread({0, 0, 0}, {0, 0, 0});
    const Day day = day_at("2026-11-28T10:00:00Z");
    const Plan found = plan_in(plan(recipe, Kitchen{}, day));
    EXPECT_EQ(lines(day, found),
              (std::vector<std::string>{
                  "10:00 Mix", "10:10 Rest, covered", "10:40 Divide", "10:45 Fry", "11:05 Eat"}));
    EXPECT_EQ(clock(day, found.out_of_oven), "11:05");
}

TEST(plan, the_oven_takes_its_time_between_two_heats_of_one_bread) {
    const auto made = [](std::int64_t filling, std::int64_t change) {
        BreadMaker maker("Twice baked");
        maker.step(StepKind::mix, {5, 10, 15}, "Mix");
        maker.step(StepKind::rise, exactly<std::int64_t>(60), "Leave to rise");
        BreadMaker::More hot;
        hot.oven = 220.0;
        hot.heat_up = 20;
        maker.step(StepKind::bake, exactly<std::int64_t>(20), "Bake", hot);
        maker.step(StepKind::finish, exactly(filling), "Split and fill them");
        BreadMaker::More cool;
        cool.oven = 150.0;
        const std::size_t again =
            maker.step(StepKind::bake, exactly<std::int64_t>(20), "Bake again", cool);
        FittedRecipe recipe = maker.bread({10, 10, 10}, {10, 10, 10});
        recipe.steps[again].oven_change_minutes = change;
        return recipe;
    };
    const Day day = day_at("2026-11-28T10:00:00Z");
    const auto total = [&](std::int64_t filling, std::int64_t change) {
        const FittedRecipe recipe = made(filling, change);
        const Plan found = plan_in(plan(recipe, Kitchen{}, day));
        EXPECT_TRUE(broken_promises(recipe, day, found).empty())
            << broken_promises(recipe, day, found).front();
        int turned = 0;
        for (const Stage& stage : found.stages) {
            for (const Act& act : stage.acts) {
                turned += act.text == "oven down to 150 °C (fan 130, gas 2)" ? 1 : 0;
            }
        }
        EXPECT_EQ(turned, 1) << filling << " and " << change;
        return found.total_minutes;
    };
    // 10 + 60 + 20 + filling or change + 20 + 10
    EXPECT_EQ(total(15, 25), 145);
    EXPECT_EQ(total(30, 25), 150);
    EXPECT_EQ(total(5, 25), 125) << "a moment at the open door changes nothing";
}

TEST(plan, a_second_bake_hours_after_the_first_has_its_oven_switched_on_again) {
    BreadMaker maker("Twice baked");
    maker.step(StepKind::mix, {5, 10, 15}, "Mix");
    maker.step(StepKind::rise, {60, 60, 60}, "Leave to rise");
    BreadMaker::More hot;
    hot.oven = 200.0;
    hot.heat_up = 20;
    maker.step(StepKind::bake, {30, 30, 30}, "Bake", hot);
    maker.step(StepKind::rest, {110, 120, 130}, "Leave until cold, then slice");
    hot.heat_up.reset();
    hot.oven = 150.0;
    maker.step(StepKind::bake, {20, 20, 20}, "Bake again until dry", hot);
    const FittedRecipe recipe = maker.bread({10, 10, 10}, {10, 10, 10});
    const Day day = day_at("2026-11-28T10:00:00Z");
    const Plan found = plan_in(plan(recipe, Kitchen{}, day));
    EXPECT_EQ(lines(day, found),
              (std::vector<std::string>{"10:00 Mix",
                                        "10:10 Rise",
                                        "  10:50 oven on, 200 °C (fan 180, gas 6)",
                                        "11:10 Bake",
                                        "11:40 Rest",
                                        "  13:10 oven on, 150 °C (fan 130, gas 2)",
                                        "13:40 Bake",
                                        "14:00 Out of the oven, on to the rack",
                                        "14:10 Eat"}));
}

TEST(plan, odd_values_are_planned_or_refused_and_never_crash) {
    const Day day = day_at("2026-11-28T10:00:00Z");
    FittedRecipe odd = tin_loaf();
    odd.steps[1].minutes = {50, 3, -7};
    odd.steps[3].minutes = {0, 0, 0};
    odd.steps[4].step = 999;
    odd.recipe.steps[5].during = 5;
    EXPECT_TRUE(std::holds_alternative<Plan>(plan(odd, Kitchen{}, day)));
    FittedRecipe endless = tin_loaf();
    endless.steps[3].minutes = {INT64_MAX / 2, INT64_MAX / 2, INT64_MAX};
    EXPECT_TRUE(std::holds_alternative<Impossible>(plan(endless, Kitchen{}, day)));
    EXPECT_TRUE(std::holds_alternative<Impossible>(plan(FittedRecipe{}, Kitchen{}, day)));
    BreadMaker many("Many");
    for (int i = 0; i < 4000; ++i) {
        many.step(i % 2 == 0 ? StepKind::knead : StepKind::rest, {1, 2, 3}, "again");
    }
    const PlanOutcome outcome = plan(many.bread({60, 60, 60}, {60, 60, 60}), Kitchen{}, day);
    EXPECT_LE(plan_in(outcome).stages.size(), 9U);
}

TEST(plan, the_same_input_gives_the_same_plan) {
    Day day = day_with_sleep("2026-11-28T10:00:00Z", {23, 0}, {7, 0});
    day.eat_by = at("2026-11-30T12:00:00Z");
    const FittedRecipe recipe = long_sourdough();
    const Plan a = plan_in(plan(recipe, Kitchen{}, day));
    const Plan b = plan_in(plan(recipe, Kitchen{}, day));
    EXPECT_EQ(lines(day, a), lines(day, b));
    EXPECT_TRUE(broken_promises(recipe, day, a).empty()) << broken_promises(recipe, day, a).front();
}

} // namespace loafwright::planning
