// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/heat_units.hpp"

namespace loafwright::dough {

/// Air pressure at a height above the sea on an average day.
///
/// Source:   the ICAO standard atmosphere below 11 km: 101325 Pa and 15 °C at the sea, 6.5 K colder
///           a kilometre. Weather moves the true pressure by ±3 %, the boiling point by ±0.9 K.
/// Needs:    -500 m <= height <= 11000 m.
/// Promises: falls with height.
Pascals air_pressure(Metres height);

/// Where pure water boils at a height above the sea: close to 1 K less for each 300 m.
///
/// Needs:    as `air_pressure`.
/// Promises: falls with height; 99.97 °C at the sea.
Celsius boiling_point_at(Metres height);

/// A core temperature that is right at the sea, told for a place where water boils lower: as far
/// below the boiling point here as it was below 100 °C there.
Celsius core_target_at(Celsius at_the_sea, Celsius boiling_point);

} // namespace loafwright::dough
