// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

#include <optional>

namespace loafwright::dough {

/// How fast baker's yeast makes gas in dough at this temperature: 1 at the optimum of 37.5 °C.
///
/// Promises: inside [0, 1]; 0 at and below -1 °C and at and above 48 °C; grows up to the optimum
/// and falls beyond it.
double relative_rate(Celsius dough);

/// How far a transferred time may be off, as a share of it: 0.15 from 18 to 32 °C, 0.30 from 8 to
/// 18 °C and above 32 °C, 0.50 below 8 °C. The wider of both temperatures counts.
double transfer_uncertainty(Celsius written_for, Celsius here);

/// The time that a rise written for one temperature takes at another.
///
/// The dough is taken to have the temperature of the place it stands in all the while. A dough
/// mixed warmer or colder than its place is nearer to its place the longer it stands, so this errs
/// most for short rises.
///
/// Needs:    `stated` not negative.
/// Promises: likely is `stated` times the ratio of both rates; low and high lie
/// `transfer_uncertainty` to each side;
///           with both temperatures alike likely is `stated`.
/// Errors:   nothing where the yeast is still at one of the two temperatures.
std::optional<Band<Minutes>> transferred(Minutes stated, Celsius written_for, Celsius here);

} // namespace loafwright::dough
