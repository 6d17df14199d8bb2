// SPDX-License-Identifier: Apache-2.0
#include "shell/paper/doubt.hpp"

#include <algorithm>
#include <string_view>

namespace loafwright::paper {

namespace {

// Measured with scripts/score-intake: below it stand the wrong numbers.
constexpr double sure_number = 0.90;

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool has_digit(std::string_view text) {
    return std::any_of(text.begin(), text.end(), is_digit);
}

// The recogniser knows no fraction in one glyph and takes it for a sign of percent.
bool has_percent(std::string_view text) {
    return text.find('%') != std::string_view::npos;
}

bool has_fraction(std::string_view text) {
    return text.find("½") != std::string_view::npos || text.find("¼") != std::string_view::npos ||
           text.find("¾") != std::string_view::npos;
}

} // namespace

void doubt_numbers(SeenPage& page) {
    for (SeenLine& line : page.lines) {
        for (SeenWord& word : line.words) {
            const bool percent = has_percent(word.text);
            if (percent) {
                word.doubted = true;
                word.maybe = {"½", "¾", "¼", "%"};
            }
            if (has_digit(word.text) || has_fraction(word.text)) {
                word.doubted = word.doubted || word.confidence < sure_number;
            }
        }
    }
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
