// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/problem.hpp"
#include "engine/schedule/solve.hpp"

#include <nlohmann/json.hpp>

#include <filesystem>
#include <vector>

namespace loafwright::schedule {

/// Bake-day problems with answers proven by other solvers, in a folder beside the repository.
std::filesystem::path folder_of_days();

nlohmann::json read_json(const std::filesystem::path& path);

/// The interchange form of a problem, version 1.
Problem problem_of(const nlohmann::json& json);

/// All of the folder in the order of their names; none when it is not there.
std::vector<Problem> published_days();

/// The interchange form of an answer.
nlohmann::json json_of(const Problem& problem, const Solved& solved);

} // namespace loafwright::schedule
