// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/cli/arguments.hpp"
#include "shell/cli/terminal.hpp"

#include <tl/expected.hpp>

namespace loafwright::cli {

/// Puts breads in the order in which they suit the day and somebody's hands, with the reasons.
///
/// Promises: exit status 0 when one of them can be today, 1 when none can.
/// Errors:   as plan_command.
tl::expected<CommandAnswer, Diagnostics> choose_command(const ChooseArguments& arguments);

} // namespace loafwright::cli
