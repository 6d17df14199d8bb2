// SPDX-License-Identifier: Apache-2.0
//
// The same page in several character sets. Source of the bytes: WHATWG Encoding,
// index-windows-1252; The Unicode Standard, 3.9 and 3.10 (UTF-8, UTF-16).
#include "shell/web_page/charset.hpp"
#include "shell/web_page/web_page.hpp"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace loafwright::web_page {
namespace {

using namespace std::string_view_literals;

constexpr std::string_view words = "Gran\u2019s loaf\n\nBake it at 220\u00B0C for 1\u00BD hours.\n";

std::string text(std::string_view page) {
    const auto read = words_of(page);
    return read ? read->front().text : one_line(read.error().front());
}

std::string utf16(std::string_view ascii, bool little) {
    std::string made;
    for (const char c : ascii) {
        // Bytes above 127 are latin-1 here; 0x92 stands for the apostrophe of windows-1252.
        const auto byte = static_cast<unsigned char>(c);
        const char high = byte == 0x92 ? '\x20' : '\0';
        const char low = byte == 0x92 ? '\x19' : c;
        made += little ? low : high;
        made += little ? high : low;
    }
    return made;
}

constexpr std::string_view western =
    "<html><head><meta charset=windows-1252></head><body><h1>Gran\x92s loaf</h1>"
    "<p>Bake it at 220\xB0"
    "C for 1\xBD hours.</p></body></html>";

TEST(charset, windows_1252_is_what_is_not_utf_8) {
    EXPECT_EQ(text(western), words);
}

TEST(charset, utf_16_is_known_by_its_mark_or_by_its_first_tag) {
    EXPECT_EQ(text("\xFF\xFE" + utf16(western, true)), words);
    EXPECT_EQ(text("\xFE\xFF" + utf16(western, false)), words);
    EXPECT_EQ(text(utf16(western, true)), words);
    EXPECT_EQ(text(utf16(western, false)), words);
    EXPECT_TRUE(looks_like_html("\xFF\xFE" + utf16(western, true)));
}

TEST(charset, utf_8_is_utf_8_whatever_the_page_says) {
    const std::string body = "<h1>Gran\u2019s loaf</h1><p>Bake it at 220\u00B0C for 1\u00BD "
                             "hours.</p>";
    EXPECT_EQ(text(body), words);
    EXPECT_EQ(text("\xEF\xBB\xBF" + body), words);
    EXPECT_EQ(text("<meta charset=iso-8859-1>" + body), words);
}

TEST(charset, a_stray_byte_among_utf_8_spoils_only_itself) {
    EXPECT_EQ(utf8_of("1\u00BD \x92 2\u00BD"), "1\u00BD \uFFFD 2\u00BD");
}

TEST(charset, a_pair_of_utf_16_is_one_character_and_half_a_pair_is_none) {
    EXPECT_EQ(utf8_of("\xFF\xFE\x3C\xD8\x5E\xDF"sv), "\U0001F35E");
    EXPECT_EQ(utf8_of("\xFF\xFE\x3C\xD8\x41\x00"sv), "\uFFFDA");
}

TEST(charset, line_ends_become_line_feeds_and_control_characters_go) {
    EXPECT_EQ(utf8_of("a\r\nb\rc\x01\x7F\n"), "a\nb\nc\n");
}

TEST(charset, nul_bytes_are_no_text) {
    EXPECT_EQ(utf8_of("text\0more"sv), std::nullopt);
}

TEST(looks_like_html, pages_and_pieces_of_pages_do) {
    for (const std::string_view page : {"<!DOCTYPE html>",
                                        "<!doctype HTML PUBLIC \"x\">",
                                        "\xEF\xBB\xBF\n  <html lang=en>",
                                        "<?xml version='1.0'?><html xmlns='x'>",
                                        "<!-- saved --><!-- again -->\n<HTML>",
                                        "<body>",
                                        "<p>Words</p>",
                                        "<div class=a><p>Words</div>",
                                        "<meta charset=utf-8><p>x</p>",
                                        "<article>a</article>",
                                        "<ul><li>a</ul>",
                                        "<script>a</script>"}) {
        EXPECT_TRUE(looks_like_html(page)) << page;
    }
}

TEST(looks_like_html, text_does_not) {
    for (const std::string_view page : {""sv,
                                        "Knead."sv,
                                        "<3 bread"sv,
                                        "# Loaf\n\nUse <b>strong</b> flour."sv,
                                        "<!-- a source -->\n\nKnead for ten minutes."sv,
                                        "<!-- never closed <html>"sv,
                                        "<https://example.org> has it"sv,
                                        "<img src=a.png>\n\nKnead."sv,
                                        "< p >a</p>"sv,
                                        "%PDF-1.7 <html>"sv,
                                        "\x89PNG\0<html>"sv,
                                        "<p"sv,
                                        "<"sv,
                                        "- 500 g <html> flour"sv}) {
        EXPECT_FALSE(looks_like_html(page)) << page;
    }
}

} // namespace
} // namespace loafwright::web_page
