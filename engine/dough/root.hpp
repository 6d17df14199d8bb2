// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>

namespace loafwright::dough {

/// Where a function crosses zero between two places.
///
/// Regula falsi with the halving of the end that stays (the Illinois rule), for smooth functions
/// that are near to straight.
///
/// Needs:    function(low) and function(high) of unlike sign; otherwise the end nearer to zero is
///           given back.
/// Promises: within `tolerance` of the crossing, or what 60 steps give; calls nothing else.
template <typename Function>
double crossing(Function&& function, double low, double high, double tolerance) {
    double at_low = function(low);
    double at_high = function(high);
    if ((at_low > 0.0) == (at_high > 0.0)) {
        return std::abs(at_low) < std::abs(at_high) ? low : high;
    }
    double last = low;
    for (int i = 0; i < 60; ++i) {
        const double middle = (low * at_high - high * at_low) / (at_high - at_low);
        if (std::abs(middle - last) < tolerance) {
            return middle;
        }
        const double at_middle = function(middle);
        if ((at_middle > 0.0) == (at_high > 0.0)) {
            at_low *= 0.5;
        } else {
            low = high;
            at_low = at_high;
        }
        high = middle;
        at_high = at_middle;
        last = middle;
    }
    return last;
}

} // namespace loafwright::dough
