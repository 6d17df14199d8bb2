// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/token.hpp"

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace loafwright::reading {

/// A number or a range as written: "1 1/2", "two and a half", "3-4", "between 300 and 320", "half a
/// dozen".
struct NumberPhrase {
    double low = 0.0;
    double high = 0.0;
    bool about = false;    // "about", "or so", "roughly"
    bool at_least = false; // no upper end told
    bool at_most = false;  // no lower end told
    bool article = false;  // written "a" or "an"
    TokenRange range;

    [[nodiscard]] double middle() const { return (low + high) / 2.0; }
};

/// Does the number grammar know this word ("twelve", "half", "few")?
bool is_number_word(std::string_view word);

/// One number starting at token `at`, without ranges: digits, glyphs, words, mixed numbers.
///
/// Grammar:  single  := whole (("and" | "&" | "-")? part)? | part | "a" | "couple of" | "few" |
/// "dozen" … Promises: never looks past `end`; nothing when no number begins there.
std::optional<NumberPhrase>
single_number(const std::vector<Token>& tokens, std::size_t at, std::size_t end);

/// A number or a range of numbers starting at `at`, with words of hedging before and between.
///
/// Grammar:  phrase  := hedge* ( "between" single "and" single | "from"? single (("-" | "to" | "or"
/// | ", maybe") single)? )
std::optional<NumberPhrase>
number_phrase(const std::vector<Token>& tokens, std::size_t at, std::size_t end);

/// Is the token a dash, long or short?
bool is_dash(const Token& token);

/// Words such as "about" and "roughly".
bool is_hedge(const Token& token);

} // namespace loafwright::reading
