// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/quantity/time.hpp"

#include <tl/expected.hpp>

#include <string_view>

namespace loafwright::settings {

/// A time as somebody said it, before it is laid over a calendar.
struct SaidTime {
    enum class Day {
        unsaid,  // "13:00"
        ahead,   // "today 13:00", "tomorrow 13:00": `days_ahead`
        weekday, // "sat 13:00": `weekday`
        date,    // "2026-11-28 13:00": `date`
        instant  // RFC 3339: `instant`, and nothing else counts
    };

    Day day = Day::unsaid;
    int days_ahead = 0;
    int weekday = 0; // 0 = Monday
    CivilDate date;
    ClockTime clock;
    Instant instant;
};

/// What the words say, or why they say nothing.
///
/// Promises: blanks around and runs of blanks inside do not count, nor does the case of letters.
/// Errors:   time_unreadable; `do_this` names the time that was probably meant where there is one.
/// `where` is left empty.
tl::expected<SaidTime, Diagnostic> said_time(std::string_view words_as_given);

/// The instant that was said, counted from `now`: a bare clock time is today's, a weekday the next
/// one, today while still ahead.
///
/// Errors: time_skipped.
tl::expected<Instant, Diagnostic> instant_said(const SaidTime& said, const Zone& zone, Instant now);

/// The wall clock time `clock` of the day `days_after` days after `date`.
CivilTime on_day(CivilDate date, int days_after, ClockTime clock);

} // namespace loafwright::settings
