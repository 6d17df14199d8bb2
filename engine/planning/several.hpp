// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/attempt.hpp"
#include "engine/planning/oven_runs.hpp"

#include <cstdint>
#include <optional>
#include <vector>

/// Several breads on one day: one problem, one plan.
namespace loafwright::planning {

/// The breads of a day with what no day changes.
struct Breads {
    std::vector<Bread> breads;
    std::vector<OvenRun> runs;
    Kitchen kitchen;
    /// Dead ends that each question to the scheduler may meet: about half a second. Two or three
    /// breads need a few hundred; where a dozen need more, the best plan found so far is given.
    std::int64_t conflicts = 10000;
};

/// Needs: the recipes outlive the result.
Breads breads_of(const std::vector<FittedRecipe>& recipes, const Kitchen& kitchen);

/// One target for each bread; they share the aim and the first start.
struct SharedTarget {
    schedule::Aim aim = schedule::Aim::end_early;
    std::optional<Instant> start_from;
    std::optional<Instant> start_to;
    std::vector<Target> breads; // ready_from and ready_by count
};

/// A problem of the schedule room and where it lies.
struct SharedProblem {
    Frame frame;
    schedule::Problem problem;
    schedule::Wish wish;
};

SharedProblem problem_of(const Breads& breads,
                         const Day& day,
                         const Rules& rules,
                         const SharedTarget& target,
                         const OvenUseRules& oven);

/// What came of an attempt.
struct Tried {
    std::optional<Plan> plan;
    bool gave_up = false;                 // the counted limit came before an answer
    std::optional<SharedProblem> hardest; // the last one that had no answer, for explanations
};

/// The plan for this day, or none; says nothing about why. The order of what is tried is that of
/// `attempt`; every plan with a time to eat by has been rehearsed, and is in time in four of five
/// rehearsals.
Tried attempt(const Breads& breads, const Day& day);
Tried attempt_under(const Breads& breads, const Day& day, const Rules& rules);

} // namespace loafwright::planning
