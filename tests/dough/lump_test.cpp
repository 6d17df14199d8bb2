// SPDX-License-Identifier: Apache-2.0
#include "engine/dough/lump.hpp"
#include "engine/dough/progress.hpp"
#include "engine/dough/temperature_history.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loafwright::dough {
namespace {

Chilling kilogram_at(double fridge) {
    return {Celsius(24.0),
            exactly(Celsius(fridge)),
            exactly(time_constant({Grams(1000.0), 0.0, still_air}).likely)};
}

TEST(lump, a_flat_lump_and_a_ball_of_the_same_dough_cool_as_their_surfaces_say) {
    // Two methods: interpolated cylinder against the eigenvalue of the sphere. By surface for its
    // volume the cylinder as high as its radius should take 0.825 of the time, were both even
    // inside.
    for (const double kilograms : {0.5, 1.0, 1.5, 2.0}) {
        const Grams mass(1000.0 * kilograms);
        const double bowl = time_constant({mass, 0.0, still_air}).likely.count();
        const double ball =
            ball_time_constant(
                mass, 1100.0, 0.45, KilojoulesPerKilogramKelvin(2.8), WattsPerSquareMetreKelvin(8))
                .count();
        EXPECT_NEAR(bowl / ball, 0.84, 0.03) << kilograms;
    }
}

TEST(lump, a_tiny_ball_is_as_warm_inside_as_outside) {
    // rho c R / (3 h), the lumped limit.
    const double radius = std::cbrt(3.0 * 1e-6 / (4.0 * 3.14159265358979));
    const double lumped = 1000.0 * 2750.0 * radius / (3.0 * 8.0) / 60.0;
    EXPECT_NEAR(ball_time_constant(Grams(1.0),
                                   1000.0,
                                   0.45,
                                   KilojoulesPerKilogramKelvin(2.75),
                                   WattsPerSquareMetreKelvin(8.0))
                        .count() /
                    lumped,
                1.0,
                0.03);
}

TEST(lump, a_night_in_the_fridge_is_worth_a_full_rise_and_mostly_while_it_cools) {
    const auto night =
        worth_of_chilling(kilogram_at(5.0), Minutes(720.0), Celsius(24.0), Curve::gas);
    const auto first =
        worth_of_chilling(kilogram_at(5.0), Minutes(240.0), Celsius(24.0), Curve::gas);
    ASSERT_TRUE(night && first);
    EXPECT_NEAR(night->likely.count() / 60.0, 2.4, 0.2);
    EXPECT_GT(first->likely.count(), 0.6 * night->likely.count());
    EXPECT_LT(night->low, night->likely);
    EXPECT_LT(night->likely, night->high);
}

TEST(lump, the_fridge_takes_about_ten_times_as_long_once_the_dough_is_cold) {
    // McGee 2004 (read): ten times as long; our curve says 14.7 at 5 °C and 10.9 at 6 °C.
    const Chilling cold{Celsius(6.0), exactly(Celsius(6.0)), exactly(Minutes(120.0))};
    const auto time = chilling_for(cold, Minutes(90.0), Celsius(24.0), Curve::gas);
    ASSERT_TRUE(time);
    EXPECT_NEAR(time->likely.count() / 90.0, 10.9, 0.1);
    EXPECT_LE(time->low.count() / 90.0, 10.0);
    EXPECT_GE(time->high.count() / 90.0, 10.0);
}

TEST(lump, what_the_fridge_cannot_do_is_no_answer) {
    const Chilling freezer{Celsius(20.0), exactly(Celsius(-18.0)), exactly(Minutes(100.0))};
    EXPECT_FALSE(chilling_for(freezer, Minutes(300.0), Celsius(24.0), Curve::gas));
    EXPECT_FALSE(worth_of_chilling(kilogram_at(5.0), Minutes(60.0), Celsius(55.0), Curve::gas));
    EXPECT_EQ(worth_of_chilling(kilogram_at(5.0), Minutes(0.0), Celsius(24.0), Curve::gas),
              exactly(Minutes(0.0)));
}

TEST(lump, warming_up_takes_the_time_the_logarithm_says) {
    const auto time = time_to_reach(warm_enough_to_bake,
                                    Celsius(5.0),
                                    Celsius(21.0),
                                    {Minutes(60.0), Minutes(100.0), Minutes(160.0)});
    ASSERT_TRUE(time);
    EXPECT_NEAR(time->likely.count(), 100.0 * std::log(16.0 / 5.0), 1e-9);
    const auto tau = exactly(Minutes(100.0));
    EXPECT_FALSE(time_to_reach(Celsius(22.0), Celsius(5.0), Celsius(21.0), tau));
    EXPECT_FALSE(time_to_reach(Celsius(21.0), Celsius(5.0), Celsius(21.0), tau));
    EXPECT_FALSE(time_to_reach(Celsius(2.0), Celsius(5.0), Celsius(21.0), tau));
    EXPECT_FALSE(time_to_reach(Celsius(2.0), Celsius(21.0), Celsius(21.0), tau));
    EXPECT_EQ(time_to_reach(Celsius(5.0), Celsius(5.0), Celsius(5.0), tau), exactly(Minutes(0.0)));
}

RC_GTEST_PROP(lump, heavier_is_never_quicker_and_moving_air_or_rising_never_slower, ()) {
    const double mass = *rc::gen::inRange(50, 5000);
    const double risen = 0.01 * *rc::gen::inRange(0, 99);
    const double surface = 0.1 * *rc::gen::inRange(30, 200);
    const auto of = [](double grams, double share, double exchange) {
        return time_constant({Grams(grams), share, WattsPerSquareMetreKelvin(exchange)});
    };
    const Band<Minutes> here = of(mass, risen, surface);
    RC_ASSERT(here.low < here.likely && here.likely < here.high);
    RC_ASSERT(of(mass * 1.1, risen, surface).likely > here.likely);
    RC_ASSERT(of(mass, risen + 0.01, surface).likely < here.likely);
    RC_ASSERT(of(mass, risen, surface * 1.1).likely < here.likely);
    RC_ASSERT(of(mass * 1.001, risen, surface).likely.count() < here.likely.count() * 1.001);
}

RC_GTEST_PROP(lump, the_time_in_the_fridge_is_worth_the_rise_it_was_asked_for, ()) {
    const Chilling chilling{Celsius(*rc::gen::inRange(15, 30)),
                            {Celsius(3.0), Celsius(0.1 * *rc::gen::inRange(30, 80)), Celsius(8.0)},
                            {Minutes(60.0), Minutes(*rc::gen::inRange(60, 200)), Minutes(200.0)}};
    const Minutes rise(*rc::gen::inRange(10, 300));
    const auto time = chilling_for(chilling, rise, Celsius(24.0), Curve::gas);
    RC_PRE(time.has_value());
    RC_ASSERT(time->low <= time->likely && time->likely <= time->high && time->high <= furthest);
    const auto worth = worth_of_chilling(chilling, time->likely, Celsius(24.0), Curve::gas);
    RC_ASSERT(worth.has_value());
    RC_ASSERT(std::abs(worth->likely.count() / rise.count() - 1.0) < 1e-6);
    RC_ASSERT(worth->low <= worth->likely && worth->likely <= worth->high);
}

} // namespace
} // namespace loafwright::dough
