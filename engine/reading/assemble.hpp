// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/clause.hpp"
#include "engine/reading/ingredient.hpp"
#include "engine/reading/process.hpp"
#include "engine/recipe/recipe.hpp"

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace loafwright::reading {

/// A step in the making, with the clauses that it took.
struct Draft {
    Step step;
    std::vector<std::size_t> clauses;
    bool turns_down = false;      // "turn the oven down": the next part of a bake
    bool at_night = false;        // the text goes on in the morning
    std::optional<Minutes> total; // "30 minutes in all", of this and the bakes before it
    double sureness = 0.0;        // of the decision, for explaining
};

/// What happened to a clause.
struct ClauseUse {
    std::optional<std::size_t> draft; // the step that it became or belongs to
    std::string_view why_not;         // else the reason, in words
};

struct Assembly {
    std::vector<Draft> drafts;
    std::vector<ClauseUse> uses; // one a clause
};

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

/// Does a step of this kind take a time worth stating?
bool takes_time(StepKind kind);

/// Is it a wait in which the dough rises?
bool is_rising(StepKind kind);

} // namespace loafwright::reading
