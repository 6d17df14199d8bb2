// SPDX-License-Identifier: Apache-2.0
//
// Yeast against temperature: the cardinal temperature model with inflection of Rosso, Lobry and
// Flandrois, Journal of Theoretical Biology 162 (1993) 447-463 (the formula was read as given in
// two open R packages):
//
//   r(T) = (T - Tmax)(T - Tmin)^2 / {(Topt - Tmin)[(Topt - Tmin)(T - Topt) - (Topt - Tmax)(Topt +
//   Tmin - 2T)]}
//
// between Tmin and Tmax, and 0 outside. The three temperatures are our choice for gas in dough:
// -1, 37.5 and 48 °C. The optimum lies where trade texts put it (32-40 °C), and against the growth
// that Gause measured in 1932 between 6 and 41 °C the ratios come out within a third, too quick
// below 8 °C. Only ratios of rates are used: the recipe's own time says how lively its dough is.
#include "engine/dough/fermentation.hpp"

#include "engine/dough/between_rows.hpp"

#include <algorithm>
#include <array>

namespace loafwright::dough {

namespace {

// Assumed, from how far the model's ratios are from the measured growth in each range. Between the
// ranges the share runs in a straight line, so that a tenth of a degree is never a step.
constexpr std::array<Row, 6> uncertainties{
    {{5.0, 0.50}, {8.0, 0.30}, {15.0, 0.30}, {18.0, 0.15}, {32.0, 0.15}, {35.0, 0.30}}};

} // namespace

double relative_rate(const CardinalTemperatures& set, Celsius temperature) {
    const double t = temperature.degrees();
    const double coldest = set.coldest.degrees();
    const double best = set.best.degrees();
    const double hottest = set.hottest.degrees();
    if (!(t > coldest && t < hottest)) {
        return 0.0;
    }
    const double numerator = (t - hottest) * (t - coldest) * (t - coldest);
    const double denominator = (best - coldest) * ((best - coldest) * (t - best) -
                                                   (best - hottest) * (best + coldest - 2.0 * t));
    return std::clamp(numerator / denominator, 0.0, 1.0);
}

double relative_rate(Celsius dough) {
    return relative_rate(gas_in_dough, dough);
}

double transfer_uncertainty(Celsius dough) {
    return between_rows(uncertainties, dough.degrees());
}

double transfer_uncertainty(Celsius written_for, Celsius here) {
    return std::max(transfer_uncertainty(written_for), transfer_uncertainty(here));
}

std::optional<Band<Minutes>> transferred(Minutes stated, Celsius written_for, Celsius here) {
    const double rate_there = relative_rate(written_for);
    const double rate_here = relative_rate(here);
    if (rate_there <= 0.0 || rate_here <= 0.0) {
        return std::nullopt;
    }
    const Minutes likely = written_for == here ? stated : stated * (rate_there / rate_here);
    const double off = transfer_uncertainty(written_for, here);
    return Band<Minutes>{likely * (1.0 - off), likely, likely * (1.0 + off)};
}

} // namespace loafwright::dough
