// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/kitchen/kitchen.hpp"
#include "engine/planning/chain.hpp"
#include "engine/planning/margin.hpp"
#include "engine/schedule/problem.hpp"
#include "engine/schedule/solve.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace loafwright::planning {

/// Where minute 0 of a problem lies. Minutes count elapsed time, so lengths stay true when the
/// clocks change.
struct Frame {
    Instant origin;
    std::int64_t horizon = 0;
    std::int64_t now = 0; // the first mark of five minutes that is not yet past

    [[nodiscard]] Instant at(std::int64_t minutes) const {
        return later_by_minutes(origin, minutes);
    }
};

/// Which rules of a day count in a plan.
struct Rules {
    bool people = true; // away, asleep and busy windows
    bool claims = true; // others' use of the oven
    bool night = false; // nobody works or bakes between 22:30 and 06:30 by the clock
};

/// The bread on the clock: start and end of each atom, in minutes of the frame.
struct Placed {
    Frame frame;
    std::vector<std::int64_t> starts;
    std::vector<std::int64_t> ends;
};

/// The hours in which people sleep where no day file says (common practice).
inline constexpr ClockTime night_from{22, 30};
inline constexpr ClockTime night_to{6, 30};

/// [from, to) of every night that touches the frame, by the wall clock of the zone.
std::vector<std::pair<Instant, Instant>> nights_of(const Zone& zone, const Frame& frame);

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

/// The schedule problem behind it, for checks.
schedule::Problem problem_of(const BreadChain& chain,
                             const Day& day,
                             const Rules& rules,
                             const Target& target,
                             const Frame& frame);

/// A frame that holds every moment the target may need.
Frame frame_of(const BreadChain& chain, const Day& day, const Target& target);

} // namespace loafwright::planning
