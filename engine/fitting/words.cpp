// SPDX-License-Identifier: Apache-2.0
//
// Small things about words and whole minutes that the files of this room share, and the page with
// them: a length is written the same way wherever it stands.
#include "engine/fitting/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace loafwright::fitting {

namespace {

bool is_word_byte(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte >= 0x80 || (byte >= 'a' && byte <= 'z') || (byte >= '0' && byte <= '9');
}

} // namespace

std::string lower_case(std::string_view text) {
    std::string lowered(text);
    for (char& c : lowered) {
        if (c >= 'A' && c <= 'Z') {
            c = static_cast<char>(c - 'A' + 'a');
        }
    }
    return lowered;
}

bool has_word(std::string_view text, std::string_view word) {
    if (word.empty()) {
        return false;
    }
    for (std::size_t at = text.find(word); at != std::string_view::npos;
         at = text.find(word, at + 1)) {
        const std::size_t end = at + word.size();
        const bool starts = at == 0 || !is_word_byte(text[at - 1]);
        const bool ends = end == text.size() || !is_word_byte(text[end]);
        if (starts && ends) {
            return true;
        }
    }
    return false;
}

bool has_any_word(std::string_view text, std::initializer_list<std::string_view> words) {
    return std::any_of(
        words.begin(), words.end(), [text](std::string_view word) { return has_word(text, word); });
}

std::string duration_text(std::int64_t minutes) {
    if (minutes < 60) {
        return fmt::format("{} min", minutes);
    }
    if (minutes % 60 == 0) {
        return fmt::format("{} h", minutes / 60);
    }
    return fmt::format("{} h {:02}", minutes / 60, minutes % 60);
}

std::string degrees_text(Celsius temperature) {
    const double tenths = std::floor(temperature.degrees() * 10.0 + 0.5) / 10.0;
    if (tenths == std::floor(tenths)) {
        return fmt::format("{:.0f} °C", tenths);
    }
    return fmt::format("{:.1f} °C", tenths);
}

std::int64_t whole_minutes(Minutes minutes) {
    return std::max<std::int64_t>(0, static_cast<std::int64_t>(std::floor(minutes.count() + 0.5)));
}

std::int64_t nearest_five(Minutes minutes) {
    const auto fives = static_cast<std::int64_t>(std::floor(minutes.count() / 5.0 + 0.5));
    return std::max<std::int64_t>(5, 5 * fives);
}

std::int64_t next_five(Minutes minutes) {
    // A hair below the whole five counts as that five, so that 20 x 200/200 stays 20.
    const auto fives = static_cast<std::int64_t>(std::ceil(minutes.count() / 5.0 - 1e-9));
    return std::max<std::int64_t>(0, 5 * fives);
}

} // namespace loafwright::fitting
