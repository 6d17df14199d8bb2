// SPDX-License-Identifier: Apache-2.0
//
// What holds for any text and any bytes. Validity of UTF-8 is judged by utfcpp, what a tag is by
// WHATWG HTML, section 13.2.5.6.
#include "shell/web_page/plain.hpp"
#include "shell/web_page/web_page.hpp"
#include "tests/web_page/skeletons.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <utf8cpp/utf8/checked.h>

#include <algorithm>
#include <string>
#include <vector>

namespace loafwright::web_page {
namespace {

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

void expect_promised(const std::string& text, std::size_t page_bytes) {
    RC_ASSERT(!text.empty());
    RC_ASSERT(utf8::is_valid(text.begin(), text.end()));
    // Numbers in front of steps and blank lines are all that is added; one byte of windows-1252 may
    // become three.
    RC_ASSERT(text.size() <= 12 * page_bytes + 100);
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        RC_ASSERT(byte >= 0x20 || byte == '\n');
        RC_ASSERT(byte != 0x7F);
        if (text[i] == '<' && i + 1 < text.size()) {
            RC_ASSERT(!is_letter(text[i + 1]) && text[i + 1] != '/' && text[i + 1] != '!');
        }
    }
}

void expect_promised_of_page(const std::string& page) {
    const auto read = words_of(page);
    if (!read) {
        RC_ASSERT(!read.error().empty());
        RC_ASSERT(is_known_code(read.error().front().code));
        return;
    }
    RC_ASSERT(!read->empty());
    for (const RecipeWords& words : *read) {
        expect_promised(words.text, page.size());
    }
}

// Words of letters and figures, of HTML's own characters, and of others.
rc::Gen<std::string> some_words() {
    const auto word = rc::gen::element<std::string>("flour",
                                                    "knead",
                                                    "Bake",
                                                    "500",
                                                    "g",
                                                    "1\u00BD",
                                                    "\u00B0C",
                                                    "salt,",
                                                    "R&D",
                                                    "<",
                                                    "a>b",
                                                    "\"quoted\"",
                                                    "caf\u00E9",
                                                    "\U0001F35E",
                                                    "\\n",
                                                    "it's",
                                                    "half",
                                                    "& so on");
    return rc::gen::map(rc::gen::nonEmpty(rc::gen::container<std::vector<std::string>>(word)),
                        [](const std::vector<std::string>& words) {
                            // A letter in front, so that no line is a bullet or a number by itself.
                            std::string line = "Then";
                            for (const std::string& each : words) {
                                line += ' ';
                                line += each;
                            }
                            return line + " and that is enough of it.";
                        });
}

TypedRecipe some_recipe() {
    TypedRecipe recipe;
    recipe.title = "Loaf of " + *some_words();
    recipe.ingredients =
        *rc::gen::nonEmpty(rc::gen::container<std::vector<std::string>>(some_words()));
    for (const std::string& line :
         *rc::gen::nonEmpty(rc::gen::container<std::vector<std::string>>(some_words()))) {
        recipe.method.push_back({line, false});
    }
    return recipe;
}

std::string typed(const TypedRecipe& recipe, bool is_data) {
    std::string text = recipe.title + "\n";
    text += "\nIngredients\n\n";
    for (const std::string& line : recipe.ingredients) {
        text += "- " + line + "\n";
    }
    text += is_data ? "\nMethod\n\n" : "\nMethod\n";
    for (std::size_t i = 0; i < recipe.method.size(); ++i) {
        if (!is_data) {
            text += "\n";
        } else if (recipe.method.size() > 1) {
            text += std::to_string(i + 1) + ". ";
        }
        text += recipe.method[i].words + "\n";
    }
    return text;
}

RC_GTEST_PROP(properties, words_in_data_come_back, ()) {
    const TypedRecipe recipe = some_recipe();
    const auto read = words_of(as_data_page(recipe));
    RC_ASSERT(read.has_value());
    RC_ASSERT(read->front().text == typed(recipe, true));
}

RC_GTEST_PROP(properties, words_of_an_article_come_back, ()) {
    const TypedRecipe recipe = some_recipe();
    const auto read = words_of(as_article_page(recipe));
    RC_ASSERT(read.has_value());
    RC_ASSERT(read->front().text == typed(recipe, false));
}

RC_GTEST_PROP(properties, any_bytes_keep_the_promises, (const std::string& bytes)) {
    expect_promised_of_page(bytes);
    looks_like_html(bytes);
}

RC_GTEST_PROP(properties, tag_soup_keeps_the_promises, ()) {
    const auto piece = rc::gen::element<std::string>("<p>",
                                                     "</p>",
                                                     "<div>",
                                                     "</div>",
                                                     "<b>",
                                                     "</b>",
                                                     "<table>",
                                                     "</table>",
                                                     "<tr>",
                                                     "<td>",
                                                     "</td>",
                                                     "<ul>",
                                                     "</ul>",
                                                     "<li>",
                                                     "<ol>",
                                                     "<h1>",
                                                     "</h1>",
                                                     "<h2>",
                                                     "<br>",
                                                     "<a href=x>",
                                                     "</a>",
                                                     "<script>",
                                                     "</script>",
                                                     "<script type=application/ld+json>",
                                                     "<!--",
                                                     "-->",
                                                     "<",
                                                     ">",
                                                     "&",
                                                     "&amp;",
                                                     "&lt;",
                                                     "&lt;b&gt;",
                                                     "&amp;lt;",
                                                     "&#0;",
                                                     "&#x110000;",
                                                     "&frac12;",
                                                     "\"",
                                                     "'",
                                                     "=",
                                                     "{\"@type\":\"Recipe\",",
                                                     "\"recipeInstructions\":",
                                                     "[",
                                                     "]",
                                                     "{",
                                                     "}",
                                                     "\"Knead it\"",
                                                     ",",
                                                     "words ",
                                                     "500 g flour ",
                                                     "<div itemscope itemtype=schema.org/Recipe>",
                                                     "<p itemprop=recipeInstructions>",
                                                     "<p itemprop=name>",
                                                     "<p typeof=Recipe>",
                                                     "<p property=recipeInstructions>",
                                                     "\xC3",
                                                     "\x92",
                                                     "\xE2\x80\x8B",
                                                     "<svg>",
                                                     "<title>",
                                                     "</title>",
                                                     "<sup>1</sup>/<sub>2</sub>",
                                                     "<pre>",
                                                     "\n",
                                                     "<select>",
                                                     "<template>",
                                                     "<!DOCTYPE html>",
                                                     "<html>",
                                                     "<head>",
                                                     "</head>",
                                                     "<body>",
                                                     "</body>",
                                                     "</html>");
    std::string page;
    for (const std::string& each : *rc::gen::container<std::vector<std::string>>(piece)) {
        page += each;
    }
    expect_promised_of_page(page);
}

RC_GTEST_PROP(properties, plain_words_are_plain_at_once, (const std::string& bytes)) {
    std::string text;
    utf8::replace_invalid(bytes.begin(), bytes.end(), std::back_inserter(text));
    const std::string once = plain_words(text);
    RC_ASSERT(plain_words(once) == once);
    RC_ASSERT(!has_markup(without_markup(once)));
}

} // namespace
} // namespace loafwright::web_page
