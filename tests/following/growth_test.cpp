// SPDX-License-Identifier: Apache-2.0
#include "engine/following/growth.hpp"
#include "engine/following/replan.hpp"
#include "engine/following/troubles.hpp"
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

// Common practice: "doubled" is half again and half again.
TEST(growth, the_cue_says_how_far_the_dough_is_to_grow) {
    EXPECT_EQ(growth_wanted("until it has doubled in size", StepKind::rise), 1.0);
    EXPECT_EQ(growth_wanted("twice its bulk", StepKind::rise), 1.0);
    EXPECT_EQ(growth_wanted("risen by half", StepKind::rise), 0.5);
    EXPECT_EQ(growth_wanted("half as much again", StepKind::rise), 0.5);
    EXPECT_EQ(growth_wanted("trebled", StepKind::rise), 2.0);
    EXPECT_EQ(growth_wanted("springs back slowly", StepKind::prove), 0.8);
}

TEST(growth, half_way_at_half_time_is_as_planned) {
    const auto wait = wait_after_look({60, 80, 105}, 40, Growth::half_as_much, 1.0);
    EXPECT_NEAR(static_cast<double>(wait.likely), 80.0, 1.0);
    EXPECT_LE(wait.high - wait.low, 105 - 60);
}

TEST(growth, little_growth_at_half_time_means_longer_and_not_as_long_as_it_looks) {
    // A fifth in 40 minutes would be 200 in all; the plan holds against that.
    const auto wait = wait_after_look({60, 80, 105}, 40, Growth::little, 1.0);
    EXPECT_GT(wait.likely, 80);
    EXPECT_LT(wait.likely, 200);
}

TEST(growth, doubled_is_ready) {
    EXPECT_EQ(wait_after_look({60, 80, 105}, 55, Growth::doubled, 1.0).likely, 55);
    EXPECT_EQ(wait_after_look({60, 80, 105}, 55, Growth::more, 1.0).likely, 55);
}

RC_GTEST_PROP(growth, more_growth_at_one_moment_never_means_a_longer_wait, ()) {
    const auto likely = *rc::gen::inRange<std::int64_t>(10, 900);
    const Band<std::int64_t> planned{likely - *rc::gen::inRange<std::int64_t>(1, likely),
                                     likely,
                                     likely + *rc::gen::inRange<std::int64_t>(0, 500)};
    const auto elapsed = *rc::gen::inRange<std::int64_t>(5, 900);
    std::int64_t last = INT64_MAX;
    for (const Growth growth :
         {Growth::little, Growth::half_as_much, Growth::doubled, Growth::more}) {
        const auto wait = wait_after_look(planned, elapsed, growth, 1.0);
        RC_ASSERT(wait.low <= wait.likely);
        RC_ASSERT(wait.likely <= wait.high);
        RC_ASSERT(wait.likely >= elapsed);
        RC_ASSERT(wait.likely <= last);
        last = wait.likely;
    }
}

struct Loaf {
    FittedRecipe recipe = tin_loaf();
    Day day = day_at("2026-11-28T08:00:00Z");
    Plan plan;
    std::vector<Event> events; // the first line is done as planned

    Loaf() {
        day.start = at("2026-11-28T09:00:00Z");
        plan = plan_in(loafwright::plan(recipe, Kitchen{}, day));
        Event tick;
        tick.id = "tick";
        tick.at = plan.stages[0].end.likely;
        events.push_back(tick);
    }

    Replanned with(Event event, std::int64_t minutes_into_rise) {
        event.id = "news";
        event.stage = 2;
        event.at = later_by_minutes(plan.stages[1].start, minutes_into_rise);
        if (event.until) {
            event.until = later_by_minutes(event.at, event.until->seconds);
        }
        events.push_back(event);
        return replan(plan, {recipe}, Kitchen{}, day, events, event.at, known());
    }
    [[nodiscard]] std::int64_t moved(const Replanned& again, std::size_t line) const {
        return minutes_between(plan.stages[line].start, again.plan.stages[line].start);
    }
};

TEST(growth, a_slow_dough_moves_the_page_and_a_quick_one_brings_it_forward) {
    Event event;
    event.kind = EventKind::grown;
    event.growth = Growth::little;
    Loaf slow;
    EXPECT_GT(slow.moved(slow.with(event, 60), 2), 0);
    event.growth = Growth::doubled;
    Loaf quick;
    const Replanned again = quick.with(event, 60);
    EXPECT_LT(quick.moved(again, 2), 0);
    EXPECT_NE(again.change.find("less"), std::string::npos) << again.change;
}

TEST(troubles, yeast_that_was_forgotten_begins_the_rise_again) {
    Event event;
    event.kind = EventKind::trouble;
    event.trouble = Trouble::no_yeast;
    Loaf loaf;
    // Thirty minutes into the rise: shaping is thirty minutes later.
    EXPECT_EQ(loaf.moved(loaf.with(event, 30), 2), 30);
}

TEST(troubles, a_dough_gone_too_far_rises_again_for_half_the_time) {
    Event event;
    event.kind = EventKind::trouble;
    event.trouble = Trouble::gone_too_far;
    Loaf loaf;
    const std::int64_t rise = minutes_between(loaf.plan.stages[1].start, loaf.plan.stages[2].start);
    EXPECT_NEAR(static_cast<double>(loaf.moved(loaf.with(event, rise), 2)),
                static_cast<double>(rise) / 2.0,
                5.0);
}

TEST(troubles, whoever_goes_out_has_nothing_to_do_until_back) {
    Event event;
    event.kind = EventKind::trouble;
    event.trouble = Trouble::going_out;
    event.until = Instant{180}; // minutes from then
    Loaf loaf;
    const Replanned again = loaf.with(event, 10);
    const Instant back = later_by_minutes(loaf.plan.stages[1].start, 190);
    EXPECT_GE(again.plan.stages[2].start, back);
}

TEST(troubles, nothing_is_baked_while_somebody_else_has_the_oven) {
    Event event;
    event.kind = EventKind::trouble;
    event.trouble = Trouble::oven_taken;
    event.until = Instant{240};
    Loaf loaf;
    const Replanned again = loaf.with(event, 10);
    for (const Stage& stage : again.plan.stages) {
        if (stage.attention == Attention::near) {
            EXPECT_GE(stage.start, later_by_minutes(loaf.plan.stages[1].start, 250));
        }
    }
}

TEST(troubles, every_one_has_a_row_and_every_row_is_one) {
    for (const RemedyRow& row : known().remedies) {
        const auto trouble = trouble_named(row.key);
        ASSERT_TRUE(trouble) << row.key;
        EXPECT_EQ(remedy_for(known(), *trouble), &row);
    }
    EXPECT_EQ(known().remedies.size(), 7U);
    EXPECT_FALSE(trouble_named("no_flour"));
}

} // namespace
} // namespace loafwright::following
