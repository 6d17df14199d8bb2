// SPDX-License-Identifier: Apache-2.0
//
// The page in letters. Golden pages in tests/golden/ are rewritten when LOAFWRIGHT_UPDATE_GOLDEN is
// 1, and then looked at.
#include "shell/output/text_lines.hpp"
#include "shell/output/text_page.hpp"
#include "tests/output/golden.hpp"
#include "tests/sheet/tin_loaf_plan.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace loafwright::output {
namespace {

Sheet tin_loaf_sheet() {
    const BakeDay bake = tin_loaf_day();
    return compose(bake.plan, bake.recipe, bake.provisions, bake.day, SheetOptions{});
}

Refusal refusal() {
    Refusal no;
    no.why = "You can't eat this by 14:00. From 10:30 it takes 4 h 25 with one hour's cooling: "
             "14:55, or "
             "15:40 if the dough is slow.";
    no.ways_out = {"the same dough as rolls: eat at 13:50",
                   "begin at 08:20 tomorrow: eat at Sun 14:00"};
    return no;
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) {
        lines.push_back(line);
    }
    return lines;
}

void expect_no_wider(const std::string& page, std::size_t columns) {
    for (const std::string& line : lines_of(page)) {
        EXPECT_LE(columns_of(line), columns) << line;
        EXPECT_TRUE(line.empty() || line.back() != ' ') << line;
    }
    EXPECT_EQ(page.back(), '\n');
    EXPECT_NE(page[page.size() - 2], '\n');
}

TEST(text_page, looks_as_it_was_approved_on_80_columns) {
    const std::string page = text_page(tin_loaf_sheet(), 80, Weight::plain);
    expect_no_wider(page, 80);
    expect_golden("tin_loaf_80.txt", page);
}

TEST(text_page, looks_as_it_was_approved_on_40_columns) {
    const std::string page = text_page(tin_loaf_sheet(), 40, Weight::plain);
    expect_no_wider(page, 40);
    expect_golden("tin_loaf_40.txt", page);
}

TEST(text_page, a_bake_over_two_days_looks_as_it_was_approved) {
    BakeDay bake = tin_loaf_day();
    for (std::size_t i = 4; i < bake.plan.stages.size(); ++i) {
        Stage& stage = bake.plan.stages[i];
        stage.start = later_by_minutes(stage.start, 16 * 60);
        stage.end = {later_by_minutes(stage.end.low, 16 * 60),
                     later_by_minutes(stage.end.likely, 16 * 60),
                     later_by_minutes(stage.end.high, 16 * 60)};
    }
    bake.plan.out_of_oven = later_by_minutes(bake.plan.out_of_oven, 16 * 60);
    bake.plan.cut_from = later_by_minutes(bake.plan.cut_from, 16 * 60);
    bake.plan.best_from = later_by_minutes(bake.plan.best_from, 16 * 60);
    bake.plan.free = {{at(13, 30), at(14, 35)}, {at(15, 20), at(24 + 7, 30)}};
    bake.plan.eat = exactly(bake.plan.stages.back().start);
    bake.day.eat_by.reset();
    const Sheet sheet = compose(bake.plan, bake.recipe, bake.provisions, bake.day, SheetOptions{});
    const std::string page = text_page(sheet, 80, Weight::plain);
    expect_no_wider(page, 80);
    expect_golden("two_days_80.txt", page);
}

TEST(text_page, the_honest_no_looks_as_it_was_approved) {
    expect_golden("refusal_80.txt", text_page(refusal(), 80));
    expect_no_wider(text_page(refusal(), 40), 40);
}

TEST(text_page, the_time_to_eat_stands_in_the_first_line) {
    const std::string first = lines_of(text_page(tin_loaf_sheet(), 80, Weight::plain)).front();
    EXPECT_EQ(first.substr(0, 14), "Plain tin loaf");
    EXPECT_EQ(first.substr(first.size() - 12), "eat at 18:30");
    EXPECT_EQ(first.size(), 80U);
}

TEST(text_page, weight_changes_nothing_but_weight) {
    std::string bold = text_page(tin_loaf_sheet(), 80, Weight::bold);
    EXPECT_NE(bold.find("\033[1meat at 18:30\033[0m"), std::string::npos);
    for (const std::string& mark : {std::string("\033[1m"), std::string("\033[0m")}) {
        for (std::size_t at_mark = bold.find(mark); at_mark != std::string::npos;
             at_mark = bold.find(mark)) {
            bold.erase(at_mark, mark.size());
        }
    }
    EXPECT_EQ(bold, text_page(tin_loaf_sheet(), 80, Weight::plain));
}

TEST(text_page, a_recipes_control_letters_do_not_reach_the_terminal) {
    Sheet sheet = tin_loaf_sheet();
    sheet.title = "Loaf\033[2J\a\xC2\x9B"
                  "31m";
    sheet.stages.front().reminders = {"mind\tthe\r\ngap"};
    const std::string page = text_page(sheet, 80, Weight::plain);
    EXPECT_EQ(page.find('\033'), std::string::npos);
    EXPECT_EQ(page.find('\a'), std::string::npos);
    EXPECT_EQ(page.find("\xC2\x9B"), std::string::npos);
    EXPECT_NE(page.find("mind the gap"), std::string::npos);
}

TEST(wrapped, a_number_stays_with_its_unit) {
    const auto lines = wrapped("bake it for 1 h 35 at 230 °C (fan 210, gas 8) and cool 20 min", 11);
    for (const std::string& line : lines) {
        EXPECT_LE(columns_of(line), 11U);
        EXPECT_TRUE(line != "h 35" && line.rfind("°C", 0) != 0 && line.rfind("min", 0) != 0 &&
                    line.rfind("8)", 0) != 0)
            << line;
    }
    EXPECT_EQ(wrapped("weigh 500 g flour", 9),
              (std::vector<std::string>{"weigh", "500 g", "flour"}));
    EXPECT_EQ(wrapped("eat at Sun 07:30", 11), (std::vector<std::string>{"eat at", "Sun 07:30"}));
}

TEST(wrapped, a_word_longer_than_the_line_is_broken_between_letters) {
    EXPECT_EQ(wrapped("Größenwahn", 5), (std::vector<std::string>{"Größe", "nwahn"}));
    EXPECT_EQ(wrapped("", 5), (std::vector<std::string>{""}));
}

TEST(columns_of, counts_letters_and_not_bytes) {
    EXPECT_EQ(columns_of("230 °C"), 6U);
    EXPECT_EQ(columns_of("crème brûlée"), 12U);
    EXPECT_EQ(columns_of("e\xCC\x81"), 1U); // e and a combining acute
    EXPECT_EQ(columns_of("面包"), 4U);
}

RC_GTEST_PROP(wrapped, no_line_is_too_wide_and_no_letter_is_lost, ()) {
    const std::vector<std::string> letters = {"a", "ß", "面", "1", " ", "g", ",", "h", "°C"};
    std::string text;
    const int count = *rc::gen::inRange(0, 120);
    for (int i = 0; i < count; ++i) {
        text += letters[static_cast<std::size_t>(
            *rc::gen::inRange(0, static_cast<int>(letters.size())))];
    }
    const auto columns = static_cast<std::size_t>(*rc::gen::inRange(2, 40));
    std::string joined;
    for (const std::string& line : wrapped(text, columns)) {
        RC_ASSERT(columns_of(line) <= columns);
        joined += line;
    }
    const auto without_blanks = [](std::string words) {
        std::string bare;
        for (const char c : words) {
            if (c != ' ') {
                bare += c;
            }
        }
        return bare;
    };
    RC_ASSERT(without_blanks(joined) == without_blanks(text));
}

RC_GTEST_PROP(text_page, fits_any_page, ()) {
    Sheet sheet = tin_loaf_sheet();
    const auto words = [] {
        std::string text;
        const int count = *rc::gen::inRange(0, 30);
        for (int i = 0; i < count; ++i) {
            text += std::string(static_cast<std::size_t>(*rc::gen::inRange(1, 12)), 'x') + " ";
        }
        return text;
    };
    sheet.title = words();
    sheet.weigh.push_back(words());
    sheet.ready.push_back(words());
    sheet.stages.front().title = words();
    sheet.stages.front().length = words();
    sheet.stages.front().cue = words();
    sheet.notes.push_back(words());
    const auto columns = static_cast<std::size_t>(*rc::gen::inRange(40, 121));
    for (const std::string& line : lines_of(text_page(sheet, columns, Weight::plain))) {
        RC_ASSERT(columns_of(line) <= columns);
    }
}

} // namespace
} // namespace loafwright::output
