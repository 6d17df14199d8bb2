// SPDX-License-Identifier: Apache-2.0
#include "engine/recipe/words.hpp"

#include <algorithm>

namespace loafwright {

namespace {

bool is_word_byte(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte >= 0x80 || (byte >= 'a' && byte <= 'z') || (byte >= '0' && byte <= '9');
}

} // namespace

std::string lower_case(std::string_view text) {
    std::string lowered(text);
    for (char& c : lowered) {
        if (c >= 'A' && c <= 'Z') {
            c = static_cast<char>(c - 'A' + 'a');
        }
    }
    return lowered;
}

std::string capitalised(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
        text[0] = static_cast<char>(text[0] - 'a' + 'A');
    }
    return text;
}

std::string uncapitalised(std::string text) {
    const bool one_capital =
        text.size() > 1 && text[0] >= 'A' && text[0] <= 'Z' && text[1] >= 'a' && text[1] <= 'z';
    if (one_capital) {
        text[0] = static_cast<char>(text[0] - 'A' + 'a');
    }
    return text;
}

bool has_word(std::string_view text, std::string_view word) {
    if (word.empty()) {
        return false;
    }
    for (std::size_t at = text.find(word); at != std::string_view::npos;
         at = text.find(word, at + 1)) {
        const std::size_t end = at + word.size();
        const bool starts = at == 0 || !is_word_byte(text[at - 1]);
        const bool ends = end == text.size() || !is_word_byte(text[end]);
        if (starts && ends) {
            return true;
        }
    }
    return false;
}

bool has_any_word(std::string_view text, std::initializer_list<std::string_view> words) {
    return std::any_of(
        words.begin(), words.end(), [text](std::string_view word) { return has_word(text, word); });
}

} // namespace loafwright
