// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/cli/arguments.hpp"
#include "shell/cli/heavy_parts.hpp"
#include "shell/cli/terminal.hpp"

#include <tl/expected.hpp>

namespace loafwright::cli {

/// Plans one bread and shows the page, or the honest no with what would work.
///
/// Needs:    parts where a file of arguments.out is drawn.
/// Promises: --room-c outranks the kitchen file, --start and --eat-by outrank the day file; a time
/// that has passed is
///           an honest no; files named by --out are written before anything is shown, and only for
///           a plan that can be.
/// Errors:   those of files, settings and check_text, all that can be found in one go;
/// no_recipe_found; unwritable.
tl::expected<CommandAnswer, Diagnostics> plan_command(const PlanArguments& arguments,
                                                      const HeavyParts* parts);

} // namespace loafwright::cli
