// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/clause.hpp"
#include "engine/reading/layout.hpp"

#include <vector>

namespace loafwright::reading {

/// Takes the action from a clause that only names its block ("**Bake.** Meanwhile, heat the
/// oven…"), where the block goes on to say it.
///
/// Promises: a label with a length of time or a heat of its own keeps its action.
void take_labels_away(const Layout& layout, std::vector<Clause>& clauses);

} // namespace loafwright::reading
