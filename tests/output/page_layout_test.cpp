// SPDX-License-Identifier: Apache-2.0
//
// Where things stand on paper: sizes, the one page, and everything on it.
#include "tests/output/golden.hpp"
#include "tests/output/laid_page.hpp"
#include "tests/output/planned_pages.hpp"
#include "tests/output/readers.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <string>
#include <vector>

namespace loafwright::output {
namespace {

std::string described(const PageLayout& layout) {
    std::string out =
        fmt::format("{}\n{:.0f} x {:.0f}\n", layout.title, layout.width, layout.height);
    const auto at = [](double x, double y) { return fmt::format("{:4.0f} {:4.0f}", x, y); };
    for (const LaidPage& page : layout.pages) {
        out += "page\n";
        for (const Part& part : page.parts) {
            constexpr std::array<const char*, 5> kinds = {
                "title", "heading", "words", "item", "drawing"};
            out += std::string(kinds[static_cast<std::size_t>(part.kind)]) + "\n";
            for (const Mark& mark : part.marks) {
                if (const auto* words = std::get_if<Words>(&mark)) {
                    out += fmt::format("  {}  {:4.1f}/{}  {}\n",
                                       at(words->x, words->y),
                                       words->face.points,
                                       words->face.weight,
                                       as_read(words->text));
                } else if (const auto* square = std::get_if<Square>(&mark)) {
                    out +=
                        fmt::format("  {}  box {:.0f}\n", at(square->x, square->y), square->side);
                } else if (const auto* stroke = std::get_if<Stroke>(&mark)) {
                    out += fmt::format("  {}  line to {}\n",
                                       at(stroke->x, stroke->y),
                                       at(stroke->to_x, stroke->to_y));
                } else if (const auto* bar = std::get_if<Bar>(&mark)) {
                    constexpr std::array<const char*, 3> fills = {"solid", "hatched", "open"};
                    out += fmt::format("  {}  {} {:.0f} x {:.0f}\n",
                                       at(bar->x, bar->y),
                                       fills[static_cast<std::size_t>(bar->fill)],
                                       bar->width,
                                       bar->height);
                }
            }
        }
    }
    return out;
}

TEST(page_layout, stands_as_it_was_approved) {
    expect_golden("tin_loaf_layout.txt", described(laid(tin_loaf_sheet())));
}

TEST(page_layout, every_recipe_is_one_page_of_either_paper_with_every_time_of_its_plan) {
    for (const PlannedPage& page : planned_pages()) {
        for (const Paper paper : {Paper::a4, Paper::letter}) {
            PageOptions options;
            options.paper = paper;
            const PageLayout layout = laid(page.sheet, options);
            EXPECT_EQ(layout.pages.size(), 1U) << page.name;
            EXPECT_TRUE(all_inside(layout)) << page.name;
            EXPECT_TRUE(none_overlap(layout)) << page.name;
            EXPECT_EQ(layout.cut_texts, 0U) << page.name;
            EXPECT_EQ(layout.unknown_letters, 0U) << page.name;
            expect_sizes(layout, Print::usual, page.name);
            EXPECT_LE(layout.reminders_left_out, 1U) << page.name;
            std::vector<std::string> times;
            for (const Words& words : words_of(layout)) {
                if (words.role == Role::stage_time) {
                    times.push_back(words.text);
                }
            }
            ASSERT_EQ(times.size(), page.plan.stages.size()) << page.name;
            for (std::size_t i = 0; i < times.size(); ++i) {
                EXPECT_EQ(times[i], clock_text(page.day.zone, page.plan.stages[i].start))
                    << page.name;
            }
            // A box for each stage but the last, for each act, and for what comes before.
            std::size_t boxes = page.sheet.ahead.size();
            for (const SheetStage& stage : page.sheet.stages) {
                boxes += (stage.box ? 1 : 0) + stage.acts.size();
            }
            EXPECT_EQ(boxes_in(layout), boxes) << page.name;
        }
    }
    if (!has_real_recipes()) {
        GTEST_SKIP() << "only the examples: ../shared/recipes/texts is not there";
    }
}

TEST(page_layout, large_print_has_nothing_small_and_takes_two_pages_at_most) {
    for (const PlannedPage& page : planned_pages()) {
        PageOptions options;
        options.print = Print::large;
        const PageLayout layout = laid(page.sheet, options);
        EXPECT_LE(layout.pages.size(), 2U) << page.name;
        EXPECT_TRUE(all_inside(layout)) << page.name;
        EXPECT_TRUE(none_overlap(layout)) << page.name;
        EXPECT_EQ(layout.cut_texts, 0U) << page.name;
        expect_sizes(layout, Print::large, page.name);
        if (layout.pages.size() == 2) {
            EXPECT_NE(text_of(layout).find("Page 1 of 2: "), std::string::npos) << page.name;
        }
    }
}

TEST(page_layout, the_time_to_eat_is_the_largest_and_every_word_is_there) {
    const Sheet sheet = tin_loaf_sheet();
    const PageLayout layout = laid(sheet);
    double largest = 0.0;
    double eat = 0.0;
    for (const Words& words : words_of(layout)) {
        (words.role == Role::eat_time ? eat : largest) =
            std::max(words.role == Role::eat_time ? eat : largest, words.face.points);
    }
    EXPECT_GT(eat, 1.5 * largest);
    const std::string text = text_of(layout);
    std::vector<std::string> wanted = sheet.notes;
    for (const SheetStage& stage : sheet.stages) {
        wanted.insert(wanted.end(), {stage.title, stage.length, stage.cue});
        wanted.insert(wanted.end(), stage.reminders.begin(), stage.reminders.end());
        for (const SheetAct& act : stage.acts) {
            wanted.push_back(act.time + " " + act.text);
        }
    }
    wanted.insert(wanted.end(), sheet.cautions.begin(), sheet.cautions.end());
    wanted.insert(wanted.end(), sheet.questions.begin(), sheet.questions.end());
    for (const std::string& words : wanted) {
        EXPECT_NE(text.find(words), std::string::npos) << words;
    }
    EXPECT_EQ(layout.reminders_left_out, 0U);
}

} // namespace
} // namespace loafwright::output
