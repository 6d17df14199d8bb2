// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/quantity/tagged.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::web_page {

/// The longest page that is taken: eight mebibytes.
inline constexpr std::size_t longest_page_bytes = std::size_t{8} << 20U;

/// What a page says of its times beside the prose (schema.org prepTime, cookTime, totalTime).
struct StatedTimes {
    std::optional<Minutes> prep;
    std::optional<Minutes> cook;
    std::optional<Minutes> total;
};

/// One recipe of a page as a person would type it.
///
/// Promises: `text` is the title, what it makes, "Ingredients" and "- " lines, "Method" and
/// numbered
///           lines, with blank lines between; parts that the page names stand under a line with
///           their name. What is not from the page's data has the page's own headings. UTF-8
///           without control bytes but the line feed; no tags, no entities; never empty.
struct RecipeWords {
    std::string text;
    StatedTimes times;
    /// True when the words come from the page's own data (schema.org Recipe), false when they are
    /// what looks like the main text.
    bool from_markup = false;
};

/// The recipes of a saved or pasted HTML page, in page order; several when its data has several.
///
/// Promises: at least one recipe; takes time in proportion to the page, whatever stands in it.
/// Errors:   page_too_long, page_not_text (bytes that are no text), page_too_tangled (more parts
///           than a page of words has), page_no_words.
/// Never:    fetches anything, runs anything of the page, throws on input.
///
/// Source: schema.org Recipe, HowTo, HowToSection, HowToStep; JSON-LD 1.1; WHATWG HTML, chapter 5
/// (microdata); W3C RDFa Lite 1.1; ISO 8601 durations.
tl::expected<std::vector<RecipeWords>, Diagnostics> words_of(std::string_view html);

/// True when the bytes begin as an HTML page or a piece of one does, after white space, a byte
/// order mark and comments; also in UTF-16. Looks at the first bytes only.
///
/// Never: takes plain text or Markdown for a page because of one tag somewhere inside it.
bool looks_like_html(std::string_view bytes);

} // namespace loafwright::web_page
