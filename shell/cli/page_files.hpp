// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/sheet/compose.hpp"
#include "shell/output/drawn.hpp"
#include "shell/output/page_options.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>

namespace loafwright::cli {

/// The endings --out knows, for messages and for the help.
inline constexpr std::string_view page_endings = ".txt, .pdf, .svg, .png or .json";

/// True when a file of that name can be written, whatever its letters' case.
bool has_page_ending(const std::string& path);

/// What the files are made from.
struct PageSource {
    const Sheet& sheet;
    const std::string& json;
    output::PageOptions options;
};

/// The bytes that belong into the file, by its ending.
///
/// Needs:  has_page_ending(path).
/// Errors: those of output/drawn.hpp.
tl::expected<output::Drawn, Diagnostic> page_file(const std::string& path,
                                                  const PageSource& source);

} // namespace loafwright::cli
