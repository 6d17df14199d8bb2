// SPDX-License-Identifier: Apache-2.0
//
// What salt, sugar, fat, milk, egg and wholemeal do to the rate of gas. Likely values are straight
// lines between the rows below; each header comment says where its rows come from. The band of a
// factor f is f -+ w (1 - f), w at least 0.3, cut off above 0.02.
#include "engine/dough/composition.hpp"

#include "engine/dough/bands.hpp"
#include "engine/dough/between_rows.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loafwright::dough {

namespace {

constexpr double least_width = 0.3;
constexpr double least_factor = 0.02;

constexpr std::array<Row, 2> salt_rows{{{0.0, 1.0}, {5.0, 0.5}}};
constexpr std::array<Row, 5> sugar_rows{
    {{0.0, 1.0}, {5.0, 1.0}, {10.0, 0.7}, {20.0, 0.4}, {30.0, 0.2}}};
constexpr std::array<Row, 5> sugar_rows_osmotolerant{
    {{0.0, 1.0}, {5.0, 1.0}, {10.0, 0.95}, {20.0, 0.8}, {30.0, 0.5}}};
// On top of the width above: what 5 % did in the one test, and that sugar may help as well.
constexpr std::array<Row, 3> sugar_below{{{0.0, 0.0}, {5.0, 0.2}, {10.0, 0.0}}};
constexpr std::array<Row, 3> sugar_above{{{0.0, 0.0}, {2.5, 0.05}, {10.0, 0.0}}};
constexpr std::array<Row, 4> fat_rows{{{0.0, 1.0}, {5.0, 1.0}, {10.0, 0.95}, {20.0, 0.8}}};
constexpr std::array<Row, 2> milk_rows{{{0.0, 1.0}, {60.0, 0.95}}};
constexpr std::array<Row, 2> egg_rows{{{0.0, 1.0}, {25.0, 0.9}}};
constexpr std::array<Row, 2> wholegrain_rows{{{0.0, 1.0}, {100.0, 1.2}}};

constexpr double salt_free_of_sugar = 2.0;
constexpr double sugar_a_salt = 5.0;

Band<double> around(double likely, double width) {
    const double off = width * std::abs(1.0 - likely);
    return {std::max(least_factor, likely - off), likely, likely + off};
}

} // namespace

Band<double> salt_factor(BakersPercent salt) {
    return around(between_rows(salt_rows, salt.count()), 0.5);
}

Band<double> sugar_factor(BakersPercent sugar, BakersPercent salt, YeastStrain strain) {
    // Salt that draws water in a dough without sugar is in `salt_factor` already.
    const double drawn = sugar_a_salt * std::max(0.0, salt.count() - salt_free_of_sugar);
    const double at = sugar.count() > 0.0 ? sugar.count() + std::min(sugar.count(), drawn) : 0.0;
    Band<double> factor = around(
        between_rows(strain == YeastStrain::ordinary ? sugar_rows : sugar_rows_osmotolerant, at),
        least_width);
    factor.low = std::max(least_factor, factor.low - between_rows(sugar_below, at));
    factor.high += between_rows(sugar_above, at);
    return factor;
}

Band<double> fat_factor(BakersPercent fat) {
    return around(between_rows(fat_rows, fat.count()), 0.5);
}

Band<double> milk_factor(BakersPercent milk) {
    return around(between_rows(milk_rows, milk.count()), 1.0);
}

Band<double> egg_factor(BakersPercent egg) {
    return around(between_rows(egg_rows, egg.count()), 0.5);
}

Band<double> wholegrain_factor(BakersPercent wholegrain) {
    return around(between_rows(wholegrain_rows, wholegrain.count()), 0.5);
}

Band<double> rate_factor(const Composition& composition, YeastStrain strain) {
    return product_of({salt_factor(composition.salt),
                       sugar_factor(composition.sugar, composition.salt, strain),
                       fat_factor(composition.fat),
                       milk_factor(composition.milk),
                       egg_factor(composition.egg),
                       wholegrain_factor(composition.wholegrain)});
}

} // namespace loafwright::dough
