// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/schedule/problem.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace loafwright::schedule {

/// What is wanted of a schedule that keeps every rule, the most important first.
enum class Aim {
    /// Fewest violations, least tied, latest first start; then alternatives lowest first, later
    /// starts as late as possible.
    begin_late,
    /// Earliest end, fewest violations, least tied, latest first start; then alternatives lowest
    /// first, later starts
    /// as early as possible.
    end_early,
    /// Earliest first start, then as end_early.
    begin_soonest,
    /// Latest first start, then as end_early.
    begin_last
};

struct Wish {
    Aim aim = Aim::begin_late;
    /// The first task starts in [first_start_from, first_start_to].
    std::optional<std::int64_t> first_start_from;
    std::optional<std::int64_t> first_start_to;
};

/// Whether a schedule is known to be the best.
enum class Proof {
    best,      // none is better for the aim
    best_found // the counted limit came first; every rule is kept all the same
};

struct Solved {
    Schedule schedule;
    Objective objective;
    Proof proof = Proof::best;
};

/// No schedule keeps every rule.
struct NoSchedule {};

/// This method cannot say: the problem has faults, is not one chain, or is larger than the counted
/// limit.
struct OutOfReach {
    Diagnostics reasons;
};

using Outcome = std::variant<Solved, NoSchedule, OutOfReach>;

/// The largest work that is taken on, in cells of the table (tasks x minutes of the grid x
/// alternatives).
inline constexpr std::int64_t most_cells = 20000000;

/// The best schedule of one job whose tasks form a chain, by dynamic programming over (task,
/// minute); exact.
///
/// Needs:    nothing; a problem with faults is answered with OutOfReach.
/// Promises: Solved holds a schedule for which `violations` is empty and none is better for the
/// aim; NoSchedule is said
///           only where there is none; the same problem gives the same schedule everywhere; work is
///           limited by a count.
/// Never:    reads a clock, throws on input, changes anything.
Outcome solve_chain(const Problem& problem, const Wish& wish = {});

/// Conflicts that a search may meet before it gives what it has: some seconds.
inline constexpr std::int64_t usual_conflicts = 200000;

/// The best schedule of any problem: by `solve_chain` where that answers, else by an exact search.
/// The first start is that of all jobs, the end that of the last one to end; ties are settled job
/// by job in byte order of their names: alternatives, then starts, then earliest ends, then people.
///
/// Needs:    nothing; a problem with faults is answered with OutOfReach.
/// Promises: as solve_chain, but where `proof` is best_found a better one may exist. OutOfReach
/// where
///           the problem is too large or no schedule was found within the limit. `conflicts` counts
///           all dead ends met; the same problem and limit give the same schedule.
/// Never:    reads a clock, throws on input, changes anything.
Outcome
solve(const Problem& problem, const Wish& wish = {}, std::int64_t conflicts = usual_conflicts);

/// Why there is no schedule, by leaving things out one at a time.
struct Relief {
    /// Least delay of ready_by and ready_from together that makes it possible; none where no delay
    /// helps.
    std::optional<std::int64_t> delay;
    /// Which single relaxations suffice, in this order: "asleep", "away", "busy", "claims", "waits"
    /// (no upper lags), "anchors", "person" (one more, always free), "oven_slot", "fridge_slot".
    std::vector<std::string> enough;
};

/// Needs:    `solve_chain(problem)` is NoSchedule.
/// Promises: each entry was solved again and found to hold; empty for a problem that is out of
/// reach.
Relief relief_of_chain(const Problem& problem);

} // namespace loafwright::schedule
