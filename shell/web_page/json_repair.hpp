// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace loafwright::web_page {

/// How a quotation mark inside a string of damaged JSON is told from the one that ends it.
enum class Quotes {
    as_they_stand,  // the first one ends it
    by_what_follows // one that a comma, a colon or a bracket follows ends it
};

/// JSON as it was probably meant: without commas too many, with line ends and control characters
/// in strings escaped, with the brackets closed that were left open, several values made one list.
///
/// Promises: takes time in proportion to the text; what is JSON means the same afterwards. The
///           answer may still be no JSON.
std::string repaired_json(std::string_view text, Quotes quotes);

/// The deepest nesting of brackets outside strings.
std::size_t json_depth(std::string_view text);

} // namespace loafwright::web_page
