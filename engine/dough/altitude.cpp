// SPDX-License-Identifier: Apache-2.0
//
// The barometric formula of the standard atmosphere (ICAO Doc 7488; US Standard Atmosphere 1976)
// for its lowest layer, p = p0 (1 - B z / T0)^5.25588, and the saturation line of water behind it.
#include "engine/dough/altitude.hpp"

#include "engine/dough/steam.hpp"

#include <cmath>

namespace loafwright::dough {

namespace {

constexpr double sea_pressure_pa = 101325.0;
constexpr double sea_kelvin = 288.15;
constexpr double kelvin_per_metre = 0.0065;
constexpr double exponent = 5.25588;

} // namespace

Pascals air_pressure(Metres height) {
    const double share = 1.0 - kelvin_per_metre * height.count() / sea_kelvin;
    return Pascals(sea_pressure_pa * std::pow(share, exponent));
}

Celsius boiling_point_at(Metres height) {
    return boiling_point(air_pressure(height));
}

Celsius core_target_at(Celsius at_the_sea, Celsius boiling_point) {
    return boiling_point - (Celsius(100.0) - at_the_sea);
}

} // namespace loafwright::dough
