// SPDX-License-Identifier: Apache-2.0
//
// Nothing that a bread is called, or a sheet says, can break a page; and how words are set.
#include "tests/output/laid_page.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <map>
#include <string>
#include <vector>

namespace loafwright::output {
namespace {

TEST(page_words, no_title_breaks_the_page) {
    std::string long_title;
    while (long_title.size() < 300) {
        long_title += "a very long name for bread ";
    }
    const std::map<std::string, std::string> titles = {
        {"long", long_title},
        {"one word", std::string(300, 'W')},
        {"pictures", "\xF0\x9F\x8D\x9E \xF0\x9F\xA5\x96 bread \xF0\x9F\x98\x80"},
        {"Arabic", "\xD8\xAE\xD8\xA8\xD8\xB2 \xD8\xA7\xD9\x84\xD8\xA8\xD9\x8A\xD8\xAA"},
        {"Chinese", "\xE9\x9D\xA2\xE5\x8C\x85"},
        {"blank", "     "},
        {"empty", ""},
        {"controls", "Loaf\033[2J\a\n\r\u2028tin"},
        {"turned", "\u202Eloaf\u2066"},
        {"broken", std::string("caf\xC3 loaf \xFF")},
    };
    for (const auto& [name, title] : titles) {
        for (const Print print : {Print::usual, Print::large}) {
            Sheet sheet = tin_loaf_sheet();
            sheet.title = title;
            PageOptions options;
            options.print = print;
            const PageLayout layout = laid(sheet, options);
            EXPECT_LE(layout.pages.size(), print == Print::usual ? 1U : 2U) << name;
            EXPECT_TRUE(all_inside(layout)) << name;
            EXPECT_TRUE(none_overlap(layout)) << name;
            EXPECT_FALSE(layout.title.empty()) << name;
        }
    }
    Sheet sheet = tin_loaf_sheet();
    sheet.title = "   ";
    EXPECT_EQ(laid(sheet).title, "Bread");
}

TEST(page_words, a_missing_glyph_is_counted) {
    Sheet sheet = tin_loaf_sheet();
    sheet.title = "Loaf \xF4\x80\x80\x80"; // U+100000, private use: in no typeface
    EXPECT_EQ(laid(sheet).unknown_letters, 1U);
}

RC_GTEST_PROP(page_words, holds_whatever_a_sheet_says, ()) {
    const auto words = [] {
        const std::vector<std::string> letters = {
            "x", "Wort", "\xF0\x9F\x8D\x9E", "\xD8\xAE", " ", "1 h 35 ", "\n", "\xFF", "220 °C, "};
        std::string text;
        const int count = *rc::gen::inRange(0, 60);
        for (int i = 0; i < count; ++i) {
            text += *rc::gen::elementOf(letters);
        }
        return text;
    };
    Sheet sheet = tin_loaf_sheet();
    sheet.title = words();
    sheet.eat = {words(), words()};
    sheet.begin = {words(), words()};
    sheet.free = words();
    sheet.weigh.push_back(words());
    sheet.ready.push_back(words());
    SheetStage& stage = sheet.stages[static_cast<std::size_t>(*rc::gen::inRange(0, 7))];
    stage.time = words();
    stage.title = words();
    stage.length = words();
    stage.cue = words();
    stage.acts.push_back({words(), words()});
    stage.reminders.push_back(words());
    sheet.notes.push_back(words());
    sheet.questions.push_back(words());
    PageOptions options;
    options.print = *rc::gen::element(Print::usual, Print::large);
    options.paper = *rc::gen::element(Paper::a4, Paper::letter);
    const PageLayout layout = lay_out({sheet}, options, lato());
    RC_ASSERT(!layout.pages.empty());
    for (const Words& set : words_of(layout)) {
        RC_ASSERT(set.y >= 0.0);
        RC_ASSERT(set.y + set.extent.height <= layout.height + 0.5);
    }
}

TEST(for_paper, a_number_and_its_unit_are_one_word) {
    const auto marked = [](const std::string& text) {
        std::string out = for_paper(text);
        for (std::size_t at = out.find("\xC2\xA0"); at != std::string::npos;
             at = out.find("\xC2\xA0")) {
            out.replace(at, 2, "_");
        }
        return out;
    };
    EXPECT_EQ(marked("bake at 220 °C for 1 h 35 or so, or longer still"),
              "bake at 220_°C for 1_h_35 or so, or longer_still");
    EXPECT_EQ(marked("doubled, about 14:50, by 15:15 at the latest"),
              "doubled, about_14:50, by_15:15 at_the_latest");
    EXPECT_EQ(marked("3 3/4 cups white flour, sifted twice"),
              "3_3/4_cups white flour, sifted_twice");
    EXPECT_EQ(for_paper("  \n "), "");
}

TEST(type_setting, figures_have_one_width) {
    const Face face{24.0, 900};
    const double width = lato().extent("00:00", face, -1.0, 1).width;
    for (const char* time : {"11:11", "14:47", "23:59"}) {
        EXPECT_NEAR(lato().extent(time, face, -1.0, 1).width, width, 0.01) << time;
    }
}

} // namespace
} // namespace loafwright::output
