// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/recipe/recipe.hpp"

#include <algorithm>
#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::reading {

enum class TokenKind { word, number, mark };

/// One word, number or mark of the text.
///
/// Invariants: spans are in order and do not overlap; `text` is lower case with typographic quotes
/// and dashes made plain; a number has its
///             `value`; fraction glyphs are numbers with `fraction` set.
struct Token {
    TokenKind kind = TokenKind::word;
    std::string text;
    Span span;
    double value = 0.0;
    bool may_be_number =
        false;               // OPTIMIZATION: a word that the number grammar knows; asked very often
    bool fraction = false;   // ½, 3/4: a part of one
    bool look_alike = false; // a number though letters stand there: "l0"
    bool glued = false;      // nothing stands between it and the token before
    bool hyphenated = false; // joined by a hyphen to the word before: "seam-side"
    bool capital = false;    // begins with a capital letter
    bool all_capitals = false;  // two letters or more, all capital
    bool first_on_line = false; // the first token of a line
};

/// Cuts text into tokens.
///
/// Needs:    valid UTF-8.
/// Promises: one pass; a word broken by a hyphen at the end of a line is one token again; numbers
/// with a decimal point or comma,
///           grouped thousands and plain fractions ("1/2") are one token each.
std::vector<Token> tokenise(std::string_view text);

/// Half-open range of token indices.
struct TokenRange {
    std::size_t begin = 0;
    std::size_t end = 0;

    [[nodiscard]] bool empty() const { return begin >= end; }
};

/// The bytes that a range of tokens covers; an empty range covers nothing.
Span span_of(const std::vector<Token>& tokens, TokenRange range);

/// The text of a span on one line: runs of blanks become one, the marks of bold type fall away.
std::string tidy(std::string_view text, Span span);

/// Is the token this word?
inline bool is_word(const Token& token, std::string_view word) {
    return token.kind == TokenKind::word && token.text == word;
}
/// Is the token one of these words?
inline bool is_any_word(const Token& token, std::initializer_list<std::string_view> words) {
    return token.kind == TokenKind::word &&
           std::find(words.begin(), words.end(), std::string_view(token.text)) != words.end();
}
inline bool is_mark(const Token& token, char mark) {
    return token.kind == TokenKind::mark && token.text.size() == 1 && token.text[0] == mark;
}

} // namespace loafwright::reading
