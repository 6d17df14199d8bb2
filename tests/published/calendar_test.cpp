// SPDX-License-Identifier: Apache-2.0
//
// Days and weekdays against the calendar of the C++ standard library (ISO/IEC 14882:2020,
// [time.cal]).
#include "engine/quantity/time.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <chrono>

namespace loafwright::published {
namespace {

std::chrono::year_month_day library_date(CivilDate date) {
    return std::chrono::year_month_day{std::chrono::year{date.year},
                                       std::chrono::month{static_cast<unsigned>(date.month)},
                                       std::chrono::day{static_cast<unsigned>(date.day)}};
}

void expect_same_day(std::int64_t days) {
    const std::chrono::sys_days library_day{std::chrono::days{static_cast<int>(days)}};
    const std::chrono::year_month_day expected{library_day};
    const CivilDate ours = civil_from_days(days);
    ASSERT_EQ(library_date(ours), expected) << days;
    ASSERT_EQ(days_from_civil(ours), days);
    // ISO: Monday is 1 there and 0 here.
    const unsigned weekday = std::chrono::weekday{library_day}.iso_encoding();
    ASSERT_EQ(weekday_of(ours), static_cast<int>(weekday) - 1) << days;
}

TEST(calendar, agrees_with_the_standard_library_on_every_day_of_eight_centuries) {
    const std::int64_t first = days_from_civil({1600, 1, 1});
    const std::int64_t last = days_from_civil({2400, 12, 31});
    for (std::int64_t day = first; day <= last; ++day) {
        expect_same_day(day);
    }
}

// The library's years run from -32767 to 32767.
RC_GTEST_PROP(calendar, agrees_with_the_standard_library_far_away, ()) {
    expect_same_day(*rc::gen::inRange<std::int64_t>(-12000000, 11000000));
}

} // namespace
} // namespace loafwright::published
