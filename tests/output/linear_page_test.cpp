// SPDX-License-Identifier: Apache-2.0
//
// The page to be heard, and pages with titles that nobody should write.
#include "shell/output/linear_page.hpp"
#include "shell/output/text_lines.hpp"
#include "shell/output/text_page.hpp"
#include "tests/sheet/tin_loaf_plan.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <sstream>
#include <string>
#include <vector>

namespace loafwright::output {
namespace {

Sheet tin_loaf_sheet() {
    const BakeDay bake = tin_loaf_day();
    return compose(bake.plan, bake.recipe, bake.provisions, bake.day, SheetOptions{});
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) {
        lines.push_back(line);
    }
    return lines;
}

bool is_sentence(const std::string& line) {
    return !line.empty() && line.front() != ' ' && line.find("  ") == std::string::npos &&
           std::string(".?!").find(line.back()) != std::string::npos;
}

TEST(linear_page, says_one_fact_a_line_in_the_order_of_the_page) {
    const std::vector<std::string> lines = lines_of(linear_page(tin_loaf_sheet()));
    const std::vector<std::string> first = {"Plain tin loaf.",
                                            "Eat at 18:30.",
                                            "Begin 13:00. 40 minutes of your hands; you are free "
                                            "13:30 to 14:35, 15:20 to 15:50 and 16:25 to 18:30.",
                                            "To weigh, 5 things.",
                                            "500 grams strong white flour."};
    ASSERT_GE(lines.size(), first.size());
    EXPECT_EQ(std::vector<std::string>(lines.begin(), lines.begin() + 5), first);
    const std::string all = linear_page(tin_loaf_sheet());
    for (const char* line : {"Stage 2 of 6, at 13:30: first rise, covered.\nLook from 14:35.\n",
                             "At 15:20: oven on, 230 °C (fan 210, gas 8).\n",
                             "It takes 30 to 40 minutes.\n",
                             "After 10 minutes: oven down to 200 °C (fan 180, gas 6).\n",
                             "It takes 1 hour at least.\nAt its best after 1 hour 50 minutes.\n",
                             "Last, at 18:30: eat.\n",
                             "Take care. Flour is raw until it is baked.\n",
                             "Not known yet: How hot is a hot oven? Used: 220 °C.\n"}) {
        EXPECT_NE(all.find(line), std::string::npos) << line << " in\n" << all;
    }
}

TEST(linear_page, drops_nothing_that_the_page_says) {
    const Sheet sheet = tin_loaf_sheet();
    const std::string all = linear_page(sheet);
    std::size_t facts = 3 + 1 + sheet.weigh.size() + 1 + sheet.ready.size() + sheet.ahead.size() +
                        sheet.notes.size() + sheet.warnings.size() + sheet.cautions.size() +
                        sheet.questions.size();
    for (const SheetStage& stage : sheet.stages) {
        facts += 1 + (stage.length.empty() ? 0U : 1U) + stage.reminders.size() + stage.acts.size() +
                 (stage.cue.empty() ? 0U : 1U);
    }
    EXPECT_EQ(lines_of(all).size(), facts);
}

TEST(linear_page, names_the_day_in_full) {
    Sheet sheet = tin_loaf_sheet();
    sheet.stages[3].time = "Sun 07:30";
    sheet.stages[3].length = "look from Sun 08:10";
    const std::string all = linear_page(sheet);
    EXPECT_NE(all.find("Stage 4 of 6, on Sunday at 07:30: prove, covered.\n"
                       "Look from Sunday 08:10.\n"),
              std::string::npos)
        << all;
}

TEST(linear_page, a_refusal_is_sentences_too) {
    Refusal no;
    no.why = "You can't eat this by 14:00. From 10:30 it takes 4 h 25.";
    no.ways_out = {"eat at 15:40 today"};
    EXPECT_EQ(linear_page(no),
              "You can't eat this by 14:00. From 10:30 it takes 4 hours 25 minutes.\n"
              "This would work: eat at 15:40 today.\n");
}

TEST(pages, absurd_titles_break_nothing) {
    std::string long_title;
    while (long_title.size() < 300) {
        long_title += "wholemeal ";
    }
    for (const std::string& title : {long_title,
                                     std::string(300, 'x'),
                                     std::string("🍞🥖🫓 👩🏽‍🍳"),
                                     std::string("خبز التنور مع الزيت والزعتر"),
                                     std::string("     ")}) {
        Sheet sheet = tin_loaf_sheet();
        sheet.title = title;
        sheet.stages[2].title = title;
        for (const std::size_t columns : {40U, 80U}) {
            for (const std::string& line : lines_of(text_page(sheet, columns, Weight::plain))) {
                EXPECT_LE(columns_of(line), columns) << line;
            }
        }
        for (const std::string& line : lines_of(linear_page(sheet))) {
            EXPECT_TRUE(is_sentence(line)) << line;
        }
    }
}

RC_GTEST_PROP(linear_page, any_words_become_sentences_on_lines_of_their_own, ()) {
    Sheet sheet = tin_loaf_sheet();
    const auto words = [] {
        return *rc::gen::container<std::string>(
            rc::gen::element('a', 'h', 'g', '1', '0', ' ', '\n', '.', ',', '[', '\t', '\x1B'));
    };
    sheet.title = words();
    sheet.weigh.push_back(words());
    sheet.stages[0].title = words();
    sheet.stages[0].length = words();
    sheet.stages[1].reminders = {words()};
    sheet.stages[1].cue = words();
    sheet.notes.push_back(words());
    for (const std::string& line : lines_of(linear_page(sheet))) {
        RC_ASSERT(is_sentence(line));
        RC_ASSERT(line.find('\x1B') == std::string::npos);
    }
}

} // namespace
} // namespace loafwright::output
