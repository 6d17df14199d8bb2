// SPDX-License-Identifier: Apache-2.0
#include "engine/dough/curve.hpp"
#include "engine/dough/progress.hpp"
#include "engine/dough/sourdough.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loafwright::dough {
namespace {

TEST(sourdough, no_yeast_grows_at_36_nor_bacteria_at_41) {
    EXPECT_EQ(growth_rate(yeast_of_leaven, Celsius(36.0)), PerHour(0.0));
    EXPECT_EQ(growth_rate(bacteria_of_leaven, Celsius(41.0)), PerHour(0.0));
    EXPECT_FALSE(ripening_time(0.1, Celsius(37.0), LeavenState::ripe));
    EXPECT_FALSE(rise_with_leaven(Minutes(240.0), 0.2, 0.1, Celsius(37.0)));
}

TEST(sourdough, above_30_degrees_the_answer_is_less_sure) {
    // From 28 to 32 °C the yeast's rate falls by half (Gänzle and others 1998).
    EXPECT_NEAR(rate_of(Curve::leaven_yeast, Celsius(32.0)), 0.48, 0.03);
    EXPECT_DOUBLE_EQ(uncertainty_of(Curve::leaven_yeast, Celsius(28.0)), 0.15);
    EXPECT_GT(uncertainty_of(Curve::leaven_yeast, Celsius(32.0)), 0.35);
    // Gänzle's own round figures say a quarter at 34, the curve an eighth: inside the band.
    const auto time = transferred(
        Minutes(240.0), steady(Celsius(27.0)), steady(Celsius(34.0)), Curve::leaven_yeast);
    ASSERT_TRUE(time);
    EXPECT_LE(time->low.count(), 4.0 * 240.0);
}

TEST(sourdough, half_the_leaven_costs_at_most_ln2_by_the_growth_rate) {
    // From the growth law: 1.8 h at 25 °C, 3.1 h at 20 °C at most.
    const auto long_rise = rise_with_leaven(Minutes(900.0), 0.2, 0.1, Celsius(20.0));
    ASSERT_TRUE(long_rise);
    const double most = 60.0 * std::log(2.0) / growth_rate(yeast_of_leaven, Celsius(20.0)).count();
    EXPECT_NEAR(most / 60.0, 3.1, 0.1);
    EXPECT_LT(long_rise->count() - 900.0, most);
    EXPECT_GT(long_rise->count() - 900.0, 0.8 * most);
}

TEST(sourdough, a_leaven_from_the_fridge_wakes_later) {
    const auto ripe = ripening_time(0.2, Celsius(26.0), LeavenState::ripe);
    const auto cold = ripening_time(0.2, Celsius(26.0), LeavenState::from_fridge);
    ASSERT_TRUE(ripe && cold);
    EXPECT_GT(cold->likely.count() - ripe->likely.count(), 60.0);
    EXPECT_FALSE(ripening_time(0.0, Celsius(26.0), LeavenState::ripe));
    EXPECT_FALSE(ripening_time(1.5, Celsius(26.0), LeavenState::ripe));
}

TEST(sourdough, one_to_five_to_five_ripens_in_seven_hours_at_24_in_eleven_to_twelve_at_20) {
    // ln 11 over 0.365 and 0.225 per hour (rates remembered) and an hour's wait.
    EXPECT_NEAR(ripening_time(1.0 / 11.0, Celsius(24.0), LeavenState::ripe)->likely.count() / 60.0,
                7.6,
                0.3);
    EXPECT_NEAR(ripening_time(1.0 / 11.0, Celsius(20.0), LeavenState::ripe)->likely.count() / 60.0,
                11.7,
                0.4);
}

TEST(sourdough, salt_holds_the_bacteria_back) {
    EXPECT_EQ(salt_on_souring(BakersPercent(0.0)), exactly(1.0));
    const Band<double> usual = salt_on_souring(BakersPercent(2.0));
    EXPECT_LT(usual.low, usual.likely);
    EXPECT_LT(usual.likely, usual.high);
    EXPECT_EQ(salt_on_souring(BakersPercent(6.0)), exactly(0.0));
}

RC_GTEST_PROP(sourdough, less_inoculum_is_never_quicker, ()) {
    const double more = 0.001 * *rc::gen::inRange(2, 1000);
    const double less = more * 0.01 * *rc::gen::inRange(10, 100);
    const Celsius leaven(0.5 * *rc::gen::inRange(8, 70));
    const auto quick = ripening_time(more, leaven, LeavenState::ripe);
    const auto slow = ripening_time(less, leaven, LeavenState::ripe);
    RC_ASSERT(quick && slow);
    RC_ASSERT(slow->likely.count() >= quick->likely.count() - 1e-6);
    RC_ASSERT(slow->low <= slow->likely && slow->likely <= slow->high);
}

RC_GTEST_PROP(sourdough, more_leaven_is_never_slower, ()) {
    const Minutes stated(*rc::gen::inRange(30, 1200));
    const double share = 0.01 * *rc::gen::inRange(1, 50);
    const double less = 0.01 * *rc::gen::inRange(1, 50);
    const double more = less + 0.01 * *rc::gen::inRange(0, 50);
    const Celsius dough(0.5 * *rc::gen::inRange(8, 70));
    const auto slow = rise_with_leaven(stated, share, less, dough);
    const auto quick = rise_with_leaven(stated, share, more, dough);
    RC_ASSERT(slow && quick);
    RC_ASSERT(quick->count() <= slow->count() * (1.0 + 1e-12));
    RC_ASSERT(rise_with_leaven(stated, share, share, dough).value() == stated);
}

RC_GTEST_PROP(sourdough, warmer_is_never_slower_below_the_best_temperature, ()) {
    const Curve curve = *rc::gen::element(Curve::leaven_yeast, Curve::leaven_bacteria);
    const double cool = 0.1 * *rc::gen::inRange(0, 270);
    const double warm = std::min(best_of(curve).degrees(), cool + 0.1 * *rc::gen::inRange(0, 100));
    RC_ASSERT(rate_of(curve, Celsius(std::max(cool, warm))) >= rate_of(curve, Celsius(cool)));
}

} // namespace
} // namespace loafwright::dough
