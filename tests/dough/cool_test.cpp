// SPDX-License-Identifier: Apache-2.0
#include "engine/dough/cool.hpp"
#include "tests/dough/bakes.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

namespace loafwright::dough {
namespace {

BakedLoaf tin_loaf() {
    return simulate_bake(usual_bake(Form::tin_loaf, 900.0, 220.0, 35.0)).end;
}

// Trade figure from memory: 1.5 to 3 % of the dough; the crust was set for 2 to 4.
TEST(cool, a_loaf_loses_a_few_percent_of_weight_on_the_rack) {
    const CoolingCourse rack =
        simulate_cooling(tin_loaf(), Celsius(20.0), Standing::rack, Minutes(240.0));
    EXPECT_GT(rack.loss, 0.02);
    EXPECT_LT(rack.loss, 0.045);
    const CoolingCourse tin =
        simulate_cooling(tin_loaf(), Celsius(20.0), Standing::in_its_tin, Minutes(240.0));
    EXPECT_EQ(tin.loss, 0.0);
}

// Common practice: an hour for a loaf before it is cut, 20 minutes for rolls, a flatbread at once.
// Advice to cool to about 35 °C takes up to two hours (trade page; Stear 1990, chapter 19,
// abstract).
TEST(cool, a_loaf_can_be_cut_after_an_hour_and_is_at_its_best_after_two) {
    const Cooling made = cooling(tin_loaf(), Celsius(20.0), Standing::rack);
    EXPECT_EQ(made.can_be_cut, Minutes(60.0));
    EXPECT_NEAR(made.core_when_cut.degrees(), 54.0, 1.0);
    ASSERT_TRUE(made.to_35);
    EXPECT_NEAR(made.to_35->likely.count(), 120.0, 15.0);
    const Cooling roll =
        cooling(plainly_baked(usual_loaf(Form::roll, Grams(70.0))), Celsius(20.0), Standing::rack);
    EXPECT_EQ(roll.can_be_cut, Minutes(20.0));
    const Cooling flat = cooling(
        plainly_baked(usual_loaf(Form::flatbread, Grams(600.0))), Celsius(20.0), Standing::rack);
    EXPECT_EQ(flat.can_be_cut, Minutes(0.0));
}

TEST(cool, in_its_tin_it_takes_much_longer) {
    const Cooling rack = cooling(tin_loaf(), Celsius(20.0), Standing::rack);
    const Cooling tin = cooling(tin_loaf(), Celsius(20.0), Standing::in_its_tin);
    ASSERT_TRUE(rack.to_35 && tin.to_35);
    EXPECT_GT(tin.to_35->likely.count(), 1.4 * rack.to_35->likely.count());
}

TEST(cool, in_a_room_as_warm_as_the_goal_it_never_gets_there) {
    EXPECT_FALSE(cooling(tin_loaf(), Celsius(35.0), Standing::rack).to_35);
    EXPECT_FALSE(cooling(tin_loaf(), Celsius(38.0), Standing::in_its_tin).to_35);
}

TEST(cool, a_loaf_of_unknown_bake_cools_like_one_of_a_known_bake) {
    for (const Form form : {Form::tin_loaf, Form::round_loaf, Form::long_loaf}) {
        const Bake bake = usual_bake(form, 900.0, 220.0, 38.0);
        const Cooling known = cooling(simulate_bake(bake).end, Celsius(20.0), Standing::rack);
        const Cooling plain = cooling(plainly_baked(bake.loaf), Celsius(20.0), Standing::rack);
        ASSERT_TRUE(known.to_35 && plain.to_35);
        EXPECT_NEAR(plain.to_35->likely / known.to_35->likely, 1.0, 0.06);
    }
}

RC_GTEST_PROP(cool, a_warmer_room_and_a_bigger_loaf_never_cool_quicker, ()) {
    const Bake bake = any_bake();
    const double room_c = 10.0 + *rc::gen::inRange(0, 18);
    const auto standing = *rc::gen::element(Standing::rack, Standing::in_its_tin);
    const auto minutes = [&](const Loaf& loaf, double c) {
        const Cooling made = cooling(plainly_baked(loaf), Celsius(c), standing);
        RC_ASSERT(made.to_35.has_value());
        RC_ASSERT(made.to_35->low <= made.to_35->likely && made.to_35->likely <= made.to_35->high);
        return made.to_35->likely.count();
    };
    RC_ASSERT(minutes(bake.loaf, room_c + 2.0) >= minutes(bake.loaf, room_c));
    const double next = minutes(bake.loaf, room_c + 0.1);
    RC_ASSERT(std::abs(next / minutes(bake.loaf, room_c) - 1.0) < 0.01);
    Loaf big = bake.loaf;
    big.dough = bake.loaf.dough * 1.2;
    big.baked = stretched(bake.loaf.baked, 1.2);
    // A crust of whole cells makes this uneven by a few parts in a hundred.
    RC_ASSERT(minutes(big, room_c) >= 0.97 * minutes(bake.loaf, room_c));
}

RC_GTEST_PROP(cool, the_core_comes_down_to_the_room_and_no_further, ()) {
    const double room_c = 5.0 + *rc::gen::inRange(0, 30);
    const CoolingCourse course = simulate_cooling(
        plainly_baked(any_bake().loaf), Celsius(room_c), Standing::in_its_tin, Minutes(600.0));
    for (const CorePoint& point : course.core) {
        RC_ASSERT(point.core.degrees() >= room_c - 1e-6);
        RC_ASSERT(point.core.degrees() <= 101.0);
    }
}

} // namespace
} // namespace loafwright::dough
