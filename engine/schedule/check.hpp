// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/problem.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loafwright::schedule {

/// One rule that a schedule does not keep, under the name that README.md gives it.
struct BrokenRule {
    std::string rule;
    std::size_t job = 0;
    std::optional<std::size_t> task;
    std::optional<std::int64_t> minute;
};

/// Every rule that `schedule` breaks, looked at minute by minute from its definition.
///
/// Needs:    `faults_in(problem)` is empty.
/// Promises: empty if and only if the schedule keeps every rule; shares no code with any solver; a
/// schedule of the
///           wrong shape is answered with the rule "form".
std::vector<BrokenRule> violations(const Problem& problem, const Schedule& schedule);

/// The objectives of a schedule, from their definitions.
///
/// Needs:    the schedule has the right shape and stays inside the horizon.
Objective objective_of(const Problem& problem, const Schedule& schedule);

} // namespace loafwright::schedule
