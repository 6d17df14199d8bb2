// SPDX-License-Identifier: Apache-2.0
//
// Pages made to hurt. A test that hangs or overflows the stack (8 MiB, as is usual) fails.
#include "engine/diagnostic/diagnostic.hpp"
#include "shell/web_page/lean_page.hpp"
#include "shell/web_page/plain.hpp"
#include "shell/web_page/tree.hpp"
#include "shell/web_page/web_page.hpp"
#include "tests/web_page/skeletons.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::web_page {
namespace {

std::string times(std::string_view what, std::size_t count) {
    std::string all;
    all.reserve(what.size() * count);
    for (std::size_t i = 0; i < count; ++i) {
        all += what;
    }
    return all;
}

std::string code(std::string_view page) {
    const auto read = words_of(page);
    return read ? "" : read.error().front().code;
}

std::string first(std::string_view page) {
    const auto read = words_of(page);
    return read ? read->front().text : read.error().front().code;
}

// How deep the tree is that the parser made of a page.
std::size_t depth_of(std::string_view page) {
    const LeanPage lean = lean_page(page);
    const auto tree = Tree::of(lean.html);
    if (!tree) {
        return 0;
    }
    std::vector<std::size_t> depth(tree->nodes().size(), 0);
    std::size_t deepest = 0;
    for (std::size_t i = 1; i < depth.size(); ++i) {
        depth[i] = depth[tree->nodes()[i].parent] + 1;
        deepest = std::max(deepest, depth[i]);
    }
    return deepest;
}

constexpr std::size_t many = 200000;

TEST(hostile, nested_tags_are_as_quick_as_others) {
    for (const std::string_view name : {"div", "b", "span", "ul", "table", "section"}) {
        const std::string open = "<" + std::string(name) + ">";
        SCOPED_TRACE(name);
        EXPECT_LE(depth_of(times(open, many)), 3 * deepest_tags);
        words_of(times(open, many) + "words" + times("</" + std::string(name) + ">", many));
    }
}

TEST(hostile, no_element_nests_deeper_than_is_kept) {
    for (const std::string_view name :
         {"a",        "p",        "li",       "td",       "h1",    "form",   "button",
          "svg",      "font",     "dl",       "dd",       "sup",   "nobr",   "x-box",
          "object",   "select",   "template", "math",     "pre",   "ruby",   "rt",
          "option",   "frameset", "body",     "html",     "head",  "title",  "marquee",
          "noscript", "applet",   "caption",  "colgroup", "tbody", "center", "details",
          "dialog",   "textarea", "plaintext"}) {
        const std::string open = "<" + std::string(name) + ">";
        SCOPED_TRACE(name);
        EXPECT_LE(depth_of(times(open, 5000)), 3 * deepest_tags);
        EXPECT_LE(depth_of(times(open + "x", 5000)), 3 * deepest_tags);
        words_of(times("</" + std::string(name) + ">", 5000) + "words");
    }
}

TEST(hostile, nested_tags_lose_no_words) {
    EXPECT_EQ(first(times("<div>", many) + "Knead for ten minutes." + times("</div>", many)),
              "Knead for ten minutes.\n");
    EXPECT_EQ(first(times("<div itemscope itemprop=x>", 50000) + "Knead for ten minutes."),
              "Knead for ten minutes.\n");
}

TEST(hostile, tags_that_the_parser_ignores_do_not_add_up) {
    for (const std::string_view soup : {"<div><table></div></table>",
                                        "<table><div></table>",
                                        "<b itemprop=a><p></b>",
                                        "<td><div></td>",
                                        "<ul><li></ul></li>",
                                        "<p><div></p>",
                                        "<h1><h2></h1>",
                                        "<table><tr><td><table></td></tr>",
                                        "<a itemprop=b><div></a>",
                                        "<dl><dt></dl>",
                                        "<form><div></form>",
                                        "<table><caption><div></table>",
                                        "<li><div></li>",
                                        "<table><form></table>",
                                        "<pre><table></pre>",
                                        "<head><div></head>",
                                        "<body><div></body>",
                                        "<menu><table><li></menu>"}) {
        SCOPED_TRACE(soup);
        EXPECT_LE(depth_of(times(soup, 20000)), 3 * deepest_tags);
    }
}

TEST(hostile, one_tag_may_be_as_long_as_the_page) {
    EXPECT_EQ(first("<p title=\"" + times("x", 6000000) + "\">Knead for ten minutes.</p>"),
              "Knead for ten minutes.\n");
    std::string attributes;
    for (std::size_t i = 0; i < 400000; ++i) {
        attributes += " a" + std::to_string(i) + "=1";
    }
    EXPECT_EQ(first("<p" + attributes + ">Knead for ten minutes.</p>"), "Knead for ten minutes.\n");
    EXPECT_EQ(first("<p" + times(" itemprop=x", 400000) + ">Knead for ten minutes.</p>"),
              "Knead for ten minutes.\n");
    EXPECT_EQ(first("<" + times("x", 6000000) + ">Knead for ten minutes."),
              "Knead for ten minutes.\n");
}

TEST(hostile, elements_that_never_end_are_looked_for_once) {
    for (const std::string_view name : {"svg", "select", "template", "object", "button", "video"}) {
        const std::string page = times("<" + std::string(name) + ">", many) + "Knead it well.";
        EXPECT_EQ(first(page), "Knead it well.\n") << name;
    }
    EXPECT_EQ(code(times("<!--", many)), "page_no_words");
    EXPECT_EQ(code(times("<script>", many)), "page_no_words");
}

std::string with_data(const std::string& data) {
    return "<script type='application/ld+json'>" + data + "</script><p>Knead for ten minutes.</p>";
}

TEST(hostile, deep_and_long_data_is_passed_over) {
    const std::string words = "Knead for ten minutes.\n";
    EXPECT_EQ(first(with_data(times("[", many))), words);
    EXPECT_EQ(first(with_data(times("{\"a\":", many))), words);
    EXPECT_EQ(first(with_data(times("[", many) + times("]", many))), words);
    EXPECT_EQ(first(with_data("[" + times("{}", many) + "]")), words);
    EXPECT_EQ(first(with_data(times(",", many) + times(" ,", many))), words);
    EXPECT_EQ(first(with_data(times("\"", many))), words);
    EXPECT_EQ(first(with_data(times("\\", many))), words);
    EXPECT_EQ(first(with_data(times("[}", many))), words);
    EXPECT_EQ(first(with_data("[\"" + times("x", 5000000) + "\"]")), words);
    EXPECT_EQ(first(times("<script type='application/ld+json'>{</script>", 50000) +
                    "<p>Knead for ten minutes.</p>"),
              words);
}

TEST(hostile, things_that_refer_to_one_another_end) {
    const std::string ring =
        R"({"@graph":[{"@type":"Recipe","name":"Ring","recipeIngredient":["flour"],)"
        R"("recipeInstructions":[{"@id":"#a"},{"@id":"#b"}]},)"
        R"({"@id":"#a","@type":"HowToSection","itemListElement":[{"@id":"#a"},{"@id":"#b"},{"@id":"#b"},{"@id":"#a"}]},)"
        R"({"@id":"#b","@type":"HowToStep","itemListElement":[{"@id":"#a"},{"@id":"#b"},{"@id":"#a"}]}]})";
    EXPECT_EQ(first(with_data(ring)).substr(0, 4), "Ring");
    const std::string refs = "<div itemscope itemtype='http://schema.org/Recipe' itemref='a b' "
                             "id=a><b itemprop=name id=b itemscope itemref='a b'>Ring</b></div>"
                             "<p>Knead for ten minutes.</p>";
    EXPECT_NE(first(refs).find("Knead"), std::string::npos);
    std::string web;
    for (int i = 0; i < 2000; ++i) {
        web += "<div itemscope itemtype=Recipe itemprop=recipeInstructions itemref='";
        for (int other = 0; other < 60; ++other) {
            web += "i" + std::to_string((i * 7 + other * 31) % 2000) + " ";
        }
        web += "' id=i" + std::to_string(i) + ">x</div>";
    }
    words_of(web);
}

TEST(hostile, text_written_as_text_again_and_again_ends) {
    std::string page = "<b>x</b> & so on";
    for (int i = 0; i < 12; ++i) {
        page = escaped(page);
    }
    EXPECT_FALSE(has_markup(first("<p>" + page + "</p>")));
}

TEST(hostile, a_page_that_is_cut_off_anywhere_is_answered) {
    const TypedRecipe recipe{"Cut loaf",
                             {},
                             {"500 g flour", "10 g salt & pepper"},
                             {{"Knead for ten minutes.", false}, {"Bake it for an hour.", false}}};
    for (const std::string& whole : {as_data_page(recipe), as_article_page(recipe)}) {
        for (std::size_t size = 0; size < whole.size(); ++size) {
            const auto read = words_of(std::string_view(whole).substr(0, size));
            EXPECT_TRUE(read ? !read->front().text.empty() : !read.error().empty());
        }
    }
}

TEST(hostile, what_is_refused_says_why_and_what_to_do) {
    EXPECT_EQ(code(""), "page_no_words");
    EXPECT_EQ(code("<html><body><script>var a;</script></body></html>"), "page_no_words");
    EXPECT_EQ(code(std::string(longest_page_bytes + 1, 'x')), "page_too_long");
    EXPECT_EQ(code(std::string("\x89PNG\r\n\0\0\0", 9)), "page_not_text");
    EXPECT_EQ(code(times("<p>x", 2000000)), "page_too_tangled");
    for (const std::string& page : {std::string(), std::string("\0", 1)}) {
        const auto read = words_of(page);
        ASSERT_FALSE(read.has_value());
        for (const Diagnostic& each : read.error()) {
            EXPECT_TRUE(is_known_code(each.code));
            EXPECT_FALSE(each.what.empty());
            EXPECT_FALSE(each.do_this.empty());
        }
    }
}

} // namespace
} // namespace loafwright::web_page
