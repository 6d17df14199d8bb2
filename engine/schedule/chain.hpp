// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/schedule/problem.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

/// The inner parts of the chain solver. Other rooms use solve.hpp.
namespace loafwright::schedule::chain {

/// Which task comes first, second…, and which lag joins each to the next.
struct Order {
    std::vector<std::size_t> tasks;
    std::vector<std::size_t> lags; // one fewer than tasks
};

/// Errors: a reason in words when the problem is not one job whose lags join all tasks into one
/// line.
tl::expected<Order, Diagnostic> order_of(const Problem& problem);

/// The greatest step that every number that matters is a multiple of; see README.md for why nothing
/// is lost.
///
/// Needs:    `faults_in(problem)` is empty.
std::int64_t grid_of(const Problem& problem,
                     const std::optional<std::int64_t>& from,
                     const std::optional<std::int64_t>& to);

/// The people's windows folded into one table a question, in cells of the grid.
///
/// Invariants: each table has horizon + 1 entries; entry t is the first cell >= t at which the
/// thing ends: somebody
///             being free, somebody watching, nobody minding.
struct Calendar {
    std::int64_t horizon = 0;                          // in cells
    std::vector<std::vector<std::int32_t>> free_until; // person, cell
    std::vector<std::int32_t> somebody_free_until;
    std::vector<std::int32_t> watched_until;
    std::vector<std::int32_t> welcome_until;
};

Calendar calendar_of(const Problem& problem, std::int64_t grid);

/// One task of the chain in cells, under one alternative.
struct Link {
    std::int64_t least = 0; // its length
    std::int64_t most = 0;
    bool hands = false;
    bool oven = false;
    bool tied = false; // it is not `leave`
    std::int64_t heat = 0;
    int temperature = 0;
    // To the next task.
    std::int64_t lag_min = 0;
    std::int64_t lag_max = 0; // the horizon where there is none
    std::optional<std::int64_t> lag_good;
    bool lag_tied = false;     // both ends tie
    std::int64_t own_from = 0; // the task's own start_from and start_to
    std::int64_t own_to = 0;
    // Starts that bounds alone leave: [from, to]; empty when from > to.
    std::int64_t from = 0;
    std::int64_t to = 0;
    // An oven task with another temperature later in the chain starts at least so long after this
    // one's end.
    std::size_t next_oven = 0; // 0: nothing to keep
    std::int64_t changeover = 0;
};

/// A claim on the oven as the chain sees it: [from, until) with settling included, for each task of
/// the chain.
struct Blocked {
    std::int64_t from = 0;
    std::int64_t until = 0;
};

/// The chain under one alternative.
struct Line {
    std::vector<Link> links;
    std::vector<std::vector<Blocked>> claims; // for each link, the claims that concern it
    std::optional<std::int64_t> ready_from;   // in cells
    std::int64_t ready_by = 0;
    std::int64_t weight = 0;
    bool dead = false; // bounds alone say that it cannot be
};

Line line_of(const Problem& problem,
             const Order& order,
             std::size_t alternative,
             std::int64_t grid,
             const std::optional<std::int64_t>& first_from,
             const std::optional<std::int64_t>& first_to);

} // namespace loafwright::schedule::chain
