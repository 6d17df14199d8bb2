// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/plan.hpp"

#include <vector>

namespace loafwright::planning {

/// The plans of several breads as one: every line by the clock, each with its bread; one last line
/// for breads that are eaten at the same time; free is when none of them asks for anybody.
///
/// Needs: `plans` not empty.
Plan merged(const std::vector<Plan>& plans);

} // namespace loafwright::planning
