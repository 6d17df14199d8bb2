// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/draft.hpp"
#include "engine/reading/layout.hpp"

#include <cstddef>
#include <vector>

namespace loafwright::reading {

/// "Repeat steps 2 and 3 twice more": appends copies of the drafts that the numbered steps of the
/// list became.
///
/// Promises: six rounds at most; false when the clause refers to no step or to one that is not
/// there.
bool repeat_steps(const Layout& layout,
                  const std::vector<Clause>& clauses,
                  const Clause& clause,
                  Assembly& assembly);

/// Waits told by the clock: "at eleven … by five o'clock", "at three shape, at four bake". Steps
/// learn their clock time, and a wait without a length of its own lasts from one time to the next.
void wait_by_the_clock(const std::vector<Clause>& clauses, Assembly& assembly);

} // namespace loafwright::reading
