// SPDX-License-Identifier: Apache-2.0
//
// The lines of a stage: acts, days, clocks.
#include "tests/output/laid_page.hpp"
#include "tests/output/readers.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <string>

namespace loafwright::output {
namespace {

TEST(page_stages, an_act_that_comes_again_has_a_box_each_time) {
    Sheet sheet = tin_loaf_sheet();
    sheet.stages[1].acts.clear();
    for (int i = 0; i < 8; ++i) {
        sheet.stages[1].acts.push_back({fmt::format("1{}:30", i), "fold"});
    }
    const PageLayout layout = laid(sheet);
    EXPECT_EQ(boxes_in(layout), 6U + 8U + 2U);
    const std::string text = text_of(layout);
    EXPECT_NE(text.find("10:30 11:30 12:30 13:30 14:30 15:30 16:30 17:30 fold"), std::string::npos)
        << text;
    EXPECT_TRUE(none_overlap(layout));
}

TEST(page_stages, a_bake_of_two_days_names_the_day_beside_the_time) {
    Sheet sheet = tin_loaf_sheet();
    sheet.stages[0].time = "Sat 22:00";
    sheet.stages[4].time = "Sun 07:30";
    const PageLayout layout = laid(sheet);
    const std::string text = text_of(layout);
    EXPECT_NE(text.find("5 Sun 07:30 Bake"), std::string::npos) << text;
    EXPECT_TRUE(none_overlap(layout));
}

TEST(page_stages, twelve_hour_clocks_fit_as_well) {
    Sheet sheet = tin_loaf_sheet();
    sheet.eat = {"eat on Sat 28 Nov at", "6:30 pm"};
    sheet.begin = {"Begin Sat 28 Nov,", "1:00 pm"};
    sheet.free = "40 minutes of your hands.";
    for (SheetStage& stage : sheet.stages) {
        stage.time = "12:45 pm";
    }
    sheet.stages[4].time = "Sun 7:30 am";
    const PageLayout layout = laid(sheet);
    EXPECT_EQ(layout.pages.size(), 1U);
    EXPECT_TRUE(none_overlap(layout));
    std::size_t eat = 0;
    for (const Words& words : words_of(layout)) {
        if (words.role == Role::eat_time) {
            EXPECT_EQ(as_read(words.text), "6:30 pm");
            ++eat;
        }
    }
    EXPECT_EQ(eat, 1U);
}

} // namespace
} // namespace loafwright::output
