// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/plan.hpp"
#include "engine/quantity/time.hpp"
#include "engine/sheet/options.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace loafwright {

/// One stage on the day line. Minutes count from the start of the line.
struct DayLineSpan {
    int number = 1;
    std::int64_t from_minutes = 0;
    std::int64_t to_minutes = 0;
    Attention attention = Attention::hands;
};

/// A full hour of the wall clock.
struct DayLineHour {
    std::int64_t minutes = 0;
    int hour = 0;     // 0 to 23
    std::string text; // "14:00", ready to print
};

/// The whole bake as one stretch of time, to be drawn as a clock laid out straight.
///
/// Invariants: 0 <= from_minutes < to_minutes <= minutes; spans in order, none inside another;
///             hours in order, inside the line.
struct DayLine {
    Instant from;
    std::int64_t minutes = 0; // to the time to eat
    std::vector<DayLineSpan> spans;
    std::vector<DayLineHour> hours;
};

/// The day line of a plan.
///
/// Promises: a stage ends where it likely ends or the next one begins, whichever is first; a full
///           hour is one on the wall clock, also across a clock change; at most a week of hours.
DayLine day_line(const Plan& plan, const Zone& zone, ClockForm form = ClockForm::hours_24);

} // namespace loafwright
