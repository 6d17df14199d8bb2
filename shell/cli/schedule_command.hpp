// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/cli/schedule_arguments.hpp"
#include "shell/cli/terminal.hpp"

#include <tl/expected.hpp>

namespace loafwright::cli {

/// The best schedule of a bare scheduling problem, or why there is none; of a project whether there
/// is one, and the shortest.
///
/// Promises: none is an honest no, exit status 1, with what is in the way and what would help.
/// Errors:   those of the file and of its reader in `engine/wire`; value_out_of_range for a
///           problem that is too large for the solver or that it could not settle within the limit.
tl::expected<CommandAnswer, Diagnostics> schedule_command(const ScheduleArguments& arguments);

} // namespace loafwright::cli
