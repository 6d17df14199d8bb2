// SPDX-License-Identifier: Apache-2.0
//
// People, ovens and nights.
#include "engine/planning/attempt.hpp"
#include "engine/schedule/check.hpp"
#include "tests/planning/breads.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace loafwright::planning {

TEST(day, work_at_night_without_a_day_file_is_warned_of_and_not_forbidden) {
    Day day = day_at("2026-11-28T20:00:00Z");
    day.start = at("2026-11-28T21:00:00Z");
    const Plan found = plan_in(plan(tin_loaf(), Kitchen{}, day));
    ASSERT_EQ(found.warnings.size(), 1U);
    EXPECT_EQ(found.warnings[0].code, "at_night");
    EXPECT_NE(found.warnings[0].what.find("Knock back"), std::string::npos)
        << found.warnings[0].what;
    EXPECT_NE(found.warnings[0].what.find("22:50"), std::string::npos) << found.warnings[0].what;
}

// An hour out of the house says nothing of anybody's sleep.
TEST(day, an_hour_away_and_a_taken_oven_count_and_leave_the_night_alone) {
    Day day = day_at("2026-11-28T14:00:00Z");
    day.eat_by = at("2026-11-29T09:00:00Z");
    const Plan at_will = plan_in(plan(tin_loaf(), Kitchen{}, day));
    EXPECT_TRUE(at_will.warnings.empty());
    const Stage& bake = at_will.stages[4];
    ASSERT_EQ(bake.attention, Attention::near);
    day.windows.push_back(
        {0, Presence::away, at("2026-11-28T15:00:00Z"), at("2026-11-28T16:00:00Z")});
    day.oven_claims.push_back(
        {later_by_minutes(bake.start, -30), later_by_minutes(bake.start, 10), std::nullopt});
    const FittedRecipe recipe = tin_loaf();
    const Plan around = plan_in(plan(recipe, Kitchen{}, day));
    EXPECT_TRUE(around.warnings.empty());
    EXPECT_TRUE(broken_promises(recipe, day, around).empty())
        << broken_promises(recipe, day, around).front();
    EXPECT_NE(around.stages[4].start, bake.start);
}

TEST(day, the_same_start_before_a_described_night_is_refused_with_the_reason) {
    Day day = day_with_sleep("2026-11-28T20:00:00Z", {22, 30}, {6, 30});
    day.start = at("2026-11-28T21:00:00Z");
    const PlanOutcome outcome = plan(tin_loaf(), Kitchen{}, day);
    ASSERT_TRUE(std::holds_alternative<Impossible>(outcome));
    const Impossible& no = std::get<Impossible>(outcome);
    EXPECT_NE(no.why.find("You can't begin this at 21:00"), std::string::npos) << no.why;
    EXPECT_NE(no.why.find("22:50"), std::string::npos) << no.why;
    EXPECT_NE(no.why.find("you are asleep (22:30 to 06:30)"), std::string::npos) << no.why;
}

TEST(day, a_night_in_the_fridge_lasts_until_somebody_is_up) {
    Day day = day_with_sleep("2026-11-28T16:00:00Z", {22, 30}, {7, 0});
    day.start = at("2026-11-28T18:00:00Z");
    const FittedRecipe recipe = overnight_loaf();
    const Plan found = plan_in(plan(recipe, Kitchen{}, day));
    EXPECT_TRUE(broken_promises(recipe, day, found).empty())
        << broken_promises(recipe, day, found).front();
    EXPECT_EQ(found.stages[3].title, "Night in the fridge");
    EXPECT_GE(found.stages[4].start, at("2026-11-29T07:20:00Z")); // up at seven, then the oven
    EXPECT_LE(found.stages[4].start, at("2026-11-29T07:25:00Z"));
}

TEST(day, without_a_day_file_a_stretch_is_chosen_so_that_nobody_works_at_night) {
    Day day = day_at("2026-11-28T16:00:00Z");
    day.start = at("2026-11-28T18:00:00Z");
    const Plan found = plan_in(plan(overnight_loaf(), Kitchen{}, day));
    EXPECT_TRUE(found.warnings.empty());
    EXPECT_GE(found.stages[4].start, at("2026-11-29T06:30:00Z"));
}

TEST(day, eat_by_finds_the_evening_before_when_the_morning_is_too_short) {
    Day day = day_with_sleep("2026-11-28T09:00:00Z", {22, 30}, {7, 0});
    day.eat_by = at("2026-11-29T10:30:00Z");
    const FittedRecipe recipe = overnight_loaf();
    const Plan found = plan_in(plan(recipe, Kitchen{}, day));
    EXPECT_TRUE(broken_promises(recipe, day, found).empty())
        << broken_promises(recipe, day, found).front();
    EXPECT_LT(found.start, at("2026-11-28T22:00:00Z"));
    EXPECT_GT(found.out_of_oven, at("2026-11-29T07:00:00Z"));
}

TEST(day, the_other_one_puts_it_in_the_oven) {
    Day day = day_with_sleep("2026-11-28T09:00:00Z", {23, 0}, {7, 0});
    day.people = {"Ada", "Ben"};
    day.windows.push_back(
        {0, Presence::away, at("2026-11-28T15:00:00Z"), at("2026-11-28T20:00:00Z")});
    day.start = at("2026-11-28T13:00:00Z");
    const FittedRecipe recipe = tin_loaf();
    EXPECT_TRUE(std::holds_alternative<Plan>(plan(recipe, Kitchen{}, day)));
    day.windows.push_back(
        {1, Presence::away, at("2026-11-28T16:00:00Z"), at("2026-11-28T16:30:00Z")});
    const PlanOutcome outcome = plan(recipe, Kitchen{}, day);
    ASSERT_TRUE(std::holds_alternative<Impossible>(outcome));
    EXPECT_NE(std::get<Impossible>(outcome).why.find(
                  "the oven would be hot at 16:00 with nobody awake at home"),
              std::string::npos)
        << std::get<Impossible>(outcome).why;
}

TEST(day, busy_people_still_watch_the_oven) {
    Day day = day_with_sleep("2026-11-28T09:00:00Z", {23, 0}, {7, 0});
    day.start = at("2026-11-28T13:00:00Z");
    day.windows.push_back(
        {0, Presence::busy, at("2026-11-28T15:10:00Z"), at("2026-11-28T17:00:00Z")});
    EXPECT_TRUE(std::holds_alternative<Plan>(plan(tin_loaf(), Kitchen{}, day)));
}

TEST(day, somebody_elses_roast_moves_the_bread) {
    Day day = day_with_sleep("2026-11-28T09:00:00Z", {23, 0}, {7, 0});
    day.eat_by = at("2026-11-28T19:00:00Z");
    const FittedRecipe recipe = tin_loaf();
    const Plan before = plan_in(plan(recipe, Kitchen{}, day));
    day.oven_claims.push_back(
        {at("2026-11-28T16:00:00Z"), at("2026-11-28T18:00:00Z"), Celsius(180.0)});
    const Plan after = plan_in(plan(recipe, Kitchen{}, day));
    EXPECT_LT(after.out_of_oven, before.out_of_oven);
    EXPECT_LE(after.out_of_oven, at("2026-11-28T16:00:00Z"));
    EXPECT_TRUE(broken_promises(recipe, day, after).empty());
    day.eat_by.reset();
    day.start = at("2026-11-28T13:00:00Z");
    const PlanOutcome outcome = plan(recipe, Kitchen{}, day);
    ASSERT_TRUE(std::holds_alternative<Impossible>(outcome));
    EXPECT_NE(std::get<Impossible>(outcome).why.find("the oven is taken from 16:00 to 18:00"),
              std::string::npos);
}

TEST(day, folds_are_work_and_keep_out_of_windows) {
    BreadMaker maker("Folded");
    maker.step(StepKind::mix, {5, 10, 15}, "Mix");
    BreadMaker::More patient;
    patient.holds = 30;
    const std::size_t rise = maker.step(StepKind::rise, {170, 180, 200}, "Leave to rise", patient);
    BreadMaker::More folds;
    folds.during = rise;
    folds.repeat = 30.0;
    maker.step(StepKind::fold, {2, 3, 5}, "Fold every half hour, four times", folds);
    maker.step(StepKind::shape, {3, 5, 8}, "Shape");
    BreadMaker::More hot;
    hot.oven = 220.0;
    hot.heat_up = 20;
    maker.step(StepKind::bake, {30, 35, 40}, "Bake", hot);
    const FittedRecipe recipe = maker.bread({60, 60, 60}, {60, 90, 120});
    Day day = day_with_sleep("2026-11-28T09:00:00Z", {23, 0}, {7, 0});
    day.start = at("2026-11-28T10:00:00Z");
    const Plan found = plan_in(plan(recipe, Kitchen{}, day));
    ASSERT_EQ(found.stages.size(), 6U);
    ASSERT_GE(found.stages[1].acts.size(), 4U);
    EXPECT_EQ(clock(day, found.stages[1].acts[0].at), "10:40");
    EXPECT_EQ(found.stages[1].acts[3].text, "fold");
    EXPECT_EQ(clock(day, found.stages[1].acts[3].at), "12:10");
    EXPECT_TRUE(broken_promises(recipe, day, found).empty())
        << broken_promises(recipe, day, found).front();
    day.windows.push_back(
        {0, Presence::away, at("2026-11-28T11:00:00Z"), at("2026-11-28T12:00:00Z")});
    EXPECT_TRUE(std::holds_alternative<Impossible>(plan(recipe, Kitchen{}, day)));
}

TEST(day, the_problem_behind_a_plan_is_kept_by_it_minute_by_minute) {
    Day day = day_with_sleep("2026-11-28T09:00:00Z", {22, 30}, {7, 0});
    day.eat_by = at("2026-11-30T11:00:00Z");
    const FittedRecipe recipe = long_sourdough();
    const Bread bread = bread_of(recipe);
    Target target;
    target.aim = schedule::Aim::begin_late;
    target.start_from = day.now;
    target.ready_by = day.eat_by;
    const auto placed = place(bread.chain, day, Rules{}, target);
    ASSERT_TRUE(placed.has_value());
    const schedule::Problem problem = problem_of(bread.chain, day, Rules{}, target, placed->frame);
    ASSERT_TRUE(schedule::faults_in(problem).empty());
    schedule::JobSchedule job{0, placed->starts, placed->ends, {}};
    for (const schedule::Task& task : problem.jobs[0].tasks) {
        job.people.push_back(task.kind == schedule::TaskKind::hands ? std::optional<std::size_t>(0)
                                                                    : std::nullopt);
    }
    EXPECT_TRUE(schedule::violations(problem, {{job}}).empty());
}

RC_GTEST_PROP(day, one_more_window_never_brings_the_meal_forward, ()) {
    Day day = day_with_sleep("2026-11-28T09:00:00Z", {22, 30}, {6, 30});
    const FittedRecipe recipe = *rc::gen::arbitrary<bool>() ? tin_loaf() : overnight_loaf();
    day.start = later_by_minutes(day.now, 5 * *rc::gen::inRange<std::int64_t>(0, 150));
    const auto window = [] {
        const Instant from =
            later_by_minutes(at("2026-11-28T09:00:00Z"), *rc::gen::inRange<std::int64_t>(0, 1600));
        return PresenceWindow{0,
                              *rc::gen::element(Presence::away, Presence::busy, Presence::asleep),
                              from,
                              later_by_minutes(from, *rc::gen::inRange<std::int64_t>(1, 120))};
    };
    for (int n = *rc::gen::inRange(0, 3); n > 0; --n) {
        day.windows.push_back(window());
    }
    const PlanOutcome before = plan(recipe, Kitchen{}, day);
    Day more = day;
    more.windows.push_back(window());
    const PlanOutcome after = plan(recipe, Kitchen{}, more);
    RC_CLASSIFY(std::holds_alternative<Plan>(after), "possible with both");
    if (std::holds_alternative<Plan>(before)) {
        RC_ASSERT(broken_promises(recipe, day, std::get<Plan>(before)) ==
                  std::vector<std::string>());
    }
    if (std::holds_alternative<Plan>(after)) {
        RC_ASSERT(std::holds_alternative<Plan>(before));
        RC_ASSERT(std::get<Plan>(before).eat.likely <= std::get<Plan>(after).eat.likely);
        RC_ASSERT(broken_promises(recipe, more, std::get<Plan>(after)).empty());
    }
}

RC_GTEST_PROP(day, what_can_be_eaten_by_a_time_can_be_with_a_window_less, ()) {
    Day day = day_with_sleep("2026-11-28T09:00:00Z", {22, 30}, {6, 30});
    const FittedRecipe recipe = *rc::gen::arbitrary<bool>() ? tin_loaf() : overnight_loaf();
    day.eat_by = later_by_minutes(day.now, 5 * *rc::gen::inRange<std::int64_t>(40, 400));
    const Instant from = later_by_minutes(day.now, *rc::gen::inRange<std::int64_t>(0, 1600));
    Day more = day;
    more.windows.push_back(
        {0, Presence::away, from, later_by_minutes(from, *rc::gen::inRange<std::int64_t>(1, 300))});
    const PlanOutcome with = plan(recipe, Kitchen{}, more);
    if (std::holds_alternative<Plan>(with)) {
        RC_ASSERT(broken_promises(recipe, more, std::get<Plan>(with)).empty());
        RC_ASSERT(std::holds_alternative<Plan>(plan(recipe, Kitchen{}, day)));
    }
}

} // namespace loafwright::planning
