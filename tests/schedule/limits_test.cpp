// SPDX-License-Identifier: Apache-2.0
//
// What the search does at its limits: counted effort, absurd sizes, problems without people.
#include "engine/schedule/check.hpp"
#include "engine/schedule/solve.hpp"
#include "engine/schedule/why.hpp"

#include <gtest/gtest.h>

namespace loafwright::schedule {

namespace {

Task task(TaskKind kind, std::int64_t minutes) {
    Task made;
    made.kind = kind;
    made.minutes = {minutes, minutes, minutes};
    if (kind == TaskKind::oven) {
        made.oven = OvenUse{1, 220};
    }
    return made;
}

// Hands, a rise, hands, a bake: waits may stretch by an hour and would rather not.
Job loaf(const std::string& name) {
    Job job;
    job.name = name;
    job.tasks = {task(TaskKind::hands, 15),
                 task(TaskKind::wait, 90),
                 task(TaskKind::hands, 10),
                 task(TaskKind::oven, 40)};
    for (std::size_t i = 0; i < 3; ++i) {
        job.lags.push_back({i, i + 1, 0, 60, 5});
    }
    job.ready_by = 1200;
    return job;
}

Problem day_of(std::size_t loaves) {
    Problem problem;
    problem.people = {{"A", {{0, 420, WindowState::asleep}}}};
    problem.oven.heat_up = {{220, 30}};
    for (std::size_t j = 0; j < loaves; ++j) {
        problem.jobs.push_back(loaf("loaf " + std::to_string(j)));
    }
    return problem;
}

std::string reason(const Outcome& outcome) {
    const auto* none = std::get_if<OutOfReach>(&outcome);
    return none != nullptr && !none->reasons.empty() ? none->reasons.front().what : "";
}

} // namespace

// One oven slot and one pair of hands: with all waits kept to five minutes the bakes follow each
// other at best every 40 minutes, so the last of three ends at 1200 and the first begins 155 + 80
// earlier.
TEST(schedule_limits, three_loaves_and_one_oven_follow_each_other) {
    const Problem problem = day_of(3);
    const Solved solved = std::get<Solved>(solve(problem));
    EXPECT_EQ(solved.proof, Proof::best);
    EXPECT_TRUE(violations(problem, solved.schedule).empty());
    EXPECT_EQ(solved.objective.violations, 0);
    EXPECT_EQ(solved.objective.tied, 3 * 155);
    EXPECT_EQ(solved.objective.earliest, 1200 - 155 - 80);
}

TEST(schedule_limits, without_any_conflict_allowed_nothing_is_said_that_is_not_so) {
    const Problem problem = day_of(4);
    const Outcome outcome = solve(problem, {}, 0);
    ASSERT_TRUE(std::holds_alternative<OutOfReach>(outcome));
    EXPECT_NE(reason(outcome).find("limit"), std::string::npos);
}

TEST(schedule_limits, a_small_limit_gives_the_best_found_and_says_that_it_is_not_proven) {
    const Problem problem = day_of(6);
    const Solved best = std::get<Solved>(solve(problem));
    ASSERT_EQ(best.proof, Proof::best);
    int unproven = 0;
    for (const std::int64_t conflicts : {1, 10, 100, 1000}) {
        const Outcome outcome = solve(problem, {}, conflicts);
        if (std::holds_alternative<OutOfReach>(outcome)) {
            continue;
        }
        const Solved& solved = std::get<Solved>(outcome);
        EXPECT_TRUE(violations(problem, solved.schedule).empty());
        EXPECT_LE(best.objective.violations, solved.objective.violations);
        unproven += solved.proof == Proof::best_found ? 1 : 0;
        if (solved.proof == Proof::best) {
            EXPECT_TRUE(solved.objective == best.objective);
        }
        const Solved again = std::get<Solved>(solve(problem, {}, conflicts));
        for (std::size_t j = 0; j < problem.jobs.size(); ++j) {
            EXPECT_EQ(again.schedule.jobs[j].starts, solved.schedule.jobs[j].starts);
        }
    }
    EXPECT_GT(unproven, 0);
}

TEST(schedule_limits, ten_thousand_tasks_in_many_jobs_are_turned_away) {
    EXPECT_NE(reason(solve(day_of(2500))).find("10000 steps"), std::string::npos);
    Problem branches = day_of(1);
    branches.jobs[0].tasks.assign(10000, task(TaskKind::wait, 1));
    branches.jobs[0].lags.clear();
    EXPECT_NE(reason(solve(branches)).find("10000 steps"), std::string::npos);
    EXPECT_EQ(why_not(branches).proof, Proof::best_found);
}

TEST(schedule_limits, eight_weeks_by_the_minute_are_turned_away_or_answered) {
    Problem problem = day_of(12);
    problem.horizon = longest_horizon_minutes - 1; // an odd number: single minutes
    for (Job& job : problem.jobs) {
        job.ready_by.reset();
    }
    const Outcome outcome = solve(problem, {}, 1000);
    EXPECT_FALSE(std::holds_alternative<NoSchedule>(outcome));
}

TEST(schedule_limits, nobody_there_is_no_schedule_and_one_more_person_is_the_way_out) {
    Problem problem = day_of(2);
    problem.people.clear();
    EXPECT_TRUE(std::holds_alternative<NoSchedule>(solve(problem)));
    const Why why = why_not(problem);
    EXPECT_EQ(why.enough, std::vector<std::string>{"person"});
    EXPECT_FALSE(why.reasons.empty());
    // Not even for what takes no time, alone or beside others.
    problem.jobs.resize(1);
    problem.jobs[0].tasks = {task(TaskKind::hands, 0)};
    problem.jobs[0].lags.clear();
    EXPECT_TRUE(std::holds_alternative<NoSchedule>(solve(problem)));
    problem.jobs.push_back(problem.jobs[0]);
    EXPECT_TRUE(std::holds_alternative<NoSchedule>(solve(problem)));
}

TEST(schedule_limits, absurd_lengths_are_impossible_and_absurd_numbers_are_faults) {
    Problem problem = day_of(2);
    problem.jobs[1].tasks[1].minutes = {0, 999999, 1000000};
    EXPECT_TRUE(std::holds_alternative<NoSchedule>(solve(problem)));
    problem.jobs[1].tasks[1].minutes = {0, INT64_MAX, INT64_MAX};
    EXPECT_TRUE(std::holds_alternative<OutOfReach>(solve(problem)));
    problem.jobs[1].tasks[1].minutes = {-5, -5, -5};
    EXPECT_TRUE(std::holds_alternative<OutOfReach>(solve(problem)));
    Problem none;
    EXPECT_TRUE(std::holds_alternative<OutOfReach>(solve(none)));
}

// Lags that go round in a circle, one of which must be longer than the others allow.
TEST(schedule_limits, lags_that_bite_their_tail_are_no_schedule) {
    Problem problem = day_of(2);
    problem.jobs[0].lags.push_back({3, 0, 1, {}, {}});
    EXPECT_TRUE(std::holds_alternative<NoSchedule>(solve(problem)));
    EXPECT_TRUE(why_not(problem).reasons.empty()); // least lags alone forbid it
    EXPECT_EQ(why_not(problem).enough, std::vector<std::string>{"without:loaf 0"});
}

// Many slots and heavy uses must not make the sums explode.
TEST(schedule_limits, a_fridge_of_a_million_shelves_is_only_a_number) {
    Problem problem = day_of(10);
    problem.fridge.slots = 1000000;
    for (std::size_t j = 0; j < problem.jobs.size(); ++j) {
        problem.jobs[j].tasks[1].fridge = 199999 + static_cast<int>((j * j * 7919U) % 1000U);
    }
    const Outcome outcome = solve(problem, {}, 20000);
    if (const auto* solved = std::get_if<Solved>(&outcome)) {
        EXPECT_TRUE(violations(problem, solved->schedule).empty());
    } else {
        EXPECT_TRUE(std::holds_alternative<OutOfReach>(outcome));
    }
}

} // namespace loafwright::schedule
