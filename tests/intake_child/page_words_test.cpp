// SPDX-License-Identifier: Apache-2.0
//
// A saved page becomes one text, and what its data say of the times is held against its method. The
// data are schema.org's own: cookTime and its kind are ISO 8601 durations.
#include "engine/reading/read.hpp"
#include "shell/intake_child/page_words.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace loafwright::intake_child {
namespace {

std::string recipe(const std::string& name, const std::string& times) {
    return R"({"@type":"Recipe","name":")" + name + R"(",)" + times +
           R"("recipeIngredient":["500 g strong white flour","320 g water","9 g salt",)"
           R"("7 g instant yeast"],"recipeInstructions":["Knead for 10 minutes.",)"
           R"("Leave to rise for 1 hour.","Bake at 220 °C for 35 minutes."]})";
}

std::string page(const std::string& data) {
    return "<!doctype html><html><head><script type=\"application/ld+json\">"
           R"({"@context":"https://schema.org","@graph":[)" +
           data + "]}</script></head><body><p>A page.</p></body></html>";
}

Reading reading_of(const intake::TakenIn& taken) {
    auto text = check_text(taken.text, "page");
    EXPECT_TRUE(text.has_value());
    return read(*text, built_in_knowledge());
}

bool asks_for(const Reading& reading, const std::string& words) {
    return std::any_of(
        reading.questions.begin(), reading.questions.end(), [&](const Question& question) {
            return question.ask.find(words) != std::string::npos;
        });
}

TEST(page_words, a_cook_time_that_differs_from_the_method_is_asked_about) {
    const auto taken = page_words(
        page(recipe("Tea loaf", R"("prepTime":"PT20M","cookTime":"PT1H10M",)")), "tea.html");
    ASSERT_TRUE(taken.has_value());
    EXPECT_EQ(taken->kind, intake::Kind::html);
    const Reading reading = reading_of(*taken);
    EXPECT_TRUE(asks_for(reading, "The method says 35 min, the head of the recipe 1 h 10 min."));
    const Step& bake = reading.recipe.steps.back();
    ASSERT_EQ(bake.kind, StepKind::bake);
    EXPECT_DOUBLE_EQ(bake.minutes->minutes.likely.count(), 35.0);
    EXPECT_EQ(reading.recipe.title, "Tea loaf");
}

TEST(page_words, a_cook_time_that_agrees_is_not) {
    const auto taken = page_words(
        page(recipe("Tea loaf", R"("cookTime":"PT35M","totalTime":"PT3H",)")), "tea.html");
    ASSERT_TRUE(taken.has_value());
    EXPECT_FALSE(asks_for(reading_of(*taken), "head of the recipe"));
}

TEST(page_words, of_several_recipes_the_first_is_taken_and_the_others_are_named) {
    const auto taken =
        page_words(page(recipe("Tea loaf", "") + "," + recipe("Milk rolls", "")), "two.html");
    ASSERT_TRUE(taken.has_value());
    EXPECT_EQ(taken->text.rfind("Tea loaf", 0), 0U);
    EXPECT_EQ(taken->text.find("Milk rolls"), std::string::npos);
    ASSERT_EQ(taken->remarks.size(), 1U);
    EXPECT_EQ(taken->remarks.front().code, "page_several");
    EXPECT_NE(taken->remarks.front().what.find("Milk rolls"), std::string::npos);
}

TEST(page_words, what_is_wrong_names_the_file) {
    const auto taken =
        page_words("<!doctype html><html><body><img src=loaf.png></body></html>", "no.html");
    ASSERT_FALSE(taken.has_value());
    EXPECT_EQ(taken.error().front().where, "no.html");
    EXPECT_EQ(taken.error().front().code, "page_no_words");
}

} // namespace
} // namespace loafwright::intake_child
