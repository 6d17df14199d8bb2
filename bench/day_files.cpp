// SPDX-License-Identifier: Apache-2.0
#include "bench/day_files.hpp"

#include <nlohmann/json.hpp>

#include <optional>

namespace loafwright::bench {

namespace {

using namespace schedule;
using Json = nlohmann::ordered_json;

Json maybe(const std::optional<std::int64_t>& value) {
    return value ? Json(*value) : Json(nullptr);
}

Json json_of(const Length& length) {
    return {{"low", length.low}, {"likely", length.likely}, {"high", length.high}};
}

Json json_of(const std::optional<Stretch>& stretch) {
    return stretch ? Json{{"min", stretch->min}, {"max", stretch->max}} : Json(nullptr);
}

const char* word_of(WindowState state) {
    return state == WindowState::away ? "away" : state == WindowState::busy ? "busy" : "asleep";
}

const char* word_of(TaskKind kind) {
    return kind == TaskKind::hands ? "hands" : kind == TaskKind::oven ? "oven" : "wait";
}

Json json_of(const Alternative& alternative) {
    Json steps = Json::array();
    for (const TaskChange& change : alternative.tasks) {
        Json step{{"step", change.task}};
        if (change.minutes) {
            step["minutes"] = json_of(*change.minutes);
        }
        if (change.changes_stretch) {
            step["stretch"] = json_of(change.stretch);
        }
        if (change.fridge) {
            step["fridge"] = *change.fridge;
        }
        if (change.leave) {
            step["leave"] = *change.leave;
        }
        steps.push_back(step);
    }
    Json lags = Json::array();
    for (const LagChange& change : alternative.lags) {
        lags.push_back({{"lag", change.lag},
                        {"min", change.min},
                        {"max", maybe(change.max)},
                        {"good", maybe(change.good)}});
    }
    return {{"name", alternative.name},
            {"weight", alternative.weight},
            {"steps", steps},
            {"lags", lags}};
}

Json json_of(const Job& job) {
    Json bread{{"name", job.name},
               {"not_before", maybe(job.not_before)},
               {"ready_from", maybe(job.ready_from)},
               {"ready_by", maybe(job.ready_by)},
               {"steps", Json::array()},
               {"lags", Json::array()},
               {"alternatives", Json::array()}};
    for (const Task& task : job.tasks) {
        bread["steps"].push_back(
            {{"name", task.name},
             {"kind", word_of(task.kind)},
             {"minutes", json_of(task.minutes)},
             {"stretch", json_of(task.stretch)},
             {"fridge", task.fridge},
             {"oven",
              task.oven ? Json{{"slots", task.oven->slots}, {"temperature", task.oven->temperature}}
                        : Json(nullptr)},
             {"leave", task.leave}});
    }
    for (const Lag& lag : job.lags) {
        bread["lags"].push_back({{"after", lag.after},
                                 {"before", lag.before},
                                 {"min", lag.min},
                                 {"max", maybe(lag.max)},
                                 {"good", maybe(lag.good)}});
    }
    for (const Alternative& alternative : job.alternatives) {
        bread["alternatives"].push_back(json_of(alternative));
    }
    return bread;
}

} // namespace

std::string day_json(const Problem& problem) {
    Json day{{"version", 1},
             {"id", problem.id},
             {"horizon", problem.horizon},
             {"pause", problem.pause},
             {"people", Json::array()},
             {"oven",
              {{"slots", problem.oven.slots},
               {"heat_up", Json::array()},
               {"changeover", Json::array()},
               {"claims", Json::array()}}},
             {"fridge", {{"slots", problem.fridge.slots}}},
             {"rather_not", Json::array()},
             {"breads", Json::array()}};
    for (const Person& person : problem.people) {
        Json windows = Json::array();
        for (const Window& window : person.windows) {
            windows.push_back(
                {{"from", window.from}, {"to", window.to}, {"state", word_of(window.state)}});
        }
        day["people"].push_back({{"name", person.name}, {"windows", windows}});
    }
    for (const HeatUp& row : problem.oven.heat_up) {
        day["oven"]["heat_up"].push_back(
            {{"temperature", row.temperature}, {"minutes", row.minutes}});
    }
    for (const Changeover& row : problem.oven.changeover) {
        day["oven"]["changeover"].push_back(
            {{"from", row.from}, {"to", row.to}, {"minutes", row.minutes}});
    }
    for (const Claim& claim : problem.oven.claims) {
        day["oven"]["claims"].push_back(
            {{"from", claim.from},
             {"to", claim.to},
             {"temperature", claim.temperature ? Json(*claim.temperature) : Json(nullptr)}});
    }
    for (const RatherNot& span : problem.rather_not) {
        day["rather_not"].push_back({{"from", span.from}, {"to", span.to}});
    }
    for (const Job& job : problem.jobs) {
        day["breads"].push_back(json_of(job));
    }
    return day.dump();
}

} // namespace loafwright::bench
