// SPDX-License-Identifier: Apache-2.0
//
// The published bake days, all shapes, answered by the public door. Their objectives were proven by
// two or three other solvers (Chuffed, Gecode, an earlier order encoding); so were delay and ways
// out of those that are impossible. LOAFWRIGHT_PLANS names a folder to write the answers to, for
// the judge that lies beside the problems.
#include "engine/schedule/check.hpp"
#include "engine/schedule/solve.hpp"
#include "engine/schedule/why.hpp"
#include "tests/schedule/days.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <iostream>

namespace loafwright::schedule {

namespace {

using Json = nlohmann::json;

Objective proven(const Json& known) {
    const Json& objective = known.at("objective");
    return {objective.at("violations"), objective.at("tied"), objective.at("earliest")};
}

void write_plan(const Problem& problem, const Json& plan) {
    if (const char* folder = std::getenv("LOAFWRIGHT_PLANS")) {
        std::ofstream(std::filesystem::path(folder) / (problem.id + ".plan.json")) << plan;
    }
}

} // namespace

TEST(schedule, every_published_day_reaches_the_proven_objective_and_keeps_every_rule) {
    const std::vector<Problem> days = published_days();
    if (days.empty()) {
        GTEST_SKIP() << "the folder of bake days is not beside the repository";
    }
    const Json answers = read_json(folder_of_days() / "answers.json");
    int possible = 0;
    for (const Problem& problem : days) {
        SCOPED_TRACE(problem.id);
        const std::clock_t begin = std::clock();
        const Outcome outcome = solve(problem);
        std::cout << problem.id << ": " << problem.jobs.size() << " jobs, "
                  << 1000.0 * static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC << " ms\n";
        const Json& known = answers.at(problem.id);
        if (known.at("status") == "infeasible") {
            EXPECT_TRUE(std::holds_alternative<NoSchedule>(outcome));
            continue;
        }
        ASSERT_TRUE(std::holds_alternative<Solved>(outcome));
        const Solved& solved = std::get<Solved>(outcome);
        ++possible;
        EXPECT_EQ(solved.proof, Proof::best);
        EXPECT_TRUE(violations(problem, solved.schedule).empty());
        EXPECT_TRUE(solved.objective == objective_of(problem, solved.schedule));
        EXPECT_EQ(solved.objective.violations, proven(known).violations);
        EXPECT_EQ(solved.objective.tied, proven(known).tied);
        EXPECT_EQ(solved.objective.earliest, proven(known).earliest);
        write_plan(problem, json_of(problem, solved));
    }
    EXPECT_GT(possible, 10);
}

TEST(schedule, every_impossible_published_day_has_its_delay_and_its_ways_out) {
    const std::vector<Problem> days = published_days();
    if (days.empty()) {
        GTEST_SKIP() << "the folder of bake days is not beside the repository";
    }
    const Json answers = read_json(folder_of_days() / "answers.json");
    int impossible = 0;
    for (const Problem& problem : days) {
        const Json& known = answers.at(problem.id);
        if (known.at("status") != "infeasible") {
            continue;
        }
        SCOPED_TRACE(problem.id);
        ++impossible;
        const std::clock_t begin = std::clock();
        const Why why = why_not(problem);
        EXPECT_EQ(reasons_why_not(problem).reasons, why.reasons);
        std::cout << problem.id << ": "
                  << 1000.0 * static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC << " ms,";
        for (const Reason& reason : why.reasons) {
            std::cout << ' ' << reason.rule
                      << (reason.job ? ":" + problem.jobs[*reason.job].name : "");
        }
        std::cout << '\n';
        EXPECT_EQ(Json(why.enough), known.at("enough"));
        EXPECT_EQ(why.delay ? Json(*why.delay) : Json(nullptr), known.at("delay"));
        EXPECT_FALSE(why.reasons.empty());
        EXPECT_EQ(why.proof, Proof::best);
        write_plan(
            problem,
            {{"version", 1},
             {"id", problem.id},
             {"status", "infeasible"},
             {"delay", known.at("delay").is_null() ? Json(nullptr) : Json(why.delay.value_or(-1))},
             {"enough", why.enough}});
    }
    EXPECT_GT(impossible, 0);
}

// Ties are settled by a stated order, so the order of the input cannot be seen in the answer.
TEST(schedule, jobs_in_another_order_get_the_same_times) {
    std::vector<Problem> days = published_days();
    if (days.empty()) {
        GTEST_SKIP() << "the folder of bake days is not beside the repository";
    }
    int compared = 0;
    for (Problem& problem : days) {
        if (problem.jobs.size() < 2 || problem.jobs.size() > 4) {
            continue;
        }
        const Outcome outcome = solve(problem);
        std::reverse(problem.jobs.begin(), problem.jobs.end());
        const Outcome other = solve(problem);
        ASSERT_EQ(outcome.index(), other.index());
        if (!std::holds_alternative<Solved>(outcome)) {
            continue;
        }
        ++compared;
        Schedule turned = std::get<Solved>(other).schedule;
        std::reverse(turned.jobs.begin(), turned.jobs.end());
        for (std::size_t j = 0; j < turned.jobs.size(); ++j) {
            const JobSchedule& job = std::get<Solved>(outcome).schedule.jobs[j];
            EXPECT_EQ(turned.jobs[j].alternative, job.alternative) << problem.id;
            EXPECT_EQ(turned.jobs[j].starts, job.starts) << problem.id;
            EXPECT_EQ(turned.jobs[j].ends, job.ends) << problem.id;
            EXPECT_EQ(turned.jobs[j].people, job.people) << problem.id;
        }
    }
    EXPECT_GT(compared, 3);
}

} // namespace loafwright::schedule
