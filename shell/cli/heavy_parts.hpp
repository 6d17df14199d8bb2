// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/sheet/compose.hpp"
#include "shell/cli/serve_arguments.hpp"
#include "shell/cli/terminal.hpp"
#include "shell/output/drawn.hpp"
#include "shell/output/page_options.hpp"

#include <tl/expected.hpp>

#include <vector>

namespace loafwright::cli {

/// What needs libraries that take longer to load than a page takes to plan: fonts and drawing, the
/// databases, the network. Only the whole program has it (docs/decisions/0013).
struct HeavyParts {
    using Draw = tl::expected<output::Drawn, Diagnostic>(const std::vector<Sheet>& pages,
                                                         const output::PageOptions& options);
    Draw* pdf;
    Draw* svg;
    Draw* png;
    tl::expected<CommandAnswer, Diagnostics> (*serve)(const ServeArguments& arguments);
};

/// Naming this function links all of it.
HeavyParts heavy_parts();

/// Becomes the whole program, which stands beside this one, with the same words.
///
/// Promises: returns only when that cannot be done: internal.
Diagnostic become_the_whole_program(const std::vector<std::string>& words);

} // namespace loafwright::cli
