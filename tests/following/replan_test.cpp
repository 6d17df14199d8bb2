// SPDX-License-Identifier: Apache-2.0
#include "engine/following/progress.hpp"
#include "engine/following/replan.hpp"
#include "tests/planning/breads.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

namespace loafwright {
namespace {

using planning::at;
using planning::clock;
using planning::day_at;
using planning::day_with_sleep;
using planning::long_sourdough;
using planning::overnight_loaf;
using planning::plan_in;
using planning::tin_loaf;

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

Event event(const std::string& id, Instant when, EventKind kind, int stage, std::size_t bread = 0) {
    Event made;
    made.id = id;
    made.at = when;
    made.kind = kind;
    made.stage = stage;
    made.bread = bread;
    return made;
}

struct Bake {
    std::vector<FittedRecipe> recipes;
    Day day;
    Plan plan;

    Bake(std::vector<FittedRecipe> breads, Day on)
        : recipes(std::move(breads)), day(std::move(on)) {
        plan = plan_in(loafwright::plan(recipes, Kitchen{}, day));
    }

    [[nodiscard]] Replanned again(const std::vector<Event>& events, Instant now) const {
        return replan(plan, recipes, Kitchen{}, day, events, now, known());
    }
};

Bake loaf_at_nine() {
    Day day = day_at("2026-11-28T08:00:00Z");
    day.start = at("2026-11-28T09:00:00Z");
    return {{tin_loaf()}, day};
}

std::vector<Instant> starts_of(const Plan& plan) {
    std::vector<Instant> starts;
    for (const Stage& stage : plan.stages) {
        starts.push_back(stage.start);
    }
    return starts;
}

// Ticks at the planned times, up to and with line `last`.
std::vector<Event> as_planned(const Plan& plan, int last, std::size_t bread = 0) {
    std::vector<Event> events;
    for (int s = 1; s <= last; ++s) {
        const Stage& line = plan.stages[static_cast<std::size_t>(s) - 1];
        events.push_back(event("on time " + std::to_string(bread) + std::to_string(s),
                               line.end.likely,
                               EventKind::done,
                               s,
                               bread));
    }
    return events;
}

TEST(replan, what_goes_as_planned_moves_nothing) {
    const Bake bake = loaf_at_nine();
    for (int ticked = 0; ticked <= 5; ++ticked) {
        const std::vector<Event> events = as_planned(bake.plan, ticked);
        const Instant now = ticked == 0 ? bake.day.now : events.back().at;
        const Replanned again = bake.again(events, now);
        EXPECT_EQ(starts_of(again.plan), starts_of(bake.plan)) << ticked;
        EXPECT_EQ(again.change, "") << ticked;
        EXPECT_TRUE(again.plan.warnings.empty());
    }
}

TEST(replan, a_slow_rise_moves_what_hangs_on_it_and_says_so_in_one_line) {
    const Bake bake = loaf_at_nine();
    std::vector<Event> events = as_planned(bake.plan, 1);
    const Instant rise_over = bake.plan.stages[1].end.likely;
    Event slow = event("slow", rise_over, EventKind::not_ready, 2);
    slow.until = later_by_minutes(rise_over, 20);
    events.push_back(slow);
    const Replanned again = bake.again(events, rise_over);
    // The first two lines have begun; every later one is twenty minutes on.
    for (std::size_t s = 0; s < bake.plan.stages.size(); ++s) {
        const std::int64_t moved = s < 2 ? 0 : 20;
        EXPECT_EQ(again.plan.stages[s].start, later_by_minutes(bake.plan.stages[s].start, moved))
            << s;
    }
    EXPECT_EQ(
        again.change,
        "First rise, covered takes 20 min longer: knock back, shape, into the tin is now at " +
            clock(bake.day, again.plan.stages[2].start) + ", and you eat at " +
            clock(bake.day, again.plan.eat.likely) + ".");
}

TEST(replan, cooling_takes_up_a_slip_and_the_meal_holds) {
    Day day = day_at("2026-11-28T08:00:00Z");
    day.eat_by = at("2026-11-28T18:30:00Z");
    const Bake bake({tin_loaf()}, day);
    std::vector<Event> events = as_planned(bake.plan, 1);
    events.push_back(
        event("late", later_by_minutes(bake.plan.stages[1].end.likely, 15), EventKind::done, 2));
    const Replanned again = bake.again(events, events.back().at);
    EXPECT_EQ(again.plan.eat.likely, *day.eat_by);
    EXPECT_LE(again.plan.cut_from, *day.eat_by);
    EXPECT_NE(again.change.find("eating at 18:30 still holds."), std::string::npos) << again.change;
    // Two hours late it does not hold, and the page says when.
    events.back().at = later_by_minutes(bake.plan.stages[1].end.likely, 120);
    const Replanned late = bake.again(events, events.back().at);
    EXPECT_GT(late.plan.eat.likely, *day.eat_by);
    EXPECT_NE(late.change.find("you eat at "), std::string::npos) << late.change;
}

TEST(replan, an_early_dough_is_not_kept_waiting_and_a_cold_oven_is_not_hot) {
    const Bake bake = loaf_at_nine();
    std::vector<Event> events = as_planned(bake.plan, 1);
    events.push_back(
        event("early", later_by_minutes(bake.plan.stages[1].end.likely, -15), EventKind::done, 2));
    const Replanned again = bake.again(events, events.back().at);
    EXPECT_EQ(again.plan.stages[3].start, later_by_minutes(bake.plan.stages[3].start, -15));
    EXPECT_EQ(again.plan.cut_from, later_by_minutes(bake.plan.cut_from, -15));
    // Ready the moment the prove begins, before anybody lit the oven: twenty minutes to heat.
    std::vector<Event> soonest = as_planned(bake.plan, 3);
    const Instant now = later_by_minutes(bake.plan.stages[3].start, 5);
    soonest.push_back(event("proved", now, EventKind::done, 4));
    const Replanned hot = bake.again(soonest, now);
    const Stage& line = hot.plan.stages[4];
    EXPECT_EQ(line.attention, Attention::near);
    EXPECT_GE(hot.plan.parts[line.first_part].start, later_by_minutes(now, 20));
    // Unless somebody says that it has gone in.
    soonest.push_back(event("in", now, EventKind::begun, 5));
    const Replanned in = bake.again(soonest, now);
    EXPECT_EQ(in.plan.parts[line.first_part].start, now);
}

TEST(replan, a_night_takes_up_what_came_early) {
    Day day = day_with_sleep("2026-11-28T15:00:00Z", {22, 30}, {6, 30});
    day.eat_by = at("2026-11-29T10:30:00Z");
    const Bake bake({overnight_loaf()}, day);
    std::vector<Event> events = as_planned(bake.plan, 1);
    events.push_back(
        event("early", later_by_minutes(bake.plan.stages[1].end.likely, -20), EventKind::done, 2));
    const Replanned again = bake.again(events, events.back().at);
    EXPECT_EQ(again.plan.stages[4].start, bake.plan.stages[4].start);
    EXPECT_EQ(again.plan.cut_from, bake.plan.cut_from);
}

TEST(replan, what_is_due_in_a_few_minutes_stays_when_another_bread_slips) {
    Day day = day_at("2026-11-28T08:00:00Z");
    day.start = at("2026-11-28T09:00:00Z");
    const Bake bake({tin_loaf(), tin_loaf()}, day);
    // The first bread's first line takes longer, into the time of the second's.
    const std::size_t first = bake.plan.breads[0].start <= bake.plan.breads[1].start ? 0 : 1;
    const Plan& slow = bake.plan.breads[first];
    const Plan& other = bake.plan.breads[1 - first];
    const Instant due = other.stages[0].start;
    const Instant now = later_by_minutes(due, -5);
    Event late = event("late", now, EventKind::not_ready, 1, first);
    late.until = later_by_minutes(slow.stages[0].end.likely, 10);
    const Replanned again = bake.again({late}, now);
    // Hands cannot be in two places: here it must move, and by no more than that.
    EXPECT_GE(again.plan.breads[1 - first].stages[0].start, due);
    EXPECT_LE(again.plan.breads[1 - first].stages[0].start, later_by_minutes(due, 15));
    // A rise that is slow does not touch work of the other that is due.
    std::vector<Event> events = as_planned(slow, 1, first);
    const std::vector<Event> others = as_planned(other, 1, 1 - first);
    events.insert(events.end(), others.begin(), others.end());
    const Instant shaping = other.stages[2].start;
    Event slow_rise = event("slow", later_by_minutes(shaping, -8), EventKind::not_ready, 2, first);
    slow_rise.until = later_by_minutes(shaping, 2);
    events.push_back(slow_rise);
    const Replanned rise = bake.again(events, slow_rise.at);
    EXPECT_EQ(rise.plan.breads[1 - first].stages[2].start, shaping);
}

TEST(replan, a_day_that_has_no_way_left_still_has_a_page) {
    Day day = day_with_sleep("2026-11-28T15:00:00Z", {22, 0}, {6, 0});
    day.eat_by = at("2026-11-28T21:30:00Z");
    const Bake bake({tin_loaf()}, day);
    std::vector<Event> events = as_planned(bake.plan, 1);
    const Instant now = at("2026-11-28T21:40:00Z");
    events.push_back(event("forgot", now, EventKind::done, 2));
    const Replanned again = bake.again(events, now);
    EXPECT_EQ(again.plan.stages.size(), bake.plan.stages.size());
    EXPECT_FALSE(again.plan.warnings.empty());
}

RC_GTEST_PROP(replan, any_bake_keeps_what_is_done_and_sends_nobody_back_in_time, ()) {
    const bool two = *rc::gen::element(true, false);
    static const std::vector<FittedRecipe> breads{tin_loaf(), overnight_loaf(), long_sourdough()};
    std::vector<FittedRecipe> recipes{breads[*rc::gen::inRange<std::size_t>(0, 3)]};
    if (two) {
        recipes.push_back(tin_loaf());
    }
    Day day = *rc::gen::element(true, false)
                  ? day_at("2026-11-28T08:00:00Z")
                  : day_with_sleep("2026-11-28T08:00:00Z", {22, 0}, {6, 0});
    day.start = at("2026-11-28T09:00:00Z");
    const PlanOutcome outcome = plan(recipes, Kitchen{}, day);
    RC_PRE(std::holds_alternative<Plan>(outcome));
    const Plan& made = std::get<Plan>(outcome);
    std::vector<Event> events;
    Instant now = day.now;
    const int count = *rc::gen::inRange(0, 10);
    for (int n = 0; n < count; ++n) {
        now = later_by_minutes(now, *rc::gen::inRange(0, 200));
        Event told = event("e" + std::to_string(n),
                           now,
                           static_cast<EventKind>(*rc::gen::inRange(0, 3)),
                           *rc::gen::inRange(1, 10),
                           *rc::gen::inRange<std::size_t>(0, recipes.size()));
        told.until = later_by_minutes(now, *rc::gen::inRange(0, 90));
        events.push_back(told);
    }
    now = later_by_minutes(now, *rc::gen::inRange(0, 60));
    const Replanned again = replan(made, recipes, Kitchen{}, day, events, now, known());
    const auto before = following::breads_of(made);
    const auto after = following::breads_of(again.plan);
    const auto progress = following::progress_of(made, events, known());
    RC_ASSERT(before.size() == after.size());
    for (std::size_t b = 0; b < before.size(); ++b) {
        RC_ASSERT(after[b]->parts.size() == before[b]->parts.size());
        Instant last{INT64_MIN};
        for (const PlanPart& part : after[b]->parts) {
            RC_ASSERT(last <= part.start);
            RC_ASSERT(part.start <= part.end);
            last = part.end;
        }
        for (std::size_t s = 0; s < before[b]->stages.size(); ++s) {
            const Stage& line = before[b]->stages[s];
            if (line.first_part >= line.last_part) {
                continue;
            }
            const Instant start = after[b]->parts[line.first_part].start;
            const Instant end = after[b]->parts[line.last_part - 1].end;
            if (progress[b][s].done) {
                RC_ASSERT(start == *progress[b][s].begun);
                RC_ASSERT(end == *progress[b][s].done);
            } else if (line.attention == Attention::near && !progress[b][s].told_begun) {
                continue; // it may wait for the oven
            } else if (progress[b][s].begun) {
                RC_ASSERT(start == *progress[b][s].begun);
                RC_ASSERT(end >= now);
            } else {
                RC_ASSERT(start >= now);
            }
        }
    }
    // The same news, the same page.
    RC_ASSERT(replan(made, recipes, Kitchen{}, day, events, now, known()).change == again.change);
}

} // namespace
} // namespace loafwright
