// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/cli/terminal.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace loafwright::cli {

struct IntakeArguments {
    std::vector<std::string> files; // one recipe: a file, or its photos in order
    bool text = false;
    bool json = false;
};

/// The help for the command, in the form of the whole help.
extern const std::string_view intake_help;

/// Shows what was found in files of any kind: the words themselves, or a line about them.
///
/// Errors: those of taken_in and of check_text.
tl::expected<CommandAnswer, Diagnostics> intake_command(const IntakeArguments& arguments);

} // namespace loafwright::cli
