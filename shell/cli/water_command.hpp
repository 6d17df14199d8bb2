// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/cli/ask_arguments.hpp"
#include "shell/cli/terminal.hpp"

#include <tl/expected.hpp>

namespace loafwright::cli {

/// Says how warm the water must be for a wanted dough.
///
/// Promises: what the call says outranks the kitchen file; a dough that this water cannot give is
/// an
///           honest no, exit status 1.
/// Errors:   those of files and of kitchen_from_toml.
tl::expected<CommandAnswer, Diagnostics> water_command(const WaterArguments& arguments);

} // namespace loafwright::cli
