// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/clause.hpp"
#include "engine/reading/draft.hpp"
#include "engine/reading/process.hpp"

#include <string_view>
#include <vector>

namespace loafwright::reading {

/// Clauses with their decisions become steps: times, temperatures, places and cues are attached,
/// neighbouring clauses of one step are joined, parts of a bake are told apart, folds and the
/// heating of the oven go beside the wait that they run in.
///
/// Promises: every clause has a use; a length of time is attached at most once.
Assembly assemble(std::string_view text,
                  const Layout& layout,
                  const Lexicon& lexicon,
                  const std::vector<Clause>& clauses,
                  const std::vector<Decision>& decisions);

} // namespace loafwright::reading
