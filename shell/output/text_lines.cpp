// SPDX-License-Identifier: Apache-2.0
//
// Text on a grid of columns: how wide it is, and where it may be broken. A number stays with its
// unit and a weekday with its time, because "1" at the end of a line and "h 35" at the start of the
// next is how a wait of an hour is lost.
#include "shell/output/text_lines.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

namespace loafwright::output {

namespace {

struct Letter {
    std::uint32_t code = 0;
    std::size_t bytes = 1;
};

// The letter at the start of `text`; a byte that begins none is a letter of its own.
Letter letter_at(std::string_view text) {
    const auto byte = [text](std::size_t i) {
        return static_cast<std::uint32_t>(static_cast<unsigned char>(text[i]));
    };
    const std::uint32_t first = byte(0);
    const std::size_t length = first < 0x80   ? 1
                               : first < 0xC2 ? 0
                               : first < 0xE0 ? 2
                               : first < 0xF0 ? 3
                               : first < 0xF5 ? 4
                                              : 0;
    if (length <= 1 || text.size() < length) {
        return {first, 1};
    }
    std::uint32_t code = first & (0xFFU >> (length + 1));
    for (std::size_t i = 1; i < length; ++i) {
        if ((byte(i) & 0xC0U) != 0x80U) {
            return {first, 1};
        }
        code = (code << 6U) | (byte(i) & 0x3FU);
    }
    return {code, length};
}

using Range = std::pair<std::uint32_t, std::uint32_t>;

template <std::size_t Count>
bool inside(const std::array<Range, Count>& ranges, std::uint32_t code) {
    return std::any_of(ranges.begin(), ranges.end(), [code](const Range& range) {
        return code >= range.first && code <= range.second;
    });
}

// The ranges that occur in print, after Unicode Standard Annex 11 (wide) and the general categories
// Mn and Cf.
constexpr std::array<Range, 6> no_width = {Range{0x0300, 0x036F},
                                           Range{0x1AB0, 0x1AFF},
                                           Range{0x200B, 0x200F},
                                           Range{0x20D0, 0x20FF},
                                           Range{0xFE00, 0xFE0F},
                                           Range{0xFE20, 0xFE2F}};
constexpr std::array<Range, 9> double_width = {Range{0x1100, 0x115F},
                                               Range{0x2E80, 0xA4CF},
                                               Range{0xAC00, 0xD7A3},
                                               Range{0xF900, 0xFAFF},
                                               Range{0xFE30, 0xFE6F},
                                               Range{0xFF00, 0xFF60},
                                               Range{0xFFE0, 0xFFE6},
                                               Range{0x1F300, 0x1F9FF},
                                               Range{0x20000, 0x3FFFD}};

std::size_t columns_of_letter(std::uint32_t code) {
    return inside(no_width, code) ? 0 : inside(double_width, code) ? 2 : 1;
}

bool is_control(std::uint32_t code) {
    // C0, DEL and C1; and the marks that turn the direction of writing.
    return code < 0x20 || (code >= 0x7F && code < 0xA0) || (code >= 0x202A && code <= 0x202E) ||
           (code >= 0x2066 && code <= 0x2069);
}

bool has_digit_first(std::string_view word) {
    if (!word.empty() && (word.front() == '(' || word.front() == '+')) {
        word.remove_prefix(1);
    }
    for (const std::string_view quarters : {"¼", "½", "¾"}) {
        if (word.substr(0, quarters.size()) == quarters) {
            return true;
        }
    }
    return !word.empty() && word.front() >= '0' && word.front() <= '9';
}

// "g" out of "g," or "g)": what a unit looks like inside a sentence.
std::string_view without_marks(std::string_view word) {
    while (!word.empty() && (word.back() == ',' || word.back() == '.' || word.back() == ';' ||
                             word.back() == ':' || word.back() == ')')) {
        word.remove_suffix(1);
    }
    while (!word.empty() && word.front() == '(') {
        word.remove_prefix(1);
    }
    return word;
}

template <std::size_t Count>
bool is_one_of(const std::array<std::string_view, Count>& words, std::string_view word) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

constexpr std::array<std::string_view, 32> units = {
    "g",   "kg",   "ml",     "l",      "cm",   "mm",  "min",   "minutes",
    "h",   "hour", "hours",  "°C",     "°F",   "%",   "tsp",   "tbsp",
    "cup", "cups", "oz",     "lb",     "days", "day", "litre", "pint",
    "in",  "inch", "inches", "minute", "am",   "pm",  "noon",  "midnight"};
constexpr std::array<std::string_view, 11> before_number = {
    "gas", "fan", "mark", "h", "+", "Mon", "Tue", "Wed", "Thu", "Fri", "about"};
constexpr std::array<std::string_view, 4> more_before_number = {"Sat", "Sun", "by", "from"};
constexpr std::array<std::string_view, 12> months = {
    "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

constexpr std::array<std::string_view, 3> before_day = {"about", "by", "from"};
constexpr std::array<std::string_view, 7> weekdays = {
    "Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};

bool stay_together(std::string_view before, std::string_view after) {
    const std::string_view bare = without_marks(before);
    const bool ends_a_phrase = !before.empty() && (before.back() == ',' || before.back() == '.' ||
                                                   before.back() == ';' || before.back() == ')');
    if (ends_a_phrase) {
        return false;
    }
    // The words that make a time the last one.
    if ((bare == "at" && after == "the") || without_marks(after) == "latest") {
        return true;
    }
    if (has_digit_first(before)) {
        const std::string_view unit = without_marks(after);
        // "1 1/2" is one number.
        const bool fraction = has_digit_first(after) && unit.find('/') != std::string_view::npos;
        return fraction || is_one_of(units, unit) || is_one_of(months, unit);
    }
    if (is_one_of(before_day, bare) && is_one_of(weekdays, after)) {
        return true;
    }
    return has_digit_first(after) &&
           (is_one_of(before_number, bare) || is_one_of(more_before_number, bare));
}

// As many letters as fit into `columns`, at least one.
std::size_t bytes_that_fit(std::string_view text, std::size_t columns) {
    std::size_t used = 0;
    std::size_t at = 0;
    while (at < text.size()) {
        const Letter letter = letter_at(text.substr(at));
        const std::size_t width = columns_of_letter(letter.code);
        if (used + width > columns && at > 0) {
            break;
        }
        used += width;
        at += letter.bytes;
    }
    return at;
}

} // namespace

std::vector<std::string> unbreakable(std::string_view text) {
    std::vector<std::string> blocks;
    std::string last_word;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t begin = text.find_first_not_of(' ', at);
        if (begin == std::string_view::npos) {
            break;
        }
        at = std::min(text.find(' ', begin), text.size());
        const std::string word(text.substr(begin, at - begin));
        if (!blocks.empty() && stay_together(last_word, word)) {
            blocks.back() += " " + word;
        } else {
            blocks.push_back(word);
        }
        last_word = word;
    }
    return blocks;
}

std::size_t columns_of(std::string_view text) {
    std::size_t columns = 0;
    while (!text.empty()) {
        const Letter letter = letter_at(text);
        columns += columns_of_letter(letter.code);
        text.remove_prefix(letter.bytes);
    }
    return columns;
}

std::string printable(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const Letter letter = letter_at(text);
        if (letter.code == ' ' || letter.code == '\n' || letter.code == '\t' ||
            letter.code == '\r') {
            if (!out.empty() && out.back() != ' ') {
                out += ' ';
            }
        } else if (!is_control(letter.code)) {
            out += text.substr(0, letter.bytes);
        }
        text.remove_prefix(letter.bytes);
    }
    while (!out.empty() && out.back() == ' ') {
        out.pop_back();
    }
    return out;
}

std::vector<std::string> wrapped(std::string_view text, std::size_t columns) {
    const std::size_t width = std::max<std::size_t>(columns, 1);
    std::vector<std::string> lines;
    std::string line;
    const auto finish = [&lines, &line]() {
        lines.push_back(line);
        line.clear();
    };
    for (const std::string& block : unbreakable(text)) {
        if (!line.empty() && columns_of(line) + 1 + columns_of(block) > width) {
            finish();
        }
        std::string_view rest = block;
        // Too long for any line: at its own blanks if it has some, else between letters.
        while (columns_of(rest) > width) {
            std::size_t cut = bytes_that_fit(rest, width);
            const std::size_t blank = rest.substr(0, cut + 1).rfind(' ');
            if (blank != std::string_view::npos && blank > 0) {
                cut = blank;
            }
            line = rest.substr(0, cut);
            finish();
            rest.remove_prefix(cut);
            if (!rest.empty() && rest.front() == ' ') {
                rest.remove_prefix(1);
            }
        }
        if (!line.empty()) {
            line += ' ';
        }
        line += rest;
    }
    if (!line.empty() || lines.empty()) {
        finish();
    }
    return lines;
}

std::string padded(std::string_view text, std::size_t columns) {
    const std::size_t used = columns_of(text);
    return std::string(text) + std::string(used < columns ? columns - used : 0, ' ');
}

std::string padded_left(std::string_view text, std::size_t columns) {
    const std::size_t used = columns_of(text);
    return std::string(used < columns ? columns - used : 0, ' ') + std::string(text);
}

} // namespace loafwright::output
