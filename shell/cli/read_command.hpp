// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/cli/arguments.hpp"
#include "shell/cli/terminal.hpp"

#include <tl/expected.hpp>

namespace loafwright::cli {

/// Reads one recipe and shows what was understood, for a person or as JSON.
///
/// Errors: those of files and of check_text. A text without a single step is no error.
tl::expected<CommandAnswer, Diagnostics> read_command(const ReadArguments& arguments);

} // namespace loafwright::cli
