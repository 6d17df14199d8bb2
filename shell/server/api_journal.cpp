// SPDX-License-Identifier: Apache-2.0
//
// After the bake: what was likely behind what the baker saw, the one thing to change, and what got
// better since.
#include "engine/faults/find_faults.hpp"
#include "engine/learning/progress.hpp"
#include "engine/wire/findings_json.hpp"
#include "engine/wire/progress_json.hpp"
#include "shell/server/api.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <map>
#include <string>
#include <utility>
#include <vector>

namespace loafwright::server {

namespace {

// One bread of a bake: ?bread=1 is its second.
Response findings_of(const ApiParts& parts, const Request& request) {
    const std::string& id = request.parameters.front();
    const auto logs = parts.journal.logs_of(id);
    if (!logs) {
        return logs.error();
    }
    const std::string told = request.query("bread");
    std::size_t bread = 0;
    const auto [end, fault] = std::from_chars(told.data(), told.data() + told.size(), bread);
    if (!told.empty() &&
        (fault != std::errc() || end != told.data() + told.size() || bread >= logs->size())) {
        return error_response(400,
                              "value_out_of_range",
                              fmt::format("bread: expected 0 to {}", logs->size() - 1),
                              "Count the bake's breads from 0.");
    }
    // The next plan is made of what this bake taught.
    if (const auto trouble = parts.journal.catch_up()) {
        return store_trouble(*trouble);
    }
    return json_response(
        200, wire::findings_json(find_faults({}, &(*logs)[bread], parts.planner.knowledge())));
}

// Every bread that was baked here, by its title, its bakes oldest first.
Response progress_so_far(const ApiParts& parts) {
    if (const auto trouble = parts.journal.catch_up()) {
        return store_trouble(*trouble);
    }
    std::map<std::string, std::vector<BakeLog>> by_bread;
    for (BakeLog& log : parts.journal.all()) {
        by_bread[log.bread].push_back(std::move(log));
    }
    std::vector<wire::BreadProgress> breads;
    for (const auto& [bread, logs] : by_bread) {
        breads.push_back({bread, progress_of(logs, parts.planner.knowledge())});
    }
    return json_response(200, wire::progress_json(breads));
}

} // namespace

void add_journal_routes(Router& router, const ApiParts& parts) {
    router.add("GET", "/api/v1/bakes/{}/findings", {}, at_once([parts](const Request& request) {
                   return findings_of(parts, request);
               }));
    router.add("GET", "/api/v1/progress", {}, at_once([parts](const Request& /*request*/) {
                   return progress_so_far(parts);
               }));
}

} // namespace loafwright::server
