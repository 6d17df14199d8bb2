// SPDX-License-Identifier: Apache-2.0
//
// Durations as ISO 8601-1:2019, 5.5.2 writes them; the minutes are worked out by hand.
#include "shell/web_page/duration.hpp"

#include <gtest/gtest.h>

#include <string_view>

namespace loafwright::web_page {
namespace {

double minutes(std::string_view text) {
    const auto read = minutes_of_duration(text);
    return read ? read->count() : -1.0;
}

TEST(duration, hours_and_minutes_become_minutes) {
    EXPECT_EQ(minutes("PT1H30M"), 90);
    EXPECT_EQ(minutes("P0DT35M"), 35);
    EXPECT_EQ(minutes("PT90M"), 90);
    EXPECT_EQ(minutes("PT2H"), 120);
    EXPECT_EQ(minutes("P1DT2H"), 1560);
    EXPECT_EQ(minutes("P1W"), 10080);
    EXPECT_EQ(minutes("P0Y0M0DT0H45M0.000S"), 45);
}

TEST(duration, a_fraction_may_have_a_point_or_a_comma) {
    EXPECT_EQ(minutes("PT1.5H"), 90);
    EXPECT_EQ(minutes("PT1,5H"), 90);
    EXPECT_EQ(minutes("PT0.5H"), 30);
}

TEST(duration, seconds_are_rounded_to_the_nearest_minute) {
    EXPECT_EQ(minutes("PT5400S"), 90);
    EXPECT_EQ(minutes("PT10M29S"), 10);
    EXPECT_EQ(minutes("PT10M31S"), 11);
}

TEST(duration, blanks_around_it_and_small_letters_are_taken) {
    EXPECT_EQ(minutes(" pt20m\n"), 20);
}

TEST(duration, what_is_none_is_ignored) {
    for (const std::string_view text : {"",
                                        "P",
                                        "PT",
                                        "PT0M",
                                        "P0D",
                                        "1 hour",
                                        "90",
                                        "PT-5M",
                                        "PTM",
                                        "PT1H30",
                                        "PT30M1H",
                                        "P1M",
                                        "P1Y",
                                        "PT1X",
                                        "PTT5M",
                                        "P31D",
                                        "PT99999999999999999999999999M",
                                        "PT1H 30M",
                                        "90M",
                                        "2026-11-26T10:00:00Z"}) {
        EXPECT_EQ(minutes(text), -1.0) << text;
    }
}

} // namespace
} // namespace loafwright::web_page
