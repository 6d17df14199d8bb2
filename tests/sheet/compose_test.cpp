// SPDX-License-Identifier: Apache-2.0
//
// What stands on the page, from a plan made by hand.
#include "engine/sheet/compose.hpp"
#include "engine/sheet/lines.hpp"
#include "tests/sheet/tin_loaf_plan.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace loafwright {
namespace {

Sheet sheet_of(const BakeDay& bake) {
    return compose(bake.plan, bake.recipe, bake.provisions, bake.day, SheetOptions{});
}

TEST(compose, opens_with_when_to_eat_when_to_begin_and_when_one_is_free) {
    const Sheet sheet = sheet_of(tin_loaf_day());
    EXPECT_EQ(sheet.title, "Plain tin loaf");
    EXPECT_EQ(said(sheet.eat), "eat at 18:30");
    // Forty-two minutes of work are forty to a person; the twenty minutes before the oven are no
    // freedom.
    EXPECT_EQ(
        opening(sheet),
        "Begin 13:00. 40 minutes of your hands; you are free 13:30 to 14:35, 15:20 to 15:50 and "
        "16:25 to 18:30.");
}

TEST(compose, keeps_the_three_longest_free_spans_in_their_order) {
    BakeDay bake = tin_loaf_day();
    bake.plan.free = {{at(13, 0), at(13, 30)},
                      {at(14, 0), at(16, 0)},
                      {at(16, 0), at(16, 40)},
                      {at(17, 0), at(18, 0)}};
    EXPECT_NE(
        opening(sheet_of(bake)).find("free 14:00 to 16:00, 16:00 to 16:40 and 17:00 to 18:00."),
        std::string::npos);
    bake.plan.free.clear();
    EXPECT_EQ(opening(sheet_of(bake)), "Begin 13:00. 40 minutes of your hands.");
}

TEST(compose, weighs_in_grams_with_the_texts_own_measure_beside) {
    const Sheet sheet = sheet_of(tin_loaf_day());
    const std::vector<std::string> expected = {"500 g strong white flour",
                                               "330 g water",
                                               "10 g salt",
                                               "about 7 g (2 tsp) instant yeast",
                                               "a handful sesame seeds, if you like"};
    EXPECT_EQ(sheet.weigh, expected);
    EXPECT_EQ(sheet::weigh_line(bought("flour", Band<Grams>{Grams(400), Grams(433), Grams(460)}),
                                WeightUnit::grams),
              "about 430 g flour");
}

TEST(compose, a_wait_says_when_to_look_how_it_looks_and_how_late_it_may_be) {
    const SheetStage prove = sheet_of(tin_loaf_day()).stages.at(3);
    EXPECT_EQ(prove.title, "Prove, covered");
    EXPECT_EQ(prove.length, "look from 15:40");
    EXPECT_EQ(prove.cue,
              "ready when it domes 2.5 cm above the rim, about 15:50, by 16:10 at the latest");
    EXPECT_FALSE(prove.cue_is_ours);
    ASSERT_EQ(prove.acts.size(), 1U);
    EXPECT_EQ(prove.acts.front().time, "15:20");
}

TEST(compose, a_sign_that_is_not_the_recipes_is_called_ours) {
    const SheetStage rise = sheet_of(tin_loaf_day()).stages.at(1);
    EXPECT_EQ(rise.cue, "our sign: doubled, about 14:50, by 15:15 at the latest");
    EXPECT_TRUE(rise.cue_is_ours);
}

TEST(compose, a_bake_counts_from_its_own_start) {
    const SheetStage bake = sheet_of(tin_loaf_day()).stages.at(4);
    EXPECT_EQ(bake.length, "30 to 40 min");
    EXPECT_EQ(bake.acts.at(0).time, "+ 10");
    EXPECT_EQ(bake.cue, "ready when it sounds hollow");
}

TEST(compose, cooling_has_its_least_and_its_best) {
    const SheetStage cool = sheet_of(tin_loaf_day()).stages.at(5);
    EXPECT_EQ(cool.length, "1 h at least");
    ASSERT_EQ(cool.reminders.size(), 1U);
    EXPECT_EQ(cool.reminders.front(), "at its best after 1 h 50");
}

TEST(compose, eating_has_no_box_to_tick) {
    const Sheet sheet = sheet_of(tin_loaf_day());
    EXPECT_TRUE(sheet.stages.front().box);
    EXPECT_FALSE(sheet.stages.back().box);
    EXPECT_EQ(sheet.stages.back().time, "18:30");
    EXPECT_EQ(sheet.stages.back().length, "");
}

TEST(compose, three_reminders_of_nine_words_at_most) {
    BakeDay bake = tin_loaf_day();
    bake.plan.stages.front().reminders = {
        reminder_of("one"),
        reminder_of("until smooth and springy"),
        reminder_of("one"),
        reminder_of("one two three, four five six seven eight nine ten eleven"),
        reminder_of("a b c d e f g h i j"),
        reminder_of("never seen")};
    const std::vector<std::string> reminders = sheet_of(bake).stages.front().reminders;
    const std::vector<std::string> expected = {"one", "one two three", "a b c d e f g h i …"};
    EXPECT_EQ(reminders, expected) << "the cue is not said twice";
}

TEST(compose, what_the_title_says_is_no_reminder) {
    BakeDay bake = tin_loaf_day();
    bake.plan.stages.at(1).reminders = {reminder_of("Cover"), reminder_of("out of draughts")};
    EXPECT_EQ(sheet_of(bake).stages.at(1).reminders, (std::vector<std::string>{"out of draughts"}));
}

TEST(compose, what_the_sign_or_an_act_says_is_no_reminder_either) {
    BakeDay bake = tin_loaf_day();
    bake.plan.stages.at(1).reminders = {reminder_of("It has doubled"), reminder_of("oil the bowl")};
    bake.plan.stages.at(3).reminders = {reminder_of("set the oven to 230 °C"),
                                        reminder_of("seam down")};
    const Sheet sheet = sheet_of(bake);
    EXPECT_EQ(sheet.stages.at(1).reminders, (std::vector<std::string>{"oil the bowl"}));
    EXPECT_EQ(sheet.stages.at(3).reminders, (std::vector<std::string>{"seam down"}));
}

TEST(compose, three_cautions_at_most) {
    EXPECT_EQ(sheet_of(tin_loaf_day()).cautions.size(), 3U);
}

TEST(compose, says_whether_a_slow_dough_is_still_in_time) {
    BakeDay bake = tin_loaf_day();
    EXPECT_EQ(sheet_of(bake).notes.front(),
              "It can be cut 1 h 05 before you eat; a slow dough may use that time.");
    bake.plan.eat = {at(18, 0), at(18, 10), at(18, 28)};
    EXPECT_EQ(sheet_of(bake).notes.front(),
              "If the dough is slow it can be eaten at 18:30: still in time.");
    bake.day.eat_by.reset();
    EXPECT_EQ(sheet_of(bake).notes.front(), "If the dough is slow you eat at 18:30.");
}

TEST(compose, a_question_shows_what_is_used_until_it_is_answered) {
    const Sheet sheet = sheet_of(tin_loaf_day());
    ASSERT_EQ(sheet.questions.size(), 1U);
    EXPECT_EQ(sheet.questions.front(), "How hot is a hot oven? Used: 220 °C.");
}

TEST(compose, names_the_day_where_it_changes) {
    BakeDay bake = tin_loaf_day();
    bake.plan.stages.at(5).start = at(24 + 7, 30);
    bake.plan.stages.at(6).start = at(24 + 9, 0);
    bake.plan.eat = exactly(at(24 + 9, 0));
    const Sheet sheet = sheet_of(bake);
    EXPECT_EQ(said(sheet.eat), "eat on Sun 29 Nov at 09:00");
    EXPECT_EQ(sheet.stages.at(0).time, "Sat 13:00");
    EXPECT_EQ(sheet.stages.at(1).time, "13:30");
    EXPECT_EQ(sheet.stages.at(5).time, "Sun 07:30");
    EXPECT_EQ(sheet.stages.at(6).time, "09:00");
}

TEST(compose, a_bake_on_another_day_names_its_date) {
    BakeDay bake = tin_loaf_day();
    bake.day.now = at(-20, 0);
    EXPECT_EQ(opening(sheet_of(bake)).substr(0, 24), "Begin Sat 28 Nov, 13:00.");
}

TEST(compose, a_warning_says_what_and_what_to_do) {
    BakeDay bake = tin_loaf_day();
    bake.plan.warnings = {
        {"at_night", Severity::warning, "you shape at 23:10", "", "begin earlier"}};
    EXPECT_EQ(sheet_of(bake).warnings.at(0), "You shape at 23:10. Begin earlier.");
}

TEST(compose, lead_words_of_a_cue_are_said_once) {
    EXPECT_EQ(sheet::bare_cue("until it has doubled."), "it has doubled");
    EXPECT_EQ(sheet::bare_cue("or until when doubled"), "doubled");
    EXPECT_EQ(sheet::bare_cue("untidy"), "untidy");
    EXPECT_EQ(sheet::bare_sign("until it has doubled"), "doubled");
}

TEST(compose_refusal, every_way_out_has_its_time_once) {
    Impossible impossible;
    impossible.why = "You can't eat this by 14:00.";
    impossible.ways_out = {{"the same dough as rolls", at(13, 50), {}},
                           {"eat at 15:40 today", at(15, 40), {}},
                           {"begin at 09:00 and eat from 13:45", at(13, 45), {}}};
    const BakeDay bake = tin_loaf_day();
    const Refusal refusal = compose_refusal(impossible, bake.day);
    EXPECT_EQ(refusal.why, impossible.why);
    ASSERT_EQ(refusal.ways_out.size(), 3U);
    EXPECT_EQ(refusal.ways_out[0], "the same dough as rolls: eat at 13:50");
    EXPECT_EQ(refusal.ways_out[1], "eat at 15:40 today");
    EXPECT_EQ(refusal.ways_out[2], "begin at 09:00 and eat from 13:45");
}

} // namespace
} // namespace loafwright
