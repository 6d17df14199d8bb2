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
    /// How much sooner than the marks of five minutes it can be cut: the oven is exact.
    std::int64_t sooner_minutes = 0;
};

Bread bread_of(const FittedRecipe& recipe);

/// The plan for this day, or none; says nothing about why.
///
/// With day.eat_by, out of the oven is so early that (1) likely + best <= eat_by and (2) the
/// eightieth percentile + cut
/// <= eat_by. Where (1) leaves nothing it gives way, by as little as can be; (2) never does. Bread
/// of up to four hours past its best is looked for before older bread, and that before bread that
/// is not yet at its best. Where nobody said when they sleep, nobody works at night if that can be
/// helped; where it cannot, the plan warns.
std::optional<Plan> attempt(const Bread& bread, const Day& day);

/// The same under other rules, for explanations.
std::optional<Plan> attempt_under(const Bread& bread, const Day& day, const Rules& rules);

/// The plan for one target, its time to eat being when it can be cut.
std::optional<Plan>
attempt_target(const Bread& bread, const Day& day, const Rules& rules, const Target& target);

/// Which bread a time to eat by asks for, tried one after the other: at its best and fresh, a day
/// old, and at last bread that can only just be cut. Each bounds the moment from which it can be
/// cut.
///
/// `margin`: how much later than likely four bakes in five are at most.
std::vector<Target> targets_to_eat_by(const Bread& bread, const Day& day, std::int64_t margin);

/// The page's plan for a bread that has been placed. `eat_at_wish`: its time to eat is day.eat_by.
Plan plan_of(const Bread& bread, const Day& day, const Placed& placed, bool eat_at_wish);

/// Warns of work between 22:30 and 06:30.
void warn_of_night(Plan& plan, const Day& day, const Frame& frame);

/// The first full five minutes by the clock of `zone` that are not past.
Instant next_full_five(const Zone& zone, Instant now);

} // namespace loafwright::planning
