// SPDX-License-Identifier: Apache-2.0
//
// Nights in which the clocks change. London 2026: forward on 29 March at 01:00 UTC, back on 25
// October at 01:00 UTC (tz database).
#include "tests/planning/breads.hpp"

#include <gtest/gtest.h>

namespace loafwright::planning {

namespace {

Zone london() {
    Zone zone;
    zone.name = "Europe/London";
    zone.first_offset_seconds = 0;
    zone.changes = {{at("2026-03-29T01:00:00Z"), 3600}, {at("2026-10-25T01:00:00Z"), 0}};
    return zone;
}

Plan overnight(const std::string& now, const std::string& start) {
    Day day = day_at(now);
    day.zone = london();
    day.start = at(start);
    const FittedRecipe recipe = overnight_loaf();
    Plan found = plan_in(plan(recipe, Kitchen{}, day));
    EXPECT_TRUE(broken_promises(recipe, day, found).empty());
    return found;
}

} // namespace

TEST(clock, in_autumn_the_clock_gives_an_hour_and_the_dough_takes_it) {
    // Shaped at 22:30 summer time; eight hours later it is 05:30 by the clock, so the fridge keeps
    // it an hour longer.
    const Plan found = overnight("2026-10-24T19:00:00+01:00", "2026-10-24T20:10:00+01:00");
    const Stage& night = found.stages[3];
    EXPECT_EQ(clock_text(london(), night.start), "22:10");
    const Stage& bake = found.stages[4];
    EXPECT_EQ(clock_text(london(), bake.start), "06:50"); // up at 06:30, twenty minutes of heating
    EXPECT_EQ(minutes_between(night.start, bake.start), 9 * 60 + 40);
    EXPECT_TRUE(found.warnings.empty());
}

TEST(clock, in_spring_the_clock_takes_an_hour_and_the_dough_still_has_its_eight) {
    const Plan found = overnight("2026-03-28T19:00:00Z", "2026-03-28T20:10:00Z");
    const Stage& night = found.stages[3];
    const Stage& bake = found.stages[4];
    EXPECT_EQ(clock_text(london(), night.start), "22:10");
    EXPECT_GE(minutes_between(night.start, bake.start), 480);
    EXPECT_EQ(minutes_between(night.start, bake.start),
              480); // 07:10 summer time, past 06:50 already
    EXPECT_EQ(clock_text(london(), bake.start), "07:10");
}

TEST(clock, lengths_are_true_in_either_night_when_the_day_runs_through_the_change) {
    for (const char* start :
         {"2026-03-28T23:00:00Z", "2026-10-24T23:00:00Z", "2026-07-01T23:00:00Z"}) {
        Day day = day_at(start);
        day.zone = london();
        day.start = at(start);
        const FittedRecipe recipe = tin_loaf();
        const Plan found = plan_in(plan(recipe, Kitchen{}, day));
        EXPECT_EQ(minutes_between(found.start, found.out_of_oven), 205);
        EXPECT_EQ(found.warnings.size(), 1U);
    }
}

TEST(clock, eat_by_on_the_morning_after_the_change_holds) {
    for (const char* by : {"2026-10-25T10:30:00Z", "2026-03-29T09:30:00Z"}) {
        Day day = day_at(by);
        day.zone = london();
        day.eat_by = at(by);
        day.now = later_by_minutes(*day.eat_by, -24 * 60);
        const FittedRecipe recipe = overnight_loaf();
        const Plan found = plan_in(plan(recipe, Kitchen{}, day));
        EXPECT_TRUE(broken_promises(recipe, day, found).empty());
        EXPECT_TRUE(found.warnings.empty()) << found.warnings.front().what;
        EXPECT_GE(minutes_between(found.stages[3].start, found.stages[4].start), 480);
        EXPECT_EQ(clock_text(day.zone, found.stages.back().start), "10:30");
    }
}

} // namespace loafwright::planning
