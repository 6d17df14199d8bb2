// SPDX-License-Identifier: Apache-2.0
//
// Moments of the two-piece normal Y = m + s1 max(Z, 0) + s2 min(Z, 0), Z standard normal. With
// s = (s1 + s2)/2, d = (s1 - s2)/2 and p = 1/sqrt(2 pi), from E[max(Z,0)] = p, E[max(Z,0)^2] = 1/2
// and E[max(Z,0)^3] = 2p:
//
//   mean      m + 2 p d
//   variance  s^2 + d^2 (1 - 4 p^2)
//   third     p d (6 s^2 + d^2 (16 p^2 - 2))
//
// All three add up over independent terms, and adding makes a sum less lopsided, so the family
// always has a member with the summed moments; it is found by bisection on d, in which the third
// moment grows at fixed variance. Matching moments is common practice in cost and time estimates;
// this family was chosen because its percentiles are the band itself.
#include "engine/dough/bands.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::dough {

namespace {

constexpr double tenth = 1.2815515655446004; // the ninetieth percentile of the standard normal
constexpr double p = 0.3989422804014327;     // 1/sqrt(2 pi)

struct Moments {
    double mean = 0.0;
    double variance = 0.0;
    double third = 0.0;
};

double third_moment(double s_squared, double d) {
    return p * d * (6.0 * s_squared + d * d * (16.0 * p * p - 2.0));
}

Moments moments_of(const Band<double>& band) {
    const double above = (band.high - band.likely) / tenth;
    const double below = (band.likely - band.low) / tenth;
    const double s = (above + below) / 2.0;
    const double d = (above - below) / 2.0;
    return {band.likely + 2.0 * p * d, s * s + d * d * (1.0 - 4.0 * p * p), third_moment(s * s, d)};
}

Band<double> band_of(const Moments& moments) {
    // s >= |d| bounds d.
    double most = std::sqrt(moments.variance / (2.0 - 4.0 * p * p));
    double least = -most;
    const auto s_squared = [&](double d) {
        return std::max(0.0, moments.variance - d * d * (1.0 - 4.0 * p * p));
    };
    for (int halving = 0; halving < 100; ++halving) {
        const double middle = (least + most) / 2.0;
        (third_moment(s_squared(middle), middle) < moments.third ? least : most) = middle;
    }
    const double d = (least + most) / 2.0;
    const double s = std::sqrt(s_squared(d));
    const double likely = moments.mean - 2.0 * p * d;
    return {likely - tenth * std::max(0.0, s - d), likely, likely + tenth * std::max(0.0, s + d)};
}

} // namespace

Band<double> sum_of(const std::vector<Band<double>>& bands) {
    Moments total;
    double fixed = 0.0;
    const Band<double>* only = nullptr;
    int uncertain = 0;
    for (const Band<double>& band : bands) {
        if (band.low == band.high) {
            fixed += band.likely;
            continue;
        }
        const Moments moments = moments_of(band);
        total.mean += moments.mean;
        total.variance += moments.variance;
        total.third += moments.third;
        only = &band;
        ++uncertain;
    }
    if (uncertain == 0) {
        return exactly(fixed);
    }
    const Band<double> sum = uncertain == 1 ? *only : band_of(total);
    return {sum.low + fixed, sum.likely + fixed, sum.high + fixed};
}

Band<double> product_of(const std::vector<Band<double>>& factors) {
    std::vector<Band<double>> logarithms;
    double fixed = 1.0;
    const Band<double>* only = nullptr;
    for (const Band<double>& factor : factors) {
        if (factor.low == factor.high) {
            fixed *= factor.likely;
            continue;
        }
        only = &factor;
        logarithms.push_back(
            {std::log(factor.low), std::log(factor.likely), std::log(factor.high)});
    }
    if (logarithms.empty()) {
        return exactly(fixed);
    }
    if (logarithms.size() == 1) {
        return {only->low * fixed, only->likely * fixed, only->high * fixed};
    }
    const Band<double> sum = sum_of(logarithms);
    return {std::exp(sum.low) * fixed, std::exp(sum.likely) * fixed, std::exp(sum.high) * fixed};
}

Band<double> joined(const std::vector<Band<double>>& one_at_a_time) {
    if (one_at_a_time.empty()) {
        return exactly(0.0);
    }
    const double likely = one_at_a_time.front().likely;
    std::vector<Band<double>> ratios;
    for (const Band<double>& band : one_at_a_time) {
        const auto [low, high] = std::minmax(band.low, band.high);
        ratios.push_back({std::min(1.0, low / likely), 1.0, std::max(1.0, high / likely)});
    }
    const Band<double> ratio = product_of(ratios);
    return {likely * std::min(1.0, ratio.low), likely, likely * std::max(1.0, ratio.high)};
}

} // namespace loafwright::dough
