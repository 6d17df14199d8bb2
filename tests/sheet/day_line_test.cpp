// SPDX-License-Identifier: Apache-2.0
//
// The bake as one stretch of time, also across a clock change.
#include "engine/sheet/day_line.hpp"
#include "tests/sheet/tin_loaf_plan.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace loafwright {
namespace {

TEST(day_line, every_stage_has_its_stretch_and_every_full_hour_its_name) {
    const BakeDay bake = tin_loaf_day();
    const DayLine line = day_line(bake.plan, bake.day.zone);
    EXPECT_EQ(line.from, at(13, 0));
    EXPECT_EQ(line.minutes, 330);
    ASSERT_EQ(line.spans.size(), 6U) << "all but the meal";
    const std::vector<std::pair<int, int>> wanted = {
        {0, 30}, {30, 110}, {110, 120}, {120, 170}, {170, 205}, {205, 265}};
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        EXPECT_EQ(line.spans[i].number, static_cast<int>(i) + 1);
        EXPECT_EQ(line.spans[i].from_minutes, wanted[i].first);
        EXPECT_EQ(line.spans[i].to_minutes, wanted[i].second);
    }
    EXPECT_EQ(line.spans[4].attention, Attention::near);
    ASSERT_EQ(line.hours.size(), 6U);
    EXPECT_EQ(line.hours.front().text, "13:00");
    EXPECT_EQ(line.hours.back().text, "18:00");
    EXPECT_EQ(line.hours.back().minutes, 300);
}

// Europe/London, 25 October 2026: at 02:00 BST the clocks go back to 01:00 GMT (IANA tz 2026a).
TEST(day_line, an_hour_that_comes_twice_stands_twice) {
    BakeDay bake = tin_loaf_day();
    Zone zone;
    zone.name = "Europe/London";
    zone.first_offset_seconds = 3600;
    zone.changes = {{Instant{1792890000}, 0}};
    Plan& plan = bake.plan;
    plan.start = Instant{1792890000 - 90 * 60};
    plan.eat = exactly(later_by_minutes(plan.start, 180));
    plan.stages = {stage_of(1, "rise", Attention::wait, plan.start, exactly(plan.eat.likely))};
    const DayLine line = day_line(plan, zone);
    std::vector<std::string> names;
    for (const DayLineHour& hour : line.hours) {
        names.push_back(hour.text);
    }
    EXPECT_EQ(names, (std::vector<std::string>{"01:00", "01:00", "02:00"}));
    EXPECT_EQ(line.hours[0].minutes, 30);
    EXPECT_EQ(line.hours[1].minutes, 90);
}

RC_GTEST_PROP(day_line, stretches_are_in_order_and_inside, ()) {
    BakeDay bake = tin_loaf_day();
    bake.plan.stages.clear();
    std::int64_t from = 0;
    const int count = *rc::gen::inRange(0, 12);
    for (int i = 0; i < count; ++i) {
        const std::int64_t length = *rc::gen::inRange(0, 900);
        bake.plan.stages.push_back(
            stage_of(i + 1,
                     "x",
                     *rc::gen::element(Attention::hands, Attention::wait, Attention::near),
                     later_by_minutes(bake.plan.start, from),
                     exactly(later_by_minutes(bake.plan.start, from + length))));
        from += *rc::gen::inRange(0, 1200);
    }
    bake.plan.eat = exactly(later_by_minutes(bake.plan.start, *rc::gen::inRange(0, 20000)));
    const DayLine line = day_line(bake.plan, Zone{});
    RC_ASSERT(line.minutes <= 7 * 24 * 60);
    std::int64_t last = 0;
    for (const DayLineSpan& span : line.spans) {
        RC_ASSERT(span.from_minutes >= last);
        RC_ASSERT(span.from_minutes < span.to_minutes);
        RC_ASSERT(span.to_minutes <= line.minutes);
        last = span.to_minutes;
    }
    RC_ASSERT(static_cast<std::int64_t>(line.hours.size()) <= line.minutes / 60 + 1);
}

} // namespace
} // namespace loafwright
