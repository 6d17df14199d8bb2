// SPDX-License-Identifier: Apache-2.0
//
// One lump, two parameters: the oven approaches the temperature at which its leak eats its power.
// It leaves out that the air is hot minutes before the walls, and that a thermostat swings by 10 to
// 17 K.
#include "engine/dough/oven.hpp"

#include <cmath>

namespace loafwright::dough {

namespace {

constexpr double still_w_m2k = 22.0;
constexpr double fan_w_m2k = 35.0;
constexpr CelsiusDifference fan_gain{20.0};

double time_constant_minutes(const OvenModel& oven) {
    return oven.capacity.count() / oven.leak.count() / 60.0;
}

// The time from one temperature to another in units of the time constant, towards `end`.
double time_constants(Celsius from, Celsius to, double end) {
    return std::log((end - from.degrees()) / (end - to.degrees()));
}

double hottest(const OvenModel& oven, Celsius room) {
    return room.degrees() + oven.power.count() / oven.leak.count();
}

} // namespace

std::optional<Minutes> heating_up(const OvenModel& oven, Celsius from, Celsius to, Celsius room) {
    if (from >= to) {
        return Minutes(0.0);
    }
    const double end = hottest(oven, room);
    if (to.degrees() >= end) {
        return std::nullopt;
    }
    return Minutes(time_constant_minutes(oven) * time_constants(from, to, end));
}

std::optional<Minutes> cooling_down(const OvenModel& oven, Celsius from, Celsius to, Celsius room) {
    if (to <= room) {
        return std::nullopt;
    }
    if (from <= to) {
        return Minutes(0.0);
    }
    return Minutes(time_constant_minutes(oven) * time_constants(from, to, room.degrees()));
}

std::optional<OvenModel>
measured_oven(const OvenModel& oven, Celsius from, Celsius to, Minutes measured, Celsius room) {
    const auto modelled = heating_up(oven, from, to, room);
    if (!modelled) {
        return std::nullopt;
    }
    OvenModel fitted = oven;
    fitted.capacity = oven.capacity * (measured / *modelled);
    return fitted;
}

Minutes lag(Grams mass, double specific_heat_j_kgk, double surface_m2, OvenAir air) {
    const double transfer = air == OvenAir::fan ? fan_w_m2k : still_w_m2k;
    const double kilograms = mass.count() / 1000.0;
    return Minutes(kilograms * specific_heat_j_kgk / (transfer * surface_m2) / 60.0);
}

Minutes usual_lag(Heavy thing, OvenAir air) {
    switch (thing) {
    case Heavy::stone: // cordierite, 2000 kg/m3, per square metre of plate
        return lag(Grams(30000.0), 900.0, 2.0, air);
    case Heavy::steel_plate: // 7850 kg/m3
        return lag(Grams(47100.0), 490.0, 2.0, air);
    case Heavy::lidded_pot:
        break;
    }
    return lag(Grams(5500.0), 460.0, 0.26, air);
}

// A first-order lag behind a ramp of slope 1/climb trails by lag/climb (1 - exp(-t/lag)); after the
// ramp that deficit dies out with the same lag.
Minutes hot_through(Minutes climb, Minutes lag, double share) {
    const double deficit = (lag / climb) * -std::expm1(-(climb / lag));
    const double allowed = 1.0 - share;
    return deficit <= allowed ? climb : climb + lag * std::log(deficit / allowed);
}

Celsius set_for(Celsius wanted, CelsiusDifference offset) {
    return wanted - offset;
}

Celsius truly_at(Celsius set, CelsiusDifference offset) {
    return set + offset;
}

Celsius with_fan(Celsius still) {
    return still - fan_gain;
}

Celsius without_fan(Celsius fan) {
    return fan + fan_gain;
}

} // namespace loafwright::dough
