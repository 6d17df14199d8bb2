// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/line_marks.hpp"

#include "shell/web_page/plain.hpp"
#include "shell/web_page/tags.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <utility>

namespace loafwright::web_page {
namespace {

constexpr std::size_t longest_part_name = 60;

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// The length of "3. ", "3) " or "3: " at the beginning, 0 for others. A decimal is none: "1.5 kg".
std::size_t count_length(std::string_view text) {
    std::size_t i = 0;
    while (i < text.size() && i < 2 && is_digit(text[i])) {
        ++i;
    }
    if (i == 0 || i >= text.size() || (text[i] != '.' && text[i] != ')' && text[i] != ':')) {
        return 0;
    }
    ++i;
    if (i < text.size() && text[i] != ' ' && !is_ascii_letter(text[i])) {
        return 0;
    }
    while (i < text.size() && text[i] == ' ') {
        ++i;
    }
    return i;
}

// The length of "Step 3", "Step 3:", "Step 3 - ", "Step three." at the beginning.
std::size_t step_length(std::string_view text) {
    if (text.size() < 6 || !is_same_name(text.substr(0, 5), "step ")) {
        return 0;
    }
    std::size_t i = 5;
    while (i < text.size() && is_digit(text[i])) {
        ++i;
    }
    if (i == 5) {
        constexpr std::array<std::string_view, 12> words{"one",
                                                         "two",
                                                         "three",
                                                         "four",
                                                         "five",
                                                         "six",
                                                         "seven",
                                                         "eight",
                                                         "nine",
                                                         "ten",
                                                         "eleven",
                                                         "twelve"};
        while (i < text.size() && is_ascii_letter(text[i])) {
            ++i;
        }
        const std::string word = small_letters(text.substr(5, i - 5));
        if (std::find(words.begin(), words.end(), word) == words.end()) {
            return 0;
        }
    }
    // "Step 3 of 8"
    if (is_same_name(text.substr(i, 4), " of ")) {
        std::size_t of = i + 4;
        while (of < text.size() && is_digit(text[of])) {
            ++of;
        }
        i = of > i + 4 ? of : i;
    }
    const std::size_t counted = i;
    constexpr std::string_view dash = "\xE2\x80\x93";
    while (i < text.size()) {
        if (std::string_view(" .:)-").find(text[i]) != std::string_view::npos) {
            ++i;
        } else if (text.substr(i, dash.size()) == dash) {
            i += dash.size();
        } else {
            break;
        }
    }
    // "Step 2 is repeated" is a sentence; "Step 2 Knead the dough" is not.
    const bool is_set_apart = i > counted + 1 || (i > counted && text[counted] != ' ');
    const bool begins_anew = i < text.size() && text[i] >= 'A' && text[i] <= 'Z';
    return i == text.size() || is_set_apart || begins_anew ? i : 0;
}

} // namespace

std::string without_bullet(std::string_view line) {
    constexpr std::array<std::string_view, 16> bullets{"\xE2\x80\xA2",
                                                       "\xC2\xB7",
                                                       "\xE2\x96\xA2",
                                                       "\xE2\x98\x90",
                                                       "\xE2\x96\xA1",
                                                       "\xE2\x97\xA6",
                                                       "\xE2\x96\xAA",
                                                       "\xE2\x97\x8F",
                                                       "\xE2\x80\xA3",
                                                       "\xE2\x9C\x93",
                                                       "\xE2\x98\x91",
                                                       "\xE2\x97\x8B",
                                                       "*",
                                                       "- ",
                                                       "\xE2\x80\x93 ",
                                                       "\xE2\x80\x94 "};
    bool is_changed = true;
    while (is_changed) {
        is_changed = false;
        for (const std::string_view bullet : bullets) {
            if (line.substr(0, bullet.size()) == bullet) {
                line.remove_prefix(bullet.size());
                while (!line.empty() && line[0] == ' ') {
                    line.remove_prefix(1);
                }
                is_changed = true;
            }
        }
    }
    return std::string(line);
}

std::string without_step_number(std::string line) {
    const std::size_t step = step_length(line);
    const std::size_t length = step > 0 ? step : count_length(line);
    return length == 0 ? std::move(line) : line.substr(length);
}

std::string without_colon(std::string words) {
    while (!words.empty() && (words.back() == ':' || words.back() == ' ')) {
        words.pop_back();
    }
    return words;
}

bool is_part_name(std::string_view line) {
    return line.size() > 1 && line.size() <= longest_part_name && line.back() == ':' &&
           std::none_of(line.begin(), line.end(), is_digit);
}

std::vector<std::string> numbered_steps(const std::string& line) {
    std::vector<std::size_t> marks;
    // Steps are found where "1.", "2.", "3." stand in order, each behind the end of a sentence.
    const auto is_mark = [&](std::size_t at, std::size_t number) {
        const std::string digits = std::to_string(number);
        const std::size_t behind = at + digits.size();
        return line.compare(at, digits.size(), digits) == 0 && behind + 1 < line.size() &&
               (line[behind] == '.' || line[behind] == ')') && line[behind + 1] == ' ';
    };
    if (is_mark(0, 1)) {
        marks.push_back(0);
        for (std::size_t i = 1; i + 1 < line.size() && marks.size() < 98; ++i) {
            const bool is_begin =
                line[i - 1] == ' ' && i >= 2 &&
                std::string_view(".!?)").find(line[i - 2]) != std::string_view::npos;
            if (is_begin && is_mark(i, marks.size() + 1)) {
                marks.push_back(i);
            }
        }
    }
    std::vector<std::string> steps;
    if (marks.size() < 2) {
        steps.push_back(without_step_number(without_bullet(line)));
    } else {
        for (std::size_t i = 0; i < marks.size(); ++i) {
            const std::size_t end = i + 1 < marks.size() ? marks[i + 1] : line.size();
            steps.push_back(
                plain_words(without_step_number(line.substr(marks[i], end - marks[i]))));
        }
    }
    return steps;
}

} // namespace loafwright::web_page
