// SPDX-License-Identifier: Apache-2.0
//
// Bake-day problems with answers proven by other solvers, read from a folder beside the repository
// when it is there. This method answers those of one job in one line; the others must be turned
// away with a reason.
#include "engine/schedule/check.hpp"
#include "engine/schedule/solve.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <iostream>

namespace loafwright::schedule {

namespace {

using Json = nlohmann::json;

std::filesystem::path folder() {
    return std::filesystem::path(LOAFWRIGHT_ROOT) / ".." / "shared" / "reference" / "days";
}

Json read_json(const std::filesystem::path& path) {
    std::ifstream file(path);
    return Json::parse(file);
}

std::optional<std::int64_t> maybe(const Json& object, const char* key) {
    if (!object.contains(key) || object.at(key).is_null()) {
        return std::nullopt;
    }
    return object.at(key).get<std::int64_t>();
}

Length length_of(const Json& json) {
    return {json.at("low"), json.at("likely"), json.at("high")};
}

std::optional<Stretch> stretch_of(const Json& json) {
    if (json.is_null()) {
        return std::nullopt;
    }
    return Stretch{json.at("min"), json.at("max")};
}

Job job_of(const Json& json) {
    Job job;
    job.name = json.at("name");
    job.not_before = maybe(json, "not_before");
    job.ready_from = maybe(json, "ready_from");
    job.ready_by = maybe(json, "ready_by");
    for (const Json& step : json.at("steps")) {
        Task task;
        task.name = step.at("name");
        task.kind = step.at("kind") == "hands"  ? TaskKind::hands
                    : step.at("kind") == "oven" ? TaskKind::oven
                                                : TaskKind::wait;
        task.minutes = length_of(step.at("minutes"));
        task.stretch = stretch_of(step.at("stretch"));
        task.fridge = step.at("fridge");
        if (!step.at("oven").is_null()) {
            task.oven = OvenUse{step.at("oven").at("slots"), step.at("oven").at("temperature")};
        }
        task.leave = step.at("leave");
        job.tasks.push_back(task);
    }
    for (const Json& lag : json.at("lags")) {
        job.lags.push_back({lag.at("after"),
                            lag.at("before"),
                            lag.at("min"),
                            maybe(lag, "max"),
                            maybe(lag, "good")});
    }
    job.alternatives.clear();
    for (const Json& item : json.at("alternatives")) {
        Alternative alternative{item.at("name"), item.at("weight"), {}, {}};
        for (const Json& step : item.at("steps")) {
            TaskChange change;
            change.task = step.at("step");
            if (step.contains("minutes")) {
                change.minutes = length_of(step.at("minutes"));
            }
            if (step.contains("stretch")) {
                change.changes_stretch = true;
                change.stretch = stretch_of(step.at("stretch"));
            }
            if (step.contains("fridge")) {
                change.fridge = step.at("fridge").get<int>();
            }
            if (step.contains("leave")) {
                change.leave = step.at("leave").get<bool>();
            }
            alternative.tasks.push_back(change);
        }
        for (const Json& lag : item.at("lags")) {
            alternative.lags.push_back(
                {lag.at("lag"), lag.at("min"), maybe(lag, "max"), maybe(lag, "good")});
        }
        job.alternatives.push_back(alternative);
    }
    return job;
}

Problem problem_of(const Json& json) {
    Problem problem;
    problem.id = json.at("id");
    problem.horizon = json.at("horizon");
    problem.pause = json.at("pause");
    for (const Json& item : json.at("people")) {
        Person person{item.at("name"), {}};
        for (const Json& window : item.at("windows")) {
            person.windows.push_back({window.at("from"),
                                      window.at("to"),
                                      window.at("state") == "away"     ? WindowState::away
                                      : window.at("state") == "asleep" ? WindowState::asleep
                                                                       : WindowState::busy});
        }
        problem.people.push_back(person);
    }
    const Json& oven = json.at("oven");
    problem.oven.slots = oven.at("slots");
    for (const Json& row : oven.at("heat_up")) {
        problem.oven.heat_up.push_back({row.at("temperature"), row.at("minutes")});
    }
    for (const Json& row : oven.at("changeover")) {
        problem.oven.changeover.push_back({row.at("from"), row.at("to"), row.at("minutes")});
    }
    for (const Json& row : oven.at("claims")) {
        Claim claim{row.at("from"), row.at("to"), {}};
        if (const auto temperature = maybe(row, "temperature")) {
            claim.temperature = static_cast<int>(*temperature);
        }
        problem.oven.claims.push_back(claim);
    }
    problem.fridge.slots = json.at("fridge").at("slots");
    for (const Json& row : json.at("rather_not")) {
        problem.rather_not.push_back({row.at("from"), row.at("to")});
    }
    for (const Json& row : json.at("breads")) {
        problem.jobs.push_back(job_of(row));
    }
    return problem;
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
