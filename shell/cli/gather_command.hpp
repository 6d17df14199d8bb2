// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/cli/before_arguments.hpp"
#include "shell/cli/terminal.hpp"

#include <tl/expected.hpp>

namespace loafwright::cli {

/// Shows what to have out for one bread or for several together.
///
/// Errors: those of readings_of and of kitchen_in.
tl::expected<CommandAnswer, Diagnostics> gather_command(const GatherArguments& arguments);

} // namespace loafwright::cli
