// SPDX-License-Identifier: Apache-2.0
#include "shell/paper/doubt.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

namespace loafwright::paper {

namespace {

// Chosen, not swept: most wrong numbers of scripts/score-intake stand below it.
constexpr double sure_number = 0.90;

// Print in the photos of tests/paper stays above, scrawl falls below; no real hands were measured.
constexpr double least_sure = 0.55;
// A pen's loops give a few short words by chance, never so many long ones.
constexpr std::size_t enough_sure = 25;
constexpr std::size_t shortest_sure = 4;
// Half a page on its side gives about this.
constexpr std::size_t enough_to_judge = 30;
constexpr double hopeless = 0.4;
constexpr std::size_t few_sure = 3;

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool has_digit(std::string_view text) {
    return std::any_of(text.begin(), text.end(), is_digit);
}

// What a fraction becomes that was not told by its shape: "%", "Y", "¥" instead of a figure.
bool like_fraction(std::string_view text) {
    return text.find('%') != std::string_view::npos || text.find("¥") != std::string_view::npos;
}

// "72%" is a share of something; "%" alone, or after one figure, is rather a fraction.
bool is_share(std::string_view text) {
    const std::size_t percent = text.find('%');
    return percent >= 2 && percent != std::string_view::npos &&
           std::all_of(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(percent), is_digit);
}

// A unit that was misread: "400¢" for 400g.
bool has_odd_mark(std::string_view text) {
    constexpr std::array<std::string_view, 12> odd_marks = {
        "¢", "€", "£", "$", "¥", "§", "«", "»", "©", "®", "|", "\\"};
    return std::any_of(odd_marks.begin(), odd_marks.end(), [text](std::string_view odd) {
        return text.find(odd) != std::string_view::npos;
    });
}

// Whole words of letters that stand for figures: "l0", "I5", "O.5".
bool like_number(std::string_view text) {
    return text == "l" || text == "I" || text == "|";
}

std::size_t sure_words_of(const SeenPage& page) {
    std::size_t sure_words = 0;
    for (const SeenLine& line : page.lines) {
        sure_words += static_cast<std::size_t>(
            std::count_if(line.words.begin(), line.words.end(), [](const SeenWord& word) {
                return word.confidence >= sure_number && word.text.size() >= shortest_sure &&
                       std::all_of(word.text.begin(), word.text.end(), is_letter);
            }));
    }
    return sure_words;
}

} // namespace

void doubt_numbers(SeenPage& page) {
    for (SeenLine& line : page.lines) {
        const auto rules = std::count_if(line.words.begin(),
                                         line.words.end(),
                                         [](const auto& word) { return word.text == "|"; });
        const SeenWord* before = nullptr;
        for (SeenWord& word : line.words) {
            const SeenWord* left = std::exchange(before, &word);
            if (word.doubted) {
                continue; // a fraction told by its shape has its own doubts
            }
            if (like_fraction(word.text) && !is_share(word.text)) {
                if (word.text[0] == '%' && left != nullptr && is_share(left->text + "%")) {
                    continue; // "80 %"
                }
                word.doubted = true;
                const std::string whole =
                    word.text.substr(0, word.text.find_first_not_of("0123456789"));
                word.maybe = {whole + "½", whole + "¾", whole + "¼"};
            } else if (rules > 1 && word.text == "|") {
                continue; // the rules of a table
            } else if (like_number(word.text)) {
                word.doubted = true;
                word.maybe = {"1"};
            } else if (has_digit(word.text)) {
                word.doubted = word.confidence < sure_number || has_odd_mark(word.text);
            }
        }
    }
}

bool is_print(const SeenPage& page) {
    return sureness_of(page) >= least_sure || sure_words_of(page) >= enough_sure;
}

bool is_hopeless(const SeenPage& part) {
    std::size_t words = 0;
    for (const SeenLine& line : part.lines) {
        words += line.words.size();
    }
    return words >= enough_to_judge && sureness_of(part) < hopeless &&
           sure_words_of(part) < few_sure;
}

double sureness_of(const SeenPage& page) {
    double sure = 0.0;
    double letters = 0.0;
    for (const SeenLine& line : page.lines) {
        for (const SeenWord& word : line.words) {
            sure += word.confidence * static_cast<double>(word.text.size());
            letters += static_cast<double>(word.text.size());
        }
    }
    return letters > 0 ? sure / letters : 0.0;
}

} // namespace loafwright::paper
