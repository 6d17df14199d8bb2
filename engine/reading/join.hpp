// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/draft.hpp"

#include <vector>

namespace loafwright::reading {

/// Joins drafts that are one step ("cover … leave … until doubled"), splits the parts of a bake,
/// puts folds and the heating of the oven beside the wait that they run in. Indices in uses and
/// `during` are kept true.
void join_drafts(Assembly& assembly);

} // namespace loafwright::reading
