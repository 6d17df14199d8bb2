// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright {

/// A moment, the same for everybody on earth: seconds since 1970-01-01T00:00:00Z, leap seconds not
/// counted (POSIX).
struct Instant {
    std::int64_t seconds = 0;

    friend constexpr bool operator==(Instant a, Instant b) { return a.seconds == b.seconds; }
    friend constexpr bool operator!=(Instant a, Instant b) { return a.seconds != b.seconds; }
    friend constexpr bool operator<(Instant a, Instant b) { return a.seconds < b.seconds; }
    friend constexpr bool operator<=(Instant a, Instant b) { return a.seconds <= b.seconds; }
    friend constexpr bool operator>(Instant a, Instant b) { return a.seconds > b.seconds; }
    friend constexpr bool operator>=(Instant a, Instant b) { return a.seconds >= b.seconds; }
};

constexpr Instant later_by_minutes(Instant from, std::int64_t minutes) {
    return Instant{from.seconds + 60 * minutes};
}

/// Whole minutes from `from` to `to`, rounded towards the past.
std::int64_t minutes_between(Instant from, Instant to);

/// A day of the proleptic Gregorian calendar.
struct CivilDate {
    int year = 1970;
    int month = 1; // 1 to 12
    int day = 1;   // 1 to 31

    friend constexpr bool operator==(CivilDate a, CivilDate b) {
        return a.year == b.year && a.month == b.month && a.day == b.day;
    }
    friend constexpr bool operator<(CivilDate a, CivilDate b) {
        return a.year != b.year     ? a.year < b.year
               : a.month != b.month ? a.month < b.month
                                    : a.day < b.day;
    }
};

/// Days since 1970-01-01 and back.
std::int64_t days_from_civil(CivilDate date);
CivilDate civil_from_days(std::int64_t days);
/// 0 = Monday … 6 = Sunday (ISO 8601 order).
int weekday_of(CivilDate date);

/// A time on the wall clock.
struct ClockTime {
    int hour = 0;   // 0 to 23
    int minute = 0; // 0 to 59

    friend constexpr bool operator==(ClockTime a, ClockTime b) {
        return a.hour == b.hour && a.minute == b.minute;
    }
};

/// Date and wall clock at some place.
struct CivilTime {
    CivilDate date;
    ClockTime clock;
    int second = 0;
};

/// The offsets of one time zone inside the window that matters, as a value: the engine never looks
/// anything up.
///
/// Invariants: `changes` is sorted by `from`; before the first change `first_offset_seconds` holds.
struct ZoneChange {
    Instant from;
    int offset_seconds = 0; // east of UTC
};

struct Zone {
    std::string name = "UTC";
    int first_offset_seconds = 0;
    std::vector<ZoneChange> changes;
};

int offset_seconds_at(const Zone& zone, Instant instant);
CivilTime civil_of(const Zone& zone, Instant instant);

/// The moment at which the wall clock in `zone` shows `civil`.
///
/// Promises: a repeated hour (clocks go back) means the first one.
/// Errors:   `time_skipped` when the clocks go forward over it.
tl::expected<Instant, Diagnostic> instant_of(const Zone& zone, const CivilTime& civil);

/// RFC 3339 (a profile of ISO 8601): "2026-11-28T18:30:00+00:00". UTC by offset zero is written
/// "+00:00".
std::string rfc3339(const Zone& zone, Instant instant);

/// Reads RFC 3339 section 5.6, "Z" and a blank for "T" allowed, fractions of a second dropped.
std::optional<Instant> parse_rfc3339(std::string_view text);

/// "18:30", hours always two digits.
std::string clock_text(const Zone& zone, Instant instant);
std::string clock_text(ClockTime clock);
/// "Sat 28 Nov".
std::string day_text(const Zone& zone, Instant instant);

} // namespace loafwright
