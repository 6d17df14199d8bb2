// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/plan.hpp"
#include "engine/planning/problem_from_bread.hpp"
#include "engine/planning/stages.hpp"

#include <optional>

namespace loafwright::planning {

/// A bread with everything about it that no day changes.
struct Bread {
    const FittedRecipe& recipe;
    BreadChain chain;
    Spread spread;
    /// From out of the oven to when it is at its best, and to when it can be cut.
    std::int64_t best_minutes = 0;
    std::int64_t cut_minutes = 0;
};

Bread bread_of(const FittedRecipe& recipe);

/// The plan for this day, or none; says nothing about why.
///
/// With day.eat_by, out of the oven is so early that (1) likely + best <= eat_by and (2) the
/// eightieth percentile + cut
/// <= eat_by. Where (1) leaves nothing it gives way, by as little as can be; (2) never does. Bread
/// of up to four hours past its best is looked for before older bread, and that before bread that
/// is not yet at its best. Without a described day nobody works at night where that can be helped;
/// where it cannot, the plan warns.
std::optional<Plan> attempt(const Bread& bread, const Day& day);

/// The same under other rules, for explanations.
std::optional<Plan> attempt_under(const Bread& bread, const Day& day, const Rules& rules);

/// The plan for one target, its time to eat being when it can be cut.
std::optional<Plan>
attempt_target(const Bread& bread, const Day& day, const Rules& rules, const Target& target);

/// The rules that a day stands for.
Rules rules_of(const Day& day);

/// The first full five minutes by the clock of `zone` that are not past.
Instant next_full_five(const Zone& zone, Instant now);

} // namespace loafwright::planning
