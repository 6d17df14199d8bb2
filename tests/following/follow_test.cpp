// SPDX-License-Identifier: Apache-2.0
#include "engine/following/follow.hpp"
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
using planning::plan_in;
using planning::tin_loaf;

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

struct Loaf {
    FittedRecipe recipe = tin_loaf();
    Day day = day_at("2026-11-28T08:00:00Z");
    Plan plan;

    Loaf() {
        day.start = at("2026-11-28T09:00:00Z");
        plan = plan_in(loafwright::plan(recipe, Kitchen{}, day));
    }

    [[nodiscard]] Plan as_it_stands(const std::vector<Event>& events, Instant now) const {
        return replan(plan, {recipe}, Kitchen{}, day, events, now, known()).plan;
    }
    [[nodiscard]] Moment moment(const std::vector<Event>& events, Instant now) const {
        return follow(as_it_stands(events, now), day, events, now, known());
    }
    [[nodiscard]] const Stage& line(int number) const {
        return plan.stages[static_cast<std::size_t>(number) - 1];
    }
    [[nodiscard]] Event tick(int number) const {
        Event event;
        event.id = "tick" + std::to_string(number);
        event.at = line(number).end.likely;
        event.stage = number;
        return event;
    }
    [[nodiscard]] std::vector<Event> ticked(int last) const {
        std::vector<Event> events;
        for (int number = 1; number <= last; ++number) {
            events.push_back(tick(number));
        }
        return events;
    }
};

TEST(follow, before_the_bake_it_says_when_to_begin_and_that_one_is_free) {
    const Loaf loaf;
    const Moment moment = loaf.moment({}, loaf.day.now);
    EXPECT_TRUE(moment.doing.empty());
    ASSERT_EQ(moment.next.size(), 1U);
    EXPECT_EQ(moment.next[0].at, loaf.plan.start);
    EXPECT_EQ(moment.free_until, loaf.plan.start);
    EXPECT_EQ(moment.say.substr(0, 15), "Begin at 09:00:");
    EXPECT_FALSE(moment.finished);
}

TEST(follow, at_its_time_the_first_line_asks_to_be_begun) {
    const Loaf loaf;
    const Moment moment = loaf.moment({}, loaf.plan.start);
    ASSERT_EQ(moment.doing.size(), 1U);
    EXPECT_EQ(moment.doing[0].standing, Standing::to_begin);
    EXPECT_EQ(moment.say.substr(0, 6), "Begin:");
    EXPECT_FALSE(moment.free_until);
}

TEST(follow, a_line_that_nobody_began_asks_for_it_however_late) {
    const Loaf loaf;
    for (const std::int64_t late : {1, 7, 43}) {
        const Moment moment = loaf.moment({}, later_by_minutes(loaf.plan.start, late));
        ASSERT_EQ(moment.doing.size(), 1U) << late;
        EXPECT_EQ(moment.doing[0].standing, Standing::to_begin) << late;
    }
}

TEST(follow, during_a_wait_one_is_free_until_it_is_time_to_look) {
    const Loaf loaf;
    const Instant now = later_by_minutes(loaf.line(2).start, 5);
    const Moment moment = loaf.moment(loaf.ticked(1), now);
    ASSERT_EQ(moment.doing.size(), 1U);
    const Doing& rise = moment.doing[0];
    EXPECT_EQ(rise.attention, Attention::wait);
    EXPECT_EQ(rise.standing, Standing::running);
    EXPECT_TRUE(rise.grows);
    EXPECT_EQ(moment.free_until, loaf.line(2).look_from);
    EXPECT_EQ(moment.say,
              loaf.line(2).title + ". Free until " + clock(loaf.day, *loaf.line(2).look_from) +
                  ", then look.");
    EXPECT_EQ(moment.next.at(0).title, loaf.line(3).title);
}

TEST(follow, a_wait_asks_for_a_look_and_not_before_it_was_told_to_look_again) {
    const Loaf loaf;
    const Instant look = *loaf.line(2).look_from;
    EXPECT_EQ(loaf.moment(loaf.ticked(1), look).doing[0].standing, Standing::look);
    std::vector<Event> events = loaf.ticked(1);
    Event slow;
    slow.id = "slow";
    slow.at = look;
    slow.kind = EventKind::not_ready;
    slow.stage = 2;
    slow.until = later_by_minutes(look, 30);
    events.push_back(slow);
    const Moment later = loaf.moment(events, later_by_minutes(look, 5));
    EXPECT_EQ(later.doing[0].standing, Standing::running);
    EXPECT_EQ(later.free_until, slow.until);
}

TEST(follow, not_ready_without_a_time_means_look_again_soon) {
    const Loaf loaf;
    std::vector<Event> events = loaf.ticked(1);
    const Instant look = *loaf.line(2).look_from;
    Event slow;
    slow.id = "slow";
    slow.at = later_by_minutes(look, 60);
    slow.kind = EventKind::not_ready;
    slow.stage = 2;
    events.push_back(slow);
    const Moment moment = loaf.moment(events, slow.at);
    EXPECT_EQ(moment.doing[0].standing, Standing::running);
    EXPECT_EQ(moment.doing[0].look_from, later_by_minutes(slow.at, 10)); // common practice
}

TEST(follow, an_act_is_due_at_its_time_and_over_when_ticked) {
    const Loaf loaf;
    const Stage& prove = loaf.line(4);
    ASSERT_FALSE(prove.acts.empty()); // the oven is switched on in it
    const Instant on = prove.acts[0].at;
    std::vector<Event> events = loaf.ticked(3);
    const Moment due = loaf.moment(events, on);
    ASSERT_EQ(due.doing.size(), 1U);
    EXPECT_TRUE(due.doing[0].acts.at(0).due);
    EXPECT_NE(due.say.find("now."), std::string::npos);
    Event act;
    act.id = "oven";
    act.at = on;
    act.kind = EventKind::act_done;
    act.stage = 4;
    events.push_back(act);
    const Moment over = loaf.moment(events, on);
    EXPECT_TRUE(over.doing[0].acts.at(0).done);
    EXPECT_FALSE(over.doing[0].acts.at(0).due);
    for (const Alarm& alarm : over.alarms) {
        EXPECT_FALSE(alarm.kind == AlarmKind::act && alarm.at == on);
    }
}

TEST(follow, when_every_box_is_ticked_it_is_finished) {
    const Loaf loaf;
    const int boxes = static_cast<int>(loaf.plan.stages.size()) - 1;
    const std::vector<Event> events = loaf.ticked(boxes);
    const Moment moment = loaf.moment(events, events.back().at);
    EXPECT_TRUE(moment.finished);
    EXPECT_TRUE(moment.doing.empty());
}

RC_GTEST_PROP(follow, no_alarm_lies_behind_us_and_whatever_is_told_there_is_a_line_to_say, ()) {
    static const Loaf loaf;
    std::vector<Event> events;
    const int count = *rc::gen::inRange(0, 10);
    for (int n = 0; n < count; ++n) {
        Event event;
        event.id = std::to_string(n);
        event.at = later_by_minutes(loaf.plan.start, *rc::gen::inRange(-30, 400));
        event.kind = static_cast<EventKind>(*rc::gen::inRange(0, 11));
        event.stage = *rc::gen::inRange(1, 8);
        event.act = static_cast<std::size_t>(*rc::gen::inRange(0, 4));
        event.growth = static_cast<Growth>(*rc::gen::inRange(0, 4));
        event.trouble = static_cast<Trouble>(*rc::gen::inRange(0, 7));
        event.until = later_by_minutes(event.at, *rc::gen::inRange(-10, 90));
        event.undoes = std::to_string(*rc::gen::inRange(0, 10));
        events.push_back(event);
    }
    Instant now = loaf.plan.start;
    for (const Event& event : events) {
        now = std::max(now, event.at);
    }
    const Moment moment = loaf.moment(events, now);
    RC_ASSERT(!moment.say.empty());
    RC_ASSERT(moment.lines.size() == loaf.plan.stages.size());
    Instant last = now;
    for (const Alarm& alarm : moment.alarms) {
        RC_ASSERT(alarm.at > now);
        RC_ASSERT(last <= alarm.at);
        last = alarm.at;
    }
    const bool ahead = !moment.free_until || *moment.free_until > now;
    RC_ASSERT(ahead);
}

} // namespace
} // namespace loafwright
