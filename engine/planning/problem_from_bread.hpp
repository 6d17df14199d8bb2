// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/kitchen/kitchen.hpp"
#include "engine/planning/chain.hpp"
#include "engine/planning/frame.hpp"
#include "engine/planning/margin.hpp"
#include "engine/schedule/problem.hpp"
#include "engine/schedule/solve.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace loafwright::planning {

/// The bread on the clock: start and end of each atom, in minutes of the frame.
struct Placed {
    Frame frame;
    std::vector<std::int64_t> starts;
    std::vector<std::int64_t> ends;
    std::vector<std::optional<std::size_t>>
        people; // who does it, an index in day.people; hands only
    /// The first atoms of the lines that the page has already: it keeps them, however short they
    /// were. None for a page that is new.
    std::optional<std::vector<std::size_t>> lines = std::nullopt;
};

/// What a plan is asked for, beside the rules.
struct Target {
    schedule::Aim aim = schedule::Aim::end_early;
    std::optional<Instant> start_from; // first start in [start_from, start_to]
    std::optional<Instant> start_to;
    std::optional<Instant> ready_from; // when it can first be cut, by the likely times
    std::optional<Instant> ready_by;
};

/// The best placing of the bread, or none where rules and target leave none.
///
/// Promises: nothing begins before day.now; starts lie on full five minutes of the clock, counted
/// from an exact start where
///           one is asked for.
std::optional<Placed>
place(const BreadChain& chain, const Day& day, const Rules& rules, const Target& target);

/// The bread as one job of the schedule room: a task an atom, each joined to the next. A bake asks
/// for temperature 0.
schedule::Job job_of(const BreadChain& chain);

/// Sum of the longest lengths of all atoms.
std::int64_t longest_sum(const BreadChain& chain);

/// The schedule problem behind it, for checks.
schedule::Problem problem_of(const BreadChain& chain,
                             const Day& day,
                             const Rules& rules,
                             const Target& target,
                             const Frame& frame);

/// A frame that holds every moment the target may need, for work that takes `longest_minutes` at
/// most.
Frame frame_of(std::int64_t longest_minutes, const Day& day, const Target& target);

} // namespace loafwright::planning
