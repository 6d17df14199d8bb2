// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/problem.hpp"
#include "engine/schedule/solve.hpp"
#include "engine/schedule/why.hpp"

#include <string>

namespace loafwright::wire {

/// The answer to a bare scheduling problem, version 1 (README.md): `status` is "optimal" when
/// proven, "best" when the limit came first.
///
/// Needs:    `solved` belongs to `problem`.
std::string schedule_json(const schedule::Problem& problem, const schedule::Solved& solved);

/// `status` "infeasible", with `delay`, `enough` and `reasons`. A delay that was not found within
/// the limit is left out, because null says that none helps.
///
/// Needs:    `why` belongs to `problem`.
std::string no_schedule_json(const schedule::Problem& problem, const schedule::Why& why);

} // namespace loafwright::wire
