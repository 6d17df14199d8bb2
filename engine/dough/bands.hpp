// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

#include <vector>

namespace loafwright::dough {

/// Bands of independent causes, put together.
///
/// The rule. A band stands for a two-piece normal: below its middle a bell curve as wide as its
/// lower part says, above it one as wide as its upper part says, half of all cases on each side, so
/// that low, likely and high are the tenth, fiftieth and ninetieth percentile. Mean, variance and
/// third central moment of independent causes add; the answer is the two-piece normal with those
/// three sums. Products work the same way on logarithms. Two bands of 10 % are thus 14 % wide
/// together, not 20 %: bad luck seldom comes twice.
///
/// Against drawing, every end comes out within 4 % of the width; where bands have one side only
/// (low or high equal to likely), within 10 %.
///
/// Causes that are not independent (the same thermometer read twice) do not belong here.

/// The sum of independent amounts.
///
/// Needs:    low <= likely <= high in each.
/// Promises: low <= likely <= high; one band alone comes back as it is, and bands without width add
///           like numbers; the order of the bands does not matter but for the last digits. With
///           lopsided bands `likely` is the middle of the sum, which is not the sum of the middles.
Band<double> sum_of(const std::vector<Band<double>>& bands);

/// The product of independent factors.
///
/// Needs:    0 < low <= likely <= high in each.
/// Promises: as `sum_of`, on a scale of ratios; low > 0.
Band<double> product_of(const std::vector<Band<double>>& factors);

/// The same for amounts with a unit: one amount times independent factors.
///
/// Needs:    0 <= amount.low; an amount whose low end is 0 is only multiplied, end by end.
template <typename Quantity>
Band<Quantity> scaled(const Band<Quantity>& amount, const std::vector<Band<double>>& factors) {
    if (!(amount.low > Quantity(0.0))) {
        const Band<double> factor = product_of(factors);
        return {amount.low * factor.low, amount.likely * factor.likely, amount.high * factor.high};
    }
    std::vector<Band<double>> all = factors;
    all.push_back({amount.low.count(), amount.likely.count(), amount.high.count()});
    const Band<double> product = product_of(all);
    return {Quantity(product.low), Quantity(product.likely), Quantity(product.high)};
}

/// Independent amounts with a unit, added: stages that follow each other.
template <typename Quantity>
Band<Quantity> added(const std::vector<Band<Quantity>>& amounts) {
    std::vector<Band<double>> plain;
    plain.reserve(amounts.size());
    for (const Band<Quantity>& amount : amounts) {
        plain.push_back({amount.low.count(), amount.likely.count(), amount.high.count()});
    }
    const Band<double> sum = sum_of(plain);
    return {Quantity(sum.low), Quantity(sum.likely), Quantity(sum.high)};
}

/// One answer that hangs on several uncertain things: `one_at_a_time` holds the band of the answer
/// with one of them at its low, likely and high while all others stay likely.
///
/// Needs:    all bands positive and with the same likely value, ends in either order.
/// Promises: the product rule on the ratios to that value, which keeps `likely`; good where the
///           causes multiply, a first approximation elsewhere.
Band<double> joined(const std::vector<Band<double>>& one_at_a_time);

} // namespace loafwright::dough
