// SPDX-License-Identifier: Apache-2.0
#include "tests/schedule/days.hpp"

#include <algorithm>
#include <fstream>

namespace loafwright::schedule {

namespace {

using Json = nlohmann::json;

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

} // namespace

std::filesystem::path folder_of_days() {
    return std::filesystem::path(LOAFWRIGHT_ROOT) / ".." / "shared" / "reference" / "days";
}

Json read_json(const std::filesystem::path& path) {
    std::ifstream file(path);
    return Json::parse(file);
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

std::vector<Problem> published_days() {
    std::vector<std::filesystem::path> files;
    if (std::filesystem::exists(folder_of_days())) {
        for (const auto& entry : std::filesystem::directory_iterator(folder_of_days())) {
            if (entry.path().extension() == ".json" && entry.path().filename() != "answers.json") {
                files.push_back(entry.path());
            }
        }
    }
    std::sort(files.begin(), files.end());
    std::vector<Problem> days;
    for (const auto& file : files) {
        days.push_back(problem_of(read_json(file)));
    }
    return days;
}

nlohmann::json json_of(const Problem& problem, const Solved& solved) {
    Json breads = Json::array();
    for (const JobSchedule& job : solved.schedule.jobs) {
        Json people = Json::array();
        for (const auto& person : job.people) {
            people.push_back(person ? Json(*person) : Json(nullptr));
        }
        breads.push_back({{"alternative", job.alternative},
                          {"starts", job.starts},
                          {"ends", job.ends},
                          {"people", people}});
    }
    return {{"version", 1},
            {"id", problem.id},
            {"status", solved.proof == Proof::best ? "optimal" : "best"},
            {"objective",
             {{"violations", solved.objective.violations},
              {"tied", solved.objective.tied},
              {"earliest", solved.objective.earliest}}},
            {"breads", breads}};
}

} // namespace loafwright::schedule
