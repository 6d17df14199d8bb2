// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/plan.hpp"
#include "engine/planning/problem_from_bread.hpp"

#include <cstddef>
#include <vector>

namespace loafwright::planning {

/// The most lines that a page has, "Eat" included.
inline constexpr std::size_t most_stages = 9;

/// One line of the page before it has a time: atoms [first, last) of the chain.
struct Draft {
    std::size_t first = 0;
    std::size_t last = 0;
    Attention attention = Attention::hands;
    bool after_oven = false;
};

/// The lines of the page.
///
/// Promises: every atom in exactly one draft, in order; neighbouring hands in one; a few hands
/// minutes that open a wait
///           or a bake belong to it; at most most_stages drafts, one fewer for a bread that is
///           eaten.
std::vector<Draft> drafts_of(const FittedRecipe& recipe, const BreadChain& chain);

/// When things are over, in instants.
struct Milestones {
    Instant out_of_oven;
    Instant cut_from;
    Band<Instant> eat;
};

/// The lines with their times, acts, cues and reminders; the last one is "Eat" for a bread that is
/// eaten.
std::vector<Stage> stages_of(const FittedRecipe& recipe,
                             const BreadChain& chain,
                             const Placed& placed,
                             const Day& day,
                             const Milestones& milestones);

/// Waits of twenty minutes and more in which nothing is asked, between the acts.
std::vector<FreeSpan> free_time(const FittedRecipe& recipe, const std::vector<Stage>& stages);

} // namespace loafwright::planning
