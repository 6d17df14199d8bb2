// SPDX-License-Identifier: Apache-2.0
//
// The window after "ready". The figures are practice, not measurement; weak flour, a slack dough
// and warmth shorten them, a knock-back starts them again. Sourdough is taken along baker's yeast's
// curve here: what ends its window in warmth is acid and enzymes, which do not slow above 27 °C.
#include "engine/dough/window.hpp"

#include "engine/dough/fermentation.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::dough {

namespace {

constexpr Celsius stated_at{24.0};
constexpr Celsius from_here_along_the_rate{12.0};
constexpr Celsius fridge{5.0};

Band<Minutes> minutes(double low, double likely, double high) {
    return {Minutes(low), Minutes(likely), Minutes(high)};
}

Band<Minutes> at_24(DoughFamily family, Rise rise) {
    const bool first = rise == Rise::first_rise;
    switch (family) {
    case DoughFamily::lean:
        return first ? minutes(15.0, 30.0, 60.0) : minutes(5.0, 15.0, 30.0);
    case DoughFamily::enriched:
        return first ? minutes(20.0, 40.0, 75.0) : minutes(10.0, 25.0, 45.0);
    case DoughFamily::wholemeal_or_rye:
        return first ? minutes(10.0, 20.0, 40.0) : minutes(5.0, 10.0, 20.0);
    case DoughFamily::sourdough_wheat:
        return minutes(20.0, 45.0, 90.0);
    }
    return minutes(15.0, 30.0, 60.0);
}

Band<Minutes> in_fridge(Rise rise) {
    return rise == Rise::first_rise ? minutes(720.0, 1440.0, 2880.0)
                                    : minutes(480.0, 840.0, 1440.0);
}

} // namespace

std::optional<Band<Minutes>> usable_window(DoughFamily family, Rise rise, Celsius dough) {
    if (dough >= gas_in_dough.hottest) {
        return std::nullopt;
    }
    const Celsius along = std::clamp(dough, from_here_along_the_rate, gas_in_dough.best);
    const double stretch = relative_rate(stated_at) / relative_rate(along);
    const Band<Minutes> stated = at_24(family, rise);
    const Band<Minutes> warm{stated.low * stretch, stated.likely * stretch, stated.high * stretch};
    if (dough >= from_here_along_the_rate) {
        return warm;
    }
    const double share = std::min(1.0,
                                  (from_here_along_the_rate - dough).count() /
                                      (from_here_along_the_rate - fridge).count());
    const Band<Minutes> cold = in_fridge(rise);
    const auto between = [share](Minutes a, Minutes b) { return a * std::pow(b / a, share); };
    return Band<Minutes>{between(warm.low, cold.low),
                         between(warm.likely, cold.likely),
                         between(warm.high, cold.high)};
}

} // namespace loafwright::dough
