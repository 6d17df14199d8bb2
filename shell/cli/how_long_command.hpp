// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/cli/ask_arguments.hpp"
#include "shell/cli/terminal.hpp"

namespace loafwright::cli {

/// Says how long a rise takes elsewhere.
///
/// Promises: one that never gets there is an honest no, exit status 1.
CommandAnswer how_long_command(const HowLongArguments& arguments);

} // namespace loafwright::cli
