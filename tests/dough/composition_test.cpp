// SPDX-License-Identifier: Apache-2.0
#include "engine/dough/composition.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <cmath>
#include <functional>

namespace loafwright::dough {
namespace {

using Factor = std::function<Band<double>(BakersPercent)>;

std::array<Factor, 7> factors() {
    return {salt_factor,
            [](BakersPercent sugar) {
                return sugar_factor(sugar, BakersPercent(1.8), YeastStrain::ordinary);
            },
            [](BakersPercent sugar) {
                return sugar_factor(sugar, BakersPercent(2.4), YeastStrain::osmotolerant);
            },
            fat_factor,
            milk_factor,
            egg_factor,
            wholegrain_factor};
}

TEST(composition, nothing_in_the_dough_changes_nothing) {
    for (const Factor& factor : factors()) {
        EXPECT_EQ(factor(BakersPercent(0.0)), exactly(1.0));
    }
    EXPECT_EQ(rate_factor({}, YeastStrain::ordinary), exactly(1.0));
}

TEST(composition, sugar_slows_ordinary_yeast_and_the_other_half_as_much) {
    // Common figures from memory: 0.7, 0.4, 0.2; osmotolerant yeast about double at 20 %.
    const auto likely = [](double sugar, YeastStrain strain) {
        return sugar_factor(BakersPercent(sugar), BakersPercent(0.0), strain).likely;
    };
    EXPECT_DOUBLE_EQ(likely(10.0, YeastStrain::ordinary), 0.7);
    EXPECT_DOUBLE_EQ(likely(20.0, YeastStrain::ordinary), 0.4);
    EXPECT_DOUBLE_EQ(likely(30.0, YeastStrain::ordinary), 0.2);
    EXPECT_DOUBLE_EQ(likely(20.0, YeastStrain::osmotolerant) / likely(20.0, YeastStrain::ordinary),
                     2.0);
}

TEST(composition, salt_above_two_per_cent_makes_sugar_worse) {
    const auto with_salt = [](double salt) {
        return sugar_factor(BakersPercent(10.0), BakersPercent(salt), YeastStrain::ordinary).likely;
    };
    EXPECT_DOUBLE_EQ(with_salt(1.5), with_salt(2.0));
    EXPECT_LT(with_salt(2.5), with_salt(2.0));
}

TEST(composition, a_brioche_is_slower_than_a_tin_loaf) {
    const Composition tin{BakersPercent(1.8), BakersPercent(2.0), BakersPercent(3.0), {}, {}, {}};
    const Composition brioche{BakersPercent(1.8),
                              BakersPercent(12.0),
                              BakersPercent(50.0),
                              BakersPercent(10.0),
                              BakersPercent(50.0),
                              {}};
    EXPECT_LT(rate_factor(brioche, YeastStrain::ordinary).likely,
              0.75 * rate_factor(tin, YeastStrain::ordinary).likely);
}

RC_GTEST_PROP(composition, every_band_is_at_least_three_tenths_of_its_distance_from_one_wide, ()) {
    const auto all = factors();
    const Factor& factor = all.at(static_cast<std::size_t>(*rc::gen::inRange(0, 7)));
    const Band<double> band = factor(BakersPercent(0.1 * *rc::gen::inRange(0, 1000)));
    RC_ASSERT(0.0 < band.low && band.low <= band.likely && band.likely <= band.high);
    const double distance = std::abs(1.0 - band.likely);
    RC_ASSERT(band.high - band.likely >= 0.3 * distance - 1e-12);
    RC_ASSERT(band.likely - band.low >= std::min(0.3 * distance, band.likely - 0.02) - 1e-12);
}

RC_GTEST_PROP(composition, a_pinch_more_is_never_a_step, ()) {
    const auto all = factors();
    const Factor& factor = all.at(static_cast<std::size_t>(*rc::gen::inRange(0, 7)));
    const double at = 0.01 * *rc::gen::inRange(0, 5000);
    const Band<double> one = factor(BakersPercent(at));
    const Band<double> two = factor(BakersPercent(at + 0.01));
    RC_ASSERT(std::abs(two.low - one.low) < 2e-3);
    RC_ASSERT(std::abs(two.likely - one.likely) < 2e-3);
    RC_ASSERT(std::abs(two.high - one.high) < 2e-3);
}

} // namespace
} // namespace loafwright::dough
