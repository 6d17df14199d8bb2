// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

#include <optional>

namespace loafwright::dough {

/// The three temperatures that shape a rate by the cardinal temperature model with inflection
/// (Rosso, Lobry & Flandrois 1993, J. Theor. Biol. 162:447-463): no activity at and outside
/// `coldest` and `hottest`, most at `best`.
///
/// Invariant: coldest < best < hottest, and best above the middle of the other two; the formula
/// bends the wrong way otherwise.
struct CardinalTemperatures {
    Celsius coldest;
    Celsius best;
    Celsius hottest;
};

/// Gas in dough, our choice: see fermentation.cpp. The set that times are transferred by.
inline constexpr CardinalTemperatures gas_in_dough{Celsius(-1.0), Celsius(37.5), Celsius(48.0)};

/// Multiplication of Saccharomyces cerevisiae: optimum and maximum as read from Salvadó and others
/// 2011, Appl. Environ. Microbiol. 77:2292-2302; the minimum from memory of the same paper. For
/// comparison: growth stops earlier in the cold and in heat than gas does.
inline constexpr CardinalTemperatures yeast_growth{Celsius(2.8), Celsius(32.3), Celsius(45.4)};

/// Where yeast dies in minutes: 55-60 (Gardiner & Wilson 1998; Figoni 2003), 60 °C (Gisslen 2014),
/// all read second-hand; 58 is the middle we assume.
inline constexpr Band<Celsius> yeast_dies{Celsius(55.0), Celsius(58.0), Celsius(60.0)};

/// The rate relative to the optimum.
///
/// Promises: inside [0, 1]; 0 at and outside the ends; grows up to the optimum and falls beyond it.
double relative_rate(const CardinalTemperatures& set, Celsius temperature);

/// How fast baker's yeast makes gas in dough at this temperature: 1 at the optimum of 37.5 °C.
/// The set `gas_in_dough`.
double relative_rate(Celsius dough);

/// How far a transferred time may be off, as a share of it: 0.15 from 18 to 32 °C, 0.30 from 8 to
/// 15 °C and from 35 °C up, 0.50 at and below 5 °C, and straight lines between. The wider of both
/// temperatures counts.
double transfer_uncertainty(Celsius written_for, Celsius here);
double transfer_uncertainty(Celsius dough);

/// The time that a rise written for one temperature takes at another.
///
/// The dough is taken to have the temperature of the place it stands in all the while. A dough
/// mixed warmer or colder than its place is nearer to its place the longer it stands, so this errs
/// most for short rises; `progress.hpp` has the form that follows the dough's own temperature.
///
/// Needs:    `stated` not negative.
/// Promises: likely is `stated` times the ratio of both rates; low and high lie
/// `transfer_uncertainty` to each side;
///           with both temperatures alike likely is `stated`.
/// Errors:   nothing where the yeast is still at one of the two temperatures.
std::optional<Band<Minutes>> transferred(Minutes stated, Celsius written_for, Celsius here);

} // namespace loafwright::dough
