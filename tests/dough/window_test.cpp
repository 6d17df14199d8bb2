// SPDX-License-Identifier: Apache-2.0
#include "engine/dough/window.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <cmath>

namespace loafwright::dough {
namespace {

constexpr std::array families{DoughFamily::lean,
                              DoughFamily::enriched,
                              DoughFamily::wholemeal_or_rye,
                              DoughFamily::sourdough_wheat};
constexpr std::array rises{Rise::first_rise, Rise::final_prove};

TEST(window, the_stated_figures_hold_at_24_and_in_the_fridge) {
    const auto lean = usable_window(DoughFamily::lean, Rise::first_rise, Celsius(24.0));
    ASSERT_TRUE(lean);
    EXPECT_EQ(*lean, (Band<Minutes>{Minutes(15.0), Minutes(30.0), Minutes(60.0)}));
    // Shaped at most a day, otherwise two (household yeast guide; IREKS 6.3.1, read).
    const auto shaped = usable_window(DoughFamily::lean, Rise::final_prove, Celsius(4.0));
    const auto bulk = usable_window(DoughFamily::enriched, Rise::first_rise, Celsius(5.0));
    ASSERT_TRUE(shaped && bulk);
    EXPECT_NEAR(shaped->high.count(), 24.0 * 60.0, 1e-6);
    EXPECT_NEAR(bulk->high.count(), 48.0 * 60.0, 1e-6);
}

TEST(window, warmth_shortens_it_as_it_quickens_the_yeast) {
    // r(24)/r(28) = 0.79 and r(24)/r(20) = 1.35, computed from the curve.
    const auto at = [](double t) {
        return usable_window(DoughFamily::lean, Rise::first_rise, Celsius(t))->likely.count();
    };
    EXPECT_NEAR(at(28.0) / at(24.0), 0.79, 0.005);
    EXPECT_NEAR(at(20.0) / at(24.0), 1.35, 0.005);
    EXPECT_FALSE(usable_window(DoughFamily::lean, Rise::first_rise, Celsius(48.0)));
}

RC_GTEST_PROP(window, colder_is_never_shorter_and_never_a_step, ()) {
    const DoughFamily family = *rc::gen::elementOf(families);
    const Rise rise = *rc::gen::elementOf(rises);
    const double t = 0.01 * *rc::gen::inRange(-200, 4790);
    const auto colder = usable_window(family, rise, Celsius(t));
    const auto warmer = usable_window(family, rise, Celsius(t + 0.01));
    RC_ASSERT(colder && warmer);
    RC_ASSERT(colder->low >= warmer->low && colder->likely >= warmer->likely);
    RC_ASSERT(colder->high >= warmer->high);
    RC_ASSERT(colder->low <= colder->likely && colder->likely <= colder->high);
    // Half a per cent for a hundredth of a degree: in the cold it halves within 1.2 °C.
    RC_ASSERT(colder->likely.count() < 1.007 * warmer->likely.count());
}

} // namespace
} // namespace loafwright::dough
