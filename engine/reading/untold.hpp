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

/// The wait, or the bake, that a length of time by itself means behind these drafts: "Shape into a
/// log. 45 minutes." proves, "22 min, bottom shelf" after the oven has been heated bakes.
///
/// `of_a_leaven`: the clause before is about a leaven or sponge.
/// Errors: nothing where the last draft takes such a time itself.
std::optional<StepKind> wait_without_a_verb(const std::vector<Draft>& drafts,
                                            const Clause& clause,
                                            bool of_a_leaven,
                                            const DurationPhrase& length);

/// Is the length what the clause begins with ("45 min.", "29 °C for 3 hours"), or all it says of
/// what stands there ("it needs five hours")?
bool opens_with(const std::vector<Token>& tokens,
                const Clause& clause,
                const DurationPhrase& duration);

/// "Loaves of this size will require an hour": behind the last prove, what is shaped bakes.
bool bakes_by_its_name(const std::vector<Token>& tokens,
                       const Clause& clause,
                       const DurationPhrase& duration,
                       const std::vector<Draft>& drafts);

/// "Build two. 90 g rye, 65 g water. 22 °C for 12 hours.": under the heading of a leaven a length
/// of time is all that need be told.
std::optional<Draft> build_by_itself(std::string_view text,
                                     const Layout& layout,
                                     const std::vector<Clause>& clauses,
                                     std::size_t index,
                                     const std::vector<Draft>& drafts);

/// "…at two o'clock, and by nine in the evening it is a mass of foam": a wait that only the clock
/// tells. `clock_told`: an earlier clause has named a time of day.
std::optional<Draft> wait_of_the_clock(std::string_view text,
                                       const std::vector<Token>& tokens,
                                       const Clause& clause,
                                       std::size_t index,
                                       bool clock_told,
                                       const std::vector<Draft>& drafts);

} // namespace loafwright::reading
