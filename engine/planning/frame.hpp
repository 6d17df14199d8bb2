// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/kitchen/kitchen.hpp"
#include "engine/schedule/problem.hpp"

#include <cstdint>
#include <utility>
#include <vector>

/// A stretch of real time in minutes of the schedule room, and who is there in it.
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

/// The hours in which people sleep where nobody says (common practice).
inline constexpr ClockTime night_from{22, 30};
inline constexpr ClockTime night_to{6, 30};

/// [from, to) of every night that touches the frame, by the wall clock of the zone.
std::vector<std::pair<Instant, Instant>> nights_of(const Zone& zone, const Frame& frame);

/// The mark of five minutes at or before the moment, at or after it, in minutes of a frame that
/// begins at `origin`.
std::int64_t floor_mark(Instant origin, Instant moment);
std::int64_t ceil_mark(Instant origin, Instant moment);

/// Five minutes by the wall clock, and not in the future.
Instant full_five_before(const Zone& zone, Instant moment);

/// Everybody of the day with their windows; windows that do not lie on a mark are widened to the
/// next one.
std::vector<schedule::Person> people_of(const Day& day, const Rules& rules, const Frame& frame);

/// Others' use of the oven. Heat left by them is not counted on: the oven may be cold again, or too
/// hot.
std::vector<schedule::Claim> claims_of(const Day& day, const Rules& rules, const Frame& frame);

} // namespace loafwright::planning
