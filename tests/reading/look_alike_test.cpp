// SPDX-License-Identifier: Apache-2.0
//
// Figures that a scanner took for letters are read as figures and asked about; words that only look
// like them are left alone. Which letters are taken for which figures is from memory.
#include "engine/reading/look_alike.hpp"
#include "engine/reading/read.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace loafwright {
namespace {

Reading reading_of(const std::string& text, const Answers& answers = {}) {
    static const Knowledge knowledge = built_in_knowledge();
    auto checked = check_text(text, "test");
    EXPECT_TRUE(checked.has_value());
    return read(*checked, knowledge, answers);
}

double minutes_of(const std::string& text) {
    const Reading reading = reading_of(text);
    const auto step = std::find_if(reading.recipe.steps.begin(),
                                   reading.recipe.steps.end(),
                                   [](const Step& one) { return one.minutes.has_value(); });
    return step == reading.recipe.steps.end() ? 0.0 : step->minutes->minutes.likely.count();
}

const Question* about_a_word(const Reading& reading) {
    const auto found =
        std::find_if(reading.questions.begin(), reading.questions.end(), [](const Question& one) {
            return one.key.rfind("word-at-", 0) == 0;
        });
    return found == reading.questions.end() ? nullptr : &*found;
}

TEST(look_alike, letters_before_a_unit_are_figures) {
    EXPECT_DOUBLE_EQ(minutes_of("Knead for l0 minutes."), 10);
    EXPECT_DOUBLE_EQ(minutes_of("Knead for 1O minutes."), 10);
    EXPECT_DOUBLE_EQ(minutes_of("Knead for I2 min."), 12);
    EXPECT_DOUBLE_EQ(minutes_of("Leave to rise for I hour."), 60);
    EXPECT_DOUBLE_EQ(minutes_of("Leave to rise for l/2 hour."), 30);
    EXPECT_DOUBLE_EQ(minutes_of("Leave to rise for l.5 hours."), 90);
    EXPECT_DOUBLE_EQ(minutes_of("Knead for l0-l2 minutes."), 11);
}

TEST(look_alike, amounts_and_heat_too) {
    const Reading reading =
        reading_of("S00g strong white flour, 32O g water and I0 g salt. Mix, and bake at 2200C "
                   "for 35 minutes.");
    std::vector<double> grams;
    for (const Ingredient& one : reading.recipe.ingredients) {
        grams.push_back(one.grams ? one.grams->likely.count() : 0.0);
    }
    EXPECT_EQ(grams, (std::vector<double>{500, 320, 10}));
    ASSERT_TRUE(reading.recipe.steps.back().temperature);
    EXPECT_DOUBLE_EQ(reading.recipe.steps.back().temperature->low.degrees(), 220);
    EXPECT_DOUBLE_EQ(
        reading_of("Bake at 200oC for 35 minutes.").recipe.steps.back().temperature->low.degrees(),
        200);
}

TEST(look_alike, figures_behind_a_number_are_its_unit) {
    const Reading reading =
        reading_of("- 21b strong white flour\n- 320m1 water\n- 10z butter\n"
                   "- 1b rye flour\n- 10 g salt\n\nMix, and bake for 35 minutes.");
    std::vector<double> grams;
    for (const Ingredient& one : reading.recipe.ingredients) {
        grams.push_back(one.grams ? std::round(one.grams->likely.count()) : 0.0);
    }
    EXPECT_EQ(grams, (std::vector<double>{907, 320, 28, 454, 10}));
    EXPECT_NE(about_a_word(reading), nullptr);
}

TEST(look_alike, a_share_of_a_spoon_is_a_half) {
    const Reading reading =
        reading_of("- 1% cups water\n- % cup milk\n- 11fl 0z beer\n\nMix, and rest for 1% hours.");
    std::vector<double> grams;
    for (const Ingredient& one : reading.recipe.ingredients) {
        EXPECT_TRUE(one.grams) << one.text;
        grams.push_back(one.grams ? std::round(one.grams->likely.count()) : 0.0);
    }
    ASSERT_EQ(grams.size(), 3U);
    EXPECT_NEAR(grams[0], 355, 10);
    EXPECT_NEAR(grams[1], 122, 6);
    EXPECT_NEAR(grams[2], 318, 16);
    EXPECT_DOUBLE_EQ(reading.recipe.steps.back().minutes->minutes.likely.count(), 90);
    EXPECT_EQ(about_a_word(reading)->default_answer, "1½");
    EXPECT_EQ(about_a_word(reading_of("Mix in 2% milk. Knead at 70% speed for 5 minutes.")),
              nullptr);
}

TEST(look_alike, what_was_made_of_them_is_asked) {
    const std::string text = "Knead for l0 minutes. Bake at 220°C for 35 minutes.";
    const Reading reading = reading_of(text);
    const Question* question = about_a_word(reading);
    ASSERT_NE(question, nullptr);
    EXPECT_EQ(question->key, "word-at-10");
    EXPECT_EQ(question->ask, "The text has \"l0\". Is that 10?");
    EXPECT_EQ(question->default_answer, "10");
    const Reading told = reading_of(text, {{"word-at-10", "16"}});
    EXPECT_EQ(about_a_word(told), nullptr);
    EXPECT_DOUBLE_EQ(told.recipe.steps.front().minutes->minutes.likely.count(), 16);
}

TEST(look_alike, what_the_page_repeats_has_the_figures) {
    const Reading reading = reading_of("Knead for 5 minutes. Bake at 2200C for 35 minutes.");
    const auto& reminders = reading.recipe.steps.back().reminders;
    ASSERT_FALSE(reminders.empty());
    EXPECT_EQ(reminders.front().text, "Bake at 220C");
}

TEST(look_alike, words_and_litres_are_left_alone) {
    for (const char* text : {"I pound the dough for 5 minutes.",
                             "I cup the dough in my hands and knead for 5 minutes.",
                             "Knead, so that it lolls, for 5 minutes.",
                             "Knead in 1l milk for 5 minutes.",
                             "Knead 1 l milk in for 5 minutes.",
                             "Form Ss or Os and knead for 5 minutes.",
                             "Knead for 5 minutes, see step 1b or 2bis, in a 201 bowl.",
                             "Knead for 5 minutes with a no 10 blade, or 10oz of it."}) {
        const Reading reading = reading_of(text);
        EXPECT_EQ(about_a_word(reading), nullptr) << text;
        EXPECT_DOUBLE_EQ(minutes_of(text), 5) << text;
    }
    EXPECT_EQ(about_a_word(reading_of("Heat a wood oven to 1000F. Bake for 2 minutes.")), nullptr);
}

// A gap that a scanner lost; not its figures, but beside them.
TEST(look_alike, a_unit_parts_from_the_short_words_it_ran_into) {
    EXPECT_DOUBLE_EQ(minutes_of("Leave it to rise for half an hourina warm place."), 30);
    EXPECT_DOUBLE_EQ(minutes_of("Set it ina warm place to rise for 20 minutesor so."), 20);
    const Reading reading = reading_of("Mix 2cupsof milk with 300 g flour. Knead for 5 minutes.");
    ASSERT_FALSE(reading.recipe.ingredients.empty());
    ASSERT_TRUE(reading.recipe.ingredients.front().grams);
    EXPECT_NEAR(reading.recipe.ingredients.front().grams->likely.count(), 488, 12);
    EXPECT_DOUBLE_EQ(minutes_of("Knead the farina, and the hourglass beside you, for 5 minutes."),
                     5);
}

// Whatever figures a number loses to letters, it is the same number; one figure must be left.
RC_GTEST_PROP(look_alike, gives_back_the_number, ()) {
    const auto number = *rc::gen::inRange(10, 9999);
    const std::string figures = std::to_string(number);
    std::string seen = figures;
    bool letters = false;
    for (std::size_t at = 0; at < seen.size(); ++at) {
        const auto like = std::string("lI|OoS");
        const auto chosen = like[*rc::gen::inRange<std::size_t>(0, like.size())];
        const char meant = chosen == 'S' ? '5' : chosen == 'O' || chosen == 'o' ? '0' : '1';
        if (seen[at] == meant) {
            seen[at] = chosen;
            letters = true;
        }
    }
    RC_PRE(letters &&
           std::any_of(seen.begin(), seen.end(), [](char c) { return c >= '0' && c <= '9'; }));
    const std::string text = seen + " grams";
    const auto found = reading::look_alike(text, 0);
    // "4l" is four litres.
    if (seen.back() == 'l' &&
        std::count_if(seen.begin(), seen.end(), [](char c) { return c < '0' || c > '9'; }) == 1) {
        RC_ASSERT(!found);
        return;
    }
    RC_ASSERT(found);
    RC_ASSERT(found->figures == figures);
    RC_ASSERT(found->end == seen.size());
}

} // namespace
} // namespace loafwright
