// SPDX-License-Identifier: Apache-2.0
//
// Lines and what stands at their ends: list marks, rules, marks of emphasis.
#include "engine/reading/lines.hpp"

#include <algorithm>

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

} // namespace loafwright::reading
