// SPDX-License-Identifier: Apache-2.0
//
// "By" means by. The composed band of a bake is narrower than the sum of its steps' bands, because
// not everything is slow on the same day; adding highs would send people to bed with a loaf that
// has been cold for hours.
#include "engine/planning/margin.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::planning {

namespace {

constexpr double eightieth = 0.8416212335729143; // standard normal quantile
constexpr double one_over_root_two_pi = 0.3989422804014327;

std::int64_t up(double minutes) {
    return static_cast<std::int64_t>(std::ceil(minutes - 1e-9));
}

} // namespace

Spread spread_of(const std::vector<Band<std::int64_t>>& bands) {
    double mean = 0.0;
    double variance = 0.0;
    for (const Band<std::int64_t>& band : bands) {
        const double low = static_cast<double>(band.likely - band.low) / ninetieth_percentile;
        const double high = static_cast<double>(band.high - band.likely) / ninetieth_percentile;
        const double shift = (high - low) * one_over_root_two_pi;
        mean += shift;
        variance += (low * low + high * high) / 2.0 - shift * shift;
    }
    const double deviation = std::sqrt(std::max(0.0, variance));
    Spread spread;
    spread.margin = std::max<std::int64_t>(0, up(mean + eightieth * deviation));
    spread.late = std::max(spread.margin, up(mean + ninetieth_percentile * deviation));
    spread.early = std::min<std::int64_t>(0, up(mean - ninetieth_percentile * deviation));
    return spread;
}

Spread spread_of(const BreadChain& chain) {
    std::vector<Band<std::int64_t>> bands;
    for (std::size_t k = 0; k < chain.tail; ++k) {
        if (!chain.atoms[k].stretch) {
            bands.push_back(chain.atoms[k].minutes);
        }
    }
    return spread_of(bands);
}

} // namespace loafwright::planning
