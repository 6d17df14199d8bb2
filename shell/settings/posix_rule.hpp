// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/time.hpp"

#include <array>
#include <optional>
#include <string_view>
#include <vector>

namespace loafwright::settings {

/// One day of the year on which the clocks change, and when.
struct YearlyChange {
    enum class Day {
        month_week_weekday, // Mm.w.d: weekday d (0 = Sunday) of week w (5 = the last) of month m
        without_leap_day,   // Jn: 1 to 365, 29 February never counted
        with_leap_day       // n: 0 to 365
    };

    Day day = Day::month_week_weekday;
    int month = 1;
    int week = 1;
    int weekday = 0;
    int number = 0;
    int second_of_day = 7200; // may lie outside the day
};

/// A zone's yearly rule, as in the environment variable TZ (POSIX.1, Base Definitions, chapter 8)
/// and in the last line of a TZif file.
struct PosixRule {
    int standard_offset_seconds = 0; // east of UTC
    int summer_offset_seconds = 0;
    bool has_summer = false;
    YearlyChange to_summer;
    YearlyChange to_standard;
};

/// Reads "GMT0BST,M3.5.0/1,M10.5.0". Hours from -167 to 167 are allowed, as in TZif version 3 (RFC
/// 8536 section 3.3.1).
std::optional<PosixRule> parse_posix_rule(std::string_view text);

/// The changes that the rule makes from the beginning of year `first` to the end of year `last`, in
/// order.
std::vector<ZoneChange> changes_by_rule(const PosixRule& rule, int first, int last);

} // namespace loafwright::settings
