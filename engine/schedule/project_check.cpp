// SPDX-License-Identifier: Apache-2.0
#include "engine/schedule/project_check.hpp"

#include <algorithm>

namespace loafwright::schedule {

namespace {

bool have_form(const Project& project, const std::vector<std::int64_t>& starts) {
    return starts.size() == project.activities.size() &&
           std::all_of(starts.begin(), starts.end(), [](std::int64_t start) {
               return start >= -longest_project && start <= longest_project;
           });
}

void look_at_resource(const Project& project,
                      const std::vector<std::int64_t>& starts,
                      std::size_t resource,
                      std::vector<BrokenProjectRule>& broken) {
    const std::int64_t end = std::max<std::int64_t>(0, makespan_of(project, starts));
    std::vector<std::int64_t> used(static_cast<std::size_t>(end), 0);
    for (std::size_t i = 0; i < starts.size(); ++i) {
        const Activity& activity = project.activities[i];
        for (std::int64_t t = starts[i]; t < starts[i] + activity.duration; ++t) {
            if (t >= 0) {
                used[static_cast<std::size_t>(t)] += activity.demands[resource];
            }
        }
    }
    for (std::size_t t = 0; t < used.size(); ++t) {
        if (used[t] > project.capacities[resource]) {
            broken.push_back({"resource", std::nullopt, resource, static_cast<std::int64_t>(t)});
        }
    }
}

} // namespace

std::vector<BrokenProjectRule> violations(const Project& project,
                                          const std::vector<std::int64_t>& starts) {
    std::vector<BrokenProjectRule> broken;
    if (!have_form(project, starts)) {
        broken.push_back({"form", std::nullopt, std::nullopt, std::nullopt});
        return broken;
    }
    for (std::size_t i = 0; i < starts.size(); ++i) {
        if (i == 0 ? starts[i] != 0 : starts[i] < 0) {
            broken.push_back({"beginning", i, std::nullopt, starts[i]});
        }
    }
    for (const TimeLag& lag : project.lags) {
        if (starts[lag.to] - starts[lag.from] < lag.least) {
            broken.push_back({"lag", lag.to, std::nullopt, starts[lag.to]});
        }
    }
    for (std::size_t resource = 0; resource < project.capacities.size(); ++resource) {
        look_at_resource(project, starts, resource, broken);
    }
    return broken;
}

} // namespace loafwright::schedule
