// SPDX-License-Identifier: Apache-2.0
//
// What gives way when a page is full, and that it is said.
#include "tests/output/laid_page.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace loafwright::output {
namespace {

// Much for a page: nine stages, the waits with long signs and three acts, everywhere three
// reminders.
Sheet crowded_sheet() {
    Sheet sheet = tin_loaf_sheet();
    const std::vector<std::string> reminders = {"the first reminder of nine words that may be",
                                                "the second reminder of nine words that may be",
                                                "the third reminder of nine words that may be"};
    SheetStage work;
    work.time = "13:00";
    work.title = "Knead, divide, into the tin";
    work.length = "15 min";
    work.cue = "ready when smooth and springy";
    work.reminders = reminders;
    SheetStage wait = work;
    wait.title = "First rise, covered";
    wait.length = "look from 14:35";
    wait.cue = "our sign: bubbly and beginning to sink in the middle, about 14:50, by 15:15 at the "
               "latest";
    sheet.stages.clear();
    for (int i = 1; i <= 9; ++i) {
        sheet.stages.push_back(i % 2 == 0 ? wait : work);
        sheet.stages.back().number = i;
    }
    for (std::size_t i = 1; i < sheet.stages.size(); i += 2) {
        sheet.stages[i].acts = {{"13:30", "fold"},
                                {"14:00", "turn the dough out, stretch it, fold it and cover it"},
                                {"14:30", "oven on, 230 °C (fan 210, gas 8)"}};
    }
    return sheet;
}

TEST(full_page, nine_crowded_stages_fit_and_what_is_left_out_is_counted_on_the_page) {
    const PageLayout layout = laid(crowded_sheet());
    ASSERT_EQ(layout.pages.size(), 1U);
    EXPECT_GT(layout.reminders_left_out, 0U);
    const std::string text = text_of(layout);
    EXPECT_NE(text.find(fmt::format("Left out, for want of room: {} reminder",
                                    layout.reminders_left_out)),
              std::string::npos)
        << text;
    std::size_t shown = 0;
    for (std::size_t found = text.find("reminder of nine"); found != std::string::npos;
         found = text.find("reminder of nine", found + 1)) {
        ++shown;
    }
    EXPECT_EQ(shown + layout.reminders_left_out, 27U) << "shown or counted";
    // The least important go first.
    if (text.find("the third reminder") != std::string::npos) {
        EXPECT_NE(text.find("the second reminder"), std::string::npos);
    }
    expect_sizes(layout, Print::usual, "crowded");
    EXPECT_TRUE(none_overlap(layout));
}

TEST(full_page, more_than_a_page_goes_on_overleaf_and_says_so) {
    Sheet sheet = crowded_sheet();
    const std::vector<SheetStage> nine = sheet.stages;
    sheet.stages.insert(sheet.stages.end(), nine.begin(), nine.end());
    const PageLayout layout = laid(sheet);
    EXPECT_GT(layout.pages.size(), 1U);
    EXPECT_EQ(layout.reminders_left_out, 0U) << "there is room now";
    EXPECT_TRUE(all_inside(layout));
    EXPECT_TRUE(none_overlap(layout));
    EXPECT_NE(text_of(layout).find(fmt::format("Page 1 of {}: ", layout.pages.size())),
              std::string::npos);
}

TEST(full_page, what_is_normal_never_makes_a_second_page) {
    Sheet sheet = tin_loaf_sheet();
    for (SheetStage& stage : sheet.stages) {
        stage.normal = "sticky now is right; it tightens as you knead";
    }
    const PageLayout roomy = laid(sheet);
    EXPECT_EQ(roomy.pages.size(), 1U);
    EXPECT_EQ(roomy.normal_left_out, 0U);
    EXPECT_NE(text_of(roomy).find("Normal, though it may worry you 1 sticky now is right"),
              std::string::npos);
    EXPECT_TRUE(none_overlap(roomy));
    expect_sizes(roomy, Print::usual, "first bake");

    Sheet full = crowded_sheet();
    const std::size_t reminders = laid(full).reminders_left_out;
    for (SheetStage& stage : full.stages) {
        stage.normal = "sticky now is right; it tightens as you knead";
    }
    const PageLayout crowded = laid(full);
    EXPECT_EQ(crowded.pages.size(), 1U);
    EXPECT_EQ(crowded.normal_left_out, 1U);
    EXPECT_EQ(crowded.reminders_left_out, reminders) << "it goes before any reminder";

    for (SheetStage& stage : full.stages) {
        stage.acts.clear();
    }
    const PageLayout said = laid(full);
    EXPECT_EQ(said.normal_left_out, 1U);
    EXPECT_EQ(said.reminders_left_out, 0U);
    EXPECT_NE(text_of(said).find("Left out, for want of room: what is normal at each stage."),
              std::string::npos)
        << text_of(said);
}

} // namespace
} // namespace loafwright::output
