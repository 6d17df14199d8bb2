// SPDX-License-Identifier: Apache-2.0
//
// Words for times on the command line. "Now" is Wednesday 25 November 2026, 09:00 in London.
#include "shell/settings/settings.hpp"

#include <gtest/gtest.h>

#include <string>

namespace loafwright::settings {
namespace {

Instant at(std::string_view text) {
    return parse_rfc3339(text).value();
}

const Instant wednesday = at("2026-11-25T09:00:00Z");

std::string heard(std::string_view words, Instant now = wednesday) {
    const auto zone = zone_named("Europe/London", now);
    const auto instant = time_from_words(words, zone.value(), now);
    return instant ? rfc3339(*zone, *instant) : instant.error().code;
}

std::string hint(std::string_view words) {
    const auto instant = time_from_words(words, Zone{}, wednesday);
    EXPECT_FALSE(instant.has_value()) << words;
    return instant ? "" : instant.error().do_this;
}

TEST(time_words, a_bare_clock_time_is_todays_even_when_it_has_passed) {
    EXPECT_EQ(heard("13:00"), "2026-11-25T13:00:00+00:00");
    EXPECT_EQ(heard("07:30"), "2026-11-25T07:30:00+00:00");
    EXPECT_EQ(heard("7:30"), "2026-11-25T07:30:00+00:00");
    EXPECT_EQ(heard("00:00"), "2026-11-25T00:00:00+00:00");
    EXPECT_EQ(heard("23:59"), "2026-11-25T23:59:00+00:00");
}

TEST(time_words, today_and_tomorrow_are_counted_on_the_wall_calendar) {
    EXPECT_EQ(heard("today 18:00"), "2026-11-25T18:00:00+00:00");
    EXPECT_EQ(heard("tomorrow 07:30"), "2026-11-26T07:30:00+00:00");
    // Half past midnight in London is still the evening before in UTC.
    EXPECT_EQ(heard("tomorrow 07:30", at("2026-06-30T23:30:00Z")), "2026-07-02T07:30:00+01:00");
}

TEST(time_words, a_weekday_is_the_next_one_and_today_while_still_ahead) {
    EXPECT_EQ(heard("sat 13:00"), "2026-11-28T13:00:00+00:00");
    EXPECT_EQ(heard("saturday 13:00"), "2026-11-28T13:00:00+00:00");
    EXPECT_EQ(heard("tue 13:00"), "2026-12-01T13:00:00+00:00");
    EXPECT_EQ(heard("wed 13:00"), "2026-11-25T13:00:00+00:00");
    EXPECT_EQ(heard("wed 08:59"), "2026-12-02T08:59:00+00:00");
    EXPECT_EQ(heard("Thurs 10:00"), "2026-11-26T10:00:00+00:00");
}

TEST(time_words, case_and_blanks_do_not_count) {
    EXPECT_EQ(heard("  Tomorrow \t 07:30 "), "2026-11-26T07:30:00+00:00");
    EXPECT_EQ(heard("SAT 13:00"), "2026-11-28T13:00:00+00:00");
}

TEST(time_words, full_dates_and_rfc_3339_are_understood) {
    EXPECT_EQ(heard("2026-12-24 16:00"), "2026-12-24T16:00:00+00:00");
    EXPECT_EQ(heard("2026-12-24T16:00"), "2026-12-24T16:00:00+00:00");
    EXPECT_EQ(heard("2026-11-28T18:30:00+01:00"), "2026-11-28T17:30:00+00:00");
    EXPECT_EQ(heard("2026-11-28T18:30:00Z"), "2026-11-28T18:30:00+00:00");
}

TEST(time_words, a_repeated_hour_is_the_first_and_a_skipped_one_is_refused) {
    EXPECT_EQ(heard("sun 01:30", at("2026-10-22T09:00:00Z")), "2026-10-25T01:30:00+01:00");
    EXPECT_EQ(heard("sun 01:30", at("2026-03-26T09:00:00Z")), "time_skipped");
    EXPECT_EQ(heard("tomorrow 01:00", at("2026-03-28T09:00:00Z")), "time_skipped");
    EXPECT_EQ(heard("tomorrow 02:00", at("2026-03-28T09:00:00Z")), "2026-03-29T02:00:00+01:00");
}

TEST(time_words, what_is_not_a_time_is_refused) {
    for (const char* words : {"",
                              " ",
                              "25:00",
                              "18:60",
                              "half past six",
                              "18.30",
                              "now",
                              "noon",
                              "sat",
                              "tomorrow",
                              "yesterday 10:00",
                              "sat sat 10:00",
                              "13:00 sat",
                              "13:00:00",
                              "1300",
                              "-1:00",
                              "1:5",
                              "2026-02-30 10:00",
                              "24:00"}) {
        EXPECT_EQ(heard(words), "time_unreadable") << words;
    }
}

TEST(time_words, the_answer_names_the_time_that_was_probably_meant) {
    EXPECT_EQ(hint("18.30"), "Did you mean 18:30?");
    EXPECT_EQ(hint("18h30"), "Did you mean 18:30?");
    EXPECT_EQ(hint("1830"), "Did you mean 18:30?");
    EXPECT_EQ(hint("18"), "Did you mean 18:00?");
    EXPECT_EQ(hint("6pm"), "Did you mean 18:00?");
    EXPECT_EQ(hint("6.30 pm"), "Did you mean 18:30?");
    EXPECT_EQ(hint("12 am"), "Did you mean 00:00?");
    EXPECT_EQ(hint("noon"), "Did you mean 12:00?");
    EXPECT_EQ(hint("half past six"), "Did you mean 06:30 or 18:30?");
    EXPECT_EQ(hint("quarter to one"), "Did you mean 00:45 or 12:45?");
    EXPECT_EQ(hint("a quarter past 12"), "Did you mean 00:15 or 12:15?");
    EXPECT_EQ(hint("six o'clock"), "Did you mean 06:00 or 18:00?");
    EXPECT_EQ(hint("tomorrow 18.30"), "Did you mean \"tomorrow 18:30\"?");
    EXPECT_EQ(hint("sat 6pm"), "Did you mean \"sat 18:00\"?");
    EXPECT_EQ(hint("sat"), "Put the time behind it in the same quotation marks: \"sat 13:00\".");
    EXPECT_EQ(hint("soon"), "Write the time as HH:MM, such as 18:30 or \"tomorrow 07:30\".");
}

TEST(time_words, an_hour_or_minute_off_the_clock_is_named) {
    const auto hour = time_from_words("25:00", Zone{}, wednesday);
    ASSERT_FALSE(hour.has_value());
    EXPECT_EQ(hour.error().what, "\"25:00\" has the hour 25, expected 0 to 23");
    const auto minute = time_from_words("18:75", Zone{}, wednesday);
    ASSERT_FALSE(minute.has_value());
    EXPECT_EQ(minute.error().what, "\"18:75\" has the minute 75, expected 0 to 59");
}

TEST(time_words, pieces_that_a_shell_splits_off_look_like_a_time) {
    for (const char* words : {"tomorrow",
                              "today",
                              "sat",
                              "Saturday",
                              "07:30",
                              "25:00",
                              "7:30",
                              "2026-11-28",
                              "2026-11-28T18:30:00Z",
                              "tomorrow 07:30"}) {
        EXPECT_TRUE(looks_like_a_time(words)) << words;
    }
    for (const char* words : {"",
                              " ",
                              "loaf.md",
                              "-",
                              "saturday.toml",
                              "recipes/sat",
                              "sat.md",
                              "07:30.md",
                              "1",
                              "mon-loaf",
                              "a:b"}) {
        EXPECT_FALSE(looks_like_a_time(words)) << words;
    }
}

} // namespace
} // namespace loafwright::settings
