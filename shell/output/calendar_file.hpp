// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/plan.hpp"
#include "engine/quantity/time.hpp"
#include "engine/sheet/compose.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::output {

/// What a calendar must know of a bake besides its plan.
struct CalendarMarks {
    /// The same text for the same recipe and the same bake, however often it is planned.
    std::string identity;
    std::int64_t sequence = 0; // RFC 5545 section 3.8.7.4: 0 at first, then one more a revision
    Instant now;
    /// UIDs that an earlier file had and this plan has not: they are called off.
    std::vector<std::string> withdrawn;
};

/// The plan as an iCalendar file (RFC 5545): an event a stage, with alarms.
///
/// Needs:    `sheet` composed from `plan`: its lines are the words of the events.
/// Promises: one event for each stage, its UID made from the identity and what the stage does;
///           alarms ten minutes before work, when bread goes into the oven and comes out, at each
///           act, and one when the bread can be cut; waits leave the calendar free; VTIMEZONE holds
///           the zone's offsets around the plan and no others; lines of at most 75 octets, whole
///           letters; the same input gives the same bytes.
/// Never:    asks the clock, throws on input.
std::string
calendar_file(const Plan& plan, const Sheet& sheet, const Zone& zone, const CalendarMarks& marks);

/// The same, as the next revision of `before`, the bytes of the file that it takes the place of.
/// `marks.sequence` and `marks.withdrawn` are filled in.
///
/// Promises: SEQUENCE 0 where `before` is empty, no calendar, or of another bake; as before when
///           nothing but the time of writing differs; else one more. Events that are gone are
///           called off, so that a calendar which had them strikes them out.
/// Never:    throws on input, whatever its bytes.
std::string calendar_file_after(std::string_view before,
                                const Plan& plan,
                                const Sheet& sheet,
                                const Zone& zone,
                                CalendarMarks marks);

} // namespace loafwright::output
