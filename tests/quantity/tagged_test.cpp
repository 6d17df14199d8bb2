// SPDX-License-Identifier: Apache-2.0
//
// Arithmetic on quantities. What must not compile stands in must_not_compile/.
#include "engine/quantity/tagged.hpp"

#include <gtest/gtest.h>

#include <type_traits>

namespace loafwright {
namespace {

static_assert(sizeof(Grams) == sizeof(double));
static_assert(std::is_trivially_copyable_v<Grams>);
static_assert(!std::is_convertible_v<double, Grams>);
static_assert(!std::is_convertible_v<Grams, double>);
static_assert(!std::is_constructible_v<Grams, Minutes>);
static_assert(std::is_same_v<decltype(Celsius(20.0) - Celsius(5.0)), CelsiusDifference>);
static_assert(std::is_same_v<decltype(Grams(20.0) / Grams(5.0)), double>);

TEST(quantity, sums_differences_and_factors_keep_their_unit) {
    EXPECT_EQ(Grams(500.0) + Grams(10.0), Grams(510.0));
    EXPECT_EQ(Grams(500.0) - Grams(10.0), Grams(490.0));
    EXPECT_EQ(Grams(500.0) * 2.0, Grams(1000.0));
    EXPECT_EQ(2.0 * Grams(500.0), Grams(1000.0));
    EXPECT_EQ(Grams(500.0) / 4.0, Grams(125.0));
    EXPECT_EQ(Grams(330.0) / Grams(500.0), 0.66);
    Grams total(1.0);
    total += Grams(2.0);
    EXPECT_EQ(total, Grams(3.0));
}

TEST(quantity, amounts_compare_by_their_count) {
    EXPECT_LT(Minutes(10.0), Minutes(10.5));
    EXPECT_LE(Minutes(10.0), Minutes(10.0));
    EXPECT_GT(Minutes(11.0), Minutes(10.5));
    EXPECT_GE(Minutes(11.0), Minutes(11.0));
    EXPECT_NE(Minutes(11.0), Minutes(10.5));
    EXPECT_EQ(Minutes(), Minutes(0.0));
}

TEST(quantity, temperatures_differ_by_a_difference_and_move_by_one) {
    EXPECT_EQ(Celsius(220.0) - Celsius(200.0), CelsiusDifference(20.0));
    EXPECT_EQ(Celsius(200.0) + CelsiusDifference(20.0), Celsius(220.0));
    EXPECT_EQ(Celsius(220.0) - CelsiusDifference(20.0), Celsius(200.0));
    EXPECT_LT(Celsius(-1.0), Celsius(0.0));
}

TEST(quantity, a_band_from_a_range_has_its_middle_as_the_likely_value) {
    const Band<Minutes> band = between(Minutes(60.0), Minutes(90.0));
    EXPECT_EQ(band.low, Minutes(60.0));
    EXPECT_EQ(band.likely, Minutes(75.0));
    EXPECT_EQ(band.high, Minutes(90.0));
    EXPECT_EQ(between(Celsius(20.0), Celsius(24.0)).likely, Celsius(22.0));
    EXPECT_EQ(exactly(Minutes(5.0)), (Band<Minutes>{Minutes(5.0), Minutes(5.0), Minutes(5.0)}));
    EXPECT_NE(band, exactly(Minutes(75.0)));
}

} // namespace
} // namespace loafwright
