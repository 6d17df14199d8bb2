// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/curve.hpp"
#include "engine/dough/temperature_history.hpp"
#include "engine/quantity/tagged.hpp"

#include <optional>

namespace loafwright::dough {

/// What the differential equations give that the engine solves in closed form and by quadrature.
struct OdeAnswer {
    Celsius dough;
    double progress = 0.0;      // minutes at the optimum
    double percent_hours = 0.0; // dose 1 %, gaining 0.08 % an hour at 27 °C
};

/// SUNDIALS CVODE on dT/dt = (place - T) / tau, dP/dt = r(T), de/dt = r(T) / r(27) and dG/dt =
/// (dose + gained e) de/dt, to minute `until`.
///
/// Needs:    every time constant above 0.
/// Errors:   nothing when SUNDIALS was not there to build with, or gave up.
std::optional<OdeAnswer> integrated(const TemperatureHistory& history, Minutes until, Curve curve);

/// True when the tests were built with SUNDIALS.
bool has_sundials();

} // namespace loafwright::dough
