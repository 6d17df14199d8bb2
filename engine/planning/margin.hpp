// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/chain.hpp"
#include "engine/quantity/tagged.hpp"

#include <cstdint>
#include <vector>

namespace loafwright::planning {

/// Of the standard normal curve: the ninetieth percentile lies so many deviations from the middle.
inline constexpr double ninetieth_percentile = 1.2815515655446004;

/// How far a bake runs from its likely times, all steps together.
///
/// The rule: each step's low and high are its tenth and ninetieth percentile, its likely is the
/// middle, and steps are independent. On each side of the middle a step is taken as half of a
/// normal curve, of deviation d = distance / 1.2816. With d_low and d_high, its mean lies (d_high -
/// d_low) / sqrt(2 pi) after likely and its mean square is (d_low² + d_high²) / 2. Means and
/// variances add up; the sum is read as a normal curve. A wait whose length the plan chooses
/// (`stretch`) does not vary.
struct Spread {
    std::int64_t early = 0; // tenth percentile minus likely, <= 0
    std::int64_t margin =
        0; // eightieth percentile minus likely, >= 0: four bakes in five are no later
    std::int64_t late = 0; // ninetieth percentile minus likely, >= margin
};

Spread spread_of(const std::vector<Band<std::int64_t>>& bands);

/// The spread of the moment at which the last heat ends (of everything where nothing is heated).
Spread spread_of(const BreadChain& chain);

} // namespace loafwright::planning
