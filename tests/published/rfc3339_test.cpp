// SPDX-License-Identifier: Apache-2.0
//
// Reading and writing date-times against RFC 3339: the examples of section 5.8, the grammar of 5.6,
// the restrictions of 5.7. What we write is in the extended format of ISO 8601, of which RFC 3339
// is a profile.
#include "engine/quantity/time.hpp"

#include <gtest/gtest.h>

#include <chrono>
#include <string>

namespace loafwright::published {
namespace {

// The same moment by the standard library.
Instant by_library(int year, unsigned month, unsigned day, int hour, int minute, int second) {
    using namespace std::chrono;
    const sys_days date{std::chrono::year{year} / std::chrono::month{month} /
                        std::chrono::day{day}};
    const sys_seconds moment = date + hours{hour} + minutes{minute} + seconds{second};
    return Instant{moment.time_since_epoch().count()};
}

TEST(rfc3339, section_5_8_first_example_has_a_fraction_in_utc) {
    EXPECT_EQ(parse_rfc3339("1985-04-12T23:20:50.52Z"), by_library(1985, 4, 12, 23, 20, 50));
}

TEST(rfc3339, section_5_8_second_example_is_eight_hours_behind_utc) {
    EXPECT_EQ(parse_rfc3339("1996-12-19T16:39:57-08:00"), by_library(1996, 12, 20, 0, 39, 57));
    EXPECT_EQ(parse_rfc3339("1996-12-19T16:39:57-08:00"), parse_rfc3339("1996-12-20T00:39:57Z"));
}

// Leap seconds are not counted in an Instant, so the second 60 is the first second of the next day.
TEST(rfc3339, section_5_8_third_and_fourth_examples_are_one_leap_second) {
    EXPECT_EQ(parse_rfc3339("1990-12-31T23:59:60Z"), by_library(1991, 1, 1, 0, 0, 0));
    EXPECT_EQ(parse_rfc3339("1990-12-31T15:59:60-08:00"), by_library(1991, 1, 1, 0, 0, 0));
}

TEST(rfc3339, section_5_8_fifth_example_is_twenty_minutes_ahead_of_utc) {
    EXPECT_EQ(parse_rfc3339("1937-01-01T12:00:27.87+00:20"), by_library(1937, 1, 1, 11, 40, 27));
}

// Section 5.6: small "t" and "z" may be used, and a blank for the "T".
TEST(rfc3339, section_5_6_notes_allow_small_letters_and_a_blank) {
    const auto plain = parse_rfc3339("2026-11-28T18:30:00Z");
    ASSERT_TRUE(plain.has_value());
    EXPECT_EQ(parse_rfc3339("2026-11-28t18:30:00z"), plain);
    EXPECT_EQ(parse_rfc3339("2026-11-28 18:30:00Z"), plain);
    EXPECT_EQ(parse_rfc3339("2026-11-28T18:30:00-00:00"), plain);
}

TEST(rfc3339, section_5_7_keeps_fields_within_the_calendar_and_the_clock) {
    for (const char* text : {"2026-02-29T00:00:00Z",
                             "2026-00-10T00:00:00Z",
                             "2026-13-10T00:00:00Z",
                             "2026-04-31T00:00:00Z",
                             "2026-04-00T00:00:00Z",
                             "2026-04-10T24:00:00Z",
                             "2026-04-10T23:60:00Z",
                             "2026-04-10T23:59:61Z",
                             "2026-04-10T12:00:60Z",
                             "1900-02-29T00:00:00Z",
                             "2026-04-10T12:00:00+24:00",
                             "2026-04-10T12:00:00+01:60"}) {
        EXPECT_FALSE(parse_rfc3339(text).has_value()) << text;
    }
    EXPECT_TRUE(parse_rfc3339("2000-02-29T00:00:00Z").has_value());
    EXPECT_TRUE(parse_rfc3339("2028-02-29T00:00:00Z").has_value());
}

TEST(rfc3339, section_5_6_grammar_leaves_nothing_out_and_nothing_over) {
    for (const char* text : {"",
                             "2026-11-28",
                             "2026-11-28T18:30Z",
                             "2026-11-28T18:30:00",
                             "2026-11-28T18:30:00.Z",
                             "2026-11-28T18:30:00+0000",
                             "2026-11-28T18:30:00+00",
                             "2026-11-28T18:30:00 Z",
                             "2026-11-28T18:30:00Z ",
                             " 2026-11-28T18:30:00Z",
                             "26-11-28T18:30:00Z",
                             "2026-11-28_18:30:00Z",
                             "+2026-11-28T18:30:00Z"}) {
        EXPECT_FALSE(parse_rfc3339(text).has_value()) << text;
    }
}

TEST(rfc3339, is_written_with_seconds_and_a_numeric_offset) {
    const Instant instant = by_library(2026, 11, 28, 18, 30, 5);
    const auto in_offset = [&](int seconds) {
        return rfc3339(Zone{"Some/Where", seconds, {}}, instant);
    };
    EXPECT_EQ(in_offset(0), "2026-11-28T18:30:05+00:00");
    EXPECT_EQ(in_offset(3600), "2026-11-28T19:30:05+01:00");
    EXPECT_EQ(in_offset(-5 * 3600), "2026-11-28T13:30:05-05:00");
    EXPECT_EQ(in_offset(20700), "2026-11-29T00:15:05+05:45");
    EXPECT_EQ(in_offset(-(3 * 3600 + 1800)), "2026-11-28T15:00:05-03:30");
    EXPECT_EQ(in_offset(-1800), "2026-11-28T18:00:05-00:30");
    EXPECT_EQ(rfc3339(Zone{}, by_library(7, 3, 4, 5, 6, 7)), "0007-03-04T05:06:07+00:00");
}

// London's local mean time was 1 minute 15 seconds behind: an offset that RFC 3339 cannot write.
TEST(rfc3339, an_offset_with_seconds_still_names_the_right_instant) {
    const Instant instant = by_library(1847, 6, 1, 12, 0, 0);
    const std::string text = rfc3339(Zone{"Europe/London", -75, {}}, instant);
    EXPECT_EQ(text, "1847-06-01T11:59:00-00:01");
    EXPECT_EQ(parse_rfc3339(text), instant);
}

} // namespace
} // namespace loafwright::published
