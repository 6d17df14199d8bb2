// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <cstddef>
#include <string_view>

namespace loafwright {

inline constexpr std::size_t longest_plain_id = 64;

/// True for an id that a screen has made: 1 to 64 letters, digits, "-" and "_". It can stand in a
/// path, a query and a file name as it is.
inline bool is_plain_id(std::string_view text) {
    return !text.empty() && text.size() <= longest_plain_id &&
           std::all_of(text.begin(), text.end(), [](char c) {
               return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                      c == '-' || c == '_';
           });
}

/// True for what a photo is found by: 64 hexadecimal digits, small letters.
inline bool is_content_hash(std::string_view text) {
    return text.size() == 64 && std::all_of(text.begin(), text.end(), [](char c) {
               return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f');
           });
}

} // namespace loafwright
