// SPDX-License-Identifier: Apache-2.0
#include "engine/schedule/check.hpp"
#include "engine/schedule/solve.hpp"

#include <gtest/gtest.h>

namespace loafwright::schedule {

namespace {

// Hands 10, wait 60, hands 10, wait 40, oven 30 at 220 (20 to heat), wait 60: three hours and a
// half.
Problem one_loaf() {
    Problem problem;
    problem.horizon = 1440;
    problem.people = {{"A", {}}};
    problem.oven.heat_up = {{220, 20}};
    Job job;
    const auto task = [&job](const char* name, TaskKind kind, std::int64_t minutes) {
        Task made{name, kind, {minutes, minutes, minutes}, {}, 0, {}, false};
        if (kind == TaskKind::oven) {
            made.oven = OvenUse{1, 220};
        }
        job.tasks.push_back(made);
        if (job.tasks.size() > 1) {
            job.lags.push_back({job.tasks.size() - 2, job.tasks.size() - 1, 0, 0, {}});
        }
    };
    task("mix", TaskKind::hands, 10);
    task("rise", TaskKind::wait, 60);
    task("shape", TaskKind::hands, 10);
    task("prove", TaskKind::wait, 40);
    task("bake", TaskKind::oven, 30);
    task("cool", TaskKind::wait, 60);
    job.tasks.back().leave = true;
    problem.jobs = {job};
    return problem;
}

std::vector<std::int64_t> starts(const Outcome& outcome) {
    return std::get<Solved>(outcome).schedule.jobs.front().starts;
}

} // namespace

TEST(schedule, begins_as_late_as_the_wish_allows) {
    Problem problem = one_loaf();
    problem.jobs[0].ready_by = 1100;
    EXPECT_EQ(starts(solve_chain(problem)),
              (std::vector<std::int64_t>{890, 900, 960, 970, 1010, 1040}));
}

TEST(schedule, ends_as_early_as_a_fixed_start_allows) {
    Wish wish;
    wish.aim = Aim::end_early;
    wish.first_start_from = 480;
    wish.first_start_to = 480;
    EXPECT_EQ(starts(solve_chain(one_loaf(), wish)),
              (std::vector<std::int64_t>{480, 490, 550, 560, 600, 630}));
}

TEST(schedule, a_person_takes_over_where_the_other_is_away) {
    Problem problem = one_loaf();
    problem.people = {{"A", {{900, 1440, WindowState::away}}},
                      {"B", {{0, 955, WindowState::asleep}}}};
    problem.jobs[0].ready_by = 1100;
    const Solved solved = std::get<Solved>(solve_chain(problem));
    EXPECT_EQ(solved.schedule.jobs[0].people[0], 0U);
    EXPECT_EQ(solved.schedule.jobs[0].people[2], 1U);
    EXPECT_EQ(solved.schedule.jobs[0].starts[0], 890);
}

TEST(schedule, two_half_hours_of_two_people_are_not_one_hour_of_work) {
    Problem problem = one_loaf();
    problem.jobs[0].tasks[0].minutes = {60, 60, 60};
    problem.people = {{"A", {{0, 630, WindowState::busy}}},
                      {"B", {{600, 630, WindowState::busy}, {660, 1440, WindowState::busy}}}};
    problem.people[1].windows.push_back({0, 540, WindowState::busy});
    problem.jobs[0].ready_by = 800;
    EXPECT_EQ(starts(solve_chain(problem)).front(), 540); // B alone, 9:00 to 10:00
}

TEST(schedule, the_oven_never_heats_while_everybody_sleeps) {
    Problem problem = one_loaf();
    problem.people[0].windows = {{985, 1000, WindowState::asleep}};
    problem.jobs[0].ready_by = 1100;
    const Solved solved = std::get<Solved>(solve_chain(problem));
    EXPECT_LE(solved.schedule.jobs[0].ends[4], 985);
    EXPECT_EQ(starts(solve_chain(problem)).front(), 835);
}

TEST(schedule, a_night_in_the_fridge_is_as_long_as_the_sleep_needs) {
    Problem problem = one_loaf();
    problem.horizon = 2880;
    problem.fridge.slots = 1;
    problem.people[0].windows = {{1380, 1860, WindowState::asleep}};
    problem.jobs[0].ready_by = 1990;
    problem.jobs[0].alternatives.push_back({"fridge", 1, {}, {}});
    TaskChange change;
    change.task = 3;
    change.changes_stretch = true;
    change.stretch = Stretch{300, 960};
    change.fridge = 1;
    change.leave = true;
    problem.jobs[0].alternatives[1].tasks = {change};
    problem.jobs[0].ready_from = 1950;
    const Solved solved = std::get<Solved>(solve_chain(problem));
    EXPECT_EQ(solved.schedule.jobs[0].alternative, 1U);
    EXPECT_EQ(solved.schedule.jobs[0].ends[2], 1380);
    EXPECT_EQ(solved.objective.violations, 1);
}

TEST(schedule, says_no_only_where_there_is_none) {
    Problem problem = one_loaf();
    problem.jobs[0].not_before = 900;
    problem.jobs[0].ready_by = 1100;
    EXPECT_TRUE(std::holds_alternative<NoSchedule>(solve_chain(problem)));
    const Relief relief = relief_of_chain(problem);
    EXPECT_EQ(relief.delay, 10);
    EXPECT_EQ(relief.enough, std::vector<std::string>{"anchors"});
}

TEST(schedule, branches_and_several_jobs_are_said_to_be_out_of_reach) {
    Problem two = one_loaf();
    two.jobs.push_back(two.jobs.front());
    EXPECT_TRUE(std::holds_alternative<OutOfReach>(solve_chain(two)));
    Problem branch = one_loaf();
    branch.jobs[0].lags[3].after = 0;
    const Outcome outcome = solve_chain(branch);
    ASSERT_TRUE(std::holds_alternative<OutOfReach>(outcome));
    EXPECT_NE(std::get<OutOfReach>(outcome).reasons.front().what.find("two neighbours"),
              std::string::npos);
}

TEST(schedule, the_order_of_the_list_does_not_matter) {
    Problem problem = one_loaf();
    problem.jobs[0].ready_by = 1100;
    Problem shuffled = problem;
    std::swap(shuffled.jobs[0].tasks[0], shuffled.jobs[0].tasks[3]);
    for (Lag& lag : shuffled.jobs[0].lags) {
        for (std::size_t* end : {&lag.after, &lag.before}) {
            *end = *end == 0 ? 3 : *end == 3 ? 0 : *end;
        }
    }
    std::swap(shuffled.jobs[0].lags[0], shuffled.jobs[0].lags[4]);
    const auto there = starts(solve_chain(shuffled));
    const auto here = starts(solve_chain(problem));
    EXPECT_EQ(there[3], here[0]);
    EXPECT_EQ(there[0], here[3]);
    EXPECT_EQ(there[5], here[5]);
}

TEST(schedule, ten_thousand_steps_are_answered_and_never_waited_for) {
    Problem problem;
    problem.people = {{"A", {}}};
    Job job;
    for (std::size_t i = 0; i < 10000; ++i) {
        job.tasks.push_back(
            {"step", i % 2 == 0 ? TaskKind::hands : TaskKind::wait, {1, 1, 1}, {}, 0, {}, false});
        if (i > 0) {
            job.lags.push_back({i - 1, i, 0, {}, {}});
        }
    }
    problem.jobs = {job};
    EXPECT_TRUE(
        std::holds_alternative<NoSchedule>(solve_chain(problem))); // 10,000 minutes in 1,440
    problem.horizon = 16000;
    EXPECT_TRUE(std::holds_alternative<OutOfReach>(solve_chain(problem)));
    for (Task& task : problem.jobs[0].tasks) {
        task.minutes = {0, 0, 0};
    }
    problem.horizon = 100;
    EXPECT_TRUE(std::holds_alternative<Solved>(solve_chain(problem)));
}

TEST(schedule, absurd_numbers_are_faults_with_their_place) {
    Problem problem = one_loaf();
    problem.horizon = INT64_MAX;
    problem.jobs[0].tasks[0].minutes = {5, 3, -1};
    problem.jobs[0].lags[0].before = 99;
    problem.oven.heat_up.clear();
    const Diagnostics faults = faults_in(problem);
    EXPECT_GE(faults.size(), 4U);
    for (const Diagnostic& fault : faults) {
        EXPECT_TRUE(is_known_code(fault.code));
        EXPECT_FALSE(fault.where.empty());
    }
    EXPECT_TRUE(std::holds_alternative<OutOfReach>(solve_chain(problem)));
    EXPECT_TRUE(relief_of_chain(problem).enough.empty());
    Problem round_about = one_loaf();
    round_about.oven.heat_up = {{200, 1}, {210, 1}, {220, 1}};
    round_about.jobs[0].tasks[1].oven = OvenUse{1, 200};
    round_about.jobs[0].tasks[2].oven = OvenUse{1, 210};
    for (const int a : {200, 210, 220}) {
        for (const int b : {200, 210, 220}) {
            round_about.oven.changeover.push_back({a, b, a == 200 && b == 220 ? 50 : 5});
        }
    }
    ASSERT_EQ(faults_in(round_about).size(), 1U);
    EXPECT_NE(faults_in(round_about)[0].what.find("210"), std::string::npos);
}

TEST(schedule, the_same_problem_gives_the_same_schedule) {
    Problem problem = one_loaf();
    for (Lag& lag : problem.jobs[0].lags) {
        lag.max = 30;
    }
    problem.people.push_back({"B", {{600, 660, WindowState::away}}});
    const Outcome a = solve_chain(problem);
    const Outcome b = solve_chain(problem);
    EXPECT_EQ(starts(a), starts(b));
    // Equal in every objective: later starts are as late as they can be.
    EXPECT_EQ(starts(a).back(), 1380);
}

} // namespace loafwright::schedule
