// SPDX-License-Identifier: Apache-2.0
//
// Calendar and clock arithmetic on whole numbers. Days are counted in eras of 400 years, which all
// have 146097 days; a year is taken to begin in March, so that the leap day is its last and the
// lengths of the months follow one line. A Zone is a short sorted list of offsets: the way from an
// instant to the wall clock is a look into it, the way back tries every offset in the list and
// keeps the earliest instant that shows the wanted time.
#include "engine/quantity/time.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cstddef>
#include <cstdlib>

namespace loafwright {

namespace {

constexpr std::int64_t seconds_per_day = 86400;
constexpr std::int64_t days_per_era = 146097;
// From 0000-03-01, where the first era begins, to 1970-01-01.
constexpr std::int64_t days_to_epoch = 719468;

std::int64_t floor_div(std::int64_t numerator, std::int64_t divisor) {
    assert(divisor > 0);
    return numerator / divisor - (numerator % divisor < 0 ? 1 : 0);
}

CivilTime civil_at_offset(Instant instant, std::int64_t offset_seconds) {
    const std::int64_t local = instant.seconds + offset_seconds;
    const std::int64_t days = floor_div(local, seconds_per_day);
    const std::int64_t second_of_day = local - days * seconds_per_day;
    CivilTime civil;
    civil.date = civil_from_days(days);
    civil.clock.hour = static_cast<int>(second_of_day / 3600);
    civil.clock.minute = static_cast<int>(second_of_day / 60 % 60);
    civil.second = static_cast<int>(second_of_day % 60);
    return civil;
}

std::int64_t local_seconds(const CivilTime& civil) {
    return days_from_civil(civil.date) * seconds_per_day + std::int64_t{civil.clock.hour} * 3600 +
           std::int64_t{civil.clock.minute} * 60 + civil.second;
}

std::string day_text(CivilDate date) {
    constexpr std::array<std::string_view, 7> weekdays = {
        "Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
    constexpr std::array<std::string_view, 12> months = {
        "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    const auto weekday = static_cast<std::size_t>(weekday_of(date));
    const auto month = static_cast<std::size_t>(date.month - 1);
    return fmt::format("{} {} {}", weekdays.at(weekday), date.day, months.at(month));
}

// What to say about a wall clock time that no instant shows: which change skips it.
Diagnostic skipped(const Zone& zone, const CivilTime& civil) {
    Diagnostic diagnostic;
    diagnostic.code = "time_skipped";
    diagnostic.what = fmt::format(
        "{} on {} does not exist in {}", clock_text(civil.clock), day_text(civil.date), zone.name);
    const std::int64_t wanted = local_seconds(civil);
    std::int64_t before = zone.first_offset_seconds;
    for (const ZoneChange& change : zone.changes) {
        const std::int64_t last = change.from.seconds + before;
        const std::int64_t next = change.from.seconds + change.offset_seconds;
        if (last <= wanted && wanted < next) {
            const CivilTime from = civil_at_offset(change.from, before);
            const CivilTime to = civil_at_offset(change.from, change.offset_seconds);
            const std::string day = from.date == to.date ? "" : " on " + day_text(to.date);
            diagnostic.what += fmt::format(": the clocks go forward from {} to {}{}",
                                           clock_text(from.clock),
                                           clock_text(to.clock),
                                           day);
            diagnostic.do_this = fmt::format("Choose a time before {} or from {}{} on.",
                                             clock_text(from.clock),
                                             clock_text(to.clock),
                                             day);
            return diagnostic;
        }
        before = change.offset_seconds;
    }
    return diagnostic;
}

bool is_leap_year(std::int64_t year) {
    return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
}

int days_in_month(int year, int month) {
    constexpr std::array<int, 12> lengths = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    return month == 2 && is_leap_year(year) ? 29 : lengths.at(static_cast<std::size_t>(month - 1));
}

// Takes fixed-width fields off the front of a text.
class FixedFields {
public:
    explicit FixedFields(std::string_view text) : text_(text) {}

    // Exactly `width` digits, as a number between `low` and `high`.
    std::optional<int> number(std::size_t width, int low, int high) {
        if (text_.size() < width) {
            return std::nullopt;
        }
        int value = 0;
        for (const char c : text_.substr(0, width)) {
            if (c < '0' || c > '9') {
                return std::nullopt;
            }
            value = value * 10 + (c - '0');
        }
        if (value < low || value > high) {
            return std::nullopt;
        }
        text_.remove_prefix(width);
        return value;
    }

    bool one_of(std::string_view allowed) {
        if (text_.empty() || allowed.find(text_.front()) == std::string_view::npos) {
            return false;
        }
        text_.remove_prefix(1);
        return true;
    }

    void skip_digits() {
        while (!text_.empty() && text_.front() >= '0' && text_.front() <= '9') {
            text_.remove_prefix(1);
        }
    }

    bool starts_with_digit() const {
        return !text_.empty() && text_.front() >= '0' && text_.front() <= '9';
    }

    bool at_end() const { return text_.empty(); }

private:
    std::string_view text_;
};

// time-offset of RFC 3339 section 5.6, in seconds east of UTC.
std::optional<int> offset_field(FixedFields& fields) {
    if (fields.one_of("Zz")) {
        return 0;
    }
    const bool east = fields.one_of("+");
    if (!east && !fields.one_of("-")) {
        return std::nullopt;
    }
    const auto hours = fields.number(2, 0, 23);
    if (!hours || !fields.one_of(":")) {
        return std::nullopt;
    }
    const auto minutes = fields.number(2, 0, 59);
    if (!minutes) {
        return std::nullopt;
    }
    const int seconds = *hours * 3600 + *minutes * 60;
    return east ? seconds : -seconds;
}

// Leap seconds are only ever put at 23:59:60 UTC on the last day of a month (RFC 3339 section 5.7).
bool may_be_leap_second(Instant second_after) {
    const CivilTime utc = civil_at_offset(second_after, 0);
    return utc.date.day == 1 && utc.clock == ClockTime{0, 0} && utc.second == 0;
}

} // namespace

std::int64_t minutes_between(Instant from, Instant to) {
    return floor_div(to.seconds - from.seconds, 60);
}

std::int64_t days_from_civil(CivilDate date) {
    const std::int64_t year = std::int64_t{date.year} - (date.month <= 2 ? 1 : 0);
    const std::int64_t month_from_march = (date.month + 9) % 12;
    const std::int64_t era = floor_div(year, 400);
    const std::int64_t year_of_era = year - era * 400;
    // March to February have 31 30 31 30 31 31 30 31 30 31 31 28 days; (153 m + 2) / 5 sums the
    // first m of them.
    const std::int64_t day_of_year = (153 * month_from_march + 2) / 5 + date.day - 1;
    const std::int64_t day_of_era =
        year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year;
    return era * days_per_era + day_of_era - days_to_epoch;
}

CivilDate civil_from_days(std::int64_t days) {
    const std::int64_t shifted = days + days_to_epoch;
    const std::int64_t era = floor_div(shifted, days_per_era);
    const std::int64_t day_of_era = shifted - era * days_per_era;
    // Taking out the leap days that have passed leaves years of 365 days each: one every 4 years
    // (1461 days), none every 100 (36524 days), and the last day of the era is a leap day after
    // all.
    const std::int64_t year_of_era =
        (day_of_era - day_of_era / 1460 + day_of_era / 36524 - day_of_era / (days_per_era - 1)) /
        365;
    const std::int64_t day_of_year =
        day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    const std::int64_t month_from_march = (5 * day_of_year + 2) / 153;
    const bool after_new_year = month_from_march >= 10;
    CivilDate date;
    date.day = static_cast<int>(day_of_year - (153 * month_from_march + 2) / 5 + 1);
    date.month = static_cast<int>(after_new_year ? month_from_march - 9 : month_from_march + 3);
    date.year = static_cast<int>(era * 400 + year_of_era + (after_new_year ? 1 : 0));
    return date;
}

int weekday_of(CivilDate date) {
    // 1970-01-01 was a Thursday, three days after a Monday.
    const std::int64_t shifted = days_from_civil(date) + 3;
    return static_cast<int>(shifted - floor_div(shifted, 7) * 7);
}

int offset_seconds_at(const Zone& zone, Instant instant) {
    const auto after = std::upper_bound(
        zone.changes.begin(), zone.changes.end(), instant, [](Instant i, const ZoneChange& change) {
            return i < change.from;
        });
    return after == zone.changes.begin() ? zone.first_offset_seconds
                                         : std::prev(after)->offset_seconds;
}

CivilTime civil_of(const Zone& zone, Instant instant) {
    return civil_at_offset(instant, offset_seconds_at(zone, instant));
}

tl::expected<Instant, Diagnostic> instant_of(const Zone& zone, const CivilTime& civil) {
    const std::int64_t local = local_seconds(civil);
    std::optional<Instant> earliest;
    const auto consider = [&](int offset_seconds) {
        const Instant candidate{local - offset_seconds};
        if (offset_seconds_at(zone, candidate) == offset_seconds &&
            (!earliest || candidate < *earliest)) {
            earliest = candidate;
        }
    };
    consider(zone.first_offset_seconds);
    for (const ZoneChange& change : zone.changes) {
        consider(change.offset_seconds);
    }
    if (!earliest) {
        return tl::unexpected(skipped(zone, civil));
    }
    return *earliest;
}

std::string rfc3339(const Zone& zone, Instant instant) {
    // RFC 3339 has no seconds in an offset. Old local mean times had; the wall clock is then taken
    // at the whole minute, so that the text still names the right instant.
    const int minutes = offset_seconds_at(zone, instant) / 60;
    const CivilTime civil = civil_at_offset(instant, std::int64_t{minutes} * 60);
    return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}{}{:02}:{:02}",
                       civil.date.year,
                       civil.date.month,
                       civil.date.day,
                       civil.clock.hour,
                       civil.clock.minute,
                       civil.second,
                       minutes < 0 ? '-' : '+',
                       std::abs(minutes) / 60,
                       std::abs(minutes) % 60);
}

std::optional<Instant> parse_rfc3339(std::string_view text) {
    FixedFields fields(text);
    const auto year = fields.number(4, 0, 9999);
    if (!year || !fields.one_of("-")) {
        return std::nullopt;
    }
    const auto month = fields.number(2, 1, 12);
    if (!month || !fields.one_of("-")) {
        return std::nullopt;
    }
    const auto day = fields.number(2, 1, days_in_month(*year, *month));
    if (!day || !fields.one_of("Tt ")) {
        return std::nullopt;
    }
    const auto hour = fields.number(2, 0, 23);
    if (!hour || !fields.one_of(":")) {
        return std::nullopt;
    }
    const auto minute = fields.number(2, 0, 59);
    if (!minute || !fields.one_of(":")) {
        return std::nullopt;
    }
    const auto second = fields.number(2, 0, 60);
    if (!second) {
        return std::nullopt;
    }
    if (fields.one_of(".")) {
        if (!fields.starts_with_digit()) {
            return std::nullopt;
        }
        fields.skip_digits();
    }
    const auto offset_seconds = offset_field(fields);
    if (!offset_seconds || !fields.at_end()) {
        return std::nullopt;
    }
    const CivilTime civil{{*year, *month, *day}, {*hour, *minute}, *second};
    const Instant instant{local_seconds(civil) - *offset_seconds};
    if (*second == 60 && !may_be_leap_second(instant)) {
        return std::nullopt;
    }
    return instant;
}

std::string clock_text(const Zone& zone, Instant instant) {
    return clock_text(civil_of(zone, instant).clock);
}

std::string clock_text(ClockTime clock) {
    return fmt::format("{:02}:{:02}", clock.hour, clock.minute);
}

std::string day_text(const Zone& zone, Instant instant) {
    return day_text(civil_of(zone, instant).date);
}

} // namespace loafwright
