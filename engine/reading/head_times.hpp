// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/layout.hpp"
#include "engine/recipe/recipe.hpp"

namespace loafwright::reading {

/// "Cook time: 50 minutes", "Total time: 3 hours" at the head of a recipe, held against what its
/// method says. The method wins.
///
/// Promises: a bake without a length takes that of the head, where it is the only one; one that
///           differs by more than a quarter is asked about, under the key that corrects the step;
///           a total that the method's own waits and bakes do not fit into becomes a remark. A step
///           that the baker has corrected is left alone.
void compare_head_times(const Layout& layout, Reading& reading);

} // namespace loafwright::reading
