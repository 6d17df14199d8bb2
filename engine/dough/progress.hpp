// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/curve.hpp"
#include "engine/dough/temperature_history.hpp"
#include "engine/quantity/tagged.hpp"

#include <optional>

namespace loafwright::dough {

/// How far a dough has come, counted in minutes at the best temperature of its curve. One recipe's
/// rise is one amount of progress, wherever it stands.
using Progress = Tagged<struct ProgressTag>;

/// No question about time looks further ahead than this.
inline constexpr Minutes furthest{4.0 * 24.0 * 60.0};

/// The integral of the rate along the dough's own temperature.
///
/// Needs:    from <= to; 0 <= from.
/// Promises: never negative; additive over adjoining times; relative error below 1e-9, for
///           leaven_bacteria in a dough that passes 41 °C below 1e-6 (Gauss quadrature of 16
///           points on counted pieces that end where rate or place have a corner).
Progress progress(const TemperatureHistory& history, Minutes from, Minutes to, Curve curve);

/// The mean of `uncertainty_of` over the progress made between two minutes; 0 where none is made.
///
/// Needs:    as `progress`.
double uncertainty_along(const TemperatureHistory& history, Minutes from, Minutes to, Curve curve);

/// How long after `from` the dough has come that far.
///
/// Needs:    wanted >= 0; from >= 0.
/// Promises: the earliest such time, to a billionth; `progress` over it is `wanted`.
/// Errors:   nothing when it is not reached within `furthest`: too cold or too hot for the curve.
std::optional<Minutes>
time_until(const TemperatureHistory& history, Progress wanted, Minutes from, Curve curve);

/// The time at one steady temperature that this progress stands for.
///
/// Errors:   nothing where the rate is 0.
std::optional<Minutes> minutes_at(Celsius steady, Progress progress, Curve curve);

/// The time that a rise written for one history of the dough takes along another:
/// fermentation.hpp's `transferred` for a dough that is warming or cooling.
///
/// Needs:    `stated` not negative.
/// Promises: likely makes the same progress here as `stated` minutes made there, and is `stated`
///           along the same history; low and high come from every rate along the way being quicker
///           or slower by what `uncertainty_of` says there, or by the mean of it along the written
///           history where that is more; low <= likely <= high.
/// Errors:   nothing where nothing moves there, or where likely lies beyond `furthest`; high is
///           `furthest` where it would lie beyond.
std::optional<Band<Minutes>> transferred(Minutes stated,
                                         const TemperatureHistory& written_for,
                                         const TemperatureHistory& here,
                                         Curve curve);

} // namespace loafwright::dough
