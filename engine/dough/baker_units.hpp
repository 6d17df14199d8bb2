// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

namespace loafwright::dough {

/// Parts per hundred parts of all flour in the dough, by weight: 2 is 2 %.
using BakersPercent = Tagged<struct BakersPercentTag>;

/// Doublings and their like: how much of itself something makes in an hour.
using PerHour = Tagged<struct PerHourTag>;

/// kJ to warm a kilogram by one degree.
using KilojoulesPerKilogramKelvin = Tagged<struct KilojoulesPerKilogramKelvinTag>;

/// Heat through a surface: W a square metre for each degree of difference.
using WattsPerSquareMetreKelvin = Tagged<struct WattsPerSquareMetreKelvinTag>;

} // namespace loafwright::dough
