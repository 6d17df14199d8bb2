// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/sheet/compose.hpp"
#include "shell/output/page_layout.hpp"
#include "shell/output/page_options.hpp"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace loafwright::output {

/// The bytes of a file, and what is worth knowing about it.
struct Drawn {
    std::string bytes;
    Diagnostics messages;
};

/// The breads as a PDF with real text, tags, bookmarks and embedded fonts.
///
/// Needs:    at least one sheet.
/// Promises: the same input and fonts give the same bytes.
/// Errors:   internal, when Cairo cannot go on. As messages: address_too_long, font_missing,
///           letters_missing.
/// Never:    asks the clock.
tl::expected<Drawn, Diagnostic> pdf_page(const std::vector<Sheet>& sheets,
                                         const PageOptions& options);

/// The same as SVG (W3C, 1.1), its letters as outlines, the plain text in its description; several
/// pages under each other. Promises and errors as above.
tl::expected<Drawn, Diagnostic> svg_page(const std::vector<Sheet>& sheets,
                                         const PageOptions& options);

/// The same as a PNG in grey, options.dots_per_inch fine. Promises and errors as above.
///
/// Needs: 20 to 600 dots to an inch; others are brought there.
tl::expected<Drawn, Diagnostic> png_page(const std::vector<Sheet>& sheets,
                                         const PageOptions& options);

/// What the writers say about a layout.
Diagnostics remarks_on(const PageLayout& layout, const PageOptions& options);

} // namespace loafwright::output
