// SPDX-License-Identifier: Apache-2.0
//
// The heat balance of mixing and the plan for the water. Worked examples of the trade's own sums
// are rows of tests/published/fermentation.tsv.
#include "engine/dough/dough_temperature.hpp"
#include "engine/dough/factor_rule.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loafwright::dough {
namespace {

constexpr Celsius boiling{100.0};

DoughMix tin_loaf(Celsius room, MixingMethod method) {
    DoughMix mix;
    mix.parts = {{Grams(500.0), room, specific_heat::flour}};
    mix.flour = Grams(500.0);
    mix.water.mass = Grams(325.0);
    mix.room = room;
    mix.offset = mixing_offset(method).likely;
    return mix;
}

TEST(dough_temperature, agrees_with_the_trades_friction_factors_where_they_were_matched) {
    // Friction as n times the rise, °F to °C by 1.8: hand 8, stand mixer 22, processor 25 (read).
    const std::vector<Celsius> others{Celsius(21.0), Celsius(21.0)};
    const auto both = [&](MixingMethod method, double factor_f) {
        const auto balance = water_temperature(tin_loaf(Celsius(21.0), method), Celsius(24.0));
        const Celsius rule =
            water_by_friction_factor(Celsius(24.0), CelsiusDifference(factor_f / 1.8), others);
        return (*balance - rule).count();
    };
    EXPECT_NEAR(both(MixingMethod::by_hand, 8.0), 0.0, 0.3);
    EXPECT_NEAR(both(MixingMethod::stand_mixer, 22.0), 0.0, 0.3);
    EXPECT_NEAR(both(MixingMethod::food_processor, 25.0), 0.0, 0.3);
}

TEST(dough_temperature, everything_as_warm_as_the_room_leaves_only_hydration_and_mixing) {
    DoughMix mix = tin_loaf(Celsius(20.0), MixingMethod::by_hand);
    mix.offset = CelsiusDifference(0.0);
    mix.room_share = 0.0;
    mix.water.temperature = Celsius(20.0);
    // 15.1 kJ a kilogram of flour over 1.84 + 0.65 x 4.186 kJ/K.
    EXPECT_NEAR(dough_temperature(mix).degrees(), 20.0 + 15.1 / (1.84 + 0.65 * 4.186), 1e-9);
    mix.flour = Grams(0.0);
    EXPECT_NEAR(dough_temperature(mix).degrees(), 20.0, 1e-12);
}

TEST(dough_temperature, melting_ice_takes_80_degrees_of_its_own_weight_in_water) {
    DoughMix mix;
    mix.water = {Grams(800.0), Celsius(80.0), specific_heat::water};
    mix.ice = Grams(200.0);
    mix.room_share = 0.0;
    EXPECT_NEAR(dough_temperature(mix).degrees(), (800.0 * 80.0 - 200.0 * 79.8) / 1000.0, 0.01);
}

TEST(water_plan, a_cold_kitchen_gets_grams_just_boiled_and_grams_from_the_tap) {
    const DoughMix mix = tin_loaf(Celsius(17.0), MixingMethod::by_hand);
    const WaterPlan plan =
        plan_water(mix, Celsius(25.0), Celsius(10.0), boiling, YeastMeetsWater::dry_in_flour);
    EXPECT_EQ(plan.advice, WaterAdvice::tap_and_boiled);
    EXPECT_NEAR((plan.tap + plan.boiled).count(), 325.0, 1e-9);
    EXPECT_NEAR(plan.dough.degrees(), 25.0, 1e-9);
    // The mixture weighed out: (tap x 10 + boiled x 100) / all.
    EXPECT_NEAR((plan.tap.count() * 10.0 + plan.boiled.count() * 100.0) / 325.0,
                plan.water.degrees(),
                1e-9);
}

TEST(water_plan, where_water_boils_at_93_more_of_it_is_needed) {
    const DoughMix mix = tin_loaf(Celsius(17.0), MixingMethod::by_hand);
    const auto boiled = [&](double point) {
        return plan_water(
                   mix, Celsius(25.0), Celsius(10.0), Celsius(point), YeastMeetsWater::dry_in_flour)
            .boiled;
    };
    EXPECT_NEAR(boiled(93.3) / boiled(100.0), 90.0 / 83.3, 1e-9);
}

TEST(water_plan, a_hot_kitchen_gets_ice) {
    const DoughMix mix = tin_loaf(Celsius(32.0), MixingMethod::stand_mixer);
    const WaterPlan plan =
        plan_water(mix, Celsius(25.0), Celsius(24.0), boiling, YeastMeetsWater::dry_in_flour);
    EXPECT_EQ(plan.advice, WaterAdvice::tap_and_ice);
    EXPECT_GT(plan.ice, Grams(20.0));
    EXPECT_NEAR((plan.tap + plan.ice).count(), 325.0, 1e-9);
    EXPECT_NEAR(plan.dough.degrees(), 25.0, 1e-9);
}

TEST(water_plan, water_that_would_harm_the_yeast_is_refused_and_the_limit_named) {
    // A dough for 28 °C from flour kept at 5 °C.
    DoughMix mix = tin_loaf(Celsius(12.0), MixingMethod::by_hand);
    mix.parts.front().temperature = Celsius(5.0);
    const WaterPlan plan =
        plan_water(mix, Celsius(28.0), Celsius(10.0), boiling, YeastMeetsWater::fresh_in_water);
    EXPECT_EQ(plan.advice, WaterAdvice::would_harm);
    EXPECT_EQ(plan.limit, Celsius(35.0));
    EXPECT_EQ(plan.water, Celsius(35.0));
    EXPECT_GT(plan.wanted_water, Celsius(35.0));
    EXPECT_LT(plan.dough, Celsius(28.0));
    EXPECT_NEAR((plan.tap + plan.boiled).count(), 325.0, 1e-9);
}

TEST(water_plan, what_no_water_can_do_is_said) {
    const DoughMix mix = tin_loaf(Celsius(35.0), MixingMethod::food_processor);
    const WaterPlan cold =
        plan_water(mix, Celsius(-8.0), Celsius(25.0), boiling, YeastMeetsWater::none);
    EXPECT_EQ(cold.advice, WaterAdvice::beyond_ice);
    EXPECT_NEAR(cold.ice.count(), 325.0, 1e-9);
    EXPECT_GT(cold.dough, Celsius(-8.0));
    const WaterPlan hot =
        plan_water(mix, Celsius(90.0), Celsius(25.0), boiling, YeastMeetsWater::none);
    EXPECT_EQ(hot.advice, WaterAdvice::beyond_boiling);
    DoughMix dry = mix;
    dry.water.mass = Grams(0.0);
    EXPECT_EQ(plan_water(dry, Celsius(25.0), Celsius(20.0), boiling, YeastMeetsWater::none).advice,
              WaterAdvice::no_water_to_set);
    EXPECT_FALSE(ice_on_top(Grams(100.0), Celsius(20.0), Celsius(0.0)));
    EXPECT_FALSE(ice_replacing(Grams(100.0), Celsius(20.0), Celsius(-90.0)));
    EXPECT_FALSE(boiled_and_tap(Grams(100.0), Celsius(96.0), Celsius(10.0), Celsius(95.0)));
}

TEST(water_plan, water_from_the_tap_is_good_enough_within_half_a_degree) {
    DoughMix mix = tin_loaf(Celsius(21.0), MixingMethod::stand_mixer);
    const Celsius asked = *water_temperature(mix, Celsius(24.0));
    const WaterPlan plan = plan_water(
        mix, Celsius(24.0), asked + CelsiusDifference(0.4), boiling, YeastMeetsWater::dry_in_flour);
    EXPECT_EQ(plan.advice, WaterAdvice::tap_as_it_is);
    EXPECT_EQ(plan.tap, Grams(325.0));
    EXPECT_NEAR(plan.dough.degrees(), 24.0, 0.25);
}

TEST(water_plan, the_band_holds_the_spread_of_kitchens) {
    const DoughMix mix = tin_loaf(Celsius(18.0), MixingMethod::stand_mixer);
    const auto band = water_temperature(
        mix, Celsius(25.0), usual_room_share, mixing_offset(MixingMethod::stand_mixer));
    ASSERT_TRUE(band);
    EXPECT_EQ(band->likely, *water_temperature(mix, Celsius(25.0)));
    EXPECT_GT((band->high - band->low).count(), 3.0);
    EXPECT_LT((band->high - band->low).count(), 12.0);
}

TEST(factor_rule, conventions_meet_when_converted) {
    const std::vector<Celsius> others{Celsius(21.0), Celsius(19.0)};
    const CelsiusDifference factor(9.0);
    const Celsius american = water_by_friction_factor(Celsius(25.0), factor, others);
    const CelsiusDifference rise = rise_of_factor(factor, 3);
    EXPECT_NEAR((american - water_by_rise_first(Celsius(25.0), rise, others)).count(), 0.0, 1e-9);
    EXPECT_NEAR(
        (american - water_by_base(base_of(Celsius(25.0), rise), others[0], others[1])).count(),
        0.0,
        1e-9);
}

RC_GTEST_PROP(water_plan, water_of_the_answered_temperature_gives_the_wanted_dough, ()) {
    DoughMix mix = tin_loaf(Celsius(*rc::gen::inRange(10, 35)), MixingMethod::by_hand);
    mix.parts.push_back({Grams(*rc::gen::inRange(0, 200)),
                         Celsius(*rc::gen::inRange(0, 30)),
                         specific_heat::butter});
    mix.room_share = 0.01 * *rc::gen::inRange(0, 60);
    const Celsius wanted(*rc::gen::inRange(15, 35));
    mix.water.temperature = *water_temperature(mix, wanted);
    RC_ASSERT(std::abs((dough_temperature(mix) - wanted).count()) < 1e-9);
}

RC_GTEST_PROP(water_plan, parts_of_the_plan_add_up_and_ice_gives_the_wanted_dough, ()) {
    DoughMix mix = tin_loaf(Celsius(*rc::gen::inRange(10, 38)), MixingMethod::stand_mixer);
    mix.ice_temperature = Celsius(-*rc::gen::inRange(0, 20));
    const Celsius wanted(*rc::gen::inRange(15, 32));
    const Celsius tap(*rc::gen::inRange(3, 30));
    const WaterPlan plan = plan_water(mix, wanted, tap, boiling, YeastMeetsWater::dry_in_flour);
    RC_ASSERT(std::abs((plan.tap + plan.boiled + plan.ice).count() - 325.0) < 1e-9);
    RC_ASSERT(plan.tap >= Grams(-1e-9) && plan.boiled >= Grams(0.0) && plan.ice >= Grams(0.0));
    if (plan.advice == WaterAdvice::tap_and_ice || plan.advice == WaterAdvice::tap_and_boiled) {
        RC_ASSERT(std::abs((plan.dough - wanted).count()) < 1e-6);
    }
}

} // namespace
} // namespace loafwright::dough
