// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/cli/run.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

namespace loafwright::cli {

struct FaultsArguments {
    std::vector<std::string> symptoms; // at least one, or a log
    std::optional<std::string> log;
    bool json = false;
};

/// Errors: symptom_unknown, those of file_bytes and of wire::bake_log_from_json; all that can be
///         found. A log that tells of no sign is an answer too.
tl::expected<CommandAnswer, Diagnostics> faults_command(const FaultsArguments& arguments);

} // namespace loafwright::cli
