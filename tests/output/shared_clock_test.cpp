// SPDX-License-Identifier: Apache-2.0
//
// Several breads: one clock that they share, on one page, then a page each.
#include "engine/sheet/shared_page.hpp"
#include "tests/output/laid_page.hpp"
#include "tests/output/planned_pages.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace loafwright::output {
namespace {

bool says(const Sheet& clock, const std::string& time, const std::string& words) {
    return std::any_of(clock.stages.begin(), clock.stages.end(), [&](const SheetStage& line) {
        const bool at = line.time.find(time) != std::string::npos ||
                        line.also.find(time) != std::string::npos ||
                        std::any_of(line.acts.begin(), line.acts.end(), [&](const SheetAct& act) {
                            return act.time.find(time) != std::string::npos;
                        });
        return at && (full_title(line) + " " + line.also).find(words) != std::string::npos;
    });
}

TEST(shared_clock, is_one_page_and_each_bread_one_on_either_paper) {
    for (const PlannedTogether& together : planned_together()) {
        for (const Paper paper : {Paper::a4, Paper::letter}) {
            PageOptions options;
            options.paper = paper;
            const PageLayout layout = lay_out(together.pages, options, lato());
            EXPECT_EQ(layout.pages.size(), together.pages.size()) << together.name;
            EXPECT_TRUE(all_inside(layout)) << together.name;
            EXPECT_TRUE(none_overlap(layout)) << together.name;
            EXPECT_EQ(layout.cut_texts, 0U) << together.name;
            expect_sizes(layout, Print::usual, together.name);
        }
    }
    if (!has_real_recipes()) {
        GTEST_SKIP() << "only the examples: ../shared/recipes/texts is not there";
    }
}

// Everything the hands do, and everything with a time of its own, compared with the plan itself.
TEST(shared_clock, has_the_time_of_everything_that_is_done) {
    for (const PlannedTogether& together : planned_together()) {
        const Sheet& clock = together.pages.front();
        EXPECT_EQ(clock.kind, SheetKind::shared_clock);
        for (const Plan& bread : together.plan.breads) {
            for (const Stage& stage : bread.stages) {
                if (stage.attention == Attention::hands || stage.attention == Attention::near) {
                    EXPECT_TRUE(says(clock, clock_text(Zone{}, stage.start), ""))
                        << together.name << stage.title;
                }
                for (const Act& act : stage.acts) {
                    EXPECT_TRUE(says(clock, clock_text(Zone{}, act.at), ""))
                        << together.name << act.text;
                }
            }
        }
        const auto in_order = [](const SheetStage& a, const SheetStage& b) {
            return a.number < b.number;
        };
        EXPECT_TRUE(std::is_sorted(clock.stages.begin(), clock.stages.end(), in_order));
    }
}

TEST(shared_clock, a_wait_stands_on_the_line_of_the_hands_that_begin_it) {
    const PlannedTogether together = planned_together().front();
    const Sheet& clock = together.pages.front();
    const auto line =
        std::find_if(clock.stages.begin(), clock.stages.end(), [](const SheetStage& stage) {
            return full_title(stage) == "The hall loaf: weigh, mix and knead";
        });
    ASSERT_NE(line, clock.stages.end());
    EXPECT_EQ(line->also.rfind("then first rise, look from ", 0), 0U) << line->also;
    EXPECT_FALSE(says(clock, "", "The hall loaf: first rise"));
}

TEST(shared_clock, two_breads_have_a_page_each) {
    const PageLayout layout = lay_out({tin_loaf_sheet(), tin_loaf_sheet()}, PageOptions{}, lato());
    EXPECT_EQ(layout.pages.size(), 2U);
}

} // namespace
} // namespace loafwright::output
