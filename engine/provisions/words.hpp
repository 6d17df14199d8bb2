// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::provisions {

/// One word of a text, lower-case, without marks around it.
struct Word {
    std::string text;
    /// A comma, full stop or bracket stands between it and the word before.
    bool after_mark = false;
    /// Where it stands in the text it was cut from.
    std::size_t begin = 0;
    std::size_t end = 0;
};
using Words = std::vector<Word>;

/// Cuts a text into words: a hyphen parts words, an apostrophe does not.
Words words_of(std::string_view text);

/// Where a phrase stands: words [first, first + count).
struct Match {
    std::size_t first = 0;
    std::size_t count = 0;
};

/// Every place where the words of `phrase` stand side by side; a word may carry a plural s.
std::vector<Match> matches(const Words& words, std::string_view phrase);

/// True when the words just before a match deny it: "no mixer", "do not cover", "without honey".
bool is_denied(const Words& words, const Match& match);

/// True when a match is the second choice: "or a bowl lined with a cloth".
bool is_alternative(const Words& words, const Match& match);

/// True when one of the phrases stands in the words and is not denied.
bool says_any(const Words& words, const std::vector<std::string_view>& phrases);

} // namespace loafwright::provisions
