// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/fit.hpp"

#include <string>
#include <vector>

namespace loafwright::planning {

/// The same bread with a wait made otherwise, and how a baker would say it.
struct OtherWaits {
    FittedRecipe recipe;
    std::string change;
};

/// What the options of the waits allow without another dose of yeast, which belongs to the whole
/// dough: every rise in the kitchen's warm spot, and a night in the fridge for the last rise before
/// the bake.
///
/// Promises: each once at most; a dough that came warmer from the wait before is not reckoned with,
///           so no wait is shorter than it will be.
std::vector<OtherWaits> other_waits_of(const FittedRecipe& recipe);

} // namespace loafwright::planning
