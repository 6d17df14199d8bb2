// SPDX-License-Identifier: Apache-2.0
//
// Each rule is broken once, by name, from a schedule that keeps them all.
#include "engine/schedule/check.hpp"
#include "engine/schedule/solve.hpp"

#include <gtest/gtest.h>

#include <functional>
#include <string>

namespace loafwright::schedule {

namespace {

struct Case {
    Problem problem;
    Schedule schedule;
};

// Mix 10, rise 60 to 70, bake 30 at 200 with 20 minutes of heating, all kept.
Case kept() {
    Case c;
    c.problem.horizon = 300;
    c.problem.people = {{"A", {}}, {"B", {{0, 300, WindowState::away}}}};
    c.problem.oven.heat_up = {{200, 20}, {230, 25}};
    c.problem.oven.changeover = {{200, 230, 10}, {230, 200, 15}};
    c.problem.fridge.slots = 1;
    Job job;
    job.not_before = 30;
    job.ready_from = 100;
    job.ready_by = 200;
    job.tasks = {{"mix", TaskKind::hands, {10, 10, 10}, {}, 0, {}, false},
                 {"rise", TaskKind::wait, {50, 60, 70}, Stretch{60, 70}, 1, {}, false},
                 {"bake", TaskKind::oven, {30, 30, 30}, {}, 0, OvenUse{1, 200}, false}};
    job.lags = {{0, 1, 0, 5, {}}, {1, 2, 0, 10, 5}};
    c.problem.jobs = {job};
    c.schedule.jobs = {{0, {40, 50, 110}, {50, 110, 140}, {0, std::nullopt, std::nullopt}}};
    return c;
}

struct Fault {
    const char* rule;
    std::function<void(Case&)> break_it;
};

} // namespace

TEST(schedule_check, a_schedule_that_keeps_every_rule_has_no_violation) {
    const Case c = kept();
    EXPECT_TRUE(faults_in(c.problem).empty());
    EXPECT_TRUE(violations(c.problem, c.schedule).empty());
    EXPECT_EQ(objective_of(c.problem, c.schedule), (Objective{0, 100, 40}));
}

TEST(schedule_check, each_broken_rule_is_called_by_its_name) {
    const std::vector<Fault> faults = {
        {"form", [](Case& c) { c.schedule.jobs[0].starts.pop_back(); }},
        {"duration", [](Case& c) { c.schedule.jobs[0].ends[2] = 141; }},
        {"lag_min", [](Case& c) { c.problem.jobs[0].lags[0].min = 5; }},
        {"lag_max",
         [](Case& c) { c.schedule.jobs[0].starts[0] = 34, c.schedule.jobs[0].ends[0] = 44; }},
        {"not_before", [](Case& c) { c.problem.jobs[0].not_before = 41; }},
        {"ready_by", [](Case& c) { c.problem.jobs[0].ready_by = 139; }},
        {"ready_from", [](Case& c) { c.problem.jobs[0].ready_from = 141; }},
        {"horizon", [](Case& c) { c.problem.horizon = 139; }},
        {"window",
         [](Case& c) {
             c.problem.people[0].windows = {{49, 51, WindowState::busy}};
         }},
        {"window", [](Case& c) { c.schedule.jobs[0].people[0] = 1; }},
        {"hands", [](Case& c) { c.schedule.jobs[0].people[0] = std::nullopt; }},
        {"hands",
         [](Case& c) {
             c.problem.jobs.push_back(c.problem.jobs[0]);
             c.schedule.jobs.push_back(c.schedule.jobs[0]);
         }},
        {"unattended",
         [](Case& c) {
             c.problem.people[0].windows = {{90, 91, WindowState::asleep}};
         }},
        {"preheat", [](Case& c) { c.problem.oven.heat_up[0].minutes = 111; }},
        {"oven_space", [](Case& c) { c.problem.oven.slots = 0; }},
        {"fridge_space", [](Case& c) { c.problem.fridge.slots = 0; }},
        {"oven_claim",
         [](Case& c) {
             c.problem.oven.claims = {{139, 200, {}}};
         }},
        {"oven_claim",
         [](Case& c) {
             c.problem.oven.claims = {{60, 91, {}}};
         }},
        {"oven_claim",
         [](Case& c) {
             c.problem.oven.claims = {{60, 96, 230}};
         }},
        {"oven_temperature",
         [](Case& c) {
             c.problem.jobs.push_back(c.problem.jobs[0]);
             c.problem.jobs[1].tasks[2].oven->temperature = 230;
             c.schedule.jobs.push_back(c.schedule.jobs[0]);
         }},
        {"changeover",
         [](Case& c) {
             c.problem.jobs[0].tasks.push_back(
                 {"again", TaskKind::oven, {5, 5, 5}, {}, 0, OvenUse{1, 230}, false});
             c.problem.jobs[0].lags.push_back({2, 3, 0, {}, {}});
             JobSchedule& times = c.schedule.jobs[0];
             times.starts.push_back(149);
             times.ends.push_back(154);
             times.people.push_back(std::nullopt);
         }},
    };
    for (const Fault& fault : faults) {
        Case c = kept();
        fault.break_it(c);
        bool named = false;
        for (const BrokenRule& broken : violations(c.problem, c.schedule)) {
            named = named || broken.rule == fault.rule;
        }
        EXPECT_TRUE(named) << fault.rule;
    }
}

TEST(schedule_check, what_just_touches_breaks_nothing) {
    Case c = kept();
    c.problem.people[0].windows = {
        {0, 40, WindowState::busy}, {50, 90, WindowState::asleep}, {140, 300, WindowState::away}};
    c.problem.oven.claims = {{140, 200, {}}, {60, 95, 230}, {20, 90, {}}};
    EXPECT_TRUE(violations(c.problem, c.schedule).empty());
}

TEST(schedule_check, a_wish_not_kept_is_a_violation_of_the_first_objective_and_not_of_a_rule) {
    Case c = kept();
    c.schedule.jobs[0].starts[2] = 117;
    c.schedule.jobs[0].ends[2] = 147;
    c.problem.rather_not = {{45, 46}};
    c.problem.jobs[0].alternatives[0].weight = 3;
    EXPECT_TRUE(violations(c.problem, c.schedule).empty());
    EXPECT_EQ(objective_of(c.problem, c.schedule).violations, 5);
}

TEST(schedule_check, time_that_one_may_leave_the_house_ties_nobody) {
    Case c = kept();
    c.problem.jobs[0].tasks[1].leave = true;
    EXPECT_EQ(objective_of(c.problem, c.schedule).tied, 40); // mix 10 and bake 30, two sittings
}

} // namespace loafwright::schedule
