// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/web_page/tree.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::web_page {

enum class LineKind : std::uint8_t {
    paragraph,
    heading,
    bullet,  // of a list without an order
    numbered // of a list with one
};

/// A line of text as it is seen on the page.
struct Line {
    LineKind kind = LineKind::paragraph;
    std::uint8_t level = 0;     // of a heading
    std::string text;           // plain words
    std::size_t link_bytes = 0; // of the text, those that are links
    std::uint32_t node = 0;     // the first text of the line
    bool is_row = false;        // of a table
    bool is_broken = false;     // begins behind a line break and not with an element of its own
};

/// The lines that stand in one node of a page: paragraphs, headings, items and rows of tables as
/// they are set apart on the page; hidden elements and rules are left out.
///
/// Promises: no line is empty; takes time in proportion to what stands in the node.
std::vector<Line> lines_of(const Tree& tree, std::size_t node);

/// The same without what stands in the nodes that are `left_out`, one for each node of the tree.
std::vector<Line> lines_of(const Tree& tree, std::size_t node, const std::vector<bool>& left_out);

/// The same for text that may be HTML, as it stands in data: with tags, with entities (also when
/// they were written twice), or with line ends.
std::vector<Line> lines_of_text(std::string_view text);

/// The lines of lines_of_text in one, with blanks between.
std::string one_line_of(std::string_view text);

/// True for an element that is not to be seen.
bool is_hidden(const Tree& tree, std::size_t node);

} // namespace loafwright::web_page
