// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/cli/before_arguments.hpp"
#include "shell/cli/terminal.hpp"

#include <tl/expected.hpp>

namespace loafwright::cli {

/// Shows one recipe in another size or with another yeast; as JSON in the form of `read`.
///
/// Errors: those of readings_of.
tl::expected<CommandAnswer, Diagnostics> scale_command(const ScaleArguments& arguments);

} // namespace loafwright::cli
