// SPDX-License-Identifier: Apache-2.0
//
// Day files laid over a calendar. "Now" is Wednesday 25 November 2026, 09:00 in London, unless a
// test says otherwise.
#include "shell/settings/settings.hpp"
#include "tests/settings/complaints.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace loafwright::settings {
namespace {

using Lines = std::vector<std::string>;

Instant at(std::string_view text) {
    return parse_rfc3339(text).value();
}

const Instant wednesday = at("2026-11-25T09:00:00Z");

DayFile good(std::string_view text, Instant now = wednesday) {
    const auto day = day_from_toml(text, "day.toml", Zone{}, false, now);
    EXPECT_TRUE(day.has_value()) << (day ? "" : one_line(day.error().front()));
    return day.value_or(DayFile{});
}

Diagnostics faults(std::string_view text, Instant now = wednesday) {
    const auto day = day_from_toml(text, "day.toml", Zone{}, false, now);
    EXPECT_FALSE(day.has_value());
    return day ? Diagnostics{} : day.error();
}

Lines spans(const Day& day) {
    Lines list;
    for (const PresenceWindow& window : day.windows) {
        list.push_back(rfc3339(day.zone, window.from) + " " + rfc3339(day.zone, window.to));
    }
    return list;
}

std::string window(std::string_view from, std::string_view to) {
    return "[[window]]\nstate = \"away\"\nfrom = \"" + std::string(from) + "\"\nto = \"" +
           std::string(to) + "\"\n";
}

TEST(day_file, an_empty_file_describes_a_day_on_which_nothing_is_forbidden) {
    const DayFile file = good("");
    EXPECT_FALSE(file.day.sleep_known);
    EXPECT_EQ(file.day.now, wednesday);
    EXPECT_EQ(file.day.people, (Lines{"you"}));
    EXPECT_TRUE(file.day.windows.empty());
    EXPECT_TRUE(file.day.oven_claims.empty());
    EXPECT_FALSE(file.day.start.has_value());
    EXPECT_FALSE(file.day.eat_by.has_value());
    EXPECT_TRUE(file.remarks.empty());
}

TEST(day_file, a_daily_window_over_midnight_is_laid_over_ten_days) {
    const Day day = good(window("22:30", "06:30")).day;
    const Lines all = spans(day);
    ASSERT_EQ(all.size(), 11u);
    // Last night is over; tonight is the first.
    EXPECT_EQ(all.front(), "2026-11-25T22:30:00+00:00 2026-11-26T06:30:00+00:00");
    EXPECT_EQ(all.back(), "2026-12-05T22:30:00+00:00 2026-12-06T06:30:00+00:00");
}

TEST(day_file, a_window_that_is_running_now_is_kept_whole) {
    const Day night = good(window("22:30", "06:30"), at("2026-11-25T05:00:00Z")).day;
    EXPECT_EQ(spans(night).front(), "2026-11-24T22:30:00+00:00 2026-11-25T06:30:00+00:00");
    const Day morning = good(window("08:30", "15:15")).day;
    EXPECT_EQ(spans(morning).front(), "2026-11-25T08:30:00+00:00 2026-11-25T15:15:00+00:00");
}

TEST(day_file, daily_windows_reach_beyond_a_goal_that_is_far_ahead) {
    const Day day = good("eat_by = \"2026-12-12 13:00\"\n" + window("08:30", "15:15")).day;
    EXPECT_GE(day.windows.back().to, at("2026-12-14T15:15:00Z"));
}

TEST(day_file, a_daily_window_keeps_its_wall_clock_times_when_the_clocks_change) {
    const std::string text = "zone = \"Europe/London\"\n" + window("22:30", "06:30");
    const Lines all = spans(good(text, at("2026-10-24T09:00:00Z")).day);
    EXPECT_EQ(all.at(0), "2026-10-24T22:30:00+01:00 2026-10-25T06:30:00+00:00");
    EXPECT_EQ(all.at(1), "2026-10-25T22:30:00+00:00 2026-10-26T06:30:00+00:00");
}

TEST(day_file, a_daily_time_that_is_skipped_once_moves_to_the_change) {
    const std::string text = "zone = \"Europe/London\"\n" + window("01:30", "05:00");
    const Lines all = spans(good(text, at("2026-03-28T09:00:00Z")).day);
    EXPECT_EQ(all.at(0), "2026-03-29T02:00:00+01:00 2026-03-29T05:00:00+01:00");
    EXPECT_EQ(all.at(1), "2026-03-30T01:30:00+01:00 2026-03-30T05:00:00+01:00");
    // Both ends in the hour that is left out: nothing remains of it that night.
    const std::string short_one = "zone = \"Europe/London\"\n" + window("01:15", "01:45");
    EXPECT_EQ(spans(good(short_one, at("2026-03-28T09:00:00Z")).day).at(0),
              "2026-03-30T01:15:00+01:00 2026-03-30T01:45:00+01:00");
}

TEST(day_file, times_with_a_day_happen_once) {
    EXPECT_EQ(spans(good(window("sat 09:00", "sat 17:00")).day),
              (Lines{"2026-11-28T09:00:00+00:00 2026-11-28T17:00:00+00:00"}));
    EXPECT_EQ(spans(good(window("2026-11-28 09:00", "2026-11-28 17:00")).day),
              (Lines{"2026-11-28T09:00:00+00:00 2026-11-28T17:00:00+00:00"}));
    EXPECT_EQ(spans(good(window("tomorrow 09:00", "sat 17:00")).day),
              (Lines{"2026-11-26T09:00:00+00:00 2026-11-28T17:00:00+00:00"}));
    EXPECT_EQ(spans(good(window("fri 22:00", "06:00")).day),
              (Lines{"2026-11-27T22:00:00+00:00 2026-11-28T06:00:00+00:00"}));
    EXPECT_EQ(spans(good("[[window]]\nstate = \"busy\"\nfrom = 2026-11-28T09:00:00\n"
                         "to = 2026-11-28T12:00:00+01:00\n")
                        .day),
              (Lines{"2026-11-28T09:00:00+00:00 2026-11-28T11:00:00+00:00"}));
    EXPECT_EQ(
        good("[[window]]\nstate = \"busy\"\nfrom = 22:00:00\nto = 23:00:00\n").day.windows.size(),
        11u);
}

TEST(day_file, a_weekday_window_is_todays_until_it_is_over) {
    const Instant noon = at("2026-11-28T12:00:00Z");
    EXPECT_EQ(spans(good(window("sat 09:00", "sat 17:00"), noon).day),
              (Lines{"2026-11-28T09:00:00+00:00 2026-11-28T17:00:00+00:00"}));
    const Instant evening = at("2026-11-28T18:00:00Z");
    EXPECT_EQ(spans(good(window("sat 09:00", "sat 17:00"), evening).day),
              (Lines{"2026-12-05T09:00:00+00:00 2026-12-05T17:00:00+00:00"}));
    // Friday night runs into Saturday morning.
    const Instant small_hours = at("2026-11-28T02:00:00Z");
    EXPECT_EQ(spans(good(window("fri 22:00", "sat 06:00"), small_hours).day),
              (Lines{"2026-11-27T22:00:00+00:00 2026-11-28T06:00:00+00:00"}));
}

TEST(day_file, a_dated_window_that_is_over_is_left_out_with_a_note) {
    const DayFile file = good(window("2026-11-21 09:00", "2026-11-21 17:00"));
    EXPECT_TRUE(file.day.windows.empty());
    ASSERT_EQ(codes_and_places(file.remarks), (Lines{"time_past day.toml:4 window.to"}));
    EXPECT_EQ(file.remarks[0].severity, Severity::note);
}

TEST(day_file, windows_of_several_people_are_sorted_by_their_beginning) {
    const Day day = good(R"(
people = ["Maren", "Tove"]
[[window]]
person = "Tove"
state = "asleep"
from = "23:00"
to = "07:00"
[[window]]
person = "Maren"
state = "busy"
from = "tomorrow 10:00"
to = "tomorrow 11:00"
)")
                        .day;
    EXPECT_EQ(day.people, (Lines{"Maren", "Tove"}));
    EXPECT_EQ(day.windows.at(0).person, 1u);
    EXPECT_EQ(day.windows.at(0).state, Presence::asleep);
    EXPECT_EQ(day.windows.at(1).person, 0u);
    EXPECT_EQ(day.windows.at(1).state, Presence::busy);
    EXPECT_TRUE(std::is_sorted(day.windows.begin(),
                               day.windows.end(),
                               [](const auto& a, const auto& b) { return a.from < b.from; }));
}

TEST(day_file, oven_claims_arrive_with_or_without_a_temperature) {
    const Day day = good("[[oven_claim]]\nfrom = \"sat 11:45\"\nto = \"sat 12:45\"\n"
                         "temperature_c = 160\n[[oven_claim]]\nfrom = \"fri 10:00\"\n"
                         "to = \"fri 11:00\"\n")
                        .day;
    ASSERT_EQ(day.oven_claims.size(), 2u);
    EXPECT_EQ(day.oven_claims[0].from, at("2026-11-27T10:00:00Z"));
    EXPECT_FALSE(day.oven_claims[0].temperature.has_value());
    EXPECT_EQ(day.oven_claims[1].to, at("2026-11-28T12:45:00Z"));
    EXPECT_EQ(day.oven_claims[1].temperature.value(), Celsius(160.0));
}

TEST(day_file, start_and_eat_by_take_the_same_words_as_the_command_line) {
    EXPECT_EQ(good("eat_by = \"18:30\"").day.eat_by, at("2026-11-25T18:30:00Z"));
    EXPECT_EQ(good("eat_by = 18:30:00").day.eat_by, at("2026-11-25T18:30:00Z"));
    EXPECT_EQ(good("start = \"tomorrow 07:30\"").day.start, at("2026-11-26T07:30:00Z"));
    EXPECT_EQ(good("start = \"sat 13:00\"").day.start, at("2026-11-28T13:00:00Z"));
    EXPECT_EQ(good("start = 2026-11-28T13:00:00+01:00").day.start, at("2026-11-28T12:00:00Z"));
    // An option may outrank it, so a time that has passed is not yet a mistake.
    EXPECT_EQ(good("start = \"08:00\"").day.start, at("2026-11-25T08:00:00Z"));
}

TEST(day_file, its_zone_counts_unless_another_one_was_told) {
    const std::string text = "zone = \"America/New_York\"\neat_by = \"18:30\"\n";
    const Day own = good(text).day;
    EXPECT_EQ(own.zone.name, "America/New_York");
    EXPECT_EQ(own.eat_by, at("2026-11-25T18:30:00-05:00"));
    const auto told = day_from_toml(text, "day.toml", Zone{}, true, wednesday);
    ASSERT_TRUE(told.has_value());
    EXPECT_EQ(told->day.zone.name, "UTC");
    EXPECT_EQ(told->day.eat_by, at("2026-11-25T18:30:00Z"));
}

TEST(day_file, all_mistakes_are_told_in_one_go_in_the_order_of_the_lines) {
    const Diagnostics found = faults(R"(zone = "Europe/Lodnon"
eat_by = "half past six"
start = "25:00"
people = ["Maren", "Tove"]
[[window]]
person = "Marn"
state = "sleeping"
from = "22:30"
to = "22:30"
[[window]]
state = "away"
from = "sat 17:00"
to = 2026-11-28T09:00:00
zone = "UTC"
[[window]]
person = "Maren"
from = "22:30"
to = "sat 06:30"
[[oven_claim]]
from = "18.30"
temperature_c = 1800
)");
    EXPECT_EQ(
        lines(found),
        (Lines{
            "day.toml:1 zone: zone: \"Europe/Lodnon\" is not a time zone here, expected a name "
            "such "
            "as Europe/London. Did you mean Europe/London?",
            "day.toml:2 eat_by: eat_by: \"half past six\" was not understood, expected a time such "
            "as "
            "18:30. Did you mean 06:30 or 18:30?",
            "day.toml:2 eat_by: eat_by stands beside start in line 3, expected one of the two. "
            "Leave "
            "one of the two lines out.",
            "day.toml:3 start: start: \"25:00\" has the hour 25, expected 0 to 23. Write the time "
            "as "
            "HH:MM, such as 18:30.",
            "day.toml:6 window.person: window.person is \"Marn\", expected one of the people. Did "
            "you "
            "mean \"Maren\"?",
            "day.toml:7 window.state: window.state is \"sleeping\", expected \"away\", \"asleep\" "
            "or "
            "\"busy\". Use one of those words.",
            "day.toml:9 window.to: window.to is 22:30 like from, expected another time. For a "
            "whole "
            "day write from = \"00:00\" and to = \"23:59\".",
            "day.toml:10 window.person: window.person is missing. Add a line such as: person = "
            "\"Maren\"",
            "day.toml:13 window.to: window.to is Sat 28 Nov 09:00, expected later than from, Sat "
            "28 "
            "Nov 17:00. Swap the two, or give the end a later day.",
            "day.toml:14 window.zone: window.zone is not a key here. Move the line above the first "
            "heading in square brackets: below [window] it belongs to that.",
            "day.toml:15 window.state: window.state is missing. Add a line such as: state = "
            "\"away\"",
            "day.toml:18 window.to: window.to names a day and from does not, expected both or "
            "neither. "
            "Name the day in from too, or leave it out of both for every day.",
            "day.toml:19 oven_claim.to: oven_claim.to is missing. Add a line such as: to = "
            "\"15:15\"",
            "day.toml:20 oven_claim.from: oven_claim.from: \"18.30\" was not understood, expected "
            "a "
            "time such as 18:30. Did you mean 18:30?",
            "day.toml:21 oven_claim.temperature_c: oven_claim.temperature_c is 1800, expected 30 "
            "to "
            "350. Did you mean 180?",
        }));
}

TEST(day_file, a_person_named_without_a_list_of_people_is_told_how_to_add_one) {
    const Diagnostics found = faults(
        "[[window]]\nperson = \"Maren\"\nstate = \"away\"\nfrom = \"08:30\"\nto = \"15:15\"\n");
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].do_this, "Add the name to people at the top: people = [\"Maren\"].");
}

TEST(day_file, mistakes_in_the_list_of_people_are_told) {
    EXPECT_EQ(faults("people = \"Maren\"").front().do_this, "Write people = [\"Maren\"].");
    EXPECT_EQ(codes_and_places(faults("people = []")),
              (Lines{"value_out_of_range day.toml:1 people"}));
    EXPECT_EQ(codes_and_places(faults("people = [\"Maren\", 3, \" \", \"Maren\"]")),
              (Lines{"value_wrong_kind day.toml:1 people",
                     "value_wrong_kind day.toml:1 people",
                     "value_out_of_range day.toml:1 people"}));
}

TEST(day_file, windows_out_of_order_are_told_whatever_way_they_are_written) {
    for (const std::string& text : {window("sat 17:00", "sat 09:00"),
                                    window("2026-11-28 17:00", "2026-11-28 09:00"),
                                    window("tomorrow 10:00", "today 12:00"),
                                    window("wed 17:00", "wed 09:00")}) {
        EXPECT_EQ(codes_and_places(faults(text)),
                  (Lines{"value_out_of_range day.toml:4 window.to"}))
            << text;
    }
}

TEST(day_file, a_dated_time_that_the_clocks_skip_is_told) {
    const std::string zone = "zone = \"Europe/London\"\n";
    const Instant before = at("2026-03-25T09:00:00Z");
    const Diagnostics found = faults(zone + "start = \"sun 01:30\"\n", before);
    ASSERT_EQ(codes_and_places(found), (Lines{"time_skipped day.toml:2 start"}));
    EXPECT_EQ(found[0].do_this, "Choose a time before 01:00 or from 02:00 on.");
    EXPECT_EQ(codes_and_places(faults(zone + window("sun 01:30", "sun 05:00"), before)),
              (Lines{"time_skipped day.toml:4 window.from"}));
}

TEST(day_file, a_goal_beyond_the_known_clock_changes_is_told) {
    EXPECT_EQ(codes_and_places(faults("eat_by = \"2027-11-28 13:00\"")),
              (Lines{"value_out_of_range day.toml:1 eat_by"}));
}

TEST(day_file, values_of_another_kind_are_told) {
    EXPECT_EQ(codes_and_places(faults("eat_by = 18.30\nstart = 2026-11-28\nzone = 1\nwindow = 1\n"
                                      "oven_claim = [1]\nbake = true\n")),
              (Lines{"value_wrong_kind day.toml:1 eat_by",
                     "both_start_and_eat_by day.toml:1 eat_by",
                     "value_wrong_kind day.toml:2 start",
                     "value_wrong_kind day.toml:3 zone",
                     "value_wrong_kind day.toml:4 window",
                     "value_wrong_kind day.toml:5 oven_claim",
                     "key_unknown day.toml:6 bake"}));
}

} // namespace
} // namespace loafwright::settings
