// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/intake/take_in.hpp"
#include "shell/paper/pix.hpp"
#include "shell/paper/seen.hpp"

#include <tl/expected.hpp>

#include <string_view>
#include <variant>
#include <vector>

namespace loafwright::paper {

/// A page with words of its own, or the picture of one without.
using PdfPage = std::variant<SeenPage, Picture>;

/// Loads what poppler opens at first use, before opening files is forbidden.
void make_pdf_ready();

/// The pages of a PDF.
///
/// Promises: a page with next to no letters is drawn in grey, at a size for reading, never larger
///           than that.
/// Errors:   file_damaged, file_locked, too_many_pages.
tl::expected<std::vector<PdfPage>, Diagnostic> pages_of(std::string_view bytes,
                                                        const intake::Limits& limits);

} // namespace loafwright::paper
