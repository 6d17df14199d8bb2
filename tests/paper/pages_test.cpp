// SPDX-License-Identifier: Apache-2.0
//
// Printed and photographed pages through the real child. What was printed is the truth.
#include "tests/paper/taking_in.hpp"

#include <algorithm>
#include <sstream>
#include <vector>

namespace loafwright::paper {
namespace {

using press::Shot;

const std::vector<std::string> figures = {
    "500", "10", "7", "330", "28", "12", "75", "8", "40", "220", "18"};

// Every figure of the recipe, in order.
testing::AssertionResult has_all_figures(const std::string& text) {
    std::size_t at = 0;
    for (const std::string& figure : figures) {
        const std::size_t found = text.find(figure, at);
        if (found == std::string::npos) {
            return testing::AssertionFailure() << figure << " is not in its place in:\n" << text;
        }
        at = found + figure.size();
    }
    return testing::AssertionSuccess();
}

press::Grey page() {
    return press::printed_pages(rolls, {}).front();
}

TEST_F(taking_in, a_pdf_gives_the_words_that_were_printed) {
    for (const int columns : {1, 2}) {
        press::Style style;
        style.columns = columns;
        const std::string text = text_of(press::printed_pdf(rolls, style));
        EXPECT_TRUE(has_all_figures(text));
        EXPECT_NE(text.find("• 500 g strong white flour\n"), std::string::npos) << text;
        EXPECT_NE(text.find("Cover and leave to rise for 75 minutes until doubled."),
                  std::string::npos)
            << text;
        EXPECT_EQ(text.find("41"), std::string::npos) << "the number of the page";
    }
}

TEST_F(taking_in, a_scanned_pdf_goes_the_way_of_photos) {
    const auto taken = take(press::scanned_pdf(page()));
    ASSERT_TRUE(taken) << one_line(taken.error().front());
    EXPECT_EQ(taken->kind, intake::Kind::pdf);
    EXPECT_TRUE(has_all_figures(taken->text));
}

TEST_F(taking_in, every_kind_of_picture_gives_the_same_words) {
    const std::string words = text_of(press::png_of(page()));
    EXPECT_TRUE(has_all_figures(words));
    EXPECT_EQ(text_of(press::tiff_of(page())), words);
    EXPECT_TRUE(has_all_figures(text_of(press::webp_of(page()))));
    EXPECT_TRUE(has_all_figures(text_of(press::jpeg_of(page(), {}))));
}

TEST_F(taking_in, a_bad_photo_keeps_its_numbers_or_doubts_them) {
    const auto taken = take(press::jpeg_of(page(), press::usual_bad_shot(5)));
    ASSERT_TRUE(taken) << one_line(taken.error().front());
    for (const std::string& figure : figures) {
        EXPECT_TRUE(taken->text.find(figure) != std::string::npos || !taken->unsure.empty())
            << figure;
    }
    EXPECT_NE(taken->text.find("leave to rise for"), std::string::npos) << taken->text;
}

TEST_F(taking_in, a_page_lying_on_its_side_or_head_is_turned) {
    for (const int quarters : {1, 2, 3}) {
        Shot shot;
        shot.quarter_turns = quarters;
        EXPECT_TRUE(has_all_figures(text_of(press::jpeg_of(page(), shot)))) << quarters;
    }
}

// Mirrored ways too: no page lies on the table like that, so only the file itself can have told.
TEST_F(taking_in, what_the_camera_says_of_how_it_was_held_is_undone) {
    for (const int held : {2, 5, 6}) {
        Shot shot;
        shot.held = held;
        EXPECT_TRUE(has_all_figures(text_of(press::jpeg_of(page(), shot)))) << held;
    }
}

// A page of a thick book: its lines fall away at the spine, by 90 pixels at 300 dots an inch. Curl
// is seen where many lines have it, down the whole page.
TEST_F(taking_in, a_page_that_curls_is_read_along_its_lines) {
    // No two paragraphs alike: the same words below each other would look like lines that run
    // downwards.
    const std::vector<std::string> sentences = {
        "Good bread asks for little more than time. ",
        "Look at the dough now and then, and less often at the clock. ",
        "A warm kitchen hurries it; a cold one gives you the evening. ",
        "Flour from another mill may want a spoonful of water more. ",
        "Salt slows the yeast, and without it no loaf tastes of anything. ",
        "Wet hands stick less. ",
        "Let the crust sing on the rack before you cut it, however good it smells. "};
    std::string full = rolls;
    for (std::size_t paragraph = 0; paragraph < 7; ++paragraph) {
        full += '\n';
        for (std::size_t sentence = 0; sentence < 9; ++sentence) {
            full += sentences[(paragraph * 3 + sentence * (paragraph % 2 + 1)) % sentences.size()];
        }
        full += '\n';
    }
    Shot shot;
    shot.curl = 90;
    EXPECT_TRUE(
        has_all_figures(text_of(press::jpeg_of(press::printed_pages(full, {}).front(), shot))));
}

// A one with a foot is as wide as other figures; of so small a four recognisers say nothing at
// times.
TEST_F(taking_in, fractions_are_told_apart_by_their_shape_in_small_print) {
    press::Style style;
    style.family = "DejaVu Sans";
    if (!press::has_family(style.family)) {
        GTEST_SKIP() << "the typeface is not here";
    }
    const std::string recipe =
        "# Corn bread\n\n- 2½ cups corn meal\n- ¼ cup flour\n- ¾ pint milk\n\n"
        "Mix with ¼ ounce salt. Bake for 20 minutes in a hot oven.\n";
    for (const double points : {9.0, 10.0, 11.0, 12.0}) {
        style.points = points;
        const auto taken = take(press::png_of(press::printed_pages(recipe, style).front()));
        ASSERT_TRUE(taken);
        for (const char* words : {"2½ cups", "¼ cup", "¾ pint", "¼ ounce"}) {
            EXPECT_NE(taken->text.find(words), std::string::npos)
                << points << " points: " << words << " in " << taken->text;
        }
    }
}

TEST_F(taking_in, fractions_cast_in_one_piece_are_read_and_doubted) {
    const std::string recipe = "# Flat bread\n\n- 2½ cups flour\n- ¾ cup water\n- 1¼ tsp salt\n\n"
                               "Mix, knead for 5 minutes and rest for 1½ hours. Fry at 65% heat.\n";
    const auto taken = take(press::png_of(press::printed_pages(recipe, {}).front()));
    ASSERT_TRUE(taken);
    for (const char* fraction : {"2½", "¾", "1¼", "1½"}) {
        const bool asked = std::any_of(
            taken->unsure.begin(), taken->unsure.end(), [&](const intake::UnsureWord& word) {
                const std::string sign =
                    std::string(fraction).substr(std::string(fraction).size() - 2);
                return std::find(word.maybe.begin(), word.maybe.end(), sign) != word.maybe.end();
            });
        EXPECT_TRUE(taken->text.find(fraction) != std::string::npos || asked) << taken->text;
    }
    EXPECT_NE(taken->text.find("• 2½ cups flour\n• ¾ cup water"), std::string::npos) << taken->text;
    EXPECT_NE(taken->text.find("65%"), std::string::npos) << taken->text;
    EXPECT_GE(taken->unsure.size(), 4U);
    for (const intake::UnsureWord& word : taken->unsure) {
        EXPECT_TRUE(word.clipping);
        EXPECT_LT(word.confidence, 1.0);
    }
}

TEST_F(taking_in, several_photos_are_one_recipe_in_order) {
    const auto first = press::png_of(
        press::printed_pages("Weigh 500 g of flour for the first page.\n", {}).front());
    const auto second = press::png_of(
        press::printed_pages("Bake for 35 minutes on the second page.\n", {}).front());
    const auto taken = intake::take_in({{"a", first}, {"b", second}}, wish_);
    ASSERT_TRUE(taken) << one_line(taken.error().front());
    EXPECT_LT(taken->text.find("500"), taken->text.find("35"));
    EXPECT_NE(taken->text.find("35"), std::string::npos);
}

TEST_F(taking_in, a_page_written_by_hand_is_said_to_be_and_not_guessed_at) {
    const auto taken = take(press::png_of(press::scrawled_page(7)));
    ASSERT_TRUE(taken) << one_line(taken.error().front());
    EXPECT_TRUE(taken->handwriting);
    EXPECT_EQ(taken->text, "");
    ASSERT_EQ(taken->remarks.size(), 1U);
    EXPECT_EQ(taken->remarks[0].code, "handwriting");
    EXPECT_NE(taken->remarks[0].do_this.find("read it aloud"), std::string::npos);
}

TEST_F(taking_in, pictures_of_the_pages_come_when_asked_for) {
    wish_.page_pictures = true;
    const auto taken = take(press::png_of(page()));
    ASSERT_TRUE(taken);
    ASSERT_EQ(taken->pages.size(), 1U);
    EXPECT_EQ(intake::kind_of(taken->pages[0].png), intake::Kind::image);
    EXPECT_GT(taken->pages[0].width, 500);
}

TEST_F(taking_in, a_web_page_comes_back_from_the_child) {
    const std::string text = text_of("<!DOCTYPE html>\r\n<p>Knead for 10 minutes.\xFF</p>");
    EXPECT_NE(text.find("Knead for 10 minutes."), std::string::npos) << text;
}

TEST_F(taking_in, text_comes_back_byte_for_byte) {
    const std::string latin = "Br\xF6tchen\r\n";
    EXPECT_EQ(text_of(latin), latin);
}

} // namespace
} // namespace loafwright::paper
