// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/project_solve.hpp"

#include <string>

namespace loafwright::wire {

/// The answer for a project, version 1: `status` "optimal" when proven, else "best"; `starts` in
/// the order of the activities.
std::string project_json(const std::string& id, const schedule::ProjectSolved& solved);

/// `status` "infeasible": `makespan` null, no `starts`.
std::string no_project_json(const std::string& id);

} // namespace loafwright::wire
