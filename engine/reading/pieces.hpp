// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/lexicon.hpp"
#include "engine/reading/token.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::reading {

enum class Shape { heading, item, paragraph, mark_up };

/// A heading, an item of a list, a paragraph or some mark-up, as the text's own lines part it.
struct Piece {
    Shape shape = Shape::paragraph;
    Span span;
    std::optional<int> number; // of a numbered item
    std::string_view words;    // a heading's own words, without its marks
};

struct CutText {
    std::vector<Piece> pieces; // in order; together they cover every line that is not blank
    std::string title;         // of front matter; empty without
};

/// Cuts a text by its mark-up and, where it has none, by what its lines look like: short lines that
/// begin with amounts or orders are a list each, a short line by itself is a heading.
///
/// Needs:    `text` outlives what it gives.
CutText cut_text(std::string_view text, const Lexicon& lexicon);

/// The section that a heading names ("Ingredients", "For the filling"), null for none.
const LexiconRow* section_named(std::string_view words, const Lexicon& lexicon);

} // namespace loafwright::reading
