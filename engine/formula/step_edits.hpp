// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/recipe/recipe.hpp"

#include <vector>

namespace loafwright::formula {

/// Takes steps out. What followed one of them follows the step before it; what ran inside one of
/// them runs by itself.
///
/// Needs: one flag a step.
void take_out(std::vector<Step>& steps, const std::vector<bool>& out);

/// Puts steps before all others; those that are put in run one after the other.
void put_first(std::vector<Step>& steps, const std::vector<Step>& first);

} // namespace loafwright::formula
