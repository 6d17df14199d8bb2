// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/chain.hpp"
#include "engine/schedule/problem.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

/// A problem of any shape in cells of its grid, with bounds. Other rooms use solve.hpp.
namespace loafwright::schedule::cells {

/// [from, to)
struct Span {
    std::int64_t from = 0;
    std::int64_t to = 0;
};

/// A task under one way of doing its job; starts lie in [start_from, start_to], ends likewise.
struct WayTask {
    std::int64_t least = 0;
    std::int64_t most = 0;
    int fridge = 0;
    bool tied = false;
    std::int64_t start_from = 0;
    std::int64_t start_to = 0;
    std::int64_t end_from = 0;
    std::int64_t end_to = 0;
};

struct WayLag {
    std::size_t after = 0;
    std::size_t before = 0;
    std::int64_t min = 0;
    std::optional<std::int64_t> max;
    std::optional<std::int64_t> good;
};

/// A job under one of its alternatives.
struct Way {
    std::size_t alternative = 0;
    std::int64_t weight = 0;
    std::vector<WayTask> tasks;
    std::vector<WayLag> lags;
};

/// What is the same under every alternative.
struct TaskUse {
    bool hands = false;
    bool oven = false;
    int slots = 0;
    int temperature = 0;
    std::int64_t heat = 0;
    std::int64_t start_from = 0; // of its own, whatever else is looked at
    std::int64_t start_to = 0;
    std::vector<Span> claims; // ends by `from` or starts at `to` or later, settling included
    std::vector<std::int64_t> starts; // that bounds and calendars leave under some way, ascending
};

struct JobCells {
    std::vector<Way> ways; // those that bounds leave
    std::vector<TaskUse> uses;
    std::optional<std::int64_t> not_before;
    std::optional<std::int64_t> ready_from;
    std::optional<std::int64_t> ready_by;
};

/// Which rules the bounds look at. Lengths, least lags and the horizon always count.
struct Looking {
    bool waits = true; // lag_max
    bool not_before = true;
    bool ready = true; // ready_from, ready_by
    bool calendars =
        true; // windows, unattended, preheat, oven_claim, things larger than their place
};

struct DayCells {
    std::int64_t grid = 1;
    std::int64_t horizon = 0;
    chain::Calendar calendar;
    std::vector<std::vector<Span>> blocked; // for each person
    std::vector<Span> unwatched;
    std::vector<Span> unwelcome;
    std::vector<JobCells> jobs;
    bool impossible = false; // some job has no way left

    [[nodiscard]] std::int64_t changeover(int from, int to) const;

    int oven_slots = 0;
    int fridge_slots = 0;
    std::vector<Changeover> changeovers; // in cells
};

/// The largest work that is taken on: about what twelve jobs of ten tasks and three ways over four
/// days by the minute need.
inline constexpr std::int64_t most_work = 5000000;

/// The work of `day_in_cells` and the size of what it makes, counted beforehand.
std::int64_t work_of(const Problem& problem, std::int64_t grid);

/// Whether bakes of different temperatures can meet although one of them takes no time: the one
/// case in which their order is not all there is to say.
bool bakes_may_be_empty(const Problem& problem);

/// The grid of the whole problem; 1 where a bake of no length could hide inside another.
std::int64_t grid_of_day(const Problem& problem,
                         const std::optional<std::int64_t>& from,
                         const std::optional<std::int64_t>& to);

/// Needs: `faults_in(problem)` is empty; the work was found bearable.
DayCells day_in_cells(const Problem& problem, std::int64_t grid, const Looking& looking);

/// Bounds and starts again, after lengths, lags, anchors or ways have become narrower.
///
/// Needs: `day` was made with all of Looking.
void look_again(DayCells& day);

/// How many starts are left in all.
std::int64_t starts_left(const DayCells& day);

} // namespace loafwright::schedule::cells
