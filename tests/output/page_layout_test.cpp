// SPDX-License-Identifier: Apache-2.0
//
// Where things stand on paper: sizes, the one page, what gives way and that it is said, and that
// nothing a recipe is called can break it.
#include "shell/output/page_layout.hpp"
#include "shell/output/type_setting.hpp"
#include "tests/output/golden.hpp"
#include "tests/output/planned_pages.hpp"
#include "tests/output/readers.hpp"
#include "tests/sheet/tin_loaf_plan.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

namespace loafwright::output {
namespace {

Sheet tin_loaf_sheet() {
    const BakeDay bake = tin_loaf_day();
    return compose(bake.plan, bake.recipe, bake.provisions, bake.day, SheetOptions{});
}

const TypeSetter& lato() {
    static const TypeSetter setter("Lato");
    return setter;
}

PageLayout laid(const Sheet& sheet, const PageOptions& options = {}) {
    return lay_out({sheet}, options, lato());
}

std::vector<Words> words_of(const PageLayout& layout) {
    std::vector<Words> all;
    for (const LaidPage& page : layout.pages) {
        for (const Part& part : page.parts) {
            for (const Mark& mark : part.marks) {
                if (const auto* words = std::get_if<Words>(&mark)) {
                    all.push_back(*words);
                }
            }
        }
    }
    return all;
}

std::string text_of(const PageLayout& layout) {
    std::string text;
    for (const Words& words : words_of(layout)) {
        text += words.text + "\n";
    }
    return as_read(text);
}

std::size_t boxes_in(const PageLayout& layout) {
    std::size_t count = 0;
    for (const LaidPage& page : layout.pages) {
        for (const Part& part : page.parts) {
            count += static_cast<std::size_t>(
                std::count_if(part.marks.begin(), part.marks.end(), [](const Mark& mark) {
                    return std::holds_alternative<Square>(mark);
                }));
        }
    }
    return count;
}

bool is_time_or_title(Role role) {
    return role == Role::eat_time || role == Role::title || role == Role::lead ||
           role == Role::begin_time || role == Role::stage_time || role == Role::stage_number ||
           role == Role::stage_title;
}

// The sizes that were asked for: times and titles 20 pt, signs 13 pt, nothing under 10 pt, and 18
// pt in large print.
void expect_sizes(const PageLayout& layout, Print print, const std::string& name) {
    for (const Words& words : words_of(layout)) {
        const double least = is_time_or_title(words.role)                         ? 20.0
                             : words.role == Role::cue || words.role == Role::act ? 13.0
                                                                                  : 10.0;
        EXPECT_GE(words.face.points, print == Print::large ? std::max(18.0, least) : least)
            << name << ": " << words.text;
    }
}

bool all_inside(const PageLayout& layout) {
    const auto all = words_of(layout);
    return std::all_of(all.begin(), all.end(), [&layout](const Words& words) {
        // Half a point for letters that lean over their box.
        return words.x >= 0.0 && words.y >= 0.0 &&
               words.x + words.extent.width <= layout.width + 0.5 &&
               words.y + words.extent.height <= layout.height + 0.5;
    });
}

// Of one kind, so that texts of different columns are not compared: no two share a place.
bool none_overlap(const PageLayout& layout) {
    for (const LaidPage& page : layout.pages) {
        PageLayout one;
        one.pages.push_back(page);
        const auto all = words_of(one);
        for (std::size_t i = 0; i < all.size(); ++i) {
            for (std::size_t j = i + 1; j < all.size(); ++j) {
                const Words& a = all[i];
                const Words& b = all[j];
                // Ascenders and descenders of the face reach a quarter into the gap.
                const double a_top = a.y + 0.25 * a.face.points;
                const double b_top = b.y + 0.25 * b.face.points;
                const double a_end = a.y + a.extent.height - 0.2 * a.face.points;
                const double b_end = b.y + b.extent.height - 0.2 * b.face.points;
                if (a_top < b_end && b_top < a_end && a.x < b.x + b.extent.width - 0.5 &&
                    b.x < a.x + a.extent.width - 0.5) {
                    ADD_FAILURE() << "'" << a.text << "' lies on '" << b.text << "'";
                    return false;
                }
            }
        }
    }
    return true;
}

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

// Much for a page: nine stages, the waits with long signs and acts, everywhere three reminders.
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
    sheet.stages[7].acts = {{"14:00", "oven on, 230 °C (fan 210, gas 8)"}};
    return sheet;
}
TEST(page_layout, nine_crowded_stages_fit_and_what_is_left_out_is_counted_on_the_page) {
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

TEST(page_layout, more_than_a_page_goes_on_overleaf_and_says_so) {
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

TEST(page_layout, two_breads_have_a_page_each) {
    const PageLayout layout = lay_out({tin_loaf_sheet(), tin_loaf_sheet()}, PageOptions{}, lato());
    EXPECT_EQ(layout.pages.size(), 2U);
}

TEST(page_layout, an_act_that_comes_again_has_a_box_each_time) {
    Sheet sheet = tin_loaf_sheet();
    sheet.stages[1].acts.clear();
    for (int i = 0; i < 8; ++i) {
        sheet.stages[1].acts.push_back({fmt::format("1{}:30", i), "fold"});
    }
    const PageLayout layout = laid(sheet);
    EXPECT_EQ(boxes_in(layout), 6U + 8U + 2U);
    const std::string text = text_of(layout);
    EXPECT_NE(text.find("10:30 fold 11:30 12:30 13:30"), std::string::npos) << text;
    EXPECT_TRUE(none_overlap(layout));
}

TEST(page_layout, a_bake_of_two_days_names_the_day_beside_the_time) {
    Sheet sheet = tin_loaf_sheet();
    sheet.stages[0].time = "Sat 22:00";
    sheet.stages[4].time = "Sun 07:30";
    const PageLayout layout = laid(sheet);
    const std::string text = text_of(layout);
    EXPECT_NE(text.find("5 Sun 07:30 Bake"), std::string::npos) << text;
    EXPECT_TRUE(none_overlap(layout));
}

TEST(page_layout, twelve_hour_clocks_fit_as_well) {
    Sheet sheet = tin_loaf_sheet();
    sheet.eat = "eat on Sat 28 Nov at 6:30 pm";
    sheet.opening = "Begin Sat 28 Nov, 1:00 pm. 40 minutes of your hands.";
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

TEST(page_layout, no_title_breaks_the_page) {
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

TEST(page_layout, a_missing_glyph_is_counted) {
    Sheet sheet = tin_loaf_sheet();
    sheet.title = "Loaf \xF4\x80\x80\x80"; // U+100000, private use: in no typeface
    EXPECT_EQ(laid(sheet).unknown_letters, 1U);
}

RC_GTEST_PROP(page_layout, holds_whatever_a_sheet_says, ()) {
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
    sheet.eat = words();
    sheet.opening = words();
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
