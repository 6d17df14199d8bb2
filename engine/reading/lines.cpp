// SPDX-License-Identifier: Apache-2.0
//
// Lines and what stands at their ends: list marks, rules, marks of emphasis.
#include "engine/reading/lines.hpp"

#include <algorithm>
#include <cctype>

namespace loafwright::reading {

std::vector<Line> lines_of(std::string_view text) {
    std::vector<Line> lines;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t stop = std::min(text.find('\n', at), text.size());
        Line line;
        std::size_t begin = at;
        std::size_t end = stop;
        while (begin < end && (text[begin] == ' ' || text[begin] == '\t' || text[begin] == '\r')) {
            ++begin;
        }
        while (end > begin &&
               (text[end - 1] == ' ' || text[end - 1] == '\t' || text[end - 1] == '\r')) {
            --end;
        }
        line.span = Span{begin, end};
        line.indent = begin - at;
        line.text = text.substr(begin, end - begin);
        lines.push_back(line);
        at = stop + 1;
    }
    return lines;
}

bool starts_with(std::string_view text, std::string_view head) {
    return text.substr(0, head.size()) == head;
}

// What stands in front of the words of a list item: "- ", "* ", "• ", "1. ", "2) ". 0: no list
// item.
std::size_t list_marker(std::string_view text, std::optional<int>& number) {
    if (starts_with(text, "- ") || starts_with(text, "* ") || starts_with(text, "+ ")) {
        return 2;
    }
    for (const std::string_view bullet :
         {"\xE2\x80\xA2", "\xC2\xB7", "\xE2\x80\xA3", "\xE2\x96\xAA", "\xE2\x97\xA6"}) {
        if (starts_with(text, bullet)) {
            return bullet.size();
        }
    }
    std::size_t digits = 0;
    while (digits < text.size() && digits < 3 && text[digits] >= '0' && text[digits] <= '9') {
        ++digits;
    }
    if (digits > 0 && digits + 1 < text.size() && (text[digits] == '.' || text[digits] == ')') &&
        text[digits + 1] == ' ') {
        int value = 0;
        for (std::size_t at = 0; at < digits; ++at) {
            value = value * 10 + (text[at] - '0');
        }
        number = value;
        return digits + 2;
    }
    return 0;
}

std::string_view stripped(std::string_view text, std::string_view marks) {
    while (!text.empty() && marks.find(text.front()) != std::string_view::npos) {
        text.remove_prefix(1);
    }
    while (!text.empty() && marks.find(text.back()) != std::string_view::npos) {
        text.remove_suffix(1);
    }
    return text;
}

bool all_capitals(std::string_view text) {
    std::size_t letters = 0;
    for (const char c : text) {
        if (c >= 'a' && c <= 'z') {
            return false;
        }
        letters += c >= 'A' && c <= 'Z' ? 1U : 0U;
    }
    return letters >= 3;
}

bool is_rule(std::string_view text) {
    return text.size() >= 3 && (text.find_first_not_of('-') == std::string_view::npos ||
                                text.find_first_not_of('=') == std::string_view::npos ||
                                text.find_first_not_of('*') == std::string_view::npos ||
                                text.find_first_not_of('_') == std::string_view::npos);
}

// A wrapped line ends because the next word no longer fits. Where that word would have fitted,
// the writer ended the line, as on a card: each is a statement of its own.
bool broken_on_purpose(const std::vector<Line>& lines, std::size_t first, std::size_t last) {
    constexpr std::size_t fewest = 3;
    constexpr std::size_t widest = 100;
    std::size_t width = 0;
    for (std::size_t line = first; line <= last; ++line) {
        width = std::max(width, lines[line].text.size());
    }
    if (last - first + 1 < fewest || width > widest) {
        return false;
    }
    std::size_t breaks = 0;
    std::size_t on_purpose = 0;
    for (std::size_t line = first; line < last; ++line) {
        const std::string_view text = lines[line].text;
        const std::string_view next = lines[line + 1].text;
        const std::size_t word = std::min(next.find(' '), next.size());
        const bool goes_on = text.back() == ',' || text.back() == '-' || text.back() == '/';
        ++breaks;
        on_purpose += text.size() + 1 + word <= width && !goes_on ? 1U : 0U;
    }
    return on_purpose * 3 >= breaks * 2;
}

// Short, begins with an amount (or ends with one), does not end like a sentence.
bool looks_listed(std::string_view text) {
    const bool clock = text.size() > 5 && text[2] == ':' && text[5] == ' ';
    if (text.size() > 70 || text.empty() || text.back() == '.' || clock) {
        return false;
    }
    const auto first = static_cast<unsigned char>(text.front());
    const auto last = static_cast<unsigned char>(text.back());
    const bool digit_first = std::isdigit(first) != 0 || first == 0xC2 || first == 0xE2;
    const bool digit_near_end =
        text.size() > 3 && (std::isdigit(last) != 0 ||
                            std::isdigit(static_cast<unsigned char>(text[text.size() - 2])) != 0 ||
                            std::isdigit(static_cast<unsigned char>(text[text.size() - 3])) != 0);
    return digit_first || digit_near_end;
}

bool wrapped(std::string_view text) {
    return text.size() > 2 &&
           ((text.front() == '_' && text.find('_', 1) != std::string_view::npos) ||
            (text.front() == '=' && text.back() == '=') ||
            (starts_with(text, "**") && text.size() > 4 && text.substr(text.size() - 2) == "**"));
}

} // namespace loafwright::reading
