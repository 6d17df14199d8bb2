// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

namespace loafwright {

/// ASCII letters in lower case; every other byte stays.
std::string lower_case(std::string_view text);

/// With a capital in front, where the text begins with a letter from a to z.
std::string capitalised(std::string text);

/// With a small letter in front, unless the first word is all capitals or one letter: a phrase put
/// into the middle of a sentence.
std::string uncapitalised(std::string text);

/// True when `word` (lower case, may hold blanks) stands in `text` (lower case) with no letter or
/// digit on either side.
bool has_word(std::string_view text, std::string_view word);
bool has_any_word(std::string_view text, std::initializer_list<std::string_view> words);

} // namespace loafwright
