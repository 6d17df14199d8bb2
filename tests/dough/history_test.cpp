// SPDX-License-Identifier: Apache-2.0
//
// The dough's own temperature and the progress along it, against an integrator that shares nothing
// with ours (SUNDIALS CVODE), against closed integrals, and by its properties.
#include "engine/dough/progress.hpp"
#include "engine/dough/temperature_history.hpp"
#include "engine/dough/yeast.hpp"
#include "tests/dough/ode.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <string>
#include <vector>

namespace loafwright::dough {
namespace {

constexpr std::array curves{Curve::gas, Curve::growth, Curve::leaven_yeast, Curve::leaven_bacteria};

Stay stay(double lasts, double first, double last, double time_constant) {
    return {Minutes(lasts), Celsius(first), Celsius(last), Minutes(time_constant)};
}

// Counter, fridge, counter again.
TemperatureHistory overnight() {
    return {Celsius(25.0), {stay(60, 21, 21, 90), stay(720, 4, 4, 130), stay(0, 21, 21, 120)}};
}

TemperatureHistory any_history(std::mt19937& random) {
    std::uniform_real_distribution<double> place(-8.0, 52.0);
    std::uniform_real_distribution<double> lasting(5.0, 900.0);
    std::uniform_real_distribution<double> constant(4.0, 400.0);
    TemperatureHistory history{Celsius(place(random)), {}};
    for (int i = 0; i < 4; ++i) {
        const double first = place(random);
        const double last = i % 2 == 0 ? first : place(random);
        history.stays.push_back(stay(lasting(random), first, last, constant(random)));
    }
    return history;
}

TEST(history, a_dough_loses_63_percent_of_its_distance_in_one_time_constant) {
    const auto history = in_one_place(Celsius(25.0), Celsius(5.0), Minutes(100.0));
    EXPECT_DOUBLE_EQ(dough_at(history, Minutes(0.0)).degrees(), 25.0);
    EXPECT_NEAR(dough_at(history, Minutes(100.0)).degrees(), 5.0 + 20.0 * std::exp(-1.0), 1e-12);
    EXPECT_NEAR(dough_at(history, Minutes(4000.0)).degrees(), 5.0, 1e-12);
}

TEST(history, in_a_room_that_warms_evenly_the_dough_follows_one_time_constant_behind) {
    // The lag of a first-order system behind a ramp is its time constant: textbook result.
    std::vector<Celsius> readings;
    for (int hour = 0; hour <= 20; ++hour) {
        readings.emplace_back(10.0 + 0.5 * hour);
    }
    const auto history = in_a_changing_room(Celsius(10.0), readings, Minutes(60.0), Minutes(60.0));
    EXPECT_NEAR(dough_at(history, Minutes(1200.0)).degrees(), 20.0 - 0.5, 1e-6);
    EXPECT_NEAR(dough_at(history, Minutes(3000.0)).degrees(), 20.0, 1e-9);
}

TEST(history, without_a_time_constant_the_dough_is_as_warm_as_its_place) {
    const TemperatureHistory history{Celsius(30.0), {stay(60, 20, 20, 0), stay(0, 10, 10, 0)}};
    EXPECT_DOUBLE_EQ(dough_at(history, Minutes(30.0)).degrees(), 20.0);
    EXPECT_DOUBLE_EQ(dough_at(history, Minutes(61.0)).degrees(), 10.0);
    EXPECT_NEAR(progress(history, Minutes(0.0), Minutes(120.0), Curve::gas).count(),
                60.0 * (rate_of(Curve::gas, Celsius(20.0)) + rate_of(Curve::gas, Celsius(10.0))),
                1e-9);
}

TEST(progress, a_thousand_times_finer_sum_agrees_to_nine_digits) {
    // Simpson's rule over 2 000 000 steps, stay by stay.
    const TemperatureHistory history = overnight();
    for (const Curve curve : curves) {
        double sum = 0.0;
        for (const auto& [from, to] :
             {std::pair{0.0, 60.0}, std::pair{60.0, 780.0}, std::pair{780.0, 1000.0}}) {
            constexpr int steps = 700000;
            const double h = (to - from) / steps;
            for (int i = 0; i <= steps; ++i) {
                const double weight = i == 0 || i == steps ? 1.0 : i % 2 == 1 ? 4.0 : 2.0;
                sum += h / 3.0 * weight * rate_of(curve, dough_at(history, Minutes(from + i * h)));
            }
        }
        EXPECT_NEAR(
            progress(history, Minutes(0.0), Minutes(1000.0), curve).count() / sum, 1.0, 2e-9);
    }
}

TEST(progress, an_independent_integrator_agrees) {
    if (!has_sundials()) {
        GTEST_SKIP() << "built without SUNDIALS (libsundials-dev)";
    }
    std::mt19937 random(20260728);
    std::uniform_real_distribution<double> until(30.0, 3000.0);
    double worst_progress = 0.0;
    double worst_gas = 0.0;
    double worst_degrees = 0.0;
    for (int i = 0; i < 300; ++i) {
        const TemperatureHistory history = any_history(random);
        const Minutes end(until(random));
        const Curve curve = curves.at(static_cast<std::size_t>(i) % curves.size());
        const auto theirs = integrated(history, end, curve);
        ASSERT_TRUE(theirs) << i;
        worst_degrees =
            std::max(worst_degrees, std::abs((dough_at(history, end) - theirs->dough).count()));
        const double ours = progress(history, Minutes(0.0), end, curve).count();
        if (theirs->progress > 0.1) {
            worst_progress = std::max(worst_progress, std::abs(ours / theirs->progress - 1.0));
            const Minutes at_27(ours / rate_of(curve, Celsius(27.0)));
            const double gas = gas_made(BakersPercent(1.0), at_27, yeast_gained.likely).count();
            worst_gas = std::max(worst_gas, std::abs(gas / theirs->percent_hours - 1.0));
        }
    }
    RecordProperty("worst_progress", std::to_string(worst_progress * 1e9) + "e-9");
    RecordProperty("worst_gas", std::to_string(worst_gas * 1e9) + "e-9");
    RecordProperty("worst_degrees", std::to_string(worst_degrees * 1e9) + "e-9");
    // Asked for is 0.2 %; the integrator's own tolerance is 1e-9 a step.
    EXPECT_LT(worst_progress, 1e-5);
    EXPECT_LT(worst_gas, 1e-5);
    EXPECT_LT(worst_degrees, 1e-4);
}

TEST(progress, the_time_until_is_the_inverse) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> minute(0.0, 2000.0);
    int reached = 0;
    for (int i = 0; i < 300; ++i) {
        const TemperatureHistory history = any_history(random);
        const Minutes from(minute(random));
        const Minutes time(minute(random));
        for (const Curve curve : curves) {
            const Progress made = progress(history, from, from + time, curve);
            const auto back = time_until(history, made, from, curve);
            ASSERT_TRUE(back) << i;
            EXPECT_LE(back->count(), time.count() * (1.0 + 1e-9) + 1e-9);
            EXPECT_NEAR(progress(history, from, from + *back, curve).count(),
                        made.count(),
                        1e-9 * made.count() + 1e-9);
            reached += made.count() > 1.0 ? 1 : 0;
        }
    }
    EXPECT_GT(reached, 300);
}

TEST(progress, what_never_comes_is_no_answer) {
    EXPECT_FALSE(time_until(steady(Celsius(-5.0)), Progress(1.0), Minutes(0.0), Curve::gas));
    EXPECT_FALSE(time_until(steady(Celsius(50.0)), Progress(1.0), Minutes(0.0), Curve::gas));
    // Frozen before it is there.
    const auto freezer = in_one_place(Celsius(20.0), Celsius(-18.0), Minutes(60.0));
    EXPECT_FALSE(time_until(freezer, Progress(60.0), Minutes(0.0), Curve::gas));
    // Four days at 2 °C are 5760 x 0.011 minutes at the optimum.
    EXPECT_FALSE(time_until(steady(Celsius(2.0)), Progress(70.0), Minutes(0.0), Curve::gas));
    EXPECT_TRUE(time_until(steady(Celsius(2.0)), Progress(50.0), Minutes(0.0), Curve::gas));
    EXPECT_EQ(*time_until(steady(Celsius(-5.0)), Progress(0.0), Minutes(9.0), Curve::gas),
              Minutes(0.0));
}

TEST(progress, a_steady_dough_agrees_with_the_plain_transfer) {
    const auto along =
        transferred(Minutes(60.0), steady(Celsius(27.0)), steady(Celsius(18.0)), Curve::gas);
    ASSERT_TRUE(along);
    // Computed from the formula: 0.7273 / 0.3773 of an hour.
    EXPECT_NEAR(along->likely.count(), 115.7, 0.1);
    EXPECT_NEAR(along->low.count(), 0.85 * 115.7, 0.1);
    EXPECT_NEAR(along->high.count(), 1.15 * 115.7, 0.1);
}

TEST(progress, a_dough_mixed_warm_slows_less_than_its_room_says) {
    const auto by_room =
        transferred(Minutes(90.0), steady(Celsius(25.0)), steady(Celsius(19.0)), Curve::gas);
    const auto by_dough = transferred(Minutes(90.0),
                                      steady(Celsius(25.0)),
                                      in_one_place(Celsius(25.0), Celsius(19.0), Minutes(120.0)),
                                      Curve::gas);
    ASSERT_TRUE(by_room && by_dough);
    EXPECT_LT(by_dough->likely.count(), 0.9 * by_room->likely.count());
    EXPECT_GT(by_dough->likely.count(), 90.0);
}

RC_GTEST_PROP(progress, the_same_history_gives_the_stated_time_back, ()) {
    std::mt19937 random(*rc::gen::arbitrary<unsigned>());
    const TemperatureHistory history = any_history(random);
    const Minutes stated(*rc::gen::inRange(1, 900));
    const Curve curve = *rc::gen::elementOf(curves);
    const Progress made = progress(history, Minutes(0.0), stated, curve);
    RC_PRE(rate_of(curve, dough_at(history, stated)) > 1e-3);
    const auto again = transferred(stated, history, history, curve);
    RC_ASSERT(again.has_value());
    RC_ASSERT(std::abs(again->likely.count() - stated.count()) < 1e-6 * stated.count());
    RC_ASSERT(again->low <= again->likely && again->likely <= again->high);
    RC_ASSERT(made.count() > 0.0);
}

RC_GTEST_PROP(progress, adds_up_over_adjoining_times, ()) {
    std::mt19937 random(*rc::gen::arbitrary<unsigned>());
    const TemperatureHistory history = any_history(random);
    const Minutes first(*rc::gen::inRange(0, 2000));
    const Minutes second = first + Minutes(*rc::gen::inRange(0, 2000));
    const Curve curve = *rc::gen::elementOf(curves);
    const double whole = progress(history, Minutes(0.0), second, curve).count();
    const double parts = progress(history, Minutes(0.0), first, curve).count() +
                         progress(history, first, second, curve).count();
    // The bacteria's rate bends sharply at its end, which costs the quadrature three digits.
    const double error = curve == Curve::leaven_bacteria ? 1e-6 : 1e-9;
    RC_ASSERT(std::abs(whole - parts) <= error * whole + 1e-12);
}

RC_GTEST_PROP(progress, a_warmer_place_is_never_slower_below_the_best_temperature, ()) {
    const Curve curve = *rc::gen::elementOf(curves);
    const double best = best_of(curve).degrees();
    const double cool = 0.1 * *rc::gen::inRange(20, 250);
    const double warm = std::min(best, cool + 0.1 * *rc::gen::inRange(0, 100));
    const Celsius dough(0.1 * *rc::gen::inRange(20, 250));
    const Minutes tau(*rc::gen::inRange(1, 300));
    const Progress wanted(*rc::gen::inRange(1, 200));
    const auto slow =
        time_until(in_one_place(dough, Celsius(cool), tau), wanted, Minutes(0.0), curve);
    RC_PRE(slow.has_value());
    const auto quick =
        time_until(in_one_place(dough, Celsius(warm), tau), wanted, Minutes(0.0), curve);
    RC_ASSERT(quick.has_value());
    RC_ASSERT(quick->count() <= slow->count() * (1.0 + 1e-9));
}

RC_GTEST_PROP(progress, a_tenth_of_a_degree_is_never_a_step, ()) {
    // Above 18 °C no answer moves by 1.2 % for a tenth of a degree (the curve itself rises by 1 %
    // there); anywhere, a ten thousandth of a degree moves none by 0.1 %.
    const Celsius dough(0.01 * *rc::gen::inRange(1800, 4000));
    const Celsius anywhere(0.01 * *rc::gen::inRange(200, 4600));
    const auto moved = [](Celsius place, double by, auto end) {
        const auto at = [&](Celsius here) {
            const auto band =
                transferred(Minutes(60.0), steady(Celsius(24.0)), steady(here), Curve::gas);
            return end(*band).count();
        };
        return std::abs(at(place + CelsiusDifference(by)) / at(place) - 1.0);
    };
    const auto low = [](const Band<Minutes>& band) { return band.low; };
    const auto likely = [](const Band<Minutes>& band) { return band.likely; };
    const auto high = [](const Band<Minutes>& band) { return band.high; };
    RC_ASSERT(moved(dough, 0.1, likely) < 0.012);
    RC_ASSERT(moved(anywhere, 1e-4, likely) < 1e-3);
    RC_ASSERT(moved(anywhere, 1e-4, low) < 1e-3);
    RC_ASSERT(moved(anywhere, 1e-4, high) < 1e-3);
}

} // namespace
} // namespace loafwright::dough
