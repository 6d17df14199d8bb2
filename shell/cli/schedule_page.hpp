// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/problem.hpp"
#include "engine/schedule/project_solve.hpp"
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

/// A project's schedule as lines, one an activity in the order of the file, counted from 0.
///
/// Needs:    `solved` belongs to `project`.
std::string project_page(const std::string& id,
                         const schedule::Project& project,
                         const schedule::ProjectSolved& solved);

std::string no_project_page(const std::string& id);

} // namespace loafwright::cli
