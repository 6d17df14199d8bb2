// SPDX-License-Identifier: Apache-2.0
//
// Bake-day problems with answers proven by other solvers, read from a folder beside the repository
// when it is there. This method answers those of one job in one line; the others must be turned
// away with a reason.
#include "engine/schedule/check.hpp"
#include "engine/schedule/solve.hpp"
#include "tests/schedule/days.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <iostream>

namespace loafwright::schedule {

namespace {

using Json = nlohmann::json;

std::filesystem::path folder() {
    return folder_of_days();
}

std::optional<std::int64_t> maybe(const Json& object, const char* key) {
    if (!object.contains(key) || object.at(key).is_null()) {
        return std::nullopt;
    }
    return object.at(key).get<std::int64_t>();
}

} // namespace

TEST(schedule, chains_among_the_published_days_reach_the_proven_objective) {
    if (!std::filesystem::exists(folder() / "answers.json")) {
        GTEST_SKIP() << "the folder of bake days is not beside the repository";
    }
    const Json answers = read_json(folder() / "answers.json");
    int chains = 0;
    int turned_away = 0;
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(folder())) {
        if (entry.path().extension() == ".json" && entry.path().filename() != "answers.json") {
            files.push_back(entry.path());
        }
    }
    for (const auto& file : files) {
        const Problem problem = problem_of(read_json(file));
        ASSERT_TRUE(faults_in(problem).empty()) << file << one_line(faults_in(problem).front());
        const Outcome outcome = solve_chain(problem);
        if (std::holds_alternative<OutOfReach>(outcome)) {
            EXPECT_FALSE(std::get<OutOfReach>(outcome).reasons.empty());
            ++turned_away;
            continue;
        }
        ++chains;
        const Json& known = answers.at(problem.id);
        if (known.at("status") == "infeasible") {
            ASSERT_TRUE(std::holds_alternative<NoSchedule>(outcome)) << file;
            const Relief relief = relief_of_chain(problem);
            EXPECT_EQ(relief.delay, maybe(known, "delay")) << file;
            EXPECT_EQ(Json(relief.enough), known.at("enough")) << file;
            continue;
        }
        ASSERT_TRUE(std::holds_alternative<Solved>(outcome)) << file;
        const Solved& solved = std::get<Solved>(outcome);
        EXPECT_TRUE(violations(problem, solved.schedule).empty()) << file;
        EXPECT_EQ(solved.objective.violations, known.at("objective").at("violations")) << file;
        EXPECT_EQ(solved.objective.tied, known.at("objective").at("tied")) << file;
        EXPECT_EQ(solved.objective.earliest, known.at("objective").at("earliest")) << file;
    }
    EXPECT_GT(chains, 0);
    std::cout << chains << " chains answered, " << turned_away << " of other shapes turned away\n";
}

// Each job of the larger days on its own, in that day's kitchen: no answers are published for
// these, so the judge and the bound that more freedom never makes a day worse are what is asked.
TEST(schedule, every_chain_taken_out_of_a_larger_day_keeps_every_rule) {
    if (!std::filesystem::exists(folder() / "answers.json")) {
        GTEST_SKIP() << "the folder of bake days is not beside the repository";
    }
    int solved_chains = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder())) {
        if (entry.path().extension() != ".json" || entry.path().filename() == "answers.json") {
            continue;
        }
        const Problem day = problem_of(read_json(entry.path()));
        for (const Job& job : day.jobs) {
            Problem alone = day;
            alone.jobs = {job};
            const Outcome outcome = solve_chain(alone);
            if (!std::holds_alternative<Solved>(outcome)) {
                continue;
            }
            ++solved_chains;
            const Solved& solved = std::get<Solved>(outcome);
            EXPECT_TRUE(violations(alone, solved.schedule).empty()) << job.name;
            Problem freer = alone;
            freer.people.push_back({"guest", {}});
            const Solved more = std::get<Solved>(solve_chain(freer));
            EXPECT_LE(std::make_pair(more.objective.violations, more.objective.tied),
                      std::make_pair(solved.objective.violations, solved.objective.tied));
        }
    }
    EXPECT_GT(solved_chains, 20);
}

} // namespace loafwright::schedule
