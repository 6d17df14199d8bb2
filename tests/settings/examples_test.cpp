// SPDX-License-Identifier: Apache-2.0
//
// The kitchens and days in examples/ are read without a complaint and say what the scenario needs.
#include "shell/settings/settings.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <string>

namespace loafwright::settings {
namespace {

std::string example(const std::string& name) {
    std::ifstream file(LOAFWRIGHT_ROOT "/examples/" + name);
    return std::string((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
}

Kitchen kitchen_of(const std::string& name) {
    const auto kitchen = kitchen_from_toml(example(name), name);
    EXPECT_TRUE(kitchen.has_value()) << (kitchen ? "" : one_line(kitchen.error().front()));
    return kitchen.value_or(Kitchen{});
}

// On a Thursday, so that the Saturday of the class lies ahead.
Day day_of(const std::string& name) {
    const Instant thursday = parse_rfc3339("2026-11-26T07:00:00Z").value();
    const auto day = day_from_toml(example(name), name, Zone{}, false, thursday);
    EXPECT_TRUE(day.has_value()) << (day ? "" : one_line(day.error().front()));
    return day.value_or(DayFile{}).day;
}

TEST(examples, the_hall_warms_up_through_the_morning_and_has_a_big_oven) {
    const Kitchen hall = kitchen_of("hall.toml");
    ASSERT_EQ(hall.room.size(), 4u);
    EXPECT_LT(hall.room[0].temperature, hall.room[2].temperature);
    EXPECT_GE(hall.oven.shelves, 4);
    EXPECT_EQ(hall.tins.size(), 2u);
}

TEST(examples, the_kitchen_at_home_is_at_nineteen_degrees_with_a_fan_oven) {
    const Kitchen home = kitchen_of("home.toml");
    ASSERT_EQ(home.room.size(), 1u);
    EXPECT_EQ(home.room[0].temperature, Celsius(19.0));
    EXPECT_TRUE(home.oven.fan);
    EXPECT_EQ(home.tins.size(), 1u);
}

TEST(examples, the_saturday_has_two_people_and_a_claim_on_the_oven) {
    const Day saturday = day_of("saturday.toml");
    EXPECT_EQ(saturday.people.size(), 2u);
    EXPECT_EQ(saturday.zone.name, "Europe/London");
    ASSERT_EQ(saturday.oven_claims.size(), 1u);
    EXPECT_EQ(rfc3339(saturday.zone, saturday.oven_claims[0].from), "2026-11-28T11:45:00+00:00");
}

TEST(examples, the_weekday_is_asleep_at_night_and_away_by_day_with_no_goal_of_its_own) {
    const Day weekday = day_of("weekday.toml");
    EXPECT_EQ(weekday.people.size(), 1u);
    ASSERT_GE(weekday.windows.size(), 2u);
    EXPECT_EQ(weekday.windows[0].state, Presence::away);
    EXPECT_EQ(weekday.windows[1].state, Presence::asleep);
    EXPECT_FALSE(weekday.start.has_value());
    EXPECT_FALSE(weekday.eat_by.has_value());
}

} // namespace
} // namespace loafwright::settings
