// SPDX-License-Identifier: Apache-2.0
#include "engine/following/progress.hpp"
#include "tests/planning/breads.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

namespace loafwright::following {
namespace {

using planning::at;
using planning::day_at;
using planning::plan_in;
using planning::tin_loaf;

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

Plan loaf_at_nine() {
    Day day = day_at("2026-11-28T08:00:00Z");
    day.start = at("2026-11-28T09:00:00Z");
    return plan_in(plan(tin_loaf(), Kitchen{}, day));
}

Event event(const std::string& id, const std::string& when, EventKind kind, int stage) {
    Event made;
    made.id = id;
    made.at = at(when);
    made.kind = kind;
    made.stage = stage;
    return made;
}

TEST(progress, a_tick_ends_a_line_and_begins_the_next) {
    const Plan plan = loaf_at_nine();
    const auto breads =
        progress_of(plan, {event("a", "2026-11-28T09:41:00Z", EventKind::done, 1)}, known());
    ASSERT_EQ(breads.size(), 1U);
    EXPECT_EQ(breads[0][0].begun, plan.start);
    EXPECT_EQ(breads[0][0].done, at("2026-11-28T09:41:00Z"));
    EXPECT_EQ(breads[0][1].begun, at("2026-11-28T09:41:00Z"));
    EXPECT_FALSE(breads[0][1].done);
    EXPECT_FALSE(breads[0][2].begun);
}

TEST(progress, somebody_who_has_already_begun_starts_anywhere) {
    const auto breads = progress_of(
        loaf_at_nine(), {event("a", "2026-11-28T09:10:00Z", EventKind::begun, 3)}, known());
    EXPECT_EQ(breads[0][2].begun, at("2026-11-28T09:10:00Z"));
    EXPECT_TRUE(breads[0][1].done);
    EXPECT_LE(*breads[0][1].done, at("2026-11-28T09:10:00Z"));
}

TEST(progress, a_retry_counts_once_and_what_is_taken_back_never_happened) {
    const Plan plan = loaf_at_nine();
    Event back = event("b", "2026-11-28T09:42:00Z", EventKind::taken_back, 1);
    back.undoes = "a";
    const Event tick = event("a", "2026-11-28T09:41:00Z", EventKind::done, 1);
    const auto undone = progress_of(plan, {tick, tick, back}, known());
    EXPECT_FALSE(undone[0][0].begun);
    // Also when the news of it comes first.
    EXPECT_FALSE(progress_of(plan, {back, tick}, known())[0][0].done);
}

TEST(progress, lines_and_breads_that_do_not_exist_change_nothing) {
    const Plan plan = loaf_at_nine();
    Event elsewhere = event("a", "2026-11-28T09:41:00Z", EventKind::done, 1);
    elsewhere.bread = 7;
    const auto breads = progress_of(plan,
                                    {elsewhere,
                                     event("b", "2026-11-28T09:41:00Z", EventKind::done, 0),
                                     event("c", "2026-11-28T09:41:00Z", EventKind::done, 99),
                                     event("d", "2026-11-28T09:41:00Z", EventKind::done, -3)},
                                    known());
    for (const LineProgress& line : breads[0]) {
        EXPECT_FALSE(line.begun || line.done || line.look_again);
    }
}

RC_GTEST_PROP(progress, any_events_in_any_order_give_times_that_never_run_backwards, ()) {
    static const Plan plan = loaf_at_nine();
    std::vector<Event> events;
    const int count = *rc::gen::inRange(0, 12);
    for (int n = 0; n < count; ++n) {
        Event made;
        made.id = std::string(1, static_cast<char>('a' + *rc::gen::inRange(0, 8)));
        made.at = later_by_minutes(plan.start, *rc::gen::inRange(-60, 600));
        made.kind = static_cast<EventKind>(*rc::gen::inRange(0, 11));
        made.growth = static_cast<Growth>(*rc::gen::inRange(0, 4));
        made.trouble = static_cast<Trouble>(*rc::gen::inRange(0, 7));
        made.act = static_cast<std::size_t>(*rc::gen::inRange(0, 5));
        made.stage = *rc::gen::inRange(-1, 12);
        made.until = later_by_minutes(made.at, *rc::gen::inRange(0, 60));
        made.undoes = std::string(1, static_cast<char>('a' + *rc::gen::inRange(0, 8)));
        events.push_back(made);
    }
    // One id is one event.
    std::sort(
        events.begin(), events.end(), [](const Event& a, const Event& b) { return a.id < b.id; });
    events.erase(std::unique(events.begin(),
                             events.end(),
                             [](const Event& a, const Event& b) { return a.id == b.id; }),
                 events.end());
    const auto told = progress_of(plan, events, known());
    std::vector<Event> shuffled(events.rbegin(), events.rend());
    shuffled.insert(shuffled.end(), events.begin(), events.end());
    const auto again = progress_of(plan, shuffled, known());
    Instant last{INT64_MIN};
    for (std::size_t s = 0; s < told[0].size(); ++s) {
        const LineProgress& line = told[0][s];
        RC_ASSERT(line.begun == again[0][s].begun);
        RC_ASSERT(line.done == again[0][s].done);
        const bool ordered = !line.done || (line.begun && *line.begun <= *line.done);
        RC_ASSERT(ordered);
        if (line.begun) {
            RC_ASSERT(last <= *line.begun);
            last = line.done.value_or(*line.begun);
        }
    }
}

} // namespace
} // namespace loafwright::following
