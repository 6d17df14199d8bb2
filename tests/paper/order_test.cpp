// SPDX-License-Identifier: Apache-2.0
//
// Reading order, page furniture, joined lines and doubts, on words with places: no picture needed.
#include "shell/paper/doubt.hpp"
#include "shell/paper/furniture.hpp"
#include "shell/paper/marks.hpp"
#include "shell/paper/prose.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

namespace loafwright::paper {
namespace {

// One letter is 6 wide; a line is 10 high.
SeenLine line(double left, double top, const std::string& text) {
    SeenLine made;
    made.size = 10;
    std::istringstream words(text);
    double at = left;
    for (std::string word; words >> word;) {
        SeenWord seen;
        seen.text = word;
        seen.box = {at, top, at + 6.0 * static_cast<double>(word.size()), top + 10};
        at = seen.box.right + 6;
        made.box = made.words.empty() ? seen.box : around(made.box, seen.box);
        made.words.push_back(seen);
    }
    return made;
}

SeenPage page(std::vector<SeenLine> lines) {
    SeenPage made;
    made.width = 600;
    made.height = 800;
    made.lines = std::move(lines);
    return made;
}

std::string text(std::vector<SeenLine> lines) {
    return prose_of({page(std::move(lines))}).text;
}

TEST(order, two_columns_are_read_one_after_the_other_below_the_title) {
    EXPECT_EQ(text({line(40, 10, "A loaf for the whole of a long and hungry afternoon in a hall"),
                    line(40, 50, "first left line of words"),
                    line(300, 50, "first right line of words"),
                    line(40, 64, "second left line of word"),
                    line(300, 64, "second right line of word"),
                    line(40, 78, "third left line of words"),
                    line(300, 78, "third right line of words")}),
              "A loaf for the whole of a long and hungry afternoon in a hall\n\n"
              "first left line of words second left line of word third left line of words\n\n"
              "first right line of words second right line of word third right line of words\n");
}

TEST(order, amounts_in_a_column_of_their_own_stay_with_their_ingredients) {
    EXPECT_EQ(text({line(40, 10, "500 g"),
                    line(140, 10, "strong white flour"),
                    line(40, 24, "10 g"),
                    line(140, 24, "fine salt"),
                    line(40, 38, "7 g"),
                    line(140, 38, "instant yeast"),
                    line(40, 52, "330 g"),
                    line(140, 52, "water")}),
              "500 g strong white flour\n10 g fine salt\n7 g instant yeast\n330 g water\n");
}

TEST(order, a_word_broken_at_the_end_of_a_line_is_whole) {
    EXPECT_EQ(text({line(40, 10, "Turn it out and begin knead-"), line(40, 24, "ing it well.")}),
              "Turn it out and begin kneading it well.\n");
    EXPECT_EQ(text({line(40, 10, "Leave it to rise for about 45-"), line(40, 24, "60 minutes.")}),
              "Leave it to rise for about 45-60 minutes.\n");
}

TEST(order, a_hyphen_of_its_own_stays) {
    EXPECT_EQ(
        text({line(40, 10, "Dissolve the yeast in a cup or one-"), line(40, 24, "half of milk.")}),
        "Dissolve the yeast in a cup or one-half of milk.\n");
}

TEST(order, a_range_broken_before_its_dash_is_no_list) {
    EXPECT_EQ(text({line(40, 10, "It will prove on the counter for 4"),
                    line(40, 24, "- 5 hours and then it is ready to")}),
              "It will prove on the counter for 4 - 5 hours and then it is ready to\n");
}

// Old printers set a wide space behind a sentence.
TEST(order, sentences_behind_wide_spaces_are_no_column) {
    std::vector<SeenLine> lines;
    std::string wanted;
    for (int row = 0; row < 6; ++row) {
        lines.push_back(line(40, 10 + 14 * row, "400 g rye flour"));
        wanted += "400 g rye flour ";
    }
    for (int row = 6; row < 14; ++row) {
        const double top = 10 + 14 * row;
        if (row % 2 == 0) {
            lines.push_back(line(40, top, "Knead it very well."));
            lines.push_back(line(184, top, "Leave it until it has doubled and"));
            wanted += "Knead it very well. Leave it until it has doubled and ";
        } else {
            lines.push_back(line(40, top, "then shape it into a loaf for a tin and leave it be"));
            wanted += "then shape it into a loaf for a tin and leave it be ";
        }
    }
    std::string got = text(lines);
    std::replace(got.begin(), got.end(), '\n', ' ');
    EXPECT_EQ(got, wanted);
}

TEST(order, the_items_of_a_list_are_not_joined) {
    EXPECT_EQ(text({line(40, 10, "1. Mix the flour and water"),
                    line(40, 24, "2. Knead for ten minutes")}),
              "1. Mix the flour and water\n2. Knead for ten minutes\n");
}

TEST(order, what_belongs_to_the_page_goes) {
    std::vector<SeenPage> pages = {page({line(40, 10, "Breads for a hall"),
                                         line(40, 300, "Knead for ten minutes."),
                                         line(40, 780, "41")}),
                                   page({line(40, 10, "Breads for a hall"),
                                         line(40, 300, "42"),
                                         line(40, 780, "Page 42 of 60")})};
    take_furniture_away(pages);
    ASSERT_EQ(pages[0].lines.size(), 1U);
    EXPECT_EQ(words_of(pages[0].lines[0]), "Knead for ten minutes.");
    ASSERT_EQ(pages[1].lines.size(), 1U) << "a number in the middle of a page is no page number";
}

TEST(order, a_page_number_that_was_read_badly_goes_too) {
    std::vector<SeenPage> pages = {
        page({line(40, 300, "Knead for ten minutes."), line(40, 780, "Al")})};
    pages[0].picture = true;
    take_furniture_away(pages);
    EXPECT_EQ(pages[0].lines.size(), 1U);
    std::vector<SeenPage> close = {
        page({line(40, 766, "Leave it to rise until it is"), line(40, 780, "big")})};
    close[0].picture = true;
    take_furniture_away(close);
    EXPECT_EQ(close[0].lines.size(), 2U) << "the last word of a paragraph";
}

TEST(order, an_unsure_word_knows_its_place_in_the_text_and_on_the_page) {
    SeenPage photo = page({line(40, 10, "Bake for 3S minutes")});
    photo.picture = true;
    photo.lines[0].words[2].doubted = true;
    photo.lines[0].words[2].confidence = 0.4;
    const Prose prose = prose_of({photo});
    ASSERT_EQ(prose.unsure.size(), 1U);
    const intake::UnsureWord& word = prose.unsure[0];
    EXPECT_EQ(prose.text.substr(word.span.begin, word.span.end - word.span.begin), "3S");
    ASSERT_TRUE(word.clipping);
    EXPECT_EQ(word.clipping->x, 40 + 5 * 6 + 4 * 6);
    EXPECT_EQ(word.clipping->width, 12);
}

TEST(order, bullets_read_as_letters_are_bullets_again) {
    SeenPage list = page({line(40, 10, "e 500 g flour"), line(40, 24, "¢ 10 g salt")});
    mend_marks(list);
    EXPECT_EQ(list.lines[0].words[0].text, "•");
    EXPECT_EQ(list.lines[1].words[0].text, "•");
    SeenPage signs = page({line(40, 10, "¢« 500 g flour"), line(40, 24, "e° 10 g salt")});
    mend_marks(signs);
    EXPECT_EQ(signs.lines[0].words[0].text, "•");
    EXPECT_EQ(signs.lines[1].words[0].text, "•");
    SeenPage alone = page({line(40, 10, "o for a warm kitchen"), line(40, 24, "Knead.")});
    mend_marks(alone);
    EXPECT_EQ(alone.lines[0].words[0].text, "o") << "one of them is no list";
}

TEST(order, the_number_of_a_step_between_two_others_is_known) {
    SeenPage steps = page({line(40, 10, "6. Mix the flour and the"),
                           line(60, 24, "water in a bowl"),
                           line(41, 38, "Ls Knead for ten minutes"),
                           line(60, 52, "on the table"),
                           line(40, 66, "8. Leave it to rise")});
    mend_marks(steps);
    EXPECT_EQ(steps.lines[2].words[0].text, "7.");
    SeenPage flush = page({line(40, 10, "6. Mix the flour and"),
                           line(40, 24, "the water in a bowl"),
                           line(40, 38, "Ls Knead for ten minutes"),
                           line(40, 52, "8. Leave it to rise")});
    mend_marks(flush);
    EXPECT_EQ(flush.lines[2].words[0].text, "Ls") << "which of two lines is step 7 nobody knows";
    SeenPage whole = page({line(40, 10, "6. Mix the flour"),
                           line(40, 24, "To begin with, knead"),
                           line(40, 38, "7. Leave it to rise")});
    mend_marks(whole);
    EXPECT_EQ(whole.lines[1].words[0].text, "To") << "no number is missing";
}

TEST(order, degrees_read_as_letters_are_degrees_again) {
    SeenPage heat = page({line(40, 10, "at 220oC or 430*F, 12oz of f|our")});
    mend_marks(heat);
    EXPECT_EQ(words_of(heat.lines[0]), "at 220°C or 430°F, 12oz of flour");
}

TEST(order, a_number_read_badly_is_doubted_and_a_word_is_not) {
    SeenPage read = page({line(40, 10, "Bake 35 minutes 72% 2%")});
    for (SeenWord& word : read.lines[0].words) {
        word.confidence = 0.5;
    }
    read.lines[0].words[3].confidence = 0.99;
    doubt_numbers(read);
    const auto& words = read.lines[0].words;
    EXPECT_FALSE(words[0].doubted);
    EXPECT_TRUE(words[1].doubted);
    EXPECT_FALSE(words[3].doubted) << "two figures before it make a percent sign likely";
    EXPECT_TRUE(words[4].doubted);
    EXPECT_EQ(words[4].maybe.front(), "2½");
}

TEST(order, the_rules_of_a_table_and_a_share_are_no_numbers) {
    SeenPage read = page({line(40, 10, "| Water | 62 |"), line(40, 24, "at 80 % damp | day")});
    doubt_numbers(read);
    EXPECT_FALSE(read.lines[0].words[0].doubted);
    EXPECT_FALSE(read.lines[1].words[2].doubted);
    EXPECT_TRUE(read.lines[1].words[4].doubted) << "a rule alone may be a 1";
}

} // namespace
} // namespace loafwright::paper
