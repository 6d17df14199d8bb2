// SPDX-License-Identifier: Apache-2.0
#include "engine/dough/altitude.hpp"
#include "engine/dough/bake_transfer.hpp"
#include "tests/dough/bakes.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loafwright::dough {
namespace {

Bake tin_of(double grams) {
    return usual_bake(Form::tin_loaf, grams, 220.0, 35.0);
}

// Worked example from the derivation of the rule: 35 minutes for 900 g become 0.85 * 35 * 0.65 +
// 5.25 = 25 for 450 g in a tin of its own size, and 51 for 1800 g.
TEST(bake_transfer, half_and_twice_the_loaf_come_out_as_worked_out_by_hand) {
    const auto half = transferred_bake(tin_of(900.0), tin_of(450.0));
    const auto twice = transferred_bake(tin_of(900.0), tin_of(1800.0));
    ASSERT_TRUE(half && twice);
    EXPECT_NEAR(half->time.likely.count(), 25.0, 0.5);
    EXPECT_NEAR(twice->time.likely.count(), 51.0, 0.5);
    EXPECT_NEAR(half->crust.count(), 5.25, 1e-9);
    EXPECT_NEAR(twice->time.low / twice->time.likely, 0.88, 1e-12);
    EXPECT_EQ(half->advice, CrustAdvice::none);
    EXPECT_EQ(twice->advice, CrustAdvice::lower_the_oven);
}

TEST(bake_transfer, in_a_mild_oven_a_big_loaf_is_covered_instead) {
    Bake stated = tin_of(900.0);
    Bake here = tin_of(1800.0);
    stated.settings = {{Celsius(180.0), Minutes(40.0)}};
    here.settings = stated.settings;
    const auto made = transferred_bake(stated, here);
    ASSERT_TRUE(made);
    EXPECT_EQ(made->advice, CrustAdvice::cover_with_foil);
}

// IEC 60350-1:2016 clause 11 pairs 200 °C of forced air with 225 °C of natural convection.
TEST(bake_transfer, a_fan_oven_set_lower_bakes_the_core_as_quickly) {
    Bake fan = tin_of(900.0);
    fan.air = OvenAir::fan;
    fan.settings[0].temperature = Celsius(200.0);
    const auto made = transferred_bake(tin_of(900.0), fan);
    ASSERT_TRUE(made);
    EXPECT_NEAR(made->core.count(), 0.85 * 35.0, 0.015 * 0.85 * 35.0);
}

TEST(bake_transfer, dough_from_the_fridge_takes_longer_and_a_shiny_tin_too) {
    Bake cold = tin_of(900.0);
    cold.dough = Celsius(5.0);
    const auto from_fridge = transferred_bake(tin_of(900.0), cold);
    ASSERT_TRUE(from_fridge);
    EXPECT_NEAR(from_fridge->core.count(), 0.85 * 35.0 * 37.8 / 32.8, 0.3);
    Bake shiny = tin_of(900.0);
    shiny.vessel = Vessel::shiny_tin;
    const auto in_tin = transferred_bake(tin_of(900.0), shiny);
    ASSERT_TRUE(in_tin);
    EXPECT_NEAR(in_tin->core.count(), 0.85 * 35.0 * 37.3 / 32.8, 0.3);
    EXPECT_GT(in_tin->crust.count(), 5.25);
}

TEST(bake_transfer, high_up_the_target_goes_down_with_the_boiling_point) {
    Bake high = tin_of(900.0);
    high.boiling = boiling_point_at(Metres(1500.0));
    const auto made = transferred_bake(tin_of(900.0), high);
    ASSERT_TRUE(made);
    // 90 °C up there takes 34.6 minutes of the model, 95 at the sea 32.8 (computed elsewhere).
    EXPECT_NEAR(made->core.count(), 0.85 * 35.0 * 34.6 / 32.8, 0.3);
}

TEST(bake_transfer, another_shape_is_less_sure) {
    const auto made =
        transferred_bake(tin_of(900.0), usual_bake(Form::round_loaf, 900.0, 220.0, 35.0));
    ASSERT_TRUE(made);
    EXPECT_NEAR(made->time.high / made->time.likely, 1.20, 1e-12);
}

TEST(bake_transfer, a_core_that_is_never_reached_gives_no_time) {
    // Where water boils at 95 °C a core never has 96 (the target is told for the sea, so 101).
    Bake high = tin_of(900.0);
    high.boiling = Celsius(95.0);
    EXPECT_FALSE(transferred_bake(tin_of(900.0), high, Celsius(101.0)));
    EXPECT_FALSE(transferred_bake(tin_of(900.0), tin_of(900.0), Celsius(101.0)));
}

RC_GTEST_PROP(bake_transfer, the_recipes_own_kitchen_gives_the_stated_time_back, ()) {
    Bake bake = any_bake();
    bake.settings[0].lasts = Minutes(*rc::gen::inRange(10, 90));
    if (*rc::gen::arbitrary<bool>()) {
        bake.settings.push_back({Celsius(200.0), Minutes(*rc::gen::inRange(5, 40))});
    }
    double stated = 0.0;
    for (const OvenSetting& setting : bake.settings) {
        stated += setting.lasts.count();
    }
    const auto made = transferred_bake(bake, bake);
    RC_ASSERT(made.has_value());
    RC_ASSERT(std::abs(made->time.likely.count() - stated) <= 1e-12 * stated);
    RC_ASSERT(made->advice == CrustAdvice::none);
}

RC_GTEST_PROP(bake_transfer, bands_are_in_order_and_around_the_sum_of_core_and_crust, ()) {
    const auto made = transferred_bake(any_bake(), any_bake());
    RC_ASSERT(made.has_value());
    RC_ASSERT(made->time.low <= made->time.likely && made->time.likely <= made->time.high);
    RC_ASSERT(made->time.likely == made->core + made->crust);
}

RC_GTEST_PROP(bake_transfer,
              a_tenth_of_a_degree_never_moves_the_time_by_more_than_a_hundredth,
              ()) {
    const Bake stated = any_bake();
    Bake here = stated;
    here.loaf.dough = stated.loaf.dough * 1.3;
    here.loaf.baked = stretched(stated.loaf.baked, 1.3);
    Bake beside = here;
    beside.settings[0].temperature = here.settings[0].temperature + CelsiusDifference(0.1);
    const auto at = transferred_bake(stated, here);
    const auto next = transferred_bake(stated, beside);
    RC_ASSERT(at.has_value() && next.has_value());
    RC_ASSERT(std::abs(next->time.likely / at->time.likely - 1.0) < 0.01);
}

} // namespace
} // namespace loafwright::dough
