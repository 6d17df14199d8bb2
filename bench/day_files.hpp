// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/problem.hpp"

#include <string>

namespace loafwright::bench {

/// The day in the form that `loafwright schedule` reads.
///
/// Needs: no task has a start of its own; the form knows none.
std::string day_json(const schedule::Problem& problem);

/// The day as data for day.mzn, all but the goal and what is known of the goals before.
std::string day_data(const schedule::Problem& problem);

} // namespace loafwright::bench
