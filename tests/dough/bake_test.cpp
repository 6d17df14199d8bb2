// SPDX-License-Identifier: Apache-2.0
#include "engine/dough/altitude.hpp"
#include "engine/dough/bake.hpp"
#include "tests/dough/bakes.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

namespace loafwright::dough {
namespace {

double minutes_to(const Bake& bake, double core_c) {
    const auto minutes = time_to_core(bake, Celsius(core_c));
    RC_ASSERT(minutes.has_value());
    return minutes->count();
}

TEST(loaf, usual_sizes_are_those_of_the_loaves_they_were_taken_from) {
    const Loaf tin = usual_loaf(Form::tin_loaf, Grams(900.0));
    EXPECT_NEAR(volume(tin.baked).count(), 2904.0, 1e-9);
    EXPECT_NEAR(risen_density(tin).count(), 309.9, 0.1);
    const Loaf roll = usual_loaf(Form::roll, Grams(70.0));
    EXPECT_NEAR(volume(roll.baked).count(), 349.9, 0.1);
    EXPECT_NEAR(surface_per_volume_per_m(roll.baked), 2.0 / 0.045 + 2.0 / 0.055, 1e-9);
}

TEST(loaf, half_the_dough_is_the_same_crumb_in_a_smaller_body) {
    for (const Form form : {Form::tin_loaf, Form::round_loaf, Form::roll, Form::flatbread}) {
        const Loaf whole = usual_loaf(form, Grams(800.0));
        const Loaf half = usual_loaf(form, Grams(400.0));
        EXPECT_NEAR(risen_density(whole) / risen_density(half), 1.0, 1e-12);
    }
    EXPECT_EQ(usual_loaf(Form::flatbread, Grams(300.0)).baked.through, Millimetres(40.0));
}

TEST(loaf, dough_in_a_narrow_tin_stands_higher) {
    const Loaf narrow = loaf_in_tin(Grams(900.0), Millimetres(240.0), Millimetres(90.0));
    EXPECT_NEAR(volume(narrow.baked).count(), 2904.0, 1e-9);
    EXPECT_NEAR(narrow.baked.through.count(), 110.0 * 110.0 / 90.0, 1e-9);
}

TEST(loaf, only_leavened_loaves_of_usual_size_are_known) {
    EXPECT_TRUE(within_known_sizes(usual_loaf(Form::tin_loaf, Grams(900.0))));
    EXPECT_FALSE(within_known_sizes(usual_loaf(Form::flatbread, Grams(400.0))));
    EXPECT_FALSE(within_known_sizes(usual_loaf(Form::roll, Grams(30.0))));
    EXPECT_FALSE(within_known_sizes(usual_loaf(Form::round_loaf, Grams(2500.0))));
    Bake hot = usual_bake(Form::tin_loaf, 900.0, 220.0, 35.0);
    EXPECT_TRUE(within_known(hot));
    hot.settings.push_back({Celsius(140.0), Minutes(10.0)});
    EXPECT_FALSE(within_known(hot));
}

TEST(bake, the_course_ends_where_the_settings_end) {
    const BakeCourse course = simulate_bake(usual_bake(Form::tin_loaf, 900.0, 220.0, 35.0));
    EXPECT_EQ(course.core.front().at, Minutes(0.0));
    EXPECT_NEAR(course.core.front().core.degrees(), 25.0, 1e-9);
    EXPECT_NEAR(course.core.back().at.count(), 35.0, 1e-9);
    EXPECT_EQ(course.core.back().core, course.core_at_end);
    // The crust goes towards the oven, the crumb stays at the boiling point (Zanoni, Peri and
    // Pierucci 1993, abstract).
    EXPECT_GT(course.surface_at_end, Celsius(150.0));
    EXPECT_LT(course.surface_at_end, Celsius(220.0));
    EXPECT_LE(course.core_at_end, Celsius(100.0));
}

TEST(bake, turning_the_oven_down_lies_between_both_ovens) {
    Bake turned = usual_bake(Form::round_loaf, 1000.0, 250.0, 15.0);
    turned.settings.push_back({Celsius(200.0), Minutes(25.0)});
    const BakeCourse hot = simulate_bake(usual_bake(Form::round_loaf, 1000.0, 250.0, 40.0));
    const BakeCourse mild = simulate_bake(usual_bake(Form::round_loaf, 1000.0, 200.0, 40.0));
    const BakeCourse both = simulate_bake(turned);
    EXPECT_GT(hot.core_at_end, both.core_at_end);
    EXPECT_GT(both.core_at_end, mild.core_at_end);
    EXPECT_GT(hot.loss, both.loss);
    EXPECT_GT(both.loss, mild.loss);
    EXPECT_LT(both.surface_at_end, hot.surface_at_end);
    // One setting cut in two is no change.
    Bake cut = usual_bake(Form::round_loaf, 1000.0, 250.0, 15.0);
    cut.settings.push_back({Celsius(250.0), Minutes(25.0)});
    EXPECT_NEAR(simulate_bake(cut).core_at_end.degrees(), hot.core_at_end.degrees(), 0.02);
    EXPECT_NEAR(simulate_bake(cut).loss, hot.loss, 1e-4);
}

TEST(bake, under_a_lid_nothing_dries_and_the_skin_stays_at_the_boiling_point) {
    Bake bake = usual_bake(Form::round_loaf, 850.0, 250.0, 20.0);
    bake.vessel = Vessel::lidded_pot;
    bake.lid_off_after = Minutes(20.0);
    const BakeCourse lidded = simulate_bake(bake);
    EXPECT_EQ(lidded.loss, 0.0);
    EXPECT_LE(lidded.surface_at_end, Celsius(100.0));
    bake.settings[0].lasts = Minutes(40.0);
    const BakeCourse opened = simulate_bake(bake);
    EXPECT_GT(opened.loss, 0.05);
    EXPECT_GT(opened.surface_at_end, Celsius(180.0));
    bake.vessel = Vessel::none;
    EXPECT_GT(simulate_bake(bake).loss, opened.loss);
}

TEST(bake, a_target_that_is_never_reached_is_no_time) {
    EXPECT_FALSE(time_to_core(usual_bake(Form::tin_loaf, 900.0, 220.0, 1.0), Celsius(101.0)));
    EXPECT_FALSE(
        time_to_core(usual_bake(Form::tin_loaf, 900.0, 220.0, 1.0), Celsius(95.0), Minutes(20.0)));
}

TEST(bake, the_course_asked_at_its_points_gives_them_back) {
    const BakeCourse course = simulate_bake(usual_bake(Form::roll, 70.0, 220.0, 15.0));
    EXPECT_EQ(core_at(course.core, Minutes(-1.0)), course.core.front().core);
    EXPECT_EQ(core_at(course.core, Minutes(99.0)), course.core_at_end);
    const auto at_60 = first_at_or_above(course.core, Celsius(60.0));
    ASSERT_TRUE(at_60);
    EXPECT_NEAR(core_at(course.core, *at_60).degrees(), 60.0, 1e-6);
    EXPECT_FALSE(first_at_or_above(course.core, Celsius(120.0)));
    EXPECT_EQ(first_at_or_above(course.core, Celsius(20.0)), Minutes(0.0));
}

RC_GTEST_PROP(bake, a_bigger_loaf_never_bakes_quicker, ()) {
    const Bake small = any_bake();
    Bake big = small;
    const double factor = 1.0 + 0.01 * *rc::gen::inRange(1, 60);
    big.loaf.dough = small.loaf.dough * factor;
    big.loaf.baked = stretched(small.loaf.baked, factor);
    RC_ASSERT(minutes_to(big, 93.0) >= minutes_to(small, 93.0));
}

RC_GTEST_PROP(bake, a_hotter_oven_is_never_slower_to_the_core, ()) {
    const Bake mild = any_bake();
    Bake hot = mild;
    hot.settings[0].temperature =
        mild.settings[0].temperature + CelsiusDifference(*rc::gen::inRange(1, 60));
    // Cells dry out one after the other, which rocks the core's time by parts in a thousand.
    RC_ASSERT(minutes_to(hot, 93.0) <= minutes_to(mild, 93.0) * 1.005);
}

RC_GTEST_PROP(bake, colder_dough_is_never_quicker, ()) {
    const Bake warm = any_bake();
    Bake cold = warm;
    cold.dough = warm.dough - CelsiusDifference(*rc::gen::inRange(1, 5));
    RC_ASSERT(minutes_to(cold, 93.0) >= minutes_to(warm, 93.0));
}

RC_GTEST_PROP(bake, a_tenth_of_a_degree_never_moves_the_time_by_more_than_a_hundredth, ()) {
    const Bake bake = any_bake();
    const double before = minutes_to(bake, 93.0);
    Bake oven = bake;
    oven.settings[0].temperature = bake.settings[0].temperature + CelsiusDifference(0.1);
    RC_ASSERT(std::abs(minutes_to(oven, 93.0) / before - 1.0) < 0.01);
    Bake dough = bake;
    dough.dough = bake.dough + CelsiusDifference(0.1);
    RC_ASSERT(std::abs(minutes_to(dough, 93.0) / before - 1.0) < 0.01);
    Bake place = bake;
    place.boiling = bake.boiling - CelsiusDifference(0.1);
    RC_ASSERT(std::abs(minutes_to(place, 93.0) / before - 1.0) < 0.02);
    RC_ASSERT(std::abs(minutes_to(bake, 93.1) / before - 1.0) < 0.01);
}

RC_GTEST_PROP(bake, the_core_only_rises_and_the_loss_stays_a_share, ()) {
    const BakeCourse course = simulate_bake(any_bake());
    RC_ASSERT(std::is_sorted(
        course.core.begin(), course.core.end(), [](const CorePoint& a, const CorePoint& b) {
            return a.core.degrees() < b.core.degrees() - 1e-9;
        }));
    RC_ASSERT(course.loss >= 0.0 && course.loss <= 0.42);
    RC_ASSERT(course.core_at_end.degrees() <= 100.0 + 1e-6);
}

RC_GTEST_PROP(bake, the_same_bake_is_the_same_to_the_last_digit, ()) {
    const Bake bake = any_bake();
    RC_ASSERT(minutes_to(bake, 93.0) == minutes_to(bake, 93.0));
    RC_ASSERT(simulate_bake(bake).loss == simulate_bake(bake).loss);
}

} // namespace
} // namespace loafwright::dough
