// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/recipe/recipe.hpp"

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace loafwright::reading {

/// One line of the text.
struct Line {
    Span span; // without the line end
    std::size_t indent = 0;
    std::string_view text; // without indent and trailing blanks
};

std::vector<Line> lines_of(std::string_view text);

bool starts_with(std::string_view text, std::string_view head);

/// What stands in front of the words of a list item: "- ", "* ", "• ", "1. ", "2) ", in bytes. 0:
/// no list item.
std::size_t list_marker(std::string_view text, std::optional<int>& number);

/// Without any of these marks at both ends.
std::string_view stripped(std::string_view text, std::string_view marks);

/// Three letters or more, all of them capitals.
bool all_capitals(std::string_view text);

/// A rule or an underline: three or more of "-", "=", "*" or "_" and nothing else.
bool is_rule(std::string_view text);

/// Did the writer end these lines, or the width of the page? True for three lines and more of which
/// most would have had room for the next word, as on a card.
bool broken_on_purpose(const std::vector<Line>& lines, std::size_t first, std::size_t last);

/// A line of an ingredient list by its looks: short, begins with an amount or ends with one, and
/// does not end like a sentence.
bool looks_listed(std::string_view text);

/// Set off by marks of its own: _so_, =so= or **so**.
bool wrapped(std::string_view text);

} // namespace loafwright::reading
