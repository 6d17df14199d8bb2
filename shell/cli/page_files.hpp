// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/sheet/compose.hpp"
#include "shell/cli/heavy_parts.hpp"
#include "shell/output/drawn.hpp"
#include "shell/output/page_options.hpp"
#include "shell/output/text_page.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::cli {

/// The endings --out knows, for messages and for the help.
inline constexpr std::string_view page_endings = ".txt, .pdf, .svg, .png, .ics or .json";

/// True when a file of that name can be written, whatever its letters' case.
bool has_page_ending(const std::string& path);

/// True when that file is drawn, and not written in letters.
///
/// Needs: has_page_ending(path).
bool is_drawn(const std::string& path);

/// As many letters as a short code of 57 modules has room for (ISO/IEC 18004, version 10, level M);
/// a larger one would take the page from the bread.
inline constexpr std::size_t most_address_letters = 213;

/// True for an absolute http or https address (RFC 3986) with a host, in its letters alone.
bool is_web_address(std::string_view address);

/// What the files are made from.
struct PageSource {
    const std::vector<Sheet>& pages;
    const std::string& json;
    std::function<std::string(const std::string& path)> calendar; // what stands there matters
    bool linear = false;                                          // text to be heard
    output::PageOptions options;
    const HeavyParts* parts = nullptr;
};

/// The pages, or the honest no, in letters: to be looked at or to be heard.
std::string in_letters(const std::vector<Sheet>& pages,
                       bool linear,
                       std::size_t columns,
                       output::Weight weight);
std::string in_letters(const Refusal& refusal, bool linear, std::size_t columns);

/// The bytes that belong into the file, by its ending.
///
/// Needs:  has_page_ending(path); source.parts where is_drawn(path).
/// Errors: those of output/drawn.hpp.
tl::expected<output::Drawn, Diagnostic> page_file(const std::string& path,
                                                  const PageSource& source);

} // namespace loafwright::cli
