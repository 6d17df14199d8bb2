// SPDX-License-Identifier: Apache-2.0
#include "shell/paper/furniture.hpp"

#include <algorithm>
#include <cctype>
#include <map>
#include <regex>
#include <set>
#include <string>

namespace loafwright::paper {

namespace {

constexpr double margin_share = 0.125;

bool in_margin(const SeenPage& page, const SeenLine& line) {
    return line.box.bottom < margin_share * page.height ||
           line.box.top > (1.0 - margin_share) * page.height;
}

// Small letters only, so that "Chapter 2 · 31" and "Chapter 2 · 32" are one.
std::string shape_of(const SeenLine& line) {
    std::string shape;
    for (const char c : words_of(line)) {
        const auto byte = static_cast<unsigned char>(c);
        if (std::isalpha(byte) != 0) {
            shape += static_cast<char>(std::tolower(byte));
        }
    }
    return shape;
}

bool is_page_number(const std::string& text) {
    static const std::regex form(
        R"(^[\W_]*(page|p\.)?\s*(\d{1,4}|[ivxlc]{1,6})(\s*(/|of)\s*\d{1,4})?[\W_]*$)",
        std::regex::icase);
    return text.size() < 24 && std::regex_match(text, form);
}

bool is_browser_line(const std::string& text) {
    static const std::regex address(R"((https?://|www\.)\S+)", std::regex::icase);
    static const std::regex hour(R"(\d{1,4}[/.]\d{1,2}[/.]\d{1,4},?\s+\d{1,2}:\d{2})");
    return text.size() < 300 && (std::regex_search(text, address) || std::regex_search(text, hour));
}

// The number of a page that a camera saw badly ("Al" for 41): a scrap by itself at the foot.
bool is_scrap_at_foot(const SeenPage& page, const SeenLine& line) {
    constexpr std::size_t longest_scrap = 4;
    return page.picture && line.words.size() == 1 &&
           line.words.front().text.size() <= longest_scrap &&
           line.box.top > (1.0 - margin_share) * page.height &&
           std::none_of(page.lines.begin(), page.lines.end(), [&](const SeenLine& other) {
               return &other != &line && other.box.bottom > line.box.top - 2.0 * line.box.height();
           });
}

} // namespace

void take_furniture_away(std::vector<SeenPage>& pages) {
    std::map<std::string, std::size_t> seen_on;
    for (const SeenPage& page : pages) {
        std::set<std::string> here;
        for (const SeenLine& line : page.lines) {
            if (in_margin(page, line)) {
                here.insert(shape_of(line));
            }
        }
        for (const std::string& shape : here) {
            ++seen_on[shape];
        }
    }
    const auto is_furniture = [&](const SeenPage& page, const SeenLine& line) {
        if (!in_margin(page, line)) {
            return false;
        }
        const std::string text = words_of(line);
        const std::string shape = shape_of(line);
        const bool again = pages.size() > 1 && shape.size() > 2 &&
                           seen_on[shape] > std::max<std::size_t>(1, pages.size() / 2);
        return again || is_page_number(text) || is_browser_line(text) ||
               is_scrap_at_foot(page, line);
    };
    for (SeenPage& page : pages) {
        page.lines.erase(
            std::remove_if(page.lines.begin(),
                           page.lines.end(),
                           [&](const SeenLine& line) { return is_furniture(page, line); }),
            page.lines.end());
    }
}

} // namespace loafwright::paper
