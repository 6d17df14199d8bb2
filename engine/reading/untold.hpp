// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/draft.hpp"

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace loafwright::reading {

/// Oven work that a text tells of without ever ordering it. Each answers with the draft to add, or
/// with nothing.

/// "… while the oven heats to 200 °C": the heating, told in passing by clause `index`.
std::optional<Draft> heating_in_passing(std::string_view text,
                                        const std::vector<Token>& tokens,
                                        const Clause& clause,
                                        std::size_t index);

/// "When baked, …" in a text that has a dough and never says to bake it: it goes without saying.
std::optional<Draft> untold_bake(std::string_view text,
                                 const std::vector<Token>& tokens,
                                 const Clause& clause,
                                 std::size_t index,
                                 const std::vector<Draft>& drafts);

/// "Just before putting in the oven" is all that some old books say of baking: asked when all
/// clauses have been read.
std::optional<Draft> bake_at_the_end(std::string_view text,
                                     const std::vector<Token>& tokens,
                                     const std::vector<Clause>& clauses,
                                     const std::vector<Draft>& drafts);

} // namespace loafwright::reading
