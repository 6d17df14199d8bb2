// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/cli/before_arguments.hpp"
#include "shell/cli/terminal.hpp"

#include <tl/expected.hpp>

namespace loafwright::cli {

/// Shows one recipe in baker's percentages.
///
/// Errors: those of readings_of, and dough_unweighed.
tl::expected<CommandAnswer, Diagnostics> formula_command(const FormulaArguments& arguments);

} // namespace loafwright::cli
