// SPDX-License-Identifier: Apache-2.0
//
// The example's page as it was approved: as JSON to the letter, as SVG in outline. The bytes of an
// SVG move with every version of the typeface, so what it shows is compared: each line of text and
// each shape, within two points.
#include "engine/wire/wire.hpp"
#include "shell/output/drawn.hpp"
#include "tests/output/golden.hpp"
#include "tests/output/laid_page.hpp"
#include "tests/output/planned_pages.hpp"
#include "tests/output/svg_outline.hpp"

#include <gtest/gtest.h>

#include <string>

namespace loafwright::output {
namespace {

constexpr double most_points = 2.0;

Sheet first_loaf() {
    for (const PlannedPage& page : planned_pages()) {
        if (page.name == "first-loaf.md") {
            return page.sheet;
        }
    }
    return {};
}

std::string outline(const Sheet& sheet) {
    // Each text is drawn with a blank behind it.
    std::string text;
    for (const Words& words : words_of(laid(sheet))) {
        text += with_plain_blanks(words.text) + " ";
    }
    return written(outline_of(svg_page({sheet}, PageOptions{})->bytes, text));
}

TEST(golden_page, of_the_example_as_json) {
    expect_golden("first_loaf_sheet.json", wire::sheet_json(first_loaf()));
}

TEST(golden_page, of_the_example_as_svg_in_outline) {
    const std::string now = outline(first_loaf());
    EXPECT_EQ(now.find("\xEF\xBF\xBD"), std::string::npos)
        << "a shape that stands for two letters: " << now;
    expect_golden_within("first_loaf_svg.txt", now, most_points);
}

TEST(golden_page, a_word_or_three_points_are_a_difference) {
    const Sheet sheet = first_loaf();
    const std::string now = outline(sheet);
    EXPECT_EQ(difference(now, now, most_points), "");
    Sheet other = sheet;
    other.stages[1].title[0] = 'N';
    EXPECT_NE(difference(now, outline(other), most_points), "");
    other = sheet;
    other.weigh.pop_back();
    EXPECT_NE(difference(now, outline(other), most_points), "");
    EXPECT_EQ(difference(" 10 20 30 40  rye\n", " 12 18 30 40  rye\n", most_points), "");
    EXPECT_NE(difference(" 10 20 30 40  rye\n", " 13 20 30 40  rye\n", most_points), "");
    EXPECT_NE(difference(" 10 20 30 40  rye\n", " 10 20 30 40  rice\n", most_points), "");
    EXPECT_NE(difference(" 10 20 30 40  rye\n", "", most_points), "");
}

} // namespace
} // namespace loafwright::output
