// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/project.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loafwright::schedule {

/// One rule that starts do not keep: "form" (not one start for each activity), "beginning" (the
/// first starts at 0, none earlier), "lag", "resource".
struct BrokenProjectRule {
    std::string rule;
    std::optional<std::size_t> activity; // none for a resource
    std::optional<std::size_t> resource;
    std::optional<std::int64_t> time;
};

/// Every rule that `starts` breaks, looked at time by time from its definition.
///
/// Needs:    `faults_in(project)` is empty.
/// Promises: empty if and only if the starts keep every rule; shares no code with any solver;
///           starts past `longest_project` are answered with "form".
std::vector<BrokenProjectRule> violations(const Project& project,
                                          const std::vector<std::int64_t>& starts);

} // namespace loafwright::schedule
