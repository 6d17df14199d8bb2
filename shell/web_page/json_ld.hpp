// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <nlohmann/json_fwd.hpp>

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace loafwright::web_page {

/// How deep the data of a page may be nested. A step in a section of a recipe in a graph is at
/// nine.
inline constexpr std::size_t deepest_data = 48;
/// The longest script of data that is read.
inline constexpr std::size_t longest_data = std::size_t{2} << 20U;

/// What a script of JSON-LD says.
///
/// Promises: no deeper than `deepest_data`; what is clearly meant is read: marks of comments around
///           it, commas too many, raw line ends and control characters in strings, escapes that
///           JSON does not have, entities in place of quotation marks, objects one after the other,
///           quotation marks inside a string, an end that is missing.
/// Errors:   nothing when it is no JSON all the same, too long or too deep.
std::optional<nlohmann::json> data_of_script(std::string_view script);

} // namespace loafwright::web_page
