// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/charset.hpp"

#include <utf8cpp/utf8/checked.h>
#include <utf8cpp/utf8/unchecked.h>

#include <algorithm>
#include <array>
#include <iterator>

namespace loafwright::web_page {
namespace {

constexpr char32_t replacement = 0xFFFD;

bool is_wanted(char32_t c) {
    return c == '\t' || c == '\n' || (c >= 0x20 && c != 0x7F && !(c >= 0x80 && c <= 0x9F));
}

std::uint8_t byte_at(std::string_view bytes, std::size_t at) {
    return static_cast<std::uint8_t>(bytes[at]);
}

enum class Order { little, big };

std::string from_utf16(std::string_view bytes, Order order) {
    std::string text;
    text.reserve(bytes.size() / 2);
    const auto unit = [&](std::size_t at) {
        const std::uint32_t first = byte_at(bytes, at);
        const std::uint32_t second = byte_at(bytes, at + 1);
        return order == Order::little ? first | (second << 8U) : (first << 8U) | second;
    };
    for (std::size_t at = 0; at + 1 < bytes.size(); at += 2) {
        std::uint32_t c = unit(at);
        if (c >= 0xD800 && c <= 0xDBFF && at + 3 < bytes.size()) {
            const std::uint32_t low = unit(at + 2);
            if (low >= 0xDC00 && low <= 0xDFFF) {
                c = 0x10000 + ((c - 0xD800) << 10U) + (low - 0xDC00);
                at += 2;
            }
        }
        if (is_wanted(c)) {
            append_character(text, c);
        } else if (c == '\r') {
            text += '\n';
        }
    }
    return text;
}

/// How much of the text is UTF-8 and how much is not.
struct Fit {
    std::size_t sequences = 0;
    std::size_t strays = 0;
};

// Copies what is UTF-8, puts U+FFFD where it is not.
Fit copy_utf8(std::string_view bytes, std::string& text) {
    Fit fit;
    auto at = bytes.begin();
    while (true) {
        const auto bad = utf8::find_invalid(at, bytes.end());
        while (at != bad) {
            const auto begin = at;
            const std::uint32_t c = utf8::unchecked::next(at);
            fit.sequences += c >= 0x80 ? 1U : 0U;
            if (is_wanted(c)) {
                text.append(begin, at);
            } else if (c == '\r' && (at == bytes.end() || *at != '\n')) {
                text += '\n'; // a line feed that follows makes one line end of both
            }
        }
        if (at == bytes.end()) {
            return fit;
        }
        ++at;
        ++fit.strays;
        append_character(text, replacement);
    }
}

std::string from_windows_1252(std::string_view bytes) {
    std::string text;
    text.reserve(bytes.size() + bytes.size() / 8);
    for (const char byte : bytes) {
        const auto c = static_cast<std::uint8_t>(byte);
        if (c >= 0x80 && c <= 0x9F) {
            append_character(text, windows_1252(c));
        } else if (is_wanted(c)) {
            append_character(text, c);
        } else if (c == '\r') {
            text += '\n';
        }
    }
    return text;
}

bool begins(std::string_view bytes, std::string_view with) {
    return bytes.substr(0, with.size()) == with;
}

} // namespace

char32_t windows_1252(std::uint8_t byte) {
    static constexpr std::array<char32_t, 32> high{
        0x20AC,      replacement, 0x201A, 0x0192, 0x201E, 0x2026,      0x2020, 0x2021,
        0x02C6,      0x2030,      0x0160, 0x2039, 0x0152, replacement, 0x017D, replacement,
        replacement, 0x2018,      0x2019, 0x201C, 0x201D, 0x2022,      0x2013, 0x2014,
        0x02DC,      0x2122,      0x0161, 0x203A, 0x0153, replacement, 0x017E, 0x0178};
    return high[byte - 0x80U];
}

void append_character(std::string& text, char32_t character) {
    const bool possible = character < 0x110000 && !(character >= 0xD800 && character <= 0xDFFF);
    utf8::unchecked::append(static_cast<std::uint32_t>(possible ? character : replacement),
                            std::back_inserter(text));
}

std::optional<std::string> utf8_of(std::string_view bytes) {
    using namespace std::string_view_literals;
    if (begins(bytes, "\xFF\xFE"sv) || begins(bytes, "<\0"sv)) {
        return from_utf16(bytes.substr(bytes[0] == '<' ? 0 : 2), Order::little);
    }
    if (begins(bytes, "\xFE\xFF"sv) || begins(bytes, "\0<"sv)) {
        return from_utf16(bytes.substr(bytes[0] == '\0' ? 0 : 2), Order::big);
    }
    if (begins(bytes, "\xEF\xBB\xBF"sv)) {
        bytes.remove_prefix(3);
    }
    if (bytes.find('\0') != std::string_view::npos) {
        return std::nullopt;
    }
    std::string text;
    text.reserve(bytes.size());
    const Fit fit = copy_utf8(bytes, text);
    // A page that was cut or glued in the middle has a stray byte or two among many good ones.
    if (fit.strays > fit.sequences) {
        return from_windows_1252(bytes);
    }
    return text;
}

} // namespace loafwright::web_page
