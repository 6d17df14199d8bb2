// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/problem.hpp"
#include "engine/schedule/solve.hpp"
#include "engine/schedule/why.hpp"

#include <string>

namespace loafwright::cli {

/// A schedule as lines: one a task with its minutes and clock times ("+1" is the day after the
/// origin's), under a line for each bread.
///
/// Needs:    `solved` belongs to `problem`.
/// Promises: names from the file cannot steer a terminal.
std::string schedule_page(const schedule::Problem& problem, const schedule::Solved& solved);

/// Why there is none, by the names of the rules, and what would help.
std::string no_schedule_page(const schedule::Problem& problem, const schedule::Why& why);

} // namespace loafwright::cli
