// SPDX-License-Identifier: Apache-2.0
#include "engine/wire/project_answer.hpp"

#include <nlohmann/json.hpp>

namespace loafwright::wire {

namespace {

using Json = nlohmann::ordered_json;

std::string printed(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace

std::string project_json(const std::string& id, const schedule::ProjectSolved& solved) {
    return printed({{"version", 1},
                    {"id", id},
                    {"status", solved.proof == schedule::Proof::best ? "optimal" : "best"},
                    {"makespan", solved.makespan},
                    {"lower_bound", solved.lower_bound},
                    {"starts", solved.starts}});
}

std::string no_project_json(const std::string& id) {
    return printed({{"version", 1},
                    {"id", id},
                    {"status", "infeasible"},
                    {"makespan", nullptr},
                    {"lower_bound", 0},
                    {"starts", Json::array()}});
}

} // namespace loafwright::wire
