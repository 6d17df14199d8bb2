// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/fit.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/planning/plan.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace loafwright::choosing {

/// Something that a bread asks of its baker beside time.
struct Demand {
    int weight = 1;   // 1 a little, 2 wants practice, 3 for those who have baked for a while
    std::string says; // one sentence
};

/// How many doughs are made one after the other: the main one, and each part that ferments, rises
/// or is kneaded by itself.
std::size_t doughs_in(const FittedRecipe& recipe);

/// All demands of a bread, the heaviest first, in the same order for the same bread.
///
/// Needs: `plan` of `recipe`.
std::vector<Demand>
demands_of(const FittedRecipe& recipe, const Plan& plan, const Knowledge& knowledge);

} // namespace loafwright::choosing
