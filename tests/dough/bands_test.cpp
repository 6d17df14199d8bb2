// SPDX-License-Identifier: Apache-2.0
//
// Composed bands against drawing: each band as a two-piece normal with the band's own percentiles,
// 400 000 draws from a fixed seed.
#include "engine/dough/bands.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

namespace loafwright::dough {
namespace {

using Bands = std::vector<Band<double>>;

double draw(const Band<double>& band, double z) {
    const double width = z > 0.0 ? band.high - band.likely : band.likely - band.low;
    return band.likely + z * width / 1.2815515655446004;
}

/// Tenth, fiftieth and ninetieth percentile of `combine` over draws of all bands.
template <typename Combine>
Band<double> drawn(const Bands& bands, const Combine& combine) {
    std::mt19937_64 random(1932);
    std::normal_distribution<double> normal;
    std::vector<double> results(400000);
    for (double& result : results) {
        std::vector<double> values;
        for (const Band<double>& band : bands) {
            values.push_back(draw(band, normal(random)));
        }
        result = combine(values);
    }
    std::sort(results.begin(), results.end());
    return {results[results.size() / 10],
            results[results.size() / 2],
            results[results.size() * 9 / 10]};
}

double total(const std::vector<double>& values) {
    double sum = 0.0;
    for (const double value : values) {
        sum += value;
    }
    return sum;
}

TEST(bands, a_sum_has_the_percentiles_that_drawing_gives) {
    for (const Bands& bands : {Bands{{30, 60, 120}, {60, 90, 120}, {35, 50, 60}},
                               Bands{{0, 10, 60}, {5, 10, 15}},
                               Bands{{1, 2, 3}, {1, 2, 3}, {1, 2, 3}, {1, 2, 3}, {1, 2, 3}}}) {
        const Band<double> ours = sum_of(bands);
        const Band<double> theirs = drawn(bands, total);
        const double width = theirs.high - theirs.low;
        EXPECT_NEAR(ours.low, theirs.low, 0.04 * width);
        EXPECT_NEAR(ours.likely, theirs.likely, 0.04 * width);
        EXPECT_NEAR(ours.high, theirs.high, 0.04 * width);
    }
}

TEST(bands, a_product_has_the_percentiles_that_drawing_gives) {
    for (const Bands& bands : {Bands{{0.6, 1.0, 1.6}, {0.85, 1.0, 1.15}},
                               Bands{{0.5, 1.0, 1.05}, {0.9, 1.0, 2.0}, {0.7, 0.8, 0.9}}}) {
        Bands logarithms;
        for (const Band<double>& band : bands) {
            logarithms.push_back({std::log(band.low), std::log(band.likely), std::log(band.high)});
        }
        const Band<double> ours = product_of(bands);
        const Band<double> theirs = drawn(logarithms, total);
        EXPECT_NEAR(std::log(ours.low), theirs.low, 0.04 * (theirs.high - theirs.low));
        EXPECT_NEAR(std::log(ours.likely), theirs.likely, 0.04 * (theirs.high - theirs.low));
        EXPECT_NEAR(std::log(ours.high), theirs.high, 0.04 * (theirs.high - theirs.low));
    }
}

TEST(bands, bands_with_one_side_only_are_met_less_closely) {
    // Half of all draws stand still, a shape that no member of the family has.
    for (const Bands& bands :
         {Bands{{10, 10, 40}, {20, 20, 50}, {0, 30, 30}}, Bands{{1, 1, 3}, {1, 1, 2}}}) {
        const Band<double> ours = sum_of(bands);
        const Band<double> theirs = drawn(bands, total);
        const double width = theirs.high - theirs.low;
        EXPECT_NEAR(ours.low, theirs.low, 0.1 * width);
        EXPECT_NEAR(ours.likely, theirs.likely, 0.1 * width);
        EXPECT_NEAR(ours.high, theirs.high, 0.1 * width);
    }
}

TEST(bands, two_even_bands_of_ten_are_fourteen_wide) {
    // Standard deviations of independent terms add by squares.
    const Band<double> sum = sum_of({{90, 100, 110}, {90, 100, 110}});
    EXPECT_NEAR(sum.likely, 200.0, 1e-9);
    EXPECT_NEAR(sum.high, 200.0 + 10.0 * std::sqrt(2.0), 1e-9);
    EXPECT_NEAR(sum.low, 200.0 - 10.0 * std::sqrt(2.0), 1e-9);
}

TEST(bands, one_band_alone_and_certain_ones_change_nothing) {
    EXPECT_EQ(sum_of({{1, 2, 9}}), (Band<double>{1, 2, 9}));
    EXPECT_EQ(sum_of({{1, 2, 9}, exactly(3.0)}), (Band<double>{4, 5, 12}));
    EXPECT_EQ(product_of({{1, 2, 9}, exactly(2.0)}), (Band<double>{2, 4, 18}));
    EXPECT_EQ(sum_of({}), exactly(0.0));
    EXPECT_EQ(product_of({}), exactly(1.0));
    EXPECT_EQ(scaled(exactly(Minutes(60.0)), {{0.5, 1.0, 2.0}}).high, Minutes(120.0));
}

TEST(bands, joined_causes_keep_the_likely_answer_whichever_way_they_run) {
    const Band<double> one = joined({{80, 100, 125}, {125, 100, 80}});
    EXPECT_DOUBLE_EQ(one.likely, 100.0);
    EXPECT_NEAR(std::log(one.high / 100.0), std::log(1.25) * std::sqrt(2.0), 1e-9);
    EXPECT_NEAR(std::log(100.0 / one.low), std::log(1.25) * std::sqrt(2.0), 1e-9);
}

Bands some_bands() {
    Bands bands;
    const int count = *rc::gen::inRange(1, 7);
    for (int i = 0; i < count; ++i) {
        const double low = *rc::gen::inRange(1, 1000);
        const double likely = low + *rc::gen::inRange(0, 1000);
        bands.push_back({low, likely, likely + *rc::gen::inRange(0, 1000)});
    }
    return bands;
}

RC_GTEST_PROP(bands, come_out_in_order_and_in_any_order, ()) {
    Bands bands = some_bands();
    const Band<double> sum = sum_of(bands);
    const Band<double> product = product_of(bands);
    RC_ASSERT(sum.low <= sum.likely && sum.likely <= sum.high);
    RC_ASSERT(0.0 < product.low && product.low <= product.likely && product.likely <= product.high);
    std::reverse(bands.begin(), bands.end());
    const Band<double> other = sum_of(bands);
    RC_ASSERT(std::abs(other.low - sum.low) < 1e-6 && std::abs(other.high - sum.high) < 1e-6);
}

RC_GTEST_PROP(bands, are_never_wider_together_than_their_ends_added, ()) {
    const Bands bands = some_bands();
    double ends = 0.0;
    for (const Band<double>& band : bands) {
        ends += band.high - band.low;
    }
    const Band<double> sum = sum_of(bands);
    RC_ASSERT(sum.high - sum.low <= ends * (1.0 + 1e-9));
}

} // namespace
} // namespace loafwright::dough
