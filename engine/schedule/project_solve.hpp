// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/project.hpp"
#include "engine/schedule/solve.hpp"

#include <cstdint>
#include <optional>
#include <variant>
#include <vector>

namespace loafwright::schedule {

struct ProjectSolved {
    std::vector<std::int64_t> starts;
    std::int64_t makespan = 0;
    std::int64_t lower_bound = 0; // no schedule is shorter
    Proof proof = Proof::best;
};

using ProjectOutcome = std::variant<ProjectSolved, NoSchedule, OutOfReach>;

/// The shortest schedule of a project.
///
/// Needs:    nothing; a project with faults is answered with OutOfReach.
/// Promises: ProjectSolved holds starts for which `violations` is empty; lower_bound = makespan
///           exactly where `proof` is best. NoSchedule is said only where there is none.
///           OutOfReach where no schedule was found within the limit. `conflicts` counts all dead
///           ends met; without it so many are allowed, fewer in a large project, that a hard one
///           takes about twenty seconds. The same project and limit give the same starts.
/// Never:    reads a clock, throws on input, changes anything.
ProjectOutcome solve_project(const Project& project,
                             std::optional<std::int64_t> conflicts = std::nullopt);

} // namespace loafwright::schedule
