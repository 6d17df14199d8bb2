// SPDX-License-Identifier: Apache-2.0
//
// How values are written into the generated source files.

#include "engine/knowledge/generate/constants.hpp"

#include <fmt/format.h>

namespace loafwright::generate {

std::string quoted(std::string_view text) {
    std::string literal = "\"";
    for (const char letter : text) {
        switch (letter) {
        case '"':
            literal += "\\\"";
            break;
        case '\\':
            literal += "\\\\";
            break;
        case '\n':
            literal += "\\n";
            break;
        case '?': // keeps trigraphs away from compilers that still read them
            literal += "\\?";
            break;
        default:
            literal += letter;
        }
    }
    return literal + "\"";
}

std::string literal(double value) {
    std::string digits = fmt::format("{}", value);
    if (digits.find_first_of(".e") == std::string::npos) {
        digits += ".0";
    }
    return digits;
}

std::string literal(const std::optional<double>& value) {
    return value ? literal(*value) : "std::nullopt";
}

std::string tagged(std::string_view type, const std::optional<double>& value) {
    return value ? fmt::format("{}{{{}}}", type, literal(*value)) : "std::nullopt";
}

std::string band(std::string_view type, const Figures& figures) {
    return fmt::format("Band<{0}>{{{0}{{{1}}}, {0}{{{2}}}, {0}{{{3}}}}}",
                       type,
                       literal(figures.low),
                       literal(figures.likely),
                       literal(figures.high));
}

std::string band(std::string_view type, const std::optional<Figures>& figures) {
    return figures ? band(type, *figures) : "std::nullopt";
}

std::string enumerator(std::string_view type, const std::optional<std::string>& name) {
    return name ? fmt::format("{}::{}", type, *name) : "std::nullopt";
}

std::string WordPool::range_of(const std::vector<std::string>& words) {
    const std::size_t first = words_.size();
    words_.insert(words_.end(), words.begin(), words.end());
    return fmt::format("{{{}, {}}}", first, words.size());
}

std::string WordPool::definition() const {
    if (words_.empty()) {
        return {};
    }
    std::string lines = "constexpr std::string_view words[] = {\n";
    for (const std::string& word : words_) {
        lines += "    " + quoted(word) + ",\n";
    }
    return lines + "};\n\n";
}

bool SeenKeys::add(const Row& row, std::string_view what, const std::string& key) {
    const auto [place, is_new] = lines_.emplace(key, row.line());
    if (!is_new) {
        row.fault(fmt::format(
            "{} \"{}\" is there already, in the row of line {}", what, key, place->second));
    }
    return is_new;
}

} // namespace loafwright::generate
