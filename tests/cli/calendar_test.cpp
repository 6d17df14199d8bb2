// SPDX-License-Identifier: Apache-2.0
//
// `plan --out bake.ics`, read back by libical and, where node and the npm package ical.js are
// installed, by ical.js.
#include "engine/quantity/time.hpp"
#include "tests/cli/program.hpp"
#include "tests/output/calendar_reader.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cstdlib>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace loafwright {
namespace {

std::vector<std::string> plan_at(const std::string& now,
                                 std::vector<std::string> more,
                                 const std::string& zone = "Europe/London") {
    std::vector<std::string> words = {"plan", "loaf.txt", "--now", now, "--zone", zone};
    words.insert(words.end(), more.begin(), more.end());
    return words;
}

// In UTC, as read_calendar.cjs writes a moment.
std::string minute_text(Instant moment) {
    return rfc3339(Zone{}, moment).substr(0, 16) + "Z";
}

TEST_F(program, writes_page_calendar_and_numbers_in_one_go) {
    const Outcome outcome = run(plan_at(
        "2026-10-24T18:00:00Z",
        {"--start", "22:30", "--out", "bake.ics", "--out", "bake.txt", "--out", "bake.json"}));
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_EQ(bytes_of(folder_ / "bake.txt").rfind("Plain tin loaf", 0), 0U);
    const auto json = nlohmann::json::parse(bytes_of(folder_ / "bake.json"));
    const output::ReadCalendar calendar = output::read_calendar(bytes_of(folder_ / "bake.ics"));
    EXPECT_EQ(calendar.faults, 0);
    EXPECT_EQ(calendar.observances.size(), 2U) << "the clocks go back that night";
    const auto& stages = json.at("plan").at("stages");
    ASSERT_EQ(calendar.events.size(), stages.size());
    for (std::size_t i = 0; i < stages.size(); ++i) {
        EXPECT_EQ(calendar.events[i].start,
                  parse_rfc3339(stages[i].at("start").get<std::string>()).value());
        EXPECT_EQ(calendar.events[i].sequence, 0);
    }
}

TEST_F(program, a_bake_planned_again_into_its_file_moves_its_events) {
    const auto plan_from = [this](const std::string& now, const std::string& start) {
        const Outcome outcome = run(plan_at(now, {"--start", start, "--out", "bake.ics"}));
        EXPECT_EQ(outcome.status, 0) << outcome.err;
        return output::read_calendar(bytes_of(folder_ / "bake.ics"));
    };
    const auto first = plan_from("2026-11-28T09:00:00Z", "10:00");
    const auto later = plan_from("2026-11-28T10:20:00Z", "10:45");
    const auto same = plan_from("2026-11-28T10:21:00Z", "10:45");
    const auto next_week = plan_from("2026-12-05T09:00:00Z", "10:00");
    ASSERT_EQ(later.events.size(), first.events.size());
    for (std::size_t i = 0; i < first.events.size(); ++i) {
        EXPECT_EQ(later.events[i].uid, first.events[i].uid);
        EXPECT_EQ(later.events[i].sequence, 1);
        EXPECT_EQ(same.events[i].sequence, 1);
        EXPECT_NE(next_week.events[i].uid, first.events[i].uid);
        EXPECT_EQ(next_week.events[i].sequence, 0);
    }
    EXPECT_EQ(minutes_between(first.events[0].start, later.events[0].start), 45);
}

TEST_F(program, each_of_several_breads_keeps_its_events_when_the_order_changes) {
    const std::string examples = std::string(LOAFWRIGHT_ROOT) + "/examples/";
    const auto uids_for = [&](const std::string& eat_by, const std::string& file) {
        const Outcome outcome = run({"plan",
                                     examples + "first-loaf.md",
                                     examples + "rolls.md",
                                     "--now",
                                     "2026-11-28T07:00:00Z",
                                     "--zone",
                                     "Europe/London",
                                     "--eat-by",
                                     eat_by,
                                     "--out",
                                     file});
        EXPECT_EQ(outcome.status, 0) << outcome.err;
        std::map<std::string, std::string> uids; // by what the event is called
        for (const auto& event : output::read_calendar(bytes_of(folder_ / file)).events) {
            uids[event.summary] = event.uid;
        }
        return uids;
    };
    const auto evening = uids_for("18:30", "evening.ics");
    std::set<std::string> different;
    for (const auto& [summary, uid] : evening) {
        different.insert(uid);
    }
    EXPECT_GE(evening.size(), 12U);
    EXPECT_EQ(different.size(), evening.size());
    EXPECT_EQ(uids_for("14:30", "noon.ics"), evening);
}

TEST_F(program, what_is_no_calendar_is_written_over_like_any_other_file) {
    write("bake.ics", "not a calendar");
    ASSERT_EQ(run(plan_at("2026-11-28T09:00:00Z", {"--out", "bake.ics"})).status, 0);
    EXPECT_EQ(output::read_calendar(bytes_of(folder_ / "bake.ics")).events.front().sequence, 0);
    EXPECT_EQ(run(plan_at("2026-11-28T09:00:00Z", {"--out", "none/bake.ics"})).status, 2);
}

TEST_F(program, ical_js_reads_the_calendar_as_libical_does) {
    const std::string node =
        "node " LOAFWRIGHT_ROOT "/tests/cli/read_calendar.cjs '" + in("bake.ics") + "'";
    // Either side of both changes of 2026 in London (IANA tzdata), and half an hour of change.
    const std::vector<std::pair<std::string, std::string>> nights = {
        {"2026-03-28T20:00:00Z", "Europe/London"},
        {"2026-10-24T20:00:00Z", "Europe/London"},
        {"2026-11-01T01:00:00Z", "America/New_York"},
        {"2026-10-03T09:00:00Z", "Australia/Lord_Howe"}};
    for (const auto& [now, zone] : nights) {
        for (const char* later : {"22:05", "23:40"}) {
            ASSERT_EQ(run(plan_at(now, {"--start", later, "--out", "bake.ics"}, zone)).status, 0);
            const int status =
                std::system((node + " > '" + in("read") + "' 2> '" + in("said") + "'").c_str());
            if (WEXITSTATUS(status) == 77 || WEXITSTATUS(status) == 127) {
                GTEST_SKIP() << "node or the npm package ical.js is not installed";
            }
            ASSERT_EQ(status, 0) << bytes_of(folder_ / "said");
            std::string expected;
            for (const auto& event : output::read_calendar(bytes_of(folder_ / "bake.ics")).events) {
                expected += "event " + minute_text(event.start) + " " + minute_text(event.end) +
                            " " + event.summary + "\n";
                for (const auto& alarm : event.alarms) {
                    expected += "alarm " + minute_text(alarm.at) + "\n";
                }
            }
            EXPECT_EQ(bytes_of(folder_ / "read"), expected) << now << " " << zone;
        }
    }
}

} // namespace
} // namespace loafwright
