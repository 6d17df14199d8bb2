// SPDX-License-Identifier: Apache-2.0
#include "tests/output/svg_outline.hpp"

#include <fmt/format.h>
#include <utf8.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <sstream>

namespace loafwright::output {

namespace {

const std::string two_letters = "\xEF\xBF\xBD";

std::string attribute(const std::string& tag, const std::string& name) {
    const std::string begin = " " + name + "=\"";
    const std::size_t at = tag.find(begin);
    if (at == std::string::npos) {
        return "";
    }
    const std::size_t from = at + begin.size();
    return tag.substr(from, tag.find('"', from) - from);
}

double number(const std::string& text) {
    return std::strtod(text.c_str(), nullptr);
}

Shown shape_of(const std::string& path) {
    Shown shape{"drawn", 1e9, 1e9, -1e9, -1e9};
    std::istringstream words(path);
    std::string x;
    while (words >> x) {
        std::string y;
        if (x.find_first_of("0123456789") != std::string::npos && words >> y) {
            shape.x = std::min(shape.x, number(x));
            shape.y = std::min(shape.y, number(y));
            shape.to_x = std::max(shape.to_x, number(x));
            shape.to_y = std::max(shape.to_y, number(y));
        }
    }
    return shape;
}

struct Line {
    double x = 0.0;
    double y = 0.0;
    double to_x = 0.0;
    double to_y = 0.0;
    std::string words;
    bool is_read = false;
};

Line read_line(const std::string& text) {
    Line line;
    std::istringstream stream(text);
    line.is_read = static_cast<bool>(stream >> line.x >> line.y >> line.to_x >> line.to_y);
    std::getline(stream >> std::ws, line.words);
    return line;
}

bool near(double a, double b, double points) {
    return std::fabs(a - b) <= points;
}

} // namespace

std::vector<Shown> outline_of(const std::string& svg, const std::string& text) {
    std::vector<Shown> outline;
    std::map<std::string, std::string> letters;
    auto letter = text.begin();
    std::size_t at = svg.find("</defs>");
    bool in_run = false;
    for (at = svg.find('<', at + 1); at != std::string::npos; at = svg.find('<', at + 1)) {
        const std::string tag = svg.substr(at, svg.find('>', at) - at);
        if (tag.rfind("<use", 0) != 0) {
            in_run = false;
            if (tag.rfind("<path", 0) == 0) {
                outline.push_back(shape_of(attribute(tag, "d")));
            }
            continue;
        }
        const double x = number(attribute(tag, "x"));
        const double y = number(attribute(tag, "y"));
        if (!in_run) {
            outline.push_back({"", x, y, x, y});
            in_run = true;
        }
        std::string stands_for = two_letters;
        if (letter != text.end()) {
            const auto from = letter;
            utf8::next(letter, text.end());
            stands_for.assign(from, letter);
        }
        const auto [known, is_new] = letters.emplace(attribute(tag, "xlink:href"), stands_for);
        outline.back().words += known->second == stands_for ? stands_for : two_letters;
        outline.back().to_x = x;
    }
    return outline;
}

std::string written(const std::vector<Shown>& outline) {
    std::string out;
    for (const Shown& shown : outline) {
        out += fmt::format("{:4.0f} {:4.0f} {:4.0f} {:4.0f}  {}\n",
                           shown.x,
                           shown.y,
                           shown.to_x,
                           shown.to_y,
                           shown.words.substr(0, shown.words.find_last_not_of(' ') + 1));
    }
    return out;
}

std::string difference(const std::string& golden, const std::string& now, double points) {
    std::istringstream was(golden);
    std::istringstream is(now);
    std::string before;
    std::string after;
    while (true) {
        const bool more_before = static_cast<bool>(std::getline(was, before));
        const bool more_after = static_cast<bool>(std::getline(is, after));
        if (!more_before && !more_after) {
            return "";
        }
        if (more_before != more_after) {
            return more_before ? "gone: " + before : "new: " + after;
        }
        const Line a = read_line(before);
        const Line b = read_line(after);
        const bool same = a.is_read && b.is_read && a.words == b.words && near(a.x, b.x, points) &&
                          near(a.y, b.y, points) && near(a.to_x, b.to_x, points) &&
                          near(a.to_y, b.to_y, points);
        if (!same) {
            return "was " + before + "\nis  " + after;
        }
    }
}

} // namespace loafwright::output
