// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/draft.hpp"
#include "engine/reading/layout.hpp"

#include <cstddef>
#include <string_view>
#include <vector>

namespace loafwright::reading {

/// Gives a clause's lengths of time to the step that it has become, the last draft of the assembly.
/// A length that is another wait
/// ("for an autolyse of 45 minutes"), a further part of a bake or the other of two ways becomes a
/// draft or an alternative of its own.
///
/// Needs:    the clause's draft is the last one.
/// Promises: each length is used at most once.
void attach_times(std::string_view text,
                  const Layout& layout,
                  const Lexicon& lexicon,
                  const std::vector<Clause>& clauses,
                  std::size_t clause,
                  Assembly& assembly);

} // namespace loafwright::reading
