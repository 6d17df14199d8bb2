// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

#include <optional>
#include <string>

namespace loafwright {

/// Exact by definition: UK Weights and Measures Act 1985, Schedule 1 (pound); US gallon 231 cubic
/// inches, cup 8 fl oz (NIST Handbook 44, Appendix C, read second-hand); imperial gallon 4.54609 L
/// (Unicode CLDR 41, read).
inline constexpr Grams grams_per_ounce{28.349523125};
inline constexpr Grams grams_per_pound{453.59237};
inline constexpr Millilitres millilitres_per_us_cup{236.5882365};
inline constexpr Millilitres millilitres_per_us_pint{473.176473};
inline constexpr Millilitres millilitres_per_imperial_pint{568.26125};

/// Celsius from a reading on the Fahrenheit scale, by the definition of that scale.
Celsius celsius_from_fahrenheit(double fahrenheit);
double fahrenheit_from_celsius(Celsius celsius);

/// The oven temperature of a British gas mark: 25 °F a mark from mark 1 = 275 °F; marks 1/4 and 1/2
/// are 225 and 250 °F (Debian `units` 2.22 definitions and three published tables agree, read).
///
/// Errors: nothing for a mark that the scale does not have (1/4, 1/2, 1 … 10).
std::optional<Celsius> celsius_from_gas_mark(double mark);
/// The mark, 0.25 to 10, that books print beside this temperature or the one nearest to it.
double gas_mark_from_celsius(Celsius celsius);
/// "1/4", "1/2", "1" … "10".
std::string gas_mark_text(double mark);

/// A fan oven is set about 20 °C lower for the same heat (NSW Health chart, read).
inline constexpr CelsiusDifference fan_allowance{20.0};

/// Rounds to the nearest multiple of `step`, halves up.
Minutes rounded_to(Minutes minutes, double step);
/// The next multiple of `step` not below.
Minutes rounded_up_to(Minutes minutes, double step);

} // namespace loafwright
