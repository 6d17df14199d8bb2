// SPDX-License-Identifier: Apache-2.0
//
// Transfer of a time from one steady temperature to another, and the properties that any yeast
// curve must have. Its published values: published_test.cpp.
#include "engine/dough/fermentation.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loafwright::dough {
namespace {

TEST(dough, nothing_ferments_outside_the_yeasts_range) {
    EXPECT_EQ(relative_rate(Celsius(-18.0)), 0.0);
    EXPECT_EQ(relative_rate(Celsius(60.0)), 0.0);
    EXPECT_FALSE(transferred(Minutes(60.0), Celsius(21.0), Celsius(-5.0)));
    EXPECT_FALSE(transferred(Minutes(60.0), Celsius(70.0), Celsius(21.0)));
}

TEST(dough, a_colder_kitchen_needs_longer_by_the_ratio_of_the_rates) {
    // Computed from the formula: r(18) = 0.3773 and r(27) = 0.7273, so one hour becomes 115.7
    // minutes.
    const auto minutes = transferred(Minutes(60.0), Celsius(27.0), Celsius(18.0));
    ASSERT_TRUE(minutes);
    EXPECT_NEAR(minutes->likely.count(), 115.7, 0.1);
    EXPECT_NEAR(minutes->low.count(), 0.85 * 115.7, 0.1);
    EXPECT_NEAR(minutes->high.count(), 1.15 * 115.7, 0.1);
}

TEST(dough, the_colder_the_less_sure) {
    EXPECT_DOUBLE_EQ(transfer_uncertainty(Celsius(24.0), Celsius(20.0)), 0.15);
    EXPECT_DOUBLE_EQ(transfer_uncertainty(Celsius(24.0), Celsius(15.0)), 0.30);
    EXPECT_DOUBLE_EQ(transfer_uncertainty(Celsius(5.0), Celsius(24.0)), 0.50);
    EXPECT_DOUBLE_EQ(transfer_uncertainty(Celsius(24.0), Celsius(36.0)), 0.30);
}

RC_GTEST_PROP(dough, warmer_is_never_slower_below_the_optimum, ()) {
    const double cooler = 0.1 * *rc::gen::inRange(-50, 375);
    const double warmer = cooler + 0.1 * *rc::gen::inRange(0, 376 - static_cast<int>(cooler * 10));
    RC_PRE(warmer <= 37.5);
    RC_ASSERT(relative_rate(Celsius(warmer)) >= relative_rate(Celsius(cooler)));
}

RC_GTEST_PROP(dough, hotter_is_never_faster_above_the_optimum, ()) {
    const double lower = 37.5 + 0.1 * *rc::gen::inRange(0, 120);
    const double higher = lower + 0.1 * *rc::gen::inRange(0, 60);
    RC_ASSERT(relative_rate(Celsius(higher)) <= relative_rate(Celsius(lower)));
}

RC_GTEST_PROP(dough, the_place_it_was_written_for_gives_the_stated_time_back, ()) {
    const Minutes stated(*rc::gen::inRange(0, 2000));
    const Celsius place(0.5 * *rc::gen::inRange(0, 90));
    const auto minutes = transferred(stated, place, place);
    RC_ASSERT(minutes.has_value());
    RC_ASSERT(minutes->likely == stated);
    RC_ASSERT(minutes->low <= minutes->likely && minutes->likely <= minutes->high);
}

RC_GTEST_PROP(dough, there_and_back_again_is_where_it_began, ()) {
    const Minutes stated(*rc::gen::inRange(1, 2000));
    const Celsius there(0.5 * *rc::gen::inRange(4, 90));
    const Celsius here(0.5 * *rc::gen::inRange(4, 90));
    const auto out = transferred(stated, there, here);
    RC_ASSERT(out.has_value());
    const auto back = transferred(out->likely, here, there);
    RC_ASSERT(back.has_value());
    RC_ASSERT(std::abs(back->likely.count() - stated.count()) < 1e-6 * stated.count());
}

} // namespace
} // namespace loafwright::dough
