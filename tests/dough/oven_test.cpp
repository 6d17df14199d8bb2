// SPDX-License-Identifier: Apache-2.0
#include "engine/dough/oven.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loafwright::dough {
namespace {

// Household pages: an electric oven needs 10 to 15 minutes to about 175 °C, 15 to 20 to 200-230.
TEST(oven, a_usual_oven_heats_up_as_people_report) {
    const auto mild = heating_up(OvenModel{}, Celsius(20.0), Celsius(175.0));
    const auto hot = heating_up(OvenModel{}, Celsius(20.0), Celsius(230.0));
    ASSERT_TRUE(mild && hot);
    EXPECT_GT(mild->count(), 10.0);
    EXPECT_LT(mild->count(), 15.0);
    EXPECT_GT(hot->count(), 15.0);
    EXPECT_LT(hot->count(), 20.0);
}

TEST(oven, what_a_weak_heater_cannot_reach_has_no_time) {
    OvenModel weak;
    weak.power = Watts(800.0);
    EXPECT_FALSE(heating_up(weak, Celsius(20.0), Celsius(230.0)));
    EXPECT_FALSE(measured_oven(weak, Celsius(20.0), Celsius(230.0), Minutes(20.0)));
    EXPECT_EQ(heating_up(weak, Celsius(200.0), Celsius(180.0)), Minutes(0.0));
    EXPECT_EQ(cooling_down(weak, Celsius(180.0), Celsius(200.0)), Minutes(0.0));
    EXPECT_FALSE(cooling_down(weak, Celsius(180.0), Celsius(20.0)));
}

// By hand: time constant 9000 / 4 s = 37.5 min; 250 to 220 °C in a room of 20: 37.5 ln(230 / 200).
TEST(oven, falling_to_a_lower_temperature_follows_the_leak) {
    const auto minutes = cooling_down(OvenModel{}, Celsius(250.0), Celsius(220.0));
    ASSERT_TRUE(minutes);
    EXPECT_NEAR(minutes->count(), 37.5 * std::log(230.0 / 200.0), 1e-9);
}

TEST(oven, heavy_things_trail_behind_and_a_fan_helps) {
    EXPECT_NEAR(usual_lag(Heavy::stone, OvenAir::still).count(), 10.2, 0.1);
    EXPECT_NEAR(usual_lag(Heavy::stone, OvenAir::fan).count(), 6.4, 0.1);
    EXPECT_NEAR(usual_lag(Heavy::steel_plate, OvenAir::still).count(), 8.7, 0.1);
    EXPECT_NEAR(usual_lag(Heavy::lidded_pot, OvenAir::still).count(), 7.4, 0.1);
    EXPECT_NEAR(usual_lag(Heavy::lidded_pot, OvenAir::fan).count(), 4.6, 0.1);
    // Something light is hot with the oven.
    EXPECT_EQ(hot_through(Minutes(15.0), Minutes(0.5)), Minutes(15.0));
}

TEST(oven, an_oven_that_runs_hot_is_set_lower) {
    EXPECT_EQ(set_for(Celsius(220.0), CelsiusDifference(15.0)), Celsius(205.0));
    EXPECT_EQ(truly_at(Celsius(205.0), CelsiusDifference(15.0)), Celsius(220.0));
    // Common practice in the UK: 220 without a fan is 200 with one.
    EXPECT_EQ(with_fan(Celsius(220.0)), Celsius(200.0));
    EXPECT_EQ(without_fan(with_fan(Celsius(185.0))), Celsius(185.0));
}

RC_GTEST_PROP(oven, one_measured_time_comes_out_again, ()) {
    const Celsius from(15.0 + *rc::gen::inRange(0, 60));
    const Celsius to(160.0 + *rc::gen::inRange(0, 100));
    const Minutes measured(*rc::gen::inRange(3, 40));
    const auto oven = measured_oven(OvenModel{}, from, to, measured, Celsius(15.0));
    RC_ASSERT(oven.has_value());
    const auto again = heating_up(*oven, from, to, Celsius(15.0));
    RC_ASSERT(again.has_value());
    RC_ASSERT(std::abs(again->count() - measured.count()) < 1e-9);
    const auto further = heating_up(*oven, from, to + CelsiusDifference(5.0), Celsius(15.0));
    RC_ASSERT(further.has_value() && *further > *again);
}

RC_GTEST_PROP(oven, a_longer_climb_or_lag_is_never_hot_sooner, ()) {
    const Minutes climb(*rc::gen::inRange(1, 40));
    const Minutes lag(*rc::gen::inRange(1, 40));
    RC_ASSERT(hot_through(climb, lag) >= climb);
    RC_ASSERT(hot_through(climb + Minutes(1.0), lag) >= hot_through(climb, lag));
    RC_ASSERT(hot_through(climb, lag + Minutes(1.0)) >= hot_through(climb, lag));
}

} // namespace
} // namespace loafwright::dough
