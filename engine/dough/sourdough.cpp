// SPDX-License-Identifier: Apache-2.0
//
// Leaven: gas follows its yeast, acid its bacteria. The form and where its parameters come from
// stand in the header. Rates hold for a medium with food and without much acid; the end of growth
// in an exhausted leaven is left out, as the questions asked here end at the peak. Against the
// round figures that Gänzle himself gave in 1998 the curves are off by up to 0.26 of the optimum.
#include "engine/dough/sourdough.hpp"

#include "engine/dough/bands.hpp"
#include "engine/dough/between_rows.hpp"
#include "engine/dough/curve.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loafwright::dough {

namespace {

constexpr double minutes_an_hour = 60.0;

constexpr std::array<Row, 3> salt_low{{{0.0, 1.0}, {2.0, 0.3}, {3.5, 0.0}}};
constexpr std::array<Row, 3> salt_likely{{{0.0, 1.0}, {2.0, 0.5}, {4.0, 0.0}}};
constexpr std::array<Row, 3> salt_high{{{0.0, 1.0}, {2.0, 0.7}, {4.5, 0.0}}};

} // namespace

PerHour growth_rate(const LeavenOrganism& organism, Celsius temperature) {
    const double x = (organism.hottest - temperature).count();
    if (!(x > 0.0)) {
        return PerHour(0.0);
    }
    return organism.a * (std::pow(x, organism.b) * std::exp(-organism.c * x));
}

Band<Minutes> waiting_time(LeavenState state) {
    return state == LeavenState::ripe
               ? Band<Minutes>{Minutes(30.0), Minutes(60.0), Minutes(120.0)}
               : Band<Minutes>{Minutes(60.0), Minutes(150.0), Minutes(300.0)};
}

Minutes growth_time(double inoculum, PerHour mu) {
    return Minutes(minutes_an_hour * std::log(1.0 / inoculum) / mu.count());
}

std::optional<Band<Minutes>> ripening_time(double inoculum, Celsius leaven, LeavenState state) {
    const PerHour mu = growth_rate(yeast_of_leaven, leaven);
    if (!(inoculum > 0.0 && inoculum <= 1.0) || mu <= PerHour(0.0)) {
        return std::nullopt;
    }
    const Minutes likely = growth_time(inoculum, mu);
    const double doubt = uncertainty_of(Curve::leaven_yeast, leaven);
    return added<Minutes>(
        {waiting_time(state), {likely * (1.0 - doubt), likely, likely * (1.0 + doubt)}});
}

std::optional<Minutes>
rise_with_leaven(Minutes stated, double stated_share, double share, Celsius dough) {
    const double mu = growth_rate(yeast_of_leaven, dough).count() / minutes_an_hour;
    if (!(stated_share > 0.0 && share > 0.0) || mu <= 0.0) {
        return std::nullopt;
    }
    if (share == stated_share) {
        return stated;
    }
    return Minutes(std::log1p(stated_share / share * std::expm1(mu * stated.count())) / mu);
}

Band<double> salt_on_souring(BakersPercent salt) {
    const double at = salt.count();
    return {between_rows(salt_low, at), between_rows(salt_likely, at), between_rows(salt_high, at)};
}

} // namespace loafwright::dough
