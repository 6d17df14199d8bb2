// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/progress.hpp"
#include "engine/planning/several.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

/// What is left of a bake, as a problem of its own.
namespace loafwright::following {

/// The parts of one bread as they stand now.
///
/// Invariants: starts and ends have one entry for each part. Parts before `first_ahead` are over or
/// running and have the times they really had, what runs with the end that is to be expected; the
/// others have the earliest start that suits: as planned, or sooner by as much as the dough is
/// early.
struct BreadStand {
    std::vector<Instant> starts;
    std::vector<Instant> ends;
    std::optional<std::size_t> running;
    std::size_t first_ahead = 0;
    /// The line that runs: its parts end before `line_end`, and its waits take this share of what
    /// was planned.
    std::size_t line_end = 0;
    double share_of_wait = 1.0;
};

/// A bake does not begin with the tick before it while the oven is cold: not before it has heated.
BreadStand stand_of(const Plan& bread,
                    const planning::BreadChain& chain,
                    const BreadProgress& progress,
                    Instant now);

/// What may be left out when the day leaves no way, one after the other.
enum class Insist {
    told_soon,   // what the baker was told to do within the next minutes stays
    all_rules,   // doughs wait only so long, people are where the day says
    people_only, // doughs wait
    nothing      // and work is done in windows, too
};

/// The rest of the day as a problem: what is over takes no time, what runs goes on, what is ahead
/// begins no sooner than its stand says.
planning::SharedProblem rest_problem(const planning::Breads& breads,
                                     const std::vector<const Plan*>& plans,
                                     const std::vector<BreadStand>& stands,
                                     const Day& day,
                                     Instant now,
                                     Insist insist);

/// The answer to it, what is over and what runs with their real times.
std::vector<planning::Placed> placed_rest(const planning::SharedProblem& rest,
                                          const schedule::Schedule& schedule,
                                          const std::vector<BreadStand>& stands);

} // namespace loafwright::following
