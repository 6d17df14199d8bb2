// SPDX-License-Identifier: Apache-2.0
#include "shell/paper/seen.hpp"

#include <algorithm>

namespace loafwright::paper {

Box around(const Box& a, const Box& b) {
    return {std::min(a.left, b.left),
            std::min(a.top, b.top),
            std::max(a.right, b.right),
            std::max(a.bottom, b.bottom)};
}

std::size_t letters_in(const SeenLine& line) {
    std::size_t count = 0;
    for (const SeenWord& word : line.words) {
        // Continuation bytes of UTF-8 are no letters of their own.
        count += static_cast<std::size_t>(std::count_if(
            word.text.begin(), word.text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
    }
    return count;
}

std::string words_of(const SeenLine& line) {
    std::string text;
    for (const SeenWord& word : line.words) {
        text += (text.empty() ? "" : " ") + word.text;
    }
    return text;
}

} // namespace loafwright::paper
