// SPDX-License-Identifier: Apache-2.0
#include "shell/paper/marks.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <cstddef>
#include <regex>
#include <string>
#include <string_view>

namespace loafwright::paper {

namespace {

constexpr std::array<std::string_view, 18> like_bullets = {
    "e", "o", "¢", "*", "©", "®", "°", "«", "»", "•", "+", "@", "·", "e°", "e¢", "¢e", "=", "-"};

bool like_bullet(const SeenLine& line) {
    return line.words.size() > 1 &&
           std::find(like_bullets.begin(), like_bullets.end(), line.words.front().text) !=
               like_bullets.end();
}

// Two and more of them under each other make a list.
void mend_bullets(SeenPage& page) {
    for (std::size_t i = 0; i < page.lines.size(); ++i) {
        SeenLine& line = page.lines[i];
        if (!like_bullet(line)) {
            continue;
        }
        const double left = line.words.front().box.left;
        const auto under =
            std::count_if(page.lines.begin(), page.lines.end(), [&](const SeenLine& other) {
                return &other != &line && (like_bullet(other) || other.words.front().text == "•") &&
                       std::abs(other.words.front().box.left - left) < line.box.height();
            });
        if (under > 0) {
            line.words.front().text = "•";
        }
    }
}

// "200oC", "200*C", "200 ºC": nothing else stands between a number and a C or an F.
std::string with_degrees(const std::string& text) {
    static const std::regex form(R"((\d{2,3})(?:o|O|\*|º|˚|"|'|’|”)([CF])\b)");
    return std::regex_replace(text, form, "$1°$2");
}

// "|b", "mi|k": no rule stands inside a word.
std::string with_letters(std::string text) {
    for (std::size_t at = 0; at < text.size(); ++at) {
        const auto letter = [&text](std::size_t i) {
            return i < text.size() && std::isalpha(static_cast<unsigned char>(text[i])) != 0;
        };
        if (text[at] == '|' && (letter(at + 1) || (at > 0 && letter(at - 1)))) {
            text[at] = 'l';
        }
    }
    return text;
}

} // namespace

void mend_marks(SeenPage& page) {
    mend_bullets(page);
    for (SeenLine& line : page.lines) {
        for (SeenWord& word : line.words) {
            word.text = with_letters(with_degrees(word.text));
        }
    }
}

} // namespace loafwright::paper
