// SPDX-License-Identifier: Apache-2.0
//
// The yearly rule of a time zone in the notation of POSIX TZ: name, offset west of UTC, then the
// name and offset of summer time and the two days on which the clocks change, each with a time on
// the wall clock that is being left. A summer time before standard time (Ireland's winter) and one
// all the year round need no special case: the changes are sorted.
#include "shell/settings/posix_rule.hpp"

#include <algorithm>
#include <cstddef>

namespace loafwright::settings {

namespace {

constexpr int seconds_per_hour = 3600;

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

class RuleReader {
public:
    explicit RuleReader(std::string_view text) : text_(text) {}

    [[nodiscard]] bool at_end() const { return text_.empty(); }

    [[nodiscard]] bool starts_with(char c) const { return !text_.empty() && text_.front() == c; }

    bool take(char c) {
        if (!starts_with(c)) {
            return false;
        }
        text_.remove_prefix(1);
        return true;
    }

    // Three letters or more, or anything of letters, digits and signs between angle brackets.
    bool name() {
        std::size_t length = 0;
        if (take('<')) {
            while (length < text_.size() && (is_letter(text_[length]) || is_digit(text_[length]) ||
                                             text_[length] == '+' || text_[length] == '-')) {
                ++length;
            }
            text_.remove_prefix(length);
            return take('>') && length >= 3;
        }
        while (length < text_.size() && is_letter(text_[length])) {
            ++length;
        }
        text_.remove_prefix(length);
        return length >= 3;
    }

    std::optional<int> number(int low, int high) {
        int value = 0;
        std::size_t length = 0;
        while (length < text_.size() && length < 3 && is_digit(text_[length])) {
            value = value * 10 + (text_[length] - '0');
            ++length;
        }
        text_.remove_prefix(length);
        return length > 0 && value >= low && value <= high ? std::optional<int>(value)
                                                           : std::nullopt;
    }

    // [+-]hh[:mm[:ss]] in seconds.
    std::optional<int> hours(int most_hours) {
        const bool negative = take('-');
        if (!negative) {
            take('+');
        }
        const auto whole = number(0, most_hours);
        if (!whole) {
            return std::nullopt;
        }
        int seconds = *whole * seconds_per_hour;
        for (const int unit : {60, 1}) {
            if (!take(':')) {
                break;
            }
            const auto part = number(0, 59);
            if (!part) {
                return std::nullopt;
            }
            seconds += *part * unit;
        }
        return negative ? -seconds : seconds;
    }

    std::optional<YearlyChange> change() {
        YearlyChange change;
        std::optional<int> read;
        if (take('M')) {
            const auto month = number(1, 12);
            const auto week = month && take('.') ? number(1, 5) : std::nullopt;
            read = week && take('.') ? number(0, 6) : std::nullopt;
            if (read) {
                change.month = *month;
                change.week = *week;
                change.weekday = *read;
            }
        } else if (take('J')) {
            change.day = YearlyChange::Day::without_leap_day;
            read = number(1, 365);
            change.number = read.value_or(0);
        } else {
            change.day = YearlyChange::Day::with_leap_day;
            read = number(0, 365);
            change.number = read.value_or(0);
        }
        if (!read) {
            return std::nullopt;
        }
        if (take('/')) {
            const auto second_of_day = hours(167);
            if (!second_of_day) {
                return std::nullopt;
            }
            change.second_of_day = *second_of_day;
        }
        return change;
    }

private:
    std::string_view text_;
};

// Days since 1970-01-01 of the day on which `change` falls in `year`.
std::int64_t day_of(const YearlyChange& change, int year) {
    const std::int64_t new_year = days_from_civil({year, 1, 1});
    if (change.day == YearlyChange::Day::with_leap_day) {
        return new_year + change.number;
    }
    if (change.day == YearlyChange::Day::without_leap_day) {
        const bool leap = days_from_civil({year, 3, 1}) - new_year == 60;
        return new_year + change.number - 1 + (leap && change.number >= 60 ? 1 : 0);
    }
    const std::int64_t first = days_from_civil({year, change.month, 1});
    const std::int64_t next_month = change.month == 12
                                        ? days_from_civil({year + 1, 1, 1})
                                        : days_from_civil({year, change.month + 1, 1});
    // weekday_of() begins on Monday, the rule on Sunday.
    const int first_weekday = (weekday_of({year, change.month, 1}) + 1) % 7;
    std::int64_t day =
        first + (change.weekday - first_weekday + 7) % 7 + std::int64_t{7} * (change.week - 1);
    while (day >= next_month) {
        day -= 7;
    }
    return day;
}

} // namespace

std::optional<PosixRule> parse_posix_rule(std::string_view text) {
    RuleReader reader(text);
    PosixRule rule;
    const bool named = reader.name();
    const auto west = named ? reader.hours(24) : std::nullopt;
    if (!west) {
        return std::nullopt;
    }
    rule.standard_offset_seconds = -*west;
    if (reader.at_end()) {
        return rule;
    }
    rule.has_summer = true;
    rule.summer_offset_seconds = rule.standard_offset_seconds + seconds_per_hour;
    if (!reader.name()) {
        return std::nullopt;
    }
    if (!reader.starts_with(',') && !reader.at_end()) {
        const auto summer_west = reader.hours(24);
        if (!summer_west) {
            return std::nullopt;
        }
        rule.summer_offset_seconds = -*summer_west;
    }
    // POSIX requires the days; a rule without them means whatever the system likes, so it is not
    // used here.
    const auto to_summer = reader.take(',') ? reader.change() : std::nullopt;
    const auto to_standard = to_summer && reader.take(',') ? reader.change() : std::nullopt;
    if (!to_standard || !reader.at_end()) {
        return std::nullopt;
    }
    rule.to_summer = *to_summer;
    rule.to_standard = *to_standard;
    return rule;
}

std::vector<ZoneChange> changes_by_rule(const PosixRule& rule, int first, int last) {
    std::vector<ZoneChange> changes;
    if (!rule.has_summer) {
        return changes;
    }
    for (int year = first; year <= last; ++year) {
        // Each time is read on the clock that is being left.
        const std::int64_t to_standard = day_of(rule.to_standard, year) * 86400 +
                                         rule.to_standard.second_of_day -
                                         rule.summer_offset_seconds;
        const std::int64_t to_summer = day_of(rule.to_summer, year) * 86400 +
                                       rule.to_summer.second_of_day - rule.standard_offset_seconds;
        changes.push_back({Instant{to_standard}, rule.standard_offset_seconds});
        changes.push_back({Instant{to_summer}, rule.summer_offset_seconds});
    }
    // Stable: where summer time lasts all the year, its end and its next beginning are one instant,
    // and it goes on.
    std::stable_sort(changes.begin(), changes.end(), [](const ZoneChange& a, const ZoneChange& b) {
        return a.from < b.from;
    });
    return changes;
}

} // namespace loafwright::settings
