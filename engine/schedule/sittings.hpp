// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/cells.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

/// What one is tied to, before any of it has a time. Other rooms use solve.hpp.
namespace loafwright::schedule::cells {

/// [a][b]: a is over when b starts, under every way.
std::vector<std::vector<bool>> precedence_of(const JobCells& job);

/// A task, and the lag that leads to it from the one before.
struct Piece {
    std::size_t task = 0;
    std::optional<std::size_t> lag; // none for the first
};

/// Tasks without `leave` that lags join.
struct Sitting {
    std::vector<std::size_t> tasks;
    std::int64_t least = 0; // shorter it cannot be
    /// From its one first to its one last task, where it has both and lags of at least 0 between.
    std::vector<Piece> path;
};

std::vector<Sitting> sittings_of(const Way& way, const std::vector<std::vector<bool>>& precedes);

/// Narrows lengths and lags, and drops ways, to what a sum of all sittings of at most `tied`
/// leaves.
void keep_tied(DayCells& day, std::int64_t tied);

} // namespace loafwright::schedule::cells
