// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/kitchen/kitchen.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/provisions/gather.hpp"
#include "engine/recipe/recipe.hpp"

#include <vector>

namespace loafwright::provisions {

/// The cautions that the recipe calls for, heaviest first, in the order of the table where they
/// weigh the same.
///
/// Promises: a caution only where every condition of its row is met; `stage` is the kind of a step
/// that the recipe has, or
///           nothing.
std::vector<Caution>
cautions_for(const Recipe& recipe, const Kitchen& kitchen, const Knowledge& knowledge);

} // namespace loafwright::provisions
