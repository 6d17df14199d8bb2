// SPDX-License-Identifier: Apache-2.0
//
// What the text leaves open is asked, and an answer changes the reading.
#include "engine/reading/read.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace loafwright {
namespace {

Reading reading_of(const std::string& words, const Answers& answers = {}) {
    static const Knowledge knowledge = built_in_knowledge();
    static const Reader reader(knowledge);
    auto text = check_text(words, "test");
    EXPECT_TRUE(text.has_value());
    return reader.read(*text, answers);
}

bool asks(const Reading& reading, const std::string& key) {
    return std::any_of(reading.questions.begin(),
                       reading.questions.end(),
                       [&](const Question& question) { return question.key == key; });
}

const Step* step_of(const Reading& reading, StepKind kind) {
    const auto step = std::find_if(reading.recipe.steps.begin(),
                                   reading.recipe.steps.end(),
                                   [kind](const Step& one) { return one.kind == kind; });
    return step == reading.recipe.steps.end() ? nullptr : &*step;
}

TEST(answers, give_the_oven_its_heat) {
    const std::string words =
        "Knead the dough. Let it rise for an hour. Bake in a hot oven for 30 minutes.";
    EXPECT_TRUE(asks(reading_of(words), "oven-c"));
    const Reading answered = reading_of(words, {{"oven-c", "gas 7"}});
    EXPECT_FALSE(asks(answered, "oven-c"));
    const Step* bake = step_of(answered, StepKind::bake);
    ASSERT_NE(bake, nullptr);
    ASSERT_TRUE(bake->temperature.has_value());
    EXPECT_NEAR(bake->temperature->low.degrees(), 218.0, 1.0); // gas mark 7 is 425 °F
}

TEST(answers, give_a_rise_its_length) {
    const std::string words =
        "Knead the dough. Let it rise until doubled. Shape it and bake it at 220°C for 30 minutes.";
    const Reading open = reading_of(words);
    ASSERT_TRUE(asks(open, "minutes-rise-1"));
    const Reading answered = reading_of(words, {{"minutes-rise-1", "an hour and a half"}});
    EXPECT_FALSE(asks(answered, "minutes-rise-1"));
    const Step* rise = step_of(answered, StepKind::rise);
    ASSERT_NE(rise, nullptr);
    ASSERT_TRUE(rise->minutes.has_value());
    EXPECT_DOUBLE_EQ(rise->minutes->minutes.likely.count(), 90.0);
}

TEST(answers, give_flour_its_weight) {
    const std::string words = "Warm a cup of milk, add enough flour to make a soft dough, and "
                              "knead it well. Let it rise. Bake it for half an hour.";
    EXPECT_TRUE(asks(reading_of(words), "grams-flour"));
    const Reading answered = reading_of(words, {{"grams-flour", "500 g"}});
    EXPECT_FALSE(asks(answered, "grams-flour"));
    EXPECT_TRUE(std::any_of(answered.recipe.ingredients.begin(),
                            answered.recipe.ingredients.end(),
                            [](const Ingredient& one) {
                                return one.item == "flour" && one.grams &&
                                       one.grams->likely.count() == 500.0;
                            }));
}

TEST(answers, add_the_bake_that_the_text_leaves_out) {
    const std::string words =
        "Mix the dough, knead it, and let it rest for 30 minutes. Roll it out.";
    EXPECT_TRUE(asks(reading_of(words), "bake"));
    const Reading answered = reading_of(words, {{"bake", "240 for 12 minutes"}});
    EXPECT_FALSE(asks(answered, "bake"));
    const Step* bake = step_of(answered, StepKind::bake);
    ASSERT_NE(bake, nullptr);
    EXPECT_DOUBLE_EQ(bake->minutes->minutes.likely.count(), 12.0);
    EXPECT_DOUBLE_EQ(bake->temperature->low.degrees(), 240.0);
}

TEST(answers, tell_a_british_pint_from_an_american) {
    const std::string words = "Stir a pint of water into the barley meal and bake it for an hour.";
    const auto water = [](const Reading& reading) {
        for (const Ingredient& one : reading.recipe.ingredients) {
            if (one.known_as == "water" && one.grams) {
                return one.grams->likely.count();
            }
        }
        return 0.0;
    };
    EXPECT_TRUE(asks(reading_of(words), "region"));
    EXPECT_NEAR(water(reading_of(words, {{"region", "British"}})),
                568.0,
                3.0); // imperial pint 568.26 mL (CLDR 41)
    EXPECT_NEAR(water(reading_of(words, {{"region", "American"}})),
                473.0,
                3.0); // US pint 473.18 mL (Handbook 44)
}

TEST(answers, choose_the_bread_that_is_baked) {
    const std::string words =
        "Knead the dough. For rolls, bake 12 to 15 minutes; for one big loaf, 40.";
    const Reading loaf = reading_of(words);
    ASSERT_TRUE(asks(loaf, "which-bread"));
    EXPECT_DOUBLE_EQ(step_of(loaf, StepKind::bake)->minutes->minutes.likely.count(), 40.0);
    const Reading rolls = reading_of(words, {{"which-bread", "rolls"}});
    EXPECT_DOUBLE_EQ(step_of(rolls, StepKind::bake)->minutes->minutes.low.count(), 12.0);
}

TEST(answers, that_cannot_be_understood_are_named_and_asked_again) {
    const Reading reading = reading_of("Knead the dough. Bake for 30 minutes.",
                                       {{"oven-c", "rather warm"}, {"colour", "blue"}});
    EXPECT_TRUE(asks(reading, "oven-c"));
    ASSERT_EQ(reading.remarks.size(), 2U);
    EXPECT_EQ(reading.remarks[0].code, "answer_unreadable");
    EXPECT_EQ(reading.remarks[1].code, "answer_unknown");
}

TEST(read, says_kindly_that_a_text_is_in_another_language) {
    const auto named = [](const Reading& reading) {
        return std::any_of(
            reading.remarks.begin(), reading.remarks.end(), [](const Diagnostic& remark) {
                return remark.code == "text_other_language";
            });
    };
    EXPECT_TRUE(named(
        reading_of("Das Mehl mit Wasser und Hefe verrühren, den Teig zehn Minuten kneten und eine "
                   "Stunde gehen lassen. "
                   "Danach zu einem Laib formen und bei 220 Grad eine halbe Stunde backen.")));
    EXPECT_TRUE(named(reading_of("Mélanger la farine avec l'eau et la levure, pétrir pendant dix "
                                 "minutes, laisser lever une heure, façonner puis "
                                 "cuire trente minutes dans un four chaud.")));
    EXPECT_FALSE(named(reading_of("Mix the flour with water and yeast, knead the dough for ten "
                                  "minutes and let it rise for an hour. Then "
                                  "shape a loaf and bake it at 220 degrees for half an hour.")));
}

TEST(check_text, turns_away_what_is_no_text) {
    const auto code = [](std::string bytes) {
        const auto text = check_text(std::move(bytes), "x.txt");
        return text ? std::string("taken") : text.error().front().code;
    };
    EXPECT_EQ(code(""), "text_empty");
    EXPECT_EQ(code("  \n\t "), "text_empty");
    EXPECT_EQ(code(std::string("Mix\0knead", 9)), "text_binary");
    EXPECT_EQ(code("Mix \xC3\x28"),
              "text_not_utf8"); // overlong and broken sequences: Unicode, table 3-7
    EXPECT_EQ(code("\xED\xA0\x80"), "text_not_utf8"); // a surrogate
    EXPECT_EQ(code(std::string(longest_text_bytes + 1, 'a')), "text_too_long");
    EXPECT_EQ(code(std::string(longest_text_bytes, 'a')), "taken");
    EXPECT_EQ(code("Mix."), "taken");
}

} // namespace
} // namespace loafwright
