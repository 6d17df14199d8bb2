// SPDX-License-Identifier: Apache-2.0
//
// The answer of the bare scheduler in its interchange form, version 1. Breads stand in the order of
// the problem, so that an index there is an index here.
#include "engine/wire/schedule_answer.hpp"

#include <nlohmann/json.hpp>

namespace loafwright::wire {

namespace {

using Json = nlohmann::ordered_json;

Json headed(const schedule::Problem& problem, const char* status) {
    Json json;
    json["version"] = 1;
    json["id"] = problem.id;
    json["status"] = status;
    return json;
}

Json bread_json(const schedule::JobSchedule& job) {
    Json people = Json::array();
    for (const auto& person : job.people) {
        people.push_back(person ? Json(*person) : Json(nullptr));
    }
    return {{"alternative", job.alternative},
            {"starts", job.starts},
            {"ends", job.ends},
            {"people", std::move(people)}};
}

Json reason_json(const schedule::Problem& problem, const schedule::Reason& reason) {
    return {{"rule", reason.rule},
            {"bread", reason.job ? Json(*reason.job) : Json(nullptr)},
            {"name", reason.job ? Json(problem.jobs[*reason.job].name) : Json(nullptr)}};
}

std::string printed(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace

std::string schedule_json(const schedule::Problem& problem, const schedule::Solved& solved) {
    Json json = headed(problem, solved.proof == schedule::Proof::best ? "optimal" : "best");
    json["objective"] = {{"violations", solved.objective.violations},
                         {"tied", solved.objective.tied},
                         {"earliest", solved.objective.earliest}};
    json["breads"] = Json::array();
    for (const schedule::JobSchedule& job : solved.schedule.jobs) {
        json["breads"].push_back(bread_json(job));
    }
    return printed(json);
}

std::string no_schedule_json(const schedule::Problem& problem, const schedule::Why& why) {
    Json json = headed(problem, "infeasible");
    if (why.delay) {
        json["delay"] = *why.delay;
    } else if (why.proof == schedule::Proof::best) {
        json["delay"] = nullptr;
    }
    json["enough"] = why.enough;
    json["reasons"] = Json::array();
    for (const schedule::Reason& reason : why.reasons) {
        json["reasons"].push_back(reason_json(problem, reason));
    }
    json["explained"] = why.proof == schedule::Proof::best ? "proven" : "as far as the limit went";
    return printed(json);
}

} // namespace loafwright::wire
