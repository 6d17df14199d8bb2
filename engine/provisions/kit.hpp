// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/kitchen/kitchen.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <string>
#include <vector>

namespace loafwright::provisions {

/// What to have ready, in the order in which it is needed, each once.
///
/// Promises: nothing for a word that the text denies or offers as the second choice.
std::vector<std::string>
kit_for(const Recipe& recipe, const Kitchen& kitchen, const Knowledge& knowledge);

} // namespace loafwright::provisions
