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

// What a bullet is read as: a round letter by itself, or a sign or two that begin no word.
bool is_like_bullet(std::string_view word) {
    constexpr std::array<std::string_view, 14> signs = {
        "¢", "*", "©", "®", "°", "«", "»", "•", "+", "@", "·", "=", "-", "e"};
    if (word == "e" || word == "o") {
        return true;
    }
    std::size_t at = 0;
    std::size_t count = 0;
    while (at < word.size()) {
        const auto sign = std::find_if(signs.begin(), signs.end(), [&](std::string_view one) {
            return word.substr(at, one.size()) == one;
        });
        if (sign == signs.end() || ++count > 2) {
            return false;
        }
        at += sign->size();
    }
    return count > 0 && word != "ee";
}

bool like_bullet(const SeenLine& line) {
    return line.words.size() > 1 && is_like_bullet(line.words.front().text);
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

// "7." as 7, and 0 for anything else.
int step_number(const SeenWord& word) {
    static const std::regex form(R"((\d{1,2})[.,)])");
    std::smatch found;
    return std::regex_match(word.text, found, form) ? std::stoi(found[1]) : 0;
}

// Between step 6 and step 8 one line hangs out to the left as theirs do, with a scrap before its
// words: that is step 7, whatever it was read as. Two such lines are left alone.
void mend_step_numbers(SeenPage& page) {
    const SeenLine* before = nullptr;
    SeenLine* between = nullptr;
    std::size_t candidates = 0;
    for (SeenLine& line : page.lines) {
        if (line.words.size() < 2) {
            continue;
        }
        SeenWord& first = line.words.front();
        const int number = step_number(first);
        const auto hangs_like = [&](const SeenLine& other) {
            return std::abs(other.words.front().box.left - first.box.left) < line.box.height() / 2;
        };
        if (number == 0) {
            if (before != nullptr && hangs_like(*before)) {
                between = &line;
                ++candidates;
            }
            continue;
        }
        if (before != nullptr && hangs_like(*before) && candidates == 1 &&
            number == step_number(before->words.front()) + 2 &&
            between->words.front().text.size() <= 3) {
            between->words.front().text = std::to_string(number - 1) + ".";
        }
        before = &line;
        candidates = 0;
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
    mend_step_numbers(page);
    for (SeenLine& line : page.lines) {
        for (SeenWord& word : line.words) {
            word.text = with_letters(with_degrees(word.text));
        }
    }
}

} // namespace loafwright::paper
