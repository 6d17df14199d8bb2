// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/baker_units.hpp"
#include "engine/quantity/tagged.hpp"

#include <tl/expected.hpp>

#include <optional>

namespace loafwright::dough {

enum class YeastForm { fresh, active_dry, instant };

/// Grams of this form that do the work of one gram fresh yeast.
///
/// Active dry 0.375 / 0.40 / 0.50, instant 0.33 / 0.33 / 0.40: 0.40 and 0.33 Hamelman 2004, 0.375
/// the US household rule (read); the upper ends are the spread we show, common practice.
Band<double> grams_for_one_fresh(YeastForm form);

/// The weight of another form with the same effect.
///
/// Needs:    amount >= 0.
/// Promises: the same amount, without width, for the same form; both spreads joined as independent.
Band<Grams> converted(Grams amount, YeastForm from, YeastForm to);

/// Gas that a dose has made, in per cent of fresh yeast on flour times hours at 27 °C.
using PercentHours = Tagged<struct PercentHoursTag>;

/// How much yeast grows in a dough, in per cent of the flour an hour at 27 °C, whatever the dose:
/// 0.073 to 0.097 from two counts of cells (after Pyler, read second-hand), 0.08 our choice.
inline constexpr Band<PerHour> yeast_gained{PerHour(0.073), PerHour(0.08), PerHour(0.097)};

/// Yeast that works while it multiplies: with e the hours the dough's temperatures are worth at
/// 27 °C (progress.hpp, Curve::gas),
///
///   G = integral of (dose + gained e') de' from 0 to e = dose e + gained e^2 / 2.
///
/// Measured within 0.5 to 3 % and 8 hours; below that the growth counts for most of it.
PercentHours gas_made(BakersPercent fresh_dose, Minutes at_27, PerHour gained);

/// The time at 27 °C in which this dose makes that gas.
///
/// Needs:    fresh_dose >= 0, gas >= 0, gained > 0.
/// Promises: the inverse of `gas_made`; more yeast is never slower.
Minutes time_at_27(BakersPercent fresh_dose, PercentHours gas, PerHour gained);

/// Hours that a time at a steady temperature is worth at 27 °C, and back.
///
/// Errors:   the second, nothing where yeast is still.
Minutes worth_at_27(Minutes time, Celsius dough);
std::optional<Minutes> from_27(Minutes at_27, Celsius dough);

/// A rise with another dose than the recipe's, at the recipe's temperature: half the yeast does not
/// take twice the time.
///
/// Needs:    stated >= 0; doses >= 0.
/// Promises: the stated time, without width, for the stated dose; more yeast is never slower; the
///           width comes from `yeast_gained`, and from the model itself by a share of the logarithm
///           of the ratio of doses, 0.15 for less yeast and 0.30 for more (assumed).
/// Errors:   nothing where yeast is still, or when neither dose works.
std::optional<Band<Minutes>>
rise_with_dose(Minutes stated, BakersPercent stated_dose, BakersPercent dose, Celsius dough);

/// Doses outside these are no bread of ours: less than a pinch in a kilogram of flour cannot be
/// weighed or trusted, more tastes of yeast. Common practice.
inline constexpr BakersPercent least_dose{0.01};
inline constexpr BakersPercent most_dose{8.0};

/// Why there is no dose for a wish.
enum class NoDose {
    even_the_least_is_too_quick, // colder, or a shorter time
    even_the_most_is_too_slow,   // warmer, or more time
    yeast_is_still,              // no gas at this temperature
};

/// The fresh yeast with which a rise takes the wanted time.
///
/// Needs:    stated > 0, wanted > 0, stated_dose > 0.
/// Promises: the stated dose for the stated time at the stated temperature; a longer time never
///           needs more; likely within [least_dose, most_dose], low and high kept inside too.
tl::expected<Band<BakersPercent>, NoDose> dose_for(Minutes wanted,
                                                   Celsius wanted_at,
                                                   Minutes stated,
                                                   BakersPercent stated_dose,
                                                   Celsius stated_at);

/// The gas needed for the same volume in thinner air, as a factor on the gas at sea level.
///
/// Likely is the ratio of pressures itself (the volume of a gas). The high end is half that effect;
/// the low end is its square, which reaches the trade's "25 to 50 % faster" near 1500 to 3000 m
/// (extension leaflets, read). Both ends are assumed.
///
/// Needs:    0 < pressure_ratio, the air pressure here over 1013.25 hPa.
/// Promises: exactly 1 at 1; nearer to 1 the nearer the ratio. Short rises take this share of their
///           time; long ones with growing yeast lose a little less: see `time_at_27`.
Band<double> gas_needed(double pressure_ratio);

} // namespace loafwright::dough
