// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

namespace loafwright::dough {

/// Units that only the heat models need. Inside their formulas everything is SI and the unit stands
/// in the name; these types guard what crosses a header.
using Pascals = Tagged<struct PascalsTag>;
using Watts = Tagged<struct WattsTag>;
using WattsPerKelvin = Tagged<struct WattsPerKelvinTag>;
using JoulesPerKelvin = Tagged<struct JoulesPerKelvinTag>;
using KilogramsPerCubicMetre = Tagged<struct KilogramsPerCubicMetreTag>;

inline constexpr double kelvin_at_zero_celsius = 273.15;

} // namespace loafwright::dough
