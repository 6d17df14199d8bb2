// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

#include <optional>
#include <vector>

namespace loafwright::dough {

/// The core of a loaf at one time. `kelvin_per_minute` is how fast it moves there; the surface is
/// noted beside it.
struct CorePoint {
    Minutes at;
    Celsius core;
    double kelvin_per_minute = 0.0;
    Celsius surface;
};

/// Points in order of time, the first at 0; never empty once made by a simulation.
using CoreCourse = std::vector<CorePoint>;

/// The core at a time, by the cubic through both neighbours and their slopes.
///
/// Needs: a course of one point at least. Before it the first, after it the last value holds.
Celsius core_at(const CoreCourse& course, Minutes at);

/// When the core first is at or above (on its way up), or at or below (on its way down).
///
/// Errors: nothing when the course ends before.
std::optional<Minutes> first_at_or_above(const CoreCourse& course, Celsius target);
std::optional<Minutes> first_at_or_below(const CoreCourse& course, Celsius target);

} // namespace loafwright::dough
