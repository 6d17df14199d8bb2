// SPDX-License-Identifier: Apache-2.0
//
// Properties of the conversions. Their figures are compared with sources outside the project in
// tests/published.
#include "engine/quantity/conversion.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loafwright {
namespace {

RC_GTEST_PROP(conversion, fahrenheit_there_and_back_is_the_same_temperature, (int tenths)) {
    const Celsius celsius(tenths % 10000 / 10.0);
    const Celsius back = celsius_from_fahrenheit(fahrenheit_from_celsius(celsius));
    RC_ASSERT(std::abs(back.degrees() - celsius.degrees()) < 1e-9);
}

TEST(conversion, every_gas_mark_is_the_nearest_to_its_own_temperature) {
    for (const double mark : {0.25, 0.5, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0}) {
        const auto celsius = celsius_from_gas_mark(mark);
        ASSERT_TRUE(celsius.has_value()) << mark;
        EXPECT_EQ(gas_mark_from_celsius(*celsius), mark);
    }
}

TEST(conversion, marks_that_the_scale_does_not_have_have_no_temperature) {
    for (const double mark : {0.0, 0.75, 1.5, 11.0, -1.0, std::nan("")}) {
        EXPECT_FALSE(celsius_from_gas_mark(mark).has_value()) << mark;
    }
}

TEST(conversion, the_usual_oven_temperatures_print_as_the_usual_marks) {
    EXPECT_EQ(gas_mark_text(gas_mark_from_celsius(Celsius(230.0))), "8");
    EXPECT_EQ(gas_mark_text(gas_mark_from_celsius(Celsius(200.0))), "6");
    EXPECT_EQ(gas_mark_text(gas_mark_from_celsius(Celsius(180.0))), "4");
    EXPECT_EQ(gas_mark_text(gas_mark_from_celsius(Celsius(120.0))), "1/2");
    EXPECT_EQ(gas_mark_text(gas_mark_from_celsius(Celsius(20.0))), "1/4");
    EXPECT_EQ(gas_mark_text(gas_mark_from_celsius(Celsius(400.0))), "10");
}

TEST(conversion, minutes_round_to_the_nearest_step_halves_up) {
    EXPECT_EQ(rounded_to(Minutes(62.4), 5.0), Minutes(60.0));
    EXPECT_EQ(rounded_to(Minutes(62.5), 5.0), Minutes(65.0));
    EXPECT_EQ(rounded_to(Minutes(60.0), 5.0), Minutes(60.0));
    EXPECT_EQ(rounded_to(Minutes(0.4), 1.0), Minutes(0.0));
}

TEST(conversion, minutes_rounded_up_never_fall_below) {
    EXPECT_EQ(rounded_up_to(Minutes(60.1), 5.0), Minutes(65.0));
    EXPECT_EQ(rounded_up_to(Minutes(60.0), 5.0), Minutes(60.0));
    EXPECT_EQ(rounded_up_to(Minutes(0.0), 5.0), Minutes(0.0));
}

RC_GTEST_PROP(conversion, rounding_stays_within_one_step, (unsigned hundredths)) {
    const Minutes minutes((hundredths % 1000000u) / 100.0);
    const Minutes nearest = rounded_to(minutes, 5.0);
    const Minutes above = rounded_up_to(minutes, 5.0);
    RC_ASSERT(std::abs(nearest.count() - minutes.count()) <= 2.5);
    RC_ASSERT(above >= minutes);
    RC_ASSERT(above.count() - minutes.count() < 5.0);
    RC_ASSERT(std::fmod(nearest.count(), 5.0) == 0.0);
}

} // namespace
} // namespace loafwright
