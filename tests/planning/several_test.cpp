// SPDX-License-Identifier: Apache-2.0
//
// Several breads on one day. What must hold is looked for on the page itself, minute by minute, and
// shares nothing with the scheduler; whether a time to eat holds is rehearsed with another
// generator.
#include "engine/fitting/otherwise.hpp"
#include "engine/planning/plan.hpp"
#include "engine/planning/rehearse.hpp"
#include "tests/planning/breads.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <random>
#include <set>

namespace loafwright {
namespace {

using namespace planning;

// Hands `work`, a rise, hands 5, a prove, a bake of one setting, an hour of cooling.
FittedRecipe plain(const std::string& title,
                   std::int64_t work,
                   std::int64_t rise,
                   double oven,
                   std::int64_t bake) {
    BreadMaker maker(title);
    BreadMaker::More holds;
    holds.holds = 30;
    maker.step(StepKind::knead, {work, work, work}, "Knead");
    maker.step(StepKind::rise, {rise - 15, rise, rise + 30}, "Cover and leave", holds);
    maker.step(StepKind::shape, {5, 5, 5}, "Shape");
    maker.step(StepKind::prove, {30, 40, 55}, "Leave to prove", holds);
    BreadMaker::More hot;
    hot.oven = oven;
    hot.heat_up = 20;
    maker.step(StepKind::bake, exactly(bake), "Bake", hot);
    maker.step(StepKind::cool, exactly<std::int64_t>(60), "On to a rack");
    return maker.bread({60, 60, 60}, {60, 60, 60});
}

Kitchen kitchen_with(int shelves) {
    Kitchen kitchen;
    kitchen.oven.shelves = shelves;
    return kitchen;
}

struct Span {
    std::string bread;
    Instant from;
    Instant to;
};

// Bakes and goes of work as the page shows them, each with its bread.
std::vector<Span> spans_of(const Plan& plan, Attention attention) {
    std::vector<Span> spans;
    for (const Plan& bread : plan.breads) {
        for (const Stage& stage : bread.stages) {
            if (stage.attention == attention) {
                spans.push_back({stage.bread, stage.start, stage.end.likely});
            }
        }
    }
    return spans;
}

std::size_t most_at_once(const std::vector<Span>& spans) {
    std::size_t most = 0;
    for (const Span& here : spans) {
        most = std::max<std::size_t>(most,
                                     static_cast<std::size_t>(std::count_if(
                                         spans.begin(), spans.end(), [&](const Span& other) {
                                             return other.from <= here.from && here.from < other.to;
                                         })));
    }
    return most;
}

TEST(several, one_person_works_on_one_bread_at_a_time) {
    Day day = day_at("2026-11-28T08:00:00Z");
    day.eat_by = at("2026-11-28T18:30:00Z");
    const std::vector<FittedRecipe> recipes{
        tin_loaf(), plain("Rolls", 30, 60, 200, 20), plain("Rye", 15, 120, 220, 45)};
    const PlanOutcome outcome = plan(recipes, kitchen_with(2), day);
    const Plan& made = plan_in(outcome);
    ASSERT_EQ(made.breads.size(), 3U);
    EXPECT_TRUE(made.proven);
    EXPECT_EQ(most_at_once(spans_of(made, Attention::hands)), 1U);
    for (std::size_t b = 0; b < recipes.size(); ++b) {
        EXPECT_EQ(broken_promises(recipes[b], day, made.breads[b]), std::vector<std::string>{});
        EXPECT_EQ(made.breads[b].stages.front().bread, recipes[b].recipe.title);
    }
    // The shared lines are those of the breads, by the clock, "Eat" once.
    std::size_t lines = 0;
    for (const Plan& bread : made.breads) {
        lines += bread.stages.size();
    }
    EXPECT_EQ(made.stages.size(), lines - 2);
    EXPECT_EQ(made.stages.back().title, "Eat");
    for (std::size_t s = 0; s < made.stages.size(); ++s) {
        EXPECT_EQ(made.stages[s].number, static_cast<int>(s) + 1);
        EXPECT_TRUE(s == 0 || made.stages[s - 1].start <= made.stages[s].start);
    }
}

TEST(several, bakes_of_different_heat_take_turns_with_time_to_change_between) {
    Day day = day_at("2026-11-28T08:00:00Z");
    day.start = at("2026-11-28T09:00:00Z");
    const PlanOutcome outcome =
        plan({plain("Cool", 20, 60, 180, 30), plain("Hot", 20, 60, 240, 30)}, kitchen_with(2), day);
    const Plan& made = plan_in(outcome);
    std::vector<Span> bakes = spans_of(made, Attention::near);
    ASSERT_EQ(bakes.size(), 2U);
    std::sort(
        bakes.begin(), bakes.end(), [](const Span& a, const Span& b) { return a.from < b.from; });
    EXPECT_GT(bakes[1].from, bakes[0].to) << "the oven changes in no time";
    // The act that changes the oven stands on the page of the second.
    const Plan& second = made.breads[bakes[1].bread == "Hot" ? 1 : 0];
    std::string acts;
    for (const Stage& stage : second.stages) {
        for (const Act& act : stage.acts) {
            acts += act.text + "\n";
        }
    }
    const bool goes_up = bakes[1].bread == "Hot";
    EXPECT_NE(acts.find(goes_up ? "oven up to 240" : "oven down to 180"), std::string::npos)
        << acts;
    EXPECT_EQ(acts.find("oven on"), std::string::npos) << acts;
}

TEST(several, the_hottest_bake_goes_first_where_little_is_lost) {
    Day day = day_at("2026-11-28T08:00:00Z");
    day.eat_by = at("2026-11-28T18:30:00Z");
    const PlanOutcome outcome =
        plan({plain("Cool", 20, 60, 180, 30), plain("Hot", 20, 60, 240, 30)}, kitchen_with(1), day);
    const Plan& made = plan_in(outcome);
    const std::vector<Span> bakes = spans_of(made, Attention::near);
    ASSERT_EQ(bakes.size(), 2U);
    EXPECT_EQ(bakes[1].bread, "Hot");
    EXPECT_LT(bakes[1].from, bakes[0].from);
}

TEST(several, what_bakes_at_one_heat_bakes_together_on_two_shelves_and_in_turn_on_one) {
    Day day = day_at("2026-11-28T08:00:00Z");
    day.eat_by = at("2026-11-28T18:30:00Z");
    const std::vector<FittedRecipe> loaves{plain("One", 10, 60, 220, 30),
                                           plain("Two", 10, 60, 220, 30)};
    const PlanOutcome one = plan(loaves, kitchen_with(1), day);
    EXPECT_EQ(most_at_once(spans_of(plan_in(one), Attention::near)), 1U);
    // Ready by the latest moment that suits both, they share the oven.
    const PlanOutcome two = plan(loaves, kitchen_with(2), day);
    EXPECT_EQ(most_at_once(spans_of(plan_in(two), Attention::near)), 2U);
}

TEST(several, loaves_that_change_the_oven_alike_go_in_together_or_in_turn) {
    Day day = day_at("2026-11-28T08:00:00Z");
    day.eat_by = at("2026-11-28T18:30:00Z");
    for (const int shelves : {1, 2, 3}) {
        const PlanOutcome outcome = plan({tin_loaf(), tin_loaf()}, kitchen_with(shelves), day);
        const Plan& made = plan_in(outcome);
        const std::vector<Span> bakes = spans_of(made, Attention::near);
        ASSERT_EQ(bakes.size(), 2U);
        const bool together = bakes[0].from == bakes[1].from;
        const bool in_turn = bakes[0].to < bakes[1].from || bakes[1].to < bakes[0].from;
        EXPECT_TRUE(in_turn || (together && shelves > 1)) << shelves << " shelves";
    }
}

TEST(several, two_people_share_the_work_and_the_page_says_who) {
    Day day = day_with_sleep("2026-11-28T08:00:00Z", {22, 0}, {6, 0});
    day.people = {"Ada", "Bo"};
    // Bo sleeps too.
    const std::vector<PresenceWindow> nights = day.windows;
    for (PresenceWindow night : nights) {
        night.person = 1;
        day.windows.push_back(night);
    }
    day.eat_by = at("2026-11-28T18:30:00Z");
    const PlanOutcome outcome =
        plan({plain("One", 60, 60, 220, 30), plain("Two", 60, 60, 220, 30)}, kitchen_with(2), day);
    std::set<std::string> who;
    for (const Stage& stage : plan_in(outcome).stages) {
        if (stage.attention == Attention::hands) {
            who.insert(stage.who);
        }
    }
    EXPECT_EQ(who, (std::set<std::string>{"Ada", "Bo"}));
}

// Plays the page of each bread again: another generator, and half-normal curves drawn as such. A
// late dough keeps the person and the oven from the next bread in the planned order.
double share_in_time(const std::vector<FittedRecipe>& recipes, const Plan& made, const Day& day) {
    struct Part {
        std::size_t bread = 0;
        const Stage* stage = nullptr;
    };
    std::vector<Part> order;
    for (std::size_t b = 0; b < recipes.size(); ++b) {
        for (const Stage& stage : made.breads[b].stages) {
            if (stage.attention != Attention::none) {
                order.push_back({b, &stage});
            }
        }
    }
    std::stable_sort(order.begin(), order.end(), [](const Part& a, const Part& b) {
        return a.stage->start < b.stage->start;
    });
    std::mt19937_64 random(11);
    std::normal_distribution<double> normal;
    constexpr int times = 2000;
    int in_time = 0;
    for (int n = 0; n < times; ++n) {
        std::vector<Instant> ready(recipes.size(), day.now);
        Instant hands_free = day.now;
        Instant oven_free = day.now;
        for (const Part& part : order) {
            const Stage& stage = *part.stage;
            const bool first = &stage == &made.breads[part.bread].stages.front();
            Instant from = first ? stage.start : ready[part.bread];
            if (stage.attention == Attention::hands) {
                from = std::max(from, hands_free);
            }
            if (stage.attention == Attention::near) {
                from = std::max(from, oven_free);
            }
            const double z = normal(random) / 1.2815515655446004;
            const double middle =
                static_cast<double>(minutes_between(stage.start, stage.end.likely));
            const double side =
                z < 0 ? static_cast<double>(minutes_between(stage.end.low, stage.end.likely))
                      : static_cast<double>(minutes_between(stage.end.likely, stage.end.high));
            const Instant to =
                later_by_minutes(from, static_cast<std::int64_t>(std::max(0.0, middle + z * side)));
            ready[part.bread] = to;
            if (stage.attention == Attention::hands) {
                hands_free = to;
            }
            if (stage.attention == Attention::near) {
                oven_free = to;
            }
        }
        in_time += std::all_of(
            ready.begin(), ready.end(), [&day](Instant moment) { return moment <= *day.eat_by; });
    }
    return static_cast<double>(in_time) / times;
}

TEST(several, a_time_to_eat_holds_in_four_bakes_of_five_by_another_rehearsal) {
    Day day = day_at("2026-11-28T08:00:00Z");
    day.eat_by = at("2026-11-28T14:00:00Z");
    const std::vector<FittedRecipe> recipes{plain("One", 30, 60, 220, 30),
                                            plain("Two", 30, 75, 240, 30)};
    const PlanOutcome outcome = plan(recipes, kitchen_with(1), day);
    // Sampling: 2000 plays stand on about ±1 in a hundred, our 200 on ±3.
    EXPECT_GE(share_in_time(recipes, plan_in(outcome), day), 0.76);
}

TEST(several, rehearsing_one_bread_agrees_with_the_sum_of_its_bands) {
    // One wait of 60, tenth percentile 40, ninetieth 100: the percentiles come back.
    schedule::Problem problem;
    problem.horizon = 1000;
    schedule::Task wait;
    wait.minutes = {60, 60, 60};
    problem.jobs = {schedule::Job{}};
    problem.jobs.front().tasks = {wait};
    const schedule::Schedule schedule{{{0, {100}, {160}, {std::nullopt}}}};
    const auto days = rehearse(problem, schedule, {{{40, 60, 100}}});
    std::vector<std::int64_t> ends;
    for (const auto& day : days) {
        ends.push_back(day[0][0]);
    }
    EXPECT_NEAR(static_cast<double>(percentile(ends, 0.1)), 140, 6);
    EXPECT_NEAR(static_cast<double>(percentile(ends, 0.5)), 160, 5);
    EXPECT_NEAR(static_cast<double>(percentile(ends, 0.9)), 200, 10);
}

TEST(several, a_bread_that_cannot_be_made_alone_is_named) {
    Day day = day_at("2026-11-28T08:00:00Z");
    day.eat_by = at("2026-11-28T12:30:00Z");
    const PlanOutcome outcome = plan(
        {plain("Quick", 10, 30, 220, 20), plain("Slow", 10, 600, 220, 30)}, kitchen_with(1), day);
    const auto* no = std::get_if<Impossible>(&outcome);
    ASSERT_NE(no, nullptr);
    EXPECT_EQ(no->why.rfind("Slow: You can't eat this by 12:30", 0), 0U) << no->why;
}

TEST(several, one_shelf_too_few_says_so_and_every_way_out_holds) {
    // Two loaves, forty minutes each in the oven, ready in the same hour.
    Day day = day_at("2026-11-28T08:00:00Z");
    const std::vector<FittedRecipe> loaves{plain("One", 5, 60, 220, 40),
                                           plain("Two", 5, 60, 220, 40)};
    Day alone = day;
    std::optional<Plan> soonest;
    for (int minutes = 180; minutes < 500 && !soonest; minutes += 5) {
        alone.eat_by = later_by_minutes(day.now, minutes);
        const PlanOutcome outcome = plan(loaves.front(), kitchen_with(1), alone);
        if (std::holds_alternative<Plan>(outcome)) {
            soonest = std::get<Plan>(outcome);
        }
    }
    ASSERT_TRUE(soonest);
    day.eat_by = later_by_minutes(*alone.eat_by, 20);
    const PlanOutcome outcome = plan(loaves, kitchen_with(1), day);
    const auto* no = std::get_if<Impossible>(&outcome);
    ASSERT_NE(no, nullptr);
    EXPECT_NE(no->why.find("shelf"), std::string::npos) << no->why;
    ASSERT_GE(no->ways_out.size(), 2U);
    ASSERT_LE(no->ways_out.size(), 4U);
    EXPECT_EQ(no->ways_out.front().change, "use the second shelf");
    EXPECT_TRUE(std::holds_alternative<Plan>(plan(loaves, kitchen_with(2), day)));
    for (const WayOut& way : no->ways_out) {
        if (way.change.rfind("eat at ", 0) == 0) {
            Day later = day;
            later.eat_by = way.eat;
            EXPECT_TRUE(std::holds_alternative<Plan>(plan(loaves, kitchen_with(1), later)))
                << way.change;
        }
        if (way.change == "leave out One") {
            EXPECT_TRUE(std::holds_alternative<Plan>(plan(loaves.back(), kitchen_with(1), day)));
        }
    }
}

RC_GTEST_PROP(several, any_days_keep_the_rules_of_the_kitchen, ()) {
    const int count = *rc::gen::inRange(2, 5);
    std::vector<FittedRecipe> recipes;
    for (int b = 0; b < count; ++b) {
        recipes.push_back(plain("Bread " + std::to_string(b),
                                *rc::gen::inRange<std::int64_t>(1, 45),
                                *rc::gen::inRange<std::int64_t>(20, 200),
                                *rc::gen::element(180.0, 200.0, 220.0, 240.0),
                                *rc::gen::inRange<std::int64_t>(10, 60)));
    }
    const int shelves = *rc::gen::inRange(1, 4);
    Day day = *rc::gen::element(true, false)
                  ? day_at("2026-11-28T08:00:00Z")
                  : day_with_sleep("2026-11-28T08:00:00Z", {21, 0}, {6, 30});
    const Instant wish = later_by_minutes(day.now, 5 * *rc::gen::inRange(0, 200));
    (*rc::gen::element(true, false) ? day.start : day.eat_by) = wish;
    const PlanOutcome outcome = plan(recipes, kitchen_with(shelves), day);
    RC_TAG(std::holds_alternative<Plan>(outcome) ? "possible" : "impossible");
    if (const auto* no = std::get_if<Impossible>(&outcome)) {
        RC_ASSERT(!no->why.empty());
        RC_ASSERT(no->ways_out.size() <= 4U);
        return;
    }
    const Plan& made = std::get<Plan>(outcome);
    RC_ASSERT(made.breads.size() == recipes.size());
    RC_ASSERT(most_at_once(spans_of(made, Attention::hands)) <= 1U);
    RC_ASSERT(most_at_once(spans_of(made, Attention::near)) <= static_cast<std::size_t>(shelves));
    for (std::size_t b = 0; b < recipes.size(); ++b) {
        Day own = day;
        own.start.reset();
        RC_ASSERT(broken_promises(recipes[b], own, made.breads[b]).empty());
    }
    if (day.start) {
        RC_ASSERT(made.start == *day.start);
    }
    const std::vector<Span> bakes = spans_of(made, Attention::near);
    for (std::size_t a = 0; a < bakes.size(); ++a) {
        for (std::size_t b = 0; b < bakes.size(); ++b) {
            const bool same = recipes[a].steps[4].oven == recipes[b].steps[4].oven;
            RC_ASSERT(same || bakes[a].to <= bakes[b].from || bakes[b].to <= bakes[a].from);
        }
    }
}

// Each part of a way out is needed: with one bread fewer made otherwise the day is still a no.
TEST(several, a_way_out_changes_no_bread_more_than_it_must) {
    const std::vector<FittedRecipe> recipes{tin_loaf_that_can_change(), tin_loaf_that_can_change()};
    Kitchen kitchen;
    kitchen.warm_spot = Celsius(28.0);
    int taken = 0;
    for (const std::int64_t later : {0, 15, 30}) {
        Day day = day_at("2026-11-28T10:30:00Z");
        day.eat_by = later_by_minutes(at("2026-11-28T15:25:00Z"), later);
        const PlanOutcome outcome = plan(recipes, kitchen, day);
        if (!std::holds_alternative<Impossible>(outcome)) {
            continue;
        }
        for (const WayOut& way : std::get<Impossible>(outcome).ways_out) {
            const auto holds = [&](std::size_t without) {
                std::vector<FittedRecipe> made = recipes;
                for (std::size_t k = 0; k < way.taken_by.size(); ++k) {
                    const auto how = fitting::otherwise_named(way.taken_by[k].answer.value);
                    if (k != without) {
                        FittedRecipe& bread = made[way.taken_by[k].bread];
                        bread = fitting::made_otherwise(bread, kitchen, *how)->recipe;
                    }
                }
                return std::holds_alternative<Plan>(plan(made, kitchen, day));
            };
            if (way.taken_by.empty()) {
                continue;
            }
            ++taken;
            EXPECT_TRUE(holds(way.taken_by.size())) << way.change;
            for (std::size_t k = 0; k < way.taken_by.size(); ++k) {
                EXPECT_FALSE(holds(k)) << way.change << " without bread " << k;
            }
        }
    }
    EXPECT_GT(taken, 0);
}

} // namespace
} // namespace loafwright
