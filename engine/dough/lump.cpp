// SPDX-License-Identifier: Apache-2.0
//
// A lump as one temperature that runs exponentially towards its place. Real lumps cool from the
// outside: this mean reads up to 1.4 °C too warm in the first two hours of a 2 kg dough, and 0.3 °C
// at four (computed against the cylinder). Heat from fermentation, which slows cooling by 5 to 10
// %, is left out and inside the band.
#include "engine/dough/lump.hpp"

#include "engine/dough/bands.hpp"
#include "engine/dough/between_rows.hpp"
#include "engine/dough/progress.hpp"
#include "engine/dough/temperature_history.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace loafwright::dough {

namespace {

constexpr double minutes_an_hour = 60.0;

// Hours by kilograms at 8 W/(m2 K), computed.
constexpr std::array<Row, 4> fresh_hours{{{0.5, 1.69}, {1.0, 2.22}, {1.5, 2.63}, {2.0, 2.96}}};
constexpr std::array<Row, 4> doubled_hours{{{0.5, 1.23}, {1.0, 1.67}, {1.5, 2.01}, {2.0, 2.30}}};
// Factor by W/(m2 K), the middles of 1.35 to 1.5 and 0.73 to 0.80, computed.
constexpr std::array<Row, 3> surface_factor{{{5.0, 1.425}, {8.0, 1.0}, {12.0, 0.765}}};

template <std::size_t Size>
double along_logarithms(std::array<Row, Size> rows, double at) {
    for (Row& row : rows) {
        row = {std::log(row.at), std::log(row.value)};
    }
    return std::exp(along_rows(rows, std::log(at)));
}

Band<Minutes> minutes_band(const Band<double>& band) {
    return {Minutes(band.low), Minutes(band.likely), Minutes(band.high)};
}

} // namespace

Band<Minutes> time_constant(const Lump& lump) {
    const double kilograms = lump.mass.count() / 1000.0;
    const double fresh = along_logarithms(fresh_hours, kilograms);
    const double doubled = along_logarithms(doubled_hours, kilograms);
    const double risen = std::clamp(lump.risen, 0.0, 1.0);
    const double hours = fresh * std::pow(doubled / fresh, risen) *
                         along_logarithms(surface_factor, lump.surface.count());
    const Minutes likely(minutes_an_hour * hours);
    return {likely * 0.6, likely, likely * 1.6};
}

Minutes ball_time_constant(Grams mass,
                           double density_kg_m3,
                           double conductivity_w_m_k,
                           KilojoulesPerKilogramKelvin heat,
                           WattsPerSquareMetreKelvin surface) {
    const double volume = mass.count() / 1000.0 / density_kg_m3;
    const double radius = std::cbrt(3.0 * volume / (4.0 * std::numbers::pi));
    const double biot = surface.count() * radius / conductivity_w_m_k;
    // z cos z - (1 - Bi) sin z falls from 0 through the root inside (0, pi).
    double least = 1e-9;
    double most = std::numbers::pi;
    for (int halving = 0; halving < 80; ++halving) {
        const double z = (least + most) / 2.0;
        (z * std::cos(z) - (1.0 - biot) * std::sin(z) > 0.0 ? least : most) = z;
    }
    const double root = (least + most) / 2.0;
    const double diffusivity = conductivity_w_m_k / (density_kg_m3 * 1000.0 * heat.count());
    return Minutes(radius * radius / (diffusivity * root * root) / 60.0);
}

std::optional<Band<Minutes>>
worth_of_chilling(const Chilling& chilling, Minutes time, Celsius warm, Curve curve) {
    const double rate_warm = rate_of(curve, warm);
    if (rate_warm <= 0.0) {
        return std::nullopt;
    }
    const auto worth = [&](Celsius fridge, Minutes tau) {
        return progress(in_one_place(chilling.dough, fridge, tau), Minutes(0.0), time, curve)
                   .count() /
               rate_warm;
    };
    const Band<Celsius>& fridge = chilling.fridge;
    const Band<Minutes>& tau = chilling.time_constant;
    const double likely = worth(fridge.likely, tau.likely);
    if (likely <= 0.0) {
        return exactly(Minutes(0.0));
    }
    const double doubt = std::max(
        uncertainty_of(curve, warm),
        uncertainty_along(
            in_one_place(chilling.dough, fridge.likely, tau.likely), Minutes(0.0), time, curve));
    return minutes_band(
        joined({{worth(fridge.low, tau.likely), likely, worth(fridge.high, tau.likely)},
                {worth(fridge.likely, tau.low), likely, worth(fridge.likely, tau.high)},
                {likely * (1.0 - doubt), likely, likely * (1.0 + doubt)}}));
}

std::optional<Band<Minutes>>
chilling_for(const Chilling& chilling, Minutes rise, Celsius warm, Curve curve) {
    const double rate_warm = rate_of(curve, warm);
    if (rate_warm <= 0.0) {
        return std::nullopt;
    }
    const auto needed = [&](Celsius fridge, Minutes tau) {
        return time_until(in_one_place(chilling.dough, fridge, tau),
                          Progress(rise.count() * rate_warm),
                          Minutes(0.0),
                          curve);
    };
    const Band<Celsius>& fridge = chilling.fridge;
    const Band<Minutes>& tau = chilling.time_constant;
    const auto likely = needed(fridge.likely, tau.likely);
    if (!likely) {
        return std::nullopt;
    }
    if (*likely <= Minutes(0.0)) {
        return exactly(Minutes(0.0));
    }
    const auto or_furthest = [](const std::optional<Minutes>& time) {
        return time.value_or(furthest).count();
    };
    const auto by_curve = transferred(
        rise, steady(warm), in_one_place(chilling.dough, fridge.likely, tau.likely), curve);
    const double middle = likely->count();
    std::vector<Band<double>> causes{{or_furthest(needed(fridge.high, tau.likely)),
                                      middle,
                                      or_furthest(needed(fridge.low, tau.likely))},
                                     {or_furthest(needed(fridge.likely, tau.high)),
                                      middle,
                                      or_furthest(needed(fridge.likely, tau.low))}};
    if (by_curve) {
        causes.push_back({by_curve->low.count(), middle, by_curve->high.count()});
    }
    Band<Minutes> time = minutes_band(joined(causes));
    time.high = std::max(time.likely, std::min(time.high, furthest));
    return time;
}

std::optional<Band<Minutes>>
time_to_reach(Celsius wanted, Celsius dough, Celsius place, const Band<Minutes>& time_constant) {
    const double from = (place - dough).count();
    const double to = (place - wanted).count();
    if (wanted == dough) {
        return exactly(Minutes(0.0));
    }
    if (from == 0.0 || to / from <= 0.0 || to / from >= 1.0) {
        return std::nullopt;
    }
    const double constants = std::log(from / to);
    return Band<Minutes>{time_constant.low * constants,
                         time_constant.likely * constants,
                         time_constant.high * constants};
}

} // namespace loafwright::dough
