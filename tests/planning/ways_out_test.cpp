// SPDX-License-Identifier: Apache-2.0
//
// A no comes with the sum behind it and with what would work; each way out is taken at its word and
// planned again.
#include "engine/fitting/otherwise.hpp"
#include "tests/planning/breads.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <set>

namespace loafwright::planning {

namespace {

Impossible refused(const FittedRecipe& recipe, const Day& day, const Kitchen& kitchen = Kitchen{}) {
    const PlanOutcome outcome = plan(recipe, kitchen, day);
    if (!std::holds_alternative<Impossible>(outcome)) {
        throw std::runtime_error("was planned after all");
    }
    return std::get<Impossible>(outcome);
}

// Reads the times out of the sentence and plans that day.
std::optional<Plan>
taken_at_its_word(const FittedRecipe& recipe, const Day& day, const std::string& change) {
    const auto moment = [&](std::size_t from) -> std::optional<Instant> {
        const std::size_t colon = change.find(':', from);
        if (colon == std::string::npos || colon < 2) {
            return std::nullopt;
        }
        const ClockTime clock{std::stoi(change.substr(colon - 2, 2)),
                              std::stoi(change.substr(colon + 1, 2))};
        std::int64_t days = days_from_civil(civil_of(day.zone, day.now).date);
        const std::string rest = change.substr(colon + 3);
        if (rest.rfind(" tomorrow", 0) == 0) {
            ++days;
        } else if (rest.rfind(" on ", 0) == 0) {
            while (
                rest.rfind(
                    " on " +
                        day_text(day.zone,
                                 instant_of(day.zone, {civil_from_days(days), clock, 0}).value()),
                    0) != 0) {
                ++days;
            }
        }
        return instant_of(day.zone, {civil_from_days(days), clock, 0}).value();
    };
    Day changed = day;
    changed.start.reset();
    changed.eat_by.reset();
    if (change.rfind("eat at ", 0) == 0) {
        changed.eat_by = moment(0);
    } else {
        changed.start = moment(0);
    }
    const PlanOutcome outcome = plan(recipe, Kitchen{}, changed);
    if (!std::holds_alternative<Plan>(outcome)) {
        return std::nullopt;
    }
    return std::get<Plan>(outcome);
}

void expect_ways_hold(const FittedRecipe& recipe, const Day& day, const Impossible& no) {
    std::set<std::string> seen;
    EXPECT_FALSE(no.why.empty());
    EXPECT_GE(no.ways_out.size(), 2U) << no.why;
    EXPECT_LE(no.ways_out.size(), 4U);
    for (const WayOut& way : no.ways_out) {
        EXPECT_TRUE(seen.insert(way.change).second) << way.change;
        const auto held = taken_at_its_word(recipe, day, way.change);
        ASSERT_TRUE(held.has_value()) << way.change;
        EXPECT_LE(held->cut_from, way.eat) << way.change;
        Day as_start = day;
        as_start.start.reset();
        as_start.eat_by.reset();
        EXPECT_TRUE(broken_promises(recipe, as_start, *held).empty())
            << way.change << ": " << broken_promises(recipe, as_start, *held).front();
        EXPECT_TRUE(held->warnings.empty()) << way.change;
    }
}

// The bread that a way out asks for, on the day that it asks for.
std::optional<Plan> made_and_planned(const FittedRecipe& recipe,
                                     const Kitchen& kitchen,
                                     const Day& day,
                                     const WayOut& way) {
    const auto how = fitting::otherwise_named(way.taken_by.at(0).answer.value);
    const auto made = how ? fitting::made_otherwise(recipe, kitchen, *how)
                          : std::optional<fitting::MadeOtherwise>{};
    if (!made) {
        return std::nullopt;
    }
    Day changed = day;
    if (day.eat_by) {
        changed.eat_by = way.eat;
    }
    const PlanOutcome outcome = plan(made->recipe, kitchen, changed);
    if (!std::holds_alternative<Plan>(outcome)) {
        return std::nullopt;
    }
    Plan held = std::get<Plan>(outcome);
    // Rolls leave out what is done to a loaf; nothing else may be broken.
    for (const std::string& one : broken_promises(made->recipe, changed, held)) {
        if (one.rfind("step shown", 0) != 0) {
            return std::nullopt;
        }
    }
    return held;
}

const WayOut* way_named(const Impossible& no, fitting::Otherwise how) {
    for (const WayOut& way : no.ways_out) {
        if (!way.taken_by.empty() && way.taken_by[0].answer.value == fitting::name_of(how)) {
            return &way;
        }
    }
    return nullptr;
}

Kitchen warm_kitchen() {
    Kitchen kitchen;
    kitchen.warm_spot = Celsius(28.0);
    return kitchen;
}

} // namespace

TEST(ways_out, too_little_time_says_the_sum) {
    Day day = day_at("2026-11-28T10:30:00Z");
    day.eat_by = at("2026-11-28T14:00:00Z");
    const FittedRecipe recipe = tin_loaf();
    const Impossible no = refused(recipe, day);
    EXPECT_EQ(no.why.find("You can't eat this by 14:00. From 10:30 it takes 4 h 25 with one hour's "
                          "cooling: 14:55, or 15:"),
              0U)
        << no.why;
    EXPECT_NE(no.why.find("if the dough is slow."), std::string::npos);
    expect_ways_hold(recipe, day, no);
    std::string all;
    for (const WayOut& way : no.ways_out) {
        all += way.change + "\n";
    }
    EXPECT_NE(all.find("begin at 10:30 today and eat from 14:55"), std::string::npos) << all;
    EXPECT_NE(all.find("eat at 15:"), std::string::npos) << all;
    EXPECT_NE(all.find("tomorrow and eat at 14:00"), std::string::npos) << all;
    for (const std::string& reason : no.reasons) {
        EXPECT_FALSE(reason.empty());
    }
}

TEST(ways_out, a_time_that_has_passed_is_said_to_have_passed) {
    const FittedRecipe recipe = tin_loaf();
    Day day = day_at("2026-11-28T13:30:00Z");
    day.start = at("2026-11-28T13:00:00Z");
    Impossible no = refused(recipe, day);
    EXPECT_EQ(no.why, "13:00 has passed.");
    expect_ways_hold(recipe, day, no);
    day.start.reset();
    day.eat_by = at("2026-11-28T13:30:00Z");
    no = refused(recipe, day);
    EXPECT_EQ(no.why, "13:30 has passed.");
    expect_ways_hold(recipe, day, no);
}

TEST(ways_out, a_start_before_sleep_moves_to_the_morning_or_earlier) {
    const FittedRecipe recipe = tin_loaf();
    Day day = day_with_sleep("2026-11-28T15:00:00Z", {22, 30}, {6, 30});
    day.start = at("2026-11-28T21:00:00Z");
    const Impossible no = refused(recipe, day);
    expect_ways_hold(recipe, day, no);
    std::string all;
    for (const WayOut& way : no.ways_out) {
        all += way.change + "\n";
    }
    EXPECT_NE(all.find("begin at 06:30 tomorrow"), std::string::npos) << all;
    EXPECT_NE(all.find("today and eat from"), std::string::npos) << all;
}

TEST(ways_out, without_a_day_file_nobody_is_sent_to_work_at_night) {
    const FittedRecipe recipe = tin_loaf();
    Day day = day_at("2026-11-28T21:00:00Z");
    day.eat_by = at("2026-11-28T23:00:00Z");
    const Impossible no = refused(recipe, day);
    expect_ways_hold(recipe, day, no);
}

TEST(ways_out, nobody_home_all_day_leads_to_another_day) {
    const FittedRecipe recipe = tin_loaf();
    Day day = day_with_sleep("2026-11-28T07:00:00Z", {22, 30}, {6, 30});
    day.windows.push_back(
        {0, Presence::away, at("2026-11-28T07:00:00Z"), at("2026-11-28T20:00:00Z")});
    day.eat_by = at("2026-11-28T19:00:00Z");
    const Impossible no = refused(recipe, day);
    EXPECT_NE(no.why.find("you are away"), std::string::npos) << no.why;
    expect_ways_hold(recipe, day, no);
}

TEST(ways_out, rolls_are_the_same_dough_and_sooner_eaten) {
    const FittedRecipe recipe = tin_loaf_that_can_change();
    Day day = day_at("2026-11-28T10:30:00Z");
    day.eat_by = at("2026-11-28T14:15:00Z");
    const Impossible no = refused(recipe, day);
    const WayOut* rolls = way_named(no, fitting::Otherwise::rolls);
    ASSERT_NE(rolls, nullptr);
    EXPECT_EQ(rolls->change, "the same dough as rolls");
    const auto held = made_and_planned(recipe, Kitchen{}, day, *rolls);
    ASSERT_TRUE(held);
    EXPECT_LE(held->cut_from, rolls->eat);
    EXPECT_TRUE(std::any_of(no.ways_out.begin(), no.ways_out.end(), [](const WayOut& way) {
        return way.taken_by.empty();
    })) << "one way keeps the bread as written";
}

TEST(ways_out, one_rise_in_the_warm_spot_is_offered_before_both) {
    const FittedRecipe recipe = tin_loaf_that_can_change();
    const Kitchen kitchen = warm_kitchen();
    bool one = false;
    bool both = false;
    for (std::int64_t wish = 0; wish < 60; wish += 5) {
        Day day = day_at("2026-11-28T10:30:00Z");
        day.eat_by = later_by_minutes(at("2026-11-28T14:10:00Z"), wish);
        const PlanOutcome outcome = plan(recipe, kitchen, day);
        if (!std::holds_alternative<Impossible>(outcome)) {
            continue;
        }
        const Impossible& no = std::get<Impossible>(outcome);
        const WayOut* all = way_named(no, fitting::Otherwise::warm_rises);
        const bool single = [&] {
            for (const auto how : {fitting::Otherwise::warm_prove, fitting::Otherwise::warm_rise}) {
                const auto made = fitting::made_otherwise(recipe, kitchen, how);
                if (made && std::holds_alternative<Plan>(plan(made->recipe, kitchen, day))) {
                    return true;
                }
            }
            return false;
        }();
        if (all != nullptr && all->eat == *day.eat_by) {
            EXPECT_FALSE(single) << "part of it would do";
            EXPECT_EQ(all->change, "your warm spot, 28 °C, for both rises");
            both = true;
        }
        one = one || (all == nullptr && single);
    }
    EXPECT_TRUE(one);
    EXPECT_TRUE(both);
}

TEST(ways_out, a_night_in_the_fridge_says_when_the_oven_goes_on) {
    const FittedRecipe recipe = tin_loaf_that_can_change();
    Day day = day_with_sleep("2026-11-28T17:00:00Z", {22, 0}, {6, 30});
    day.start = at("2026-11-28T20:00:00Z");
    const Impossible no = refused(recipe, day);
    const auto night = std::find_if(no.ways_out.begin(), no.ways_out.end(), [](const WayOut& way) {
        return way.change.find("a night in the fridge for ") == 0;
    });
    ASSERT_NE(night, no.ways_out.end());
    EXPECT_NE(night->change.find("; oven on at "), std::string::npos) << night->change;
    EXPECT_NE(night->change.find(" tomorrow"), std::string::npos) << night->change;
    EXPECT_TRUE(made_and_planned(recipe, Kitchen{}, day, *night));
}

TEST(ways_out, no_bread_is_made_otherwise_unasked) {
    const FittedRecipe recipe = tin_loaf_that_can_change();
    Day day = day_at("2026-11-28T10:30:00Z");
    day.eat_by = at("2026-11-28T14:15:00Z");
    EXPECT_TRUE(std::holds_alternative<Impossible>(plan(recipe, Kitchen{}, day)));
}

RC_GTEST_PROP(ways_out, whatever_is_refused_every_way_out_holds, ()) {
    Day day = day_with_sleep("2026-11-28T09:00:00Z", {22, 30}, {6, 30});
    const FittedRecipe recipe =
        *rc::gen::arbitrary<bool>() ? tin_loaf_that_can_change() : overnight_loaf();
    const Kitchen kitchen = *rc::gen::arbitrary<bool>() ? warm_kitchen() : Kitchen{};
    const Instant wish = later_by_minutes(day.now, *rc::gen::inRange<std::int64_t>(1, 1500));
    (*rc::gen::arbitrary<bool>() ? day.start : day.eat_by) = wish;
    for (int n = *rc::gen::inRange(0, 3); n > 0; --n) {
        const Instant from = later_by_minutes(day.now, *rc::gen::inRange<std::int64_t>(0, 1600));
        day.windows.push_back({0,
                               Presence::away,
                               from,
                               later_by_minutes(from, *rc::gen::inRange<std::int64_t>(30, 400))});
    }
    const PlanOutcome outcome = plan(recipe, kitchen, day);
    if (std::holds_alternative<Plan>(outcome)) {
        RC_ASSERT(broken_promises(recipe, day, std::get<Plan>(outcome)).empty());
        return;
    }
    const Impossible& no = std::get<Impossible>(outcome);
    RC_ASSERT(!no.ways_out.empty());
    RC_ASSERT(no.ways_out.size() <= 4U);
    for (const WayOut& way : no.ways_out) {
        const auto held = way.taken_by.empty() ? taken_at_its_word(recipe, day, way.change)
                                               : made_and_planned(recipe, kitchen, day, way);
        RC_LOG() << way.change << "\n";
        RC_ASSERT(held.has_value());
    }
}

} // namespace loafwright::planning
