// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/cli/serve_arguments.hpp"
#include "shell/cli/terminal.hpp"

#include <tl/expected.hpp>

namespace loafwright::cli {

/// Serves until it is stopped; the address to open is printed as soon as it can be opened.
///
/// Errors: those of server::serve.
tl::expected<CommandAnswer, Diagnostics> serve_command(const ServeArguments& arguments);

} // namespace loafwright::cli
