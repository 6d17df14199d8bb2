// SPDX-License-Identifier: Apache-2.0
//
// Pages of our own in the ways that the standards allow, beside the words that a person would type
// from them, written by hand: pages/NAME.html and pages/NAME.txt. A line "== data prep 20 cook 35
// total 125" in front of each recipe says where its words come from and which times are stated.
//
// Sources: schema.org Recipe, HowTo, HowToSection, HowToStep, HowToSupply, ItemList,
// QuantitativeValue; JSON-LD 1.1, sections 3 and 4; WHATWG HTML, section 5.2 (microdata); W3C RDFa
// Lite 1.1. What breaks in practice is from memory.
#include "shell/web_page/web_page.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

namespace loafwright::web_page {
namespace {

std::string bytes_of(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

std::vector<std::string> names_of_pages() {
    std::vector<std::string> names;
    for (const auto& entry :
         std::filesystem::directory_iterator(LOAFWRIGHT_ROOT "/tests/web_page/pages")) {
        if (entry.path().extension() == ".html") {
            names.push_back(entry.path().stem().string());
        }
    }
    std::sort(names.begin(), names.end());
    return names;
}

std::string told(const RecipeWords& words) {
    std::string head = words.from_markup ? "== data" : "== prose";
    const auto add = [&](const char* name, const std::optional<Minutes>& minutes) {
        if (minutes) {
            head += fmt::format(" {} {:g}", name, minutes->count());
        }
    };
    add("prep", words.times.prep);
    add("cook", words.times.cook);
    add("total", words.times.total);
    return head + "\n" + words.text;
}

class pages : public testing::TestWithParam<std::string> {};

TEST_P(pages, give_the_words_a_person_would_type) {
    const std::string stem = std::string(LOAFWRIGHT_ROOT "/tests/web_page/pages/") + GetParam();
    const auto read = words_of(bytes_of(stem + ".html"));
    ASSERT_TRUE(read.has_value()) << one_line(read.error().front());
    std::string all;
    for (const RecipeWords& words : *read) {
        all += told(words);
    }
    EXPECT_EQ(all, bytes_of(stem + ".txt"));
}

TEST_P(pages, look_like_pages) {
    EXPECT_TRUE(looks_like_html(
        bytes_of(std::string(LOAFWRIGHT_ROOT "/tests/web_page/pages/") + GetParam() + ".html")));
}

INSTANTIATE_TEST_SUITE_P(all, pages, testing::ValuesIn(names_of_pages()), [](const auto& each) {
    return each.param;
});

TEST(pages_folder, has_as_many_ways_as_it_set_out_to_show) {
    EXPECT_GE(names_of_pages().size(), 60U);
}

} // namespace
} // namespace loafwright::web_page
