// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/reading/layout.hpp"
#include "engine/recipe/recipe.hpp"

#include <vector>

namespace loafwright::reading {

/// Weighs a list whose numbers have no unit at all, as bakers' cards have it: "White flour 800,
/// Water 680 + 40, Salt 21" are grams.
///
/// Promises: nothing changes unless three lines and more have a bare number and a known item, none
///           of the list has a weight already, and a flour among them has a hundred and more;
///           true where it did.
bool weigh_bare_list(const Layout& layout,
                     const Knowledge& knowledge,
                     std::vector<Ingredient>& ingredients);

} // namespace loafwright::reading
