// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::output {

/// How many columns a terminal uses for the text: none for marks that combine, two for wide
/// letters.
///
/// Needs: valid UTF-8; a byte that is not counts as one column.
std::size_t columns_of(std::string_view text);

/// The text without control characters (a recipe's own must not steer the terminal) and with single
/// blanks.
std::string printable(std::string_view text);

/// The words in order, those that no line end may part in one: "500 g", "1 h 35", "gas 8".
std::vector<std::string> unbreakable(std::string_view text);

/// Lines of at most `columns` columns, broken at blanks, but not inside "500 g", "1 h 35", "gas 8"
/// or "Sun 07:30"; a word longer than a line is broken between letters. Never empty: one empty line
/// for an empty text.
std::vector<std::string> wrapped(std::string_view text, std::size_t columns);

/// `text` and as many blanks as bring it to `columns`; a longer text stays as it is.
std::string padded(std::string_view text, std::size_t columns);
std::string padded_left(std::string_view text, std::size_t columns);

} // namespace loafwright::output
