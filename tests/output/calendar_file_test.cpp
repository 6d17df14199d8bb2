// SPDX-License-Identifier: Apache-2.0
//
// The plan as a calendar, read back by libical with its alarms expanded, and taken apart by the
// letter of RFC 5545. Clock changes are those of the system's tz data (IANA tzdata), read by
// date-tz, which shares no code with the zones under test.
#include "shell/output/calendar_file.hpp"
#include "shell/settings/settings.hpp"
#include "tests/output/calendar_reader.hpp"
#include "tests/sheet/tin_loaf_plan.hpp"

#include <date/tz.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <set>
#include <string>
#include <vector>

namespace loafwright::output {
namespace {

Sheet sheet_of(const BakeDay& bake) {
    return compose(bake.plan, bake.recipe, bake.provisions, bake.day, SheetOptions{});
}

CalendarMarks marks_of(const BakeDay& bake) {
    CalendarMarks marks;
    marks.identity = "2026-11-28 tin loaf";
    marks.now = bake.day.now;
    return marks;
}

std::string file_of(const BakeDay& bake) {
    return calendar_file(bake.plan, sheet_of(bake), bake.day.zone, marks_of(bake));
}

std::string file_after(const std::string& before, const BakeDay& bake) {
    return calendar_file_after(before, bake.plan, sheet_of(bake), bake.day.zone, marks_of(bake));
}

void shift(BakeDay& bake, std::int64_t minutes) {
    const auto later = [minutes](Instant& moment) { moment = later_by_minutes(moment, minutes); };
    const auto band_later = [&later](Band<Instant>& band) {
        later(band.low);
        later(band.likely);
        later(band.high);
    };
    later(bake.plan.start);
    later(bake.plan.out_of_oven);
    later(bake.plan.cut_from);
    later(bake.plan.best_from);
    band_later(bake.plan.eat);
    for (Stage& stage : bake.plan.stages) {
        later(stage.start);
        band_later(stage.end);
        if (stage.look_from) {
            later(*stage.look_from);
        }
        for (Act& act : stage.acts) {
            later(act.at);
        }
    }
    for (FreeSpan& span : bake.plan.free) {
        later(span.from);
        later(span.to);
    }
    later(bake.day.now);
    bake.day.eat_by.reset();
}

// The tin loaf begun at a moment in a zone, as the settings read the zone around that moment.
BakeDay loaf_in(const std::string& zone, Instant start) {
    BakeDay bake = tin_loaf_day();
    shift(bake, minutes_between(bake.plan.start, start));
    bake.day.zone = settings::zone_named(zone, bake.day.now).value();
    return bake;
}

std::vector<std::string> uids_of(const ReadCalendar& calendar) {
    std::vector<std::string> uids;
    for (const ReadEvent& event : calendar.events) {
        uids.push_back(event.uid);
    }
    return uids;
}

void expect_same_times(const ReadCalendar& calendar, const Plan& plan) {
    ASSERT_EQ(calendar.events.size(), plan.stages.size());
    for (std::size_t i = 0; i < plan.stages.size(); ++i) {
        EXPECT_EQ(calendar.events[i].start.seconds, plan.stages[i].start.seconds) << i;
        EXPECT_EQ(calendar.events[i].end.seconds, plan.stages[i].end.likely.seconds) << i;
    }
}

TEST(calendar_file, every_stage_is_an_event_at_its_own_time) {
    const BakeDay bake = tin_loaf_day();
    const ReadCalendar calendar = read_calendar(file_of(bake));
    EXPECT_EQ(calendar.faults, 0);
    expect_same_times(calendar, bake.plan);
    EXPECT_EQ(calendar.events[1].summary, "First rise, covered \u00B7 Plain tin loaf");
    EXPECT_EQ(calendar.events[1].description,
              "look from 14:35\nour sign: doubled, about 14:50, by 15:15 at the latest");
    EXPECT_NE(calendar.events[0].description.find("500 g strong white flour"), std::string::npos);
    EXPECT_TRUE(calendar.events[0].busy);
    EXPECT_FALSE(calendar.events[1].busy) << "a wait is free time";
    EXPECT_TRUE(calendar.events[4].busy) << "a bake is stayed near";
}

TEST(calendar_file, alarms_call_to_work_to_the_oven_and_to_the_first_slice) {
    std::vector<std::pair<Instant, std::string>> rung;
    for (const ReadEvent& event : read_calendar(file_of(tin_loaf_day())).events) {
        for (const ReadEvent::Alarm& alarm : event.alarms) {
            rung.emplace_back(alarm.at, alarm.words.substr(0, alarm.words.find(" \u00B7 ")));
        }
    }
    const std::vector<std::pair<Instant, std::string>> expected = {
        {at(12, 50), "Weigh, mix and knead"},
        {at(14, 40), "Knock back, shape, into the tin"},
        {at(15, 20), "oven on, 230 °C (fan 210, gas 8)"},
        {at(15, 45), "Bake"},
        {at(16, 0), "oven down to 200 °C (fan 180, gas 6)"},
        {at(16, 20), "Out of the tin, on to the rack"},
        {at(17, 25), "Ready to cut"}};
    EXPECT_EQ(rung, expected);
}

TEST(calendar_file, a_bread_eaten_hot_can_be_cut_when_it_leaves_the_heat) {
    BakeDay bake = tin_loaf_day();
    bake.plan.stages.erase(bake.plan.stages.begin() + 5);
    bake.plan.cut_from = bake.plan.best_from = bake.plan.out_of_oven;
    bake.plan.stages.back().start = bake.plan.out_of_oven;
    bake.plan.stages.back().end = exactly(bake.plan.out_of_oven);
    const ReadCalendar calendar = read_calendar(file_of(bake));
    int ready = 0;
    for (const ReadEvent& event : calendar.events) {
        for (const ReadEvent::Alarm& alarm : event.alarms) {
            if (alarm.words.rfind("Ready to cut", 0) == 0) {
                ++ready;
                EXPECT_EQ(alarm.at, bake.plan.out_of_oven);
            }
        }
    }
    EXPECT_EQ(ready, 1);
}

TEST(calendar_file, utc_needs_no_zone) {
    const std::string file = file_of(tin_loaf_day());
    EXPECT_EQ(file.find("VTIMEZONE"), std::string::npos);
    EXPECT_NE(file.find("DTSTART:20261128T130000Z"), std::string::npos);
}

TEST(calendar_file, the_zone_is_trimmed_to_the_bake) {
    const BakeDay winter = loaf_in("Europe/London", at(13, 0));
    const ReadCalendar calendar = read_calendar(file_of(winter));
    ASSERT_EQ(calendar.observances.size(), 1U);
    EXPECT_EQ(calendar.observances.front().to_seconds, 0);
    EXPECT_NE(file_of(winter).find("DTSTART;TZID=Europe/London:20261128T130000"),
              std::string::npos);
}

struct Change {
    std::string name;
    std::string zone;
    std::string start; // of the bake, which the change falls into
};

class clock_change : public testing::TestWithParam<Change> {};

TEST_P(clock_change, no_stage_slips) {
    const Instant start = parse_rfc3339(GetParam().start).value();
    const date::time_zone* library = date::locate_zone(GetParam().zone);
    const auto offset = [library](Instant moment) {
        return library->get_info(date::sys_seconds{std::chrono::seconds{moment.seconds}})
            .offset.count();
    };
    // The change comes before, between and after all lines of the page.
    for (std::int64_t minutes = -360; minutes <= 60; minutes += 5) {
        const BakeDay bake = loaf_in(GetParam().zone, later_by_minutes(start, minutes));
        const ReadCalendar calendar = read_calendar(file_of(bake));
        EXPECT_EQ(calendar.faults, 0);
        expect_same_times(calendar, bake.plan);
        std::set<std::int64_t> offsets;
        for (const Stage& stage : bake.plan.stages) {
            offsets.insert(offset(stage.start));
        }
        std::set<std::int64_t> written;
        for (const auto& observance : calendar.observances) {
            written.insert(observance.to_seconds);
        }
        EXPECT_TRUE(std::includes(written.begin(), written.end(), offsets.begin(), offsets.end()));
        EXPECT_LE(written.size(), 2U);
    }
}

// IANA tzdata, 2026: London 29 March and 25 October at 01:00 UTC; New York 8 March at 07:00 and 1
// November at 06:00 UTC; Lord Howe 4 October at 15:30 UTC the day before, by half an hour;
// Kathmandu never.
INSTANTIATE_TEST_SUITE_P(
    of_2026,
    clock_change,
    testing::Values(Change{"london_spring", "Europe/London", "2026-03-29T01:00:00Z"},
                    Change{"london_autumn", "Europe/London", "2026-10-25T01:00:00Z"},
                    Change{"dublin_autumn", "Europe/Dublin", "2026-10-25T01:00:00Z"},
                    Change{"new_york_spring", "America/New_York", "2026-03-08T07:00:00Z"},
                    Change{"new_york_autumn", "America/New_York", "2026-11-01T06:00:00Z"},
                    Change{"lord_howe_spring", "Australia/Lord_Howe", "2026-10-03T15:30:00Z"},
                    Change{"kathmandu_never", "Asia/Kathmandu", "2026-10-25T01:00:00Z"}),
    [](const auto& row) { return row.param.name; });

TEST(calendar_file, says_the_two_offsets_of_a_night_when_the_clocks_go_back) {
    const BakeDay bake = loaf_in("Europe/London", parse_rfc3339("2026-10-24T22:00:00Z").value());
    const std::string file = file_of(bake);
    for (const char* line : {"BEGIN:DAYLIGHT\r\n",
                             "TZOFFSETTO:+0100\r\n",
                             "BEGIN:STANDARD\r\n",
                             "DTSTART:20261025T020000\r\n",
                             "TZOFFSETFROM:+0100\r\n",
                             "TZOFFSETTO:+0000\r\n"}) {
        EXPECT_NE(file.find(line), std::string::npos) << line;
    }
}

RC_GTEST_PROP(calendar_file, any_bake_of_any_year_is_read_back_at_its_times, ()) {
    const std::vector<std::string> zones = {"Europe/London",
                                            "America/New_York",
                                            "America/St_Johns",
                                            "Asia/Kathmandu",
                                            "Australia/Lord_Howe",
                                            "Africa/Casablanca",
                                            "Pacific/Auckland",
                                            "UTC"};
    const auto& zone =
        zones[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(zones.size())))];
    // 2000 to 2037, in minutes.
    const Instant start{60 * *rc::gen::inRange<std::int64_t>(15778080, 35769600)};
    const BakeDay bake = loaf_in(zone, start);
    const ReadCalendar calendar = read_calendar(file_of(bake));
    RC_ASSERT(calendar.faults == 0);
    RC_ASSERT(calendar.events.size() == bake.plan.stages.size());
    for (std::size_t i = 0; i < bake.plan.stages.size(); ++i) {
        RC_ASSERT(calendar.events[i].start == bake.plan.stages[i].start);
        RC_ASSERT(calendar.events[i].end == bake.plan.stages[i].end.likely);
    }
    RC_ASSERT(calendar.events[5].alarms.back().at == bake.plan.cut_from);
    RC_ASSERT(calendar.events[3].alarms.back().at == bake.plan.stages[3].acts[0].at);
}

TEST(calendar_file, a_zone_that_is_a_rule_still_has_a_name) {
    BakeDay bake = tin_loaf_day();
    bake.day.zone.name = "GMT0BST,M3.5.0/1,M10.5.0";
    const std::string file = file_of(bake);
    EXPECT_NE(file.find("TZID:GMT0BST-M3-5-0/1-M10-5-0\r\n"), std::string::npos) << file;
    expect_same_times(read_calendar(file), bake.plan);
}

void expect_well_formed(const std::string& file) {
    const ContentLines content = content_lines(file);
    EXPECT_LE(content.longest_octets, 75U);
    EXPECT_TRUE(content.every_line_ends_in_crlf);
    EXPECT_TRUE(content.no_letter_is_parted);
    EXPECT_EQ(content.lines.front(), "BEGIN:VCALENDAR");
    EXPECT_EQ(content.lines.back(), "END:VCALENDAR");
}

TEST(calendar_file, absurd_titles_come_back_as_they_were) {
    std::string long_title;
    while (long_title.size() < 300) {
        long_title += "Großmutters Brot, ";
    }
    long_title.pop_back();
    for (const std::string& title : {std::string("Loaf; with, commas \\ and \"marks\": two"),
                                     std::string("🍞🥖🫓 👩🏽‍🍳 bread 🇬🇧"),
                                     std::string("خبز التنور مع الزيت والزعتر البري"),
                                     long_title}) {
        BakeDay bake = tin_loaf_day();
        bake.recipe.recipe.title = title;
        const std::string file = file_of(bake);
        expect_well_formed(file);
        const ReadCalendar calendar = read_calendar(file);
        EXPECT_EQ(calendar.faults, 0);
        EXPECT_EQ(calendar.events[4].summary, "Bake \u00B7 " + title);
        EXPECT_EQ(text_value(values_of(content_lines(file), "SUMMARY")[4]), "Bake \u00B7 " + title);
    }
    BakeDay blank = tin_loaf_day();
    blank.recipe.recipe.title = "   ";
    expect_well_formed(file_of(blank));
    EXPECT_EQ(read_calendar(file_of(blank)).faults, 0);
}

TEST(calendar_file, a_line_of_the_recipe_cannot_become_a_line_of_the_calendar) {
    BakeDay bake = tin_loaf_day();
    bake.recipe.recipe.title = "Loaf\r\nEND:VEVENT\nX-FOREIGN:1\r\nBEGIN:VEVENT";
    const std::string file = file_of(bake);
    for (const std::string& line : content_lines(file).lines) {
        EXPECT_NE(line.rfind("X-FOREIGN", 0), 0U);
    }
    EXPECT_EQ(read_calendar(file).events.size(), bake.plan.stages.size());
}

RC_GTEST_PROP(calendar_file, any_bytes_in_any_line_keep_it_well_formed, ()) {
    const BakeDay bake = tin_loaf_day();
    Sheet sheet = sheet_of(bake);
    sheet.title = *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
    sheet.stages[0].title = *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
    sheet.stages[1].cue = *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
    sheet.weigh.push_back(*rc::gen::container<std::string>(
        *rc::gen::inRange<std::size_t>(0, 200),
        rc::gen::element(',', ';', '\\', 'n', '\n', '\r', ' ', ':', '"', '\xC3', '\xA9')));
    const std::string file = calendar_file(bake.plan, sheet, bake.day.zone, marks_of(bake));
    const ContentLines content = content_lines(file);
    RC_ASSERT(content.longest_octets <= 75U);
    RC_ASSERT(content.every_line_ends_in_crlf);
    RC_ASSERT(content.no_letter_is_parted);
    const ReadCalendar calendar = read_calendar(file);
    RC_ASSERT(calendar.faults == 0);
    RC_ASSERT(calendar.events.size() == bake.plan.stages.size());
    // libical and the letter of the standard agree on what was written.
    const std::vector<std::string> summaries = values_of(content, "SUMMARY");
    for (std::size_t i = 0; i < summaries.size(); ++i) {
        RC_ASSERT(text_value(summaries[i]) == calendar.events[i].summary);
    }
}

TEST(calendar_file, planned_again_an_event_keeps_its_name_and_counts_on) {
    const BakeDay first = tin_loaf_day();
    const std::string written = file_after("", first);
    const ReadCalendar before = read_calendar(written);
    const std::vector<std::string> uids = uids_of(before);
    EXPECT_EQ(std::set<std::string>(uids.begin(), uids.end()).size(), first.plan.stages.size());
    BakeDay late = tin_loaf_day();
    shift(late, 35);
    const std::string again = file_after(written, late);
    const ReadCalendar after = read_calendar(again);
    EXPECT_EQ(uids_of(after), uids);
    for (std::size_t i = 0; i < uids.size(); ++i) {
        EXPECT_EQ(before.events[i].sequence, 0);
        EXPECT_EQ(after.events[i].sequence, 1);
    }
    shift(late, 5);
    EXPECT_EQ(read_calendar(file_after(again, late)).events.front().sequence, 2);
}

TEST(calendar_file, nothing_new_is_no_new_revision) {
    BakeDay bake = tin_loaf_day();
    const std::string written = file_after("", bake);
    bake.day.now = later_by_minutes(bake.day.now, 3);
    const std::string again = file_after(written, bake);
    EXPECT_EQ(read_calendar(again).events.front().sequence, 0);
    EXPECT_NE(again, written) << "it was written later, and says so";
}

TEST(calendar_file, another_bake_begins_to_count_anew) {
    const BakeDay bake = tin_loaf_day();
    const std::string written = file_after("", bake);
    CalendarMarks other = marks_of(bake);
    other.identity = "2026-12-05 tin loaf";
    const ReadCalendar calendar = read_calendar(
        calendar_file_after(written, bake.plan, sheet_of(bake), bake.day.zone, other));
    EXPECT_EQ(calendar.events.size(), bake.plan.stages.size());
    EXPECT_EQ(calendar.events.front().sequence, 0);
    EXPECT_NE(calendar.events.front().uid, read_calendar(written).events.front().uid);
}

TEST(calendar_file, an_event_that_is_gone_is_called_off_and_stays_so) {
    const BakeDay bake = tin_loaf_day();
    const std::string written = file_after("", bake);
    BakeDay shorter = tin_loaf_day();
    shorter.plan.stages.erase(shorter.plan.stages.begin() + 2);
    const std::string second = file_after(written, shorter);
    const std::string third = file_after(second, shorter);
    EXPECT_EQ(third, second);
    const ReadCalendar calendar = read_calendar(second);
    EXPECT_EQ(calendar.faults, 0);
    ASSERT_EQ(calendar.events.size(), bake.plan.stages.size());
    EXPECT_TRUE(calendar.events.back().called_off);
    EXPECT_EQ(calendar.events.back().uid, read_calendar(written).events[2].uid);
    EXPECT_EQ(calendar.events.back().sequence, 1);
    EXPECT_TRUE(calendar.events.back().alarms.empty());
    for (const ReadEvent& event : read_calendar(file_after(second, bake)).events) {
        EXPECT_FALSE(event.called_off) << "it is wanted again";
        EXPECT_EQ(event.sequence, 2);
    }
}

RC_GTEST_PROP(calendar_file, whatever_stood_there_before_does_no_harm, ()) {
    const BakeDay bake = tin_loaf_day();
    std::string before = file_after("", bake);
    const auto cuts = *rc::gen::inRange(1, 8);
    for (int i = 0; i < cuts; ++i) {
        const auto at_byte =
            static_cast<std::size_t>(*rc::gen::inRange<int>(0, static_cast<int>(before.size())));
        before.replace(at_byte,
                       static_cast<std::size_t>(*rc::gen::inRange(0, 40)),
                       *rc::gen::container<std::string>(rc::gen::arbitrary<char>()));
    }
    const ReadCalendar calendar = read_calendar(file_after(before, bake));
    RC_ASSERT(calendar.faults == 0);
    RC_ASSERT(calendar.events.size() >= bake.plan.stages.size());
    RC_ASSERT(calendar.events.front().sequence >= 0);
}

} // namespace
} // namespace loafwright::output
