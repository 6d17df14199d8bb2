// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/chain.hpp"
#include "engine/schedule/solve.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace loafwright::schedule::chain {

/// What a rest of the chain costs, packed so that one comparison is the lexicographic one and sums
/// stay sums: end in the highest 15 bits (only where the aim asks for the earliest end), violations
/// in 32, tied in the lowest 16.
using Cost = std::int64_t;
inline constexpr Cost no_way = INT64_MAX;
inline constexpr Cost one_violation = Cost{1} << 16;
inline constexpr Cost one_end = Cost{1} << 48;
/// More cells than this would let `tied` run into `violations`.
inline constexpr std::int64_t most_cells_a_task = 16128;

/// Costs for a stretch of time: costs[t - from].
struct Table {
    std::int64_t from = 0;
    std::vector<Cost> costs;

    [[nodiscard]] std::int64_t to() const {
        return from + static_cast<std::int64_t>(costs.size()) - 1;
    }
    [[nodiscard]] Cost at(std::int64_t t) const {
        return t < from || t > to() ? no_way : costs[static_cast<std::size_t>(t - from)];
    }
};

/// The chain solved backwards: after `run`, `starts(i)` says what the chain from task i on costs at
/// each start.
class Sweep {
public:
    Sweep(const Line& line, const Calendar& calendar, Aim aim);

    void run();
    [[nodiscard]] const Table& first() const { return starts_.front(); }

    struct Times {
        std::vector<std::int64_t> starts;
        std::vector<std::int64_t> ends;
    };
    /// The times that reach the cost of starting at `start`, by the aim's tie rule.
    ///
    /// Needs: first().at(start) is not no_way.
    [[nodiscard]] Times trace(std::int64_t start) const;

    /// What `run` will do, in cells.
    [[nodiscard]] static std::int64_t work(const Line& line);

private:
    [[nodiscard]] Cost last_end(std::int64_t end) const;
    [[nodiscard]] Cost of_task(std::size_t i, std::int64_t start, std::int64_t end) const;
    [[nodiscard]] Cost of_lag(std::size_t i, std::int64_t end, std::int64_t next_start) const;
    [[nodiscard]] Table ends_before(std::size_t i, const Table& next_starts) const;
    [[nodiscard]] Table starts_before(std::size_t i, const Table& ends) const;
    [[nodiscard]] std::vector<Table> through_changeover(std::size_t i, std::int64_t end) const;
    [[nodiscard]] Table ends_by_changeover(std::size_t i) const;

    const Line& line_;
    const Calendar& calendar_;
    Aim aim_;
    std::vector<Table> starts_;
};

} // namespace loafwright::schedule::chain
