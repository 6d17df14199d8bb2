// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/plain.hpp"

#include "shell/web_page/charset.hpp"
#include "shell/web_page/tags.hpp"

#include <utf8cpp/utf8/unchecked.h>

#include <cstdint>

namespace loafwright::web_page {
namespace {

constexpr std::uint32_t fraction_bar = 0x2044;
constexpr std::uint32_t division_bar = 0x2215;

enum class Meaning { letter, blank, nothing };

// Unicode 15, White_Space and Default_Ignorable_Code_Point, as far as they turn up in prose.
Meaning meaning_of(std::uint32_t c) {
    if (c <= 0x20 || c == 0x7F) {
        return c == 0x09 || c == 0x0A || c == 0x0C || c == 0x0D || c == 0x20 ? Meaning::blank
                                                                             : Meaning::nothing;
    }
    if (c < 0x85) {
        return Meaning::letter;
    }
    if (c == 0x85 || c == 0xA0 || c == 0x1680 || (c >= 0x2000 && c <= 0x200A) || c == 0x2028 ||
        c == 0x2029 || c == 0x202F || c == 0x205F || c == 0x3000) {
        return Meaning::blank;
    }
    if (c == 0xAD || c == 0x034F || c == 0x061C || (c >= 0x200B && c <= 0x200F) ||
        (c >= 0x202A && c <= 0x202E) || (c >= 0x2060 && c <= 0x206F) ||
        (c >= 0xFE00 && c <= 0xFE0F) || c == 0xFEFF || (c >= 0xE000 && c <= 0xF8FF) ||
        c == 0xFFFC || (c >= 0xE0000 && c <= 0xE0FFF)) {
        return Meaning::nothing;
    }
    return Meaning::letter;
}

bool is_name_letter(char c) {
    return is_ascii_letter(c) || (c >= '0' && c <= '9');
}

// The length of what reads as an entity at `at`, with its semicolon; 0 where there is none.
std::size_t entity_length(std::string_view text, std::size_t at) {
    std::size_t i = at + 1;
    if (i < text.size() && text[i] == '#') {
        ++i;
    }
    const std::size_t begin = i;
    while (i < text.size() && i - begin < 32 && is_name_letter(text[i])) {
        ++i;
    }
    return i > begin && i < text.size() && text[i] == ';' ? i + 1 - at : 0;
}

bool opens_tag(std::string_view text, std::size_t at) {
    const char c = at + 1 < text.size() ? text[at + 1] : '\0';
    return is_ascii_letter(c) || c == '/' || c == '!' || c == '?';
}

} // namespace

std::string plain_words(std::string_view text) {
    std::string made;
    made.reserve(text.size());
    bool blank_comes = false;
    auto at = text.begin();
    while (at != text.end()) {
        const auto begin = at;
        std::uint32_t c = static_cast<std::uint8_t>(*at);
        if (c < 0x80) {
            ++at;
        } else {
            c = utf8::unchecked::next(at);
        }
        const bool is_c1 = c >= 0x80 && c <= 0x9F && c != 0x85;
        const Meaning meaning = is_c1 ? Meaning::letter : meaning_of(c);
        if (meaning == Meaning::blank) {
            blank_comes = !made.empty();
        } else if (meaning == Meaning::letter) {
            if (blank_comes) {
                made += ' ';
                blank_comes = false;
            }
            if (c == fraction_bar || c == division_bar) {
                made += '/';
            } else if (is_c1) {
                // "&#150;" means the dash of windows-1252 (WHATWG HTML, section 13.2.5.80).
                append_character(made, windows_1252(static_cast<std::uint8_t>(c)));
            } else {
                made.append(begin, at);
            }
        }
    }
    return made;
}

bool has_markup(std::string_view text) {
    for (std::size_t i = text.find_first_of("<&"); i != std::string_view::npos;
         i = text.find_first_of("<&", i + 1)) {
        if (text[i] == '<' ? opens_tag(text, i) : entity_length(text, i) > 0) {
            return true;
        }
    }
    return false;
}

std::string without_markup(std::string_view text) {
    std::string made;
    made.reserve(text.size());
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool is_tag = text[i] == '<' && opens_tag(text, i);
        const std::size_t length = text[i] == '&' ? entity_length(text, i) : 0;
        // A blank in its place, or what stands on both sides might read as the next one.
        made += is_tag || length > 0 ? ' ' : text[i];
        i += length > 0 ? length - 1 : 0;
    }
    return made;
}

} // namespace loafwright::web_page
