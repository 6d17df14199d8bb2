// SPDX-License-Identifier: Apache-2.0
#include "engine/following/bake_log.hpp"
#include "engine/following/signs.hpp"
#include "tests/planning/breads.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

namespace loafwright {
namespace {

using planning::at;

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

Plan loaf_at_nine(const FittedRecipe& loaf) {
    Day day = planning::day_at("2026-11-28T08:00:00Z");
    day.start = at("2026-11-28T09:00:00Z");
    return planning::plan_in(plan(loaf, Kitchen{}, day));
}

Event event(const std::string& id, const std::string& when, EventKind kind, int stage) {
    Event made;
    made.id = id;
    made.at = at("2026-11-28T" + when + ":00Z");
    made.kind = kind;
    made.stage = stage;
    return made;
}

BakeLog log_of(const std::vector<Event>& events, const FittedRecipe& loaf = planning::tin_loaf()) {
    return bake_logs(loaf_at_nine(loaf), {loaf}, events, known()).front();
}

TEST(bake_log, has_the_plan_where_nothing_was_told) {
    const BakeLog log = log_of({});
    EXPECT_EQ(log.bread, "Plain tin loaf");
    ASSERT_EQ(log.lines.size(), 6U) << "every line with a box, not the eating";
    const LoggedLine& rise = log.lines[1];
    EXPECT_EQ(rise.kind, StepKind::rise);
    EXPECT_EQ(rise.minutes, (Band<std::int64_t>{65, 80, 105}));
    EXPECT_DOUBLE_EQ(rise.usual_minutes, 80.0);
    EXPECT_EQ(rise.wanted_growth, 1.0);
    EXPECT_FALSE(rise.begun || rise.done || rise.timed);
    EXPECT_EQ(log.lines[3].kind, StepKind::prove);
    EXPECT_EQ(log.lines[4].kind, StepKind::bake);
    EXPECT_TRUE(log.lines[4].setting);
    EXPECT_EQ(log.lines[5].kind, StepKind::cool);
}

TEST(bake_log, only_what_somebody_told_is_timed) {
    const BakeLog log = log_of({event("a", "09:35", EventKind::done, 1),
                                event("b", "11:05", EventKind::done, 2),
                                event("c", "12:30", EventKind::begun, 5)});
    EXPECT_FALSE(log.lines[0].timed) << "nobody told when it began";
    EXPECT_TRUE(log.lines[1].timed);
    EXPECT_EQ(real_minutes(log.lines[1]), 90);
    EXPECT_TRUE(log.lines[2].done) << "it must be over";
    EXPECT_FALSE(log.lines[2].timed);
    EXPECT_FALSE(log.lines[4].timed);
}

TEST(bake_log, keeps_what_was_seen_measured_and_said_with_its_line) {
    Event measured = event("a", "09:40", EventKind::temperature, 2);
    measured.celsius = Celsius(24.0);
    Event grown = event("b", "10:30", EventKind::grown, 2);
    grown.growth = Growth::half_as_much;
    Event trouble = event("c", "10:31", EventKind::trouble, 2);
    trouble.trouble = Trouble::not_rising;
    Event told = event("d", "16:00", EventKind::told, 1);
    told.told.crust = Crust::right;
    told.told.symptoms = {"dense"};
    Event later = event("e", "16:05", EventKind::told, 1);
    later.told.crust = Crust::dark;
    later.told.symptoms = {"dense", "sour"};
    const BakeLog log =
        log_of({event("0", "09:35", EventKind::done, 1), measured, grown, trouble, told, later});
    ASSERT_EQ(log.lines[1].temperatures.size(), 1U);
    EXPECT_EQ(log.lines[1].grown->growth, Growth::half_as_much);
    EXPECT_EQ(log.lines[1].troubles, std::vector<Trouble>{Trouble::not_rising});
    EXPECT_EQ(log.told.crust, Crust::dark) << "the last word counts";
    EXPECT_EQ(log.told.symptoms, (std::vector<std::string>{"dense", "sour"}));
}

TEST(bake_log, what_was_learned_is_taken_out_of_the_usual_minutes) {
    FittedRecipe loaf = planning::tin_loaf();
    for (FittedStep& step : loaf.steps) {
        if (step.kind == StepKind::rise) {
            step.usual_minutes = step.minutes;
            step.minutes = {90, 100, 110};
            step.basis = Basis::learned;
        }
    }
    const BakeLog log = log_of({}, loaf);
    EXPECT_EQ(log.lines[1].minutes.likely, 100);
    EXPECT_NEAR(log.lines[1].usual_minutes, 80.0, 1e-9);
    EXPECT_EQ(log.lines[1].basis, Basis::learned);
}

TEST(bake_log, a_night_in_the_fridge_is_the_plans_choice) {
    const BakeLog log = log_of({}, planning::overnight_loaf());
    const LoggedLine* prove = line_of(log, StepKind::prove);
    ASSERT_NE(prove, nullptr);
    EXPECT_TRUE(prove->chosen);
}

TEST(bake_log, weights_become_percentages_on_the_flour) {
    FittedRecipe loaf = planning::tin_loaf_that_can_change();
    for (Ingredient& ingredient : loaf.recipe.ingredients) {
        ingredient.known_as = ingredient.item == "strong white flour" ? "bread flour"
                              : ingredient.item == "salt"             ? "table salt"
                                                                      : ingredient.item;
    }
    ASSERT_NE(ingredient_named(known(), "water"), nullptr);
    const BakeLog log = log_of({}, loaf);
    if (ingredient_named(known(), "bread flour") != nullptr) {
        ASSERT_TRUE(log.dough.water);
        EXPECT_NEAR(*log.dough.water, 66.0, 1.0); // 330 g on 500 g
        ASSERT_TRUE(log.dough.yeast);
        EXPECT_NEAR(*log.dough.yeast, 4.2, 0.4); // 7 g of instant, three times as much fresh
    }
}

RC_GTEST_PROP(bake_log, the_order_of_events_and_retries_change_nothing, ()) {
    std::vector<Event> events;
    const int count = *rc::gen::inRange(0, 10);
    for (int n = 0; n < count; ++n) {
        Event made = event("e" + std::to_string(n), "09:00", EventKind::done, 1);
        made.at = later_by_minutes(made.at, *rc::gen::inRange(0, 500));
        made.kind = static_cast<EventKind>(*rc::gen::inRange(0, 11));
        made.stage = *rc::gen::inRange(-1, 9);
        made.growth = static_cast<Growth>(*rc::gen::inRange(0, 4));
        made.trouble = static_cast<Trouble>(*rc::gen::inRange(0, 7));
        made.told.symptoms = {std::to_string(*rc::gen::inRange(0, 3))};
        made.undoes = "e" + std::to_string(*rc::gen::inRange(0, 10));
        events.push_back(made);
    }
    const BakeLog once = log_of(events);
    std::vector<Event> again(events.rbegin(), events.rend());
    again.insert(again.end(), events.begin(), events.end());
    const BakeLog twice = log_of(again);
    RC_ASSERT(once.told.symptoms == twice.told.symptoms);
    for (std::size_t k = 0; k < once.lines.size(); ++k) {
        RC_ASSERT(once.lines[k].begun == twice.lines[k].begun);
        RC_ASSERT(once.lines[k].done == twice.lines[k].done);
        RC_ASSERT(once.lines[k].timed == twice.lines[k].timed);
        RC_ASSERT(once.lines[k].troubles == twice.lines[k].troubles);
        const bool forwards = !once.lines[k].begun || !once.lines[k].done ||
                              *once.lines[k].begun <= *once.lines[k].done;
        RC_ASSERT(forwards);
    }
}

TEST(signs, picks_are_signs_and_right_ones_rule_out) {
    Told told;
    told.crust = Crust::pale;
    told.crumb = Crumb::even;
    told.symptoms = {"it was rather gummy"};
    const auto signs = following::signs_of(told, known());
    std::vector<std::string_view> seen;
    for (const FaultSymptomRow* row : signs.seen) {
        seen.push_back(row->key);
    }
    EXPECT_EQ(seen, (std::vector<std::string_view>{"pale_crust", "gummy"}));
    EXPECT_EQ(signs.absent.size(), 4U) << "dark; close, open and large holes";
}

} // namespace
} // namespace loafwright
