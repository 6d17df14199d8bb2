// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

#include <vector>

namespace loafwright::dough {

/// The trade's sums for the water temperature, shown beside the heat balance of
/// dough_temperature.hpp. All are common practice with printed worked examples, and all count each
/// temperature alike although water holds six tenths of a dough's heat; a factor found in one
/// kitchen holds near the temperatures it was found at. `others` are room, flour and, if there are
/// any, preferments: n = others + 1 factors, 3 or 4, or 5 with two preferments.
///
/// The conventions differ in what "friction" means; never carry the number of one into another.

/// American: water = n dough - sum(others) - factor, the factor being n times the real rise.
/// Wihlfahrt, A Treatise on Baking, printed it first without a factor.
Celsius water_by_friction_factor(Celsius dough,
                                 CelsiusDifference factor,
                                 const std::vector<Celsius>& others);

/// German: water = n (dough - rise) - sum(others), the rise being what mixing really adds, usually
/// 3 to 5 °C.
Celsius
water_by_rise_first(Celsius dough, CelsiusDifference rise, const std::vector<Celsius>& others);

/// French: water = base - room - flour, with wanted dough and friction both inside the base of 48
/// (intensive mixing) to 72 (gentle). A base is a sum of three temperatures in °C, not one of them.
Celsius water_by_base(double base_sum_c, Celsius room, Celsius flour);

/// The real rise that an American factor stands for, and the base that a wanted dough and rise
/// give.
CelsiusDifference rise_of_factor(CelsiusDifference factor, int factors);
double base_of(Celsius dough, CelsiusDifference rise);

} // namespace loafwright::dough
