// SPDX-License-Identifier: Apache-2.0
//
// What was read can be corrected by the person who knows better, and what was read first is kept.
#include "engine/reading/read.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace loafwright {
namespace {

const std::string words = "Tea loaf\n\n- 500 g strong white flour\n- 320 g water\n- 10 g salt\n"
                          "- 7 g instant yeast\n\n1. Mix everything and knead for 10 minutes.\n"
                          "2. Leave to rise for 1 hour until doubled.\n"
                          "3. Shape it and put it in a tin. Prove for 45 minutes.\n"
                          "4. Bake at 220°C for 35 minutes.\n"
                          "5. My aunt always sang while it cooled.\n";

Reading reading_of(const std::string& text, const Answers& answers = {}) {
    static const Knowledge knowledge = built_in_knowledge();
    static const Reader reader(knowledge);
    auto checked = check_text(text, "test");
    EXPECT_TRUE(checked.has_value());
    return reader.read(*checked, answers);
}

const Step* step_of(const Reading& reading, StepKind kind) {
    const auto step = std::find_if(reading.recipe.steps.begin(),
                                   reading.recipe.steps.end(),
                                   [kind](const Step& one) { return one.kind == kind; });
    return step == reading.recipe.steps.end() ? nullptr : &*step;
}

std::string place_of(StepKind kind) {
    const Reading reading = reading_of(words);
    const Step* step = step_of(reading, kind);
    EXPECT_NE(step, nullptr);
    return step == nullptr ? "" : step->at;
}

bool remarks(const Reading& reading, std::string_view code) {
    return std::any_of(reading.remarks.begin(),
                       reading.remarks.end(),
                       [code](const Diagnostic& one) { return one.code == code; });
}

TEST(corrections, change_a_length_and_keep_what_was_read) {
    const Reading reading =
        reading_of(words, {{"minutes-at-" + place_of(StepKind::rise), "an hour and a half"}});
    const Step* rise = step_of(reading, StepKind::rise);
    ASSERT_NE(rise, nullptr);
    ASSERT_TRUE(rise->minutes.has_value());
    EXPECT_DOUBLE_EQ(rise->minutes->minutes.likely.count(), 90.0);
    EXPECT_EQ(rise->minutes->basis, Basis::stated);
    ASSERT_TRUE(rise->as_read.has_value());
    ASSERT_TRUE(rise->as_read->minutes.has_value());
    EXPECT_DOUBLE_EQ(rise->as_read->minutes->minutes.likely.count(), 60.0);
    EXPECT_TRUE(reading.remarks.empty());
}

TEST(corrections, change_what_a_step_is) {
    const Reading reading = reading_of(words, {{"kind-at-" + place_of(StepKind::rise), "soak"}});
    EXPECT_EQ(step_of(reading, StepKind::rise), nullptr);
    const Step* soak = step_of(reading, StepKind::soak);
    ASSERT_NE(soak, nullptr);
    EXPECT_EQ(soak->as_read->kind, StepKind::rise);
    EXPECT_DOUBLE_EQ(soak->minutes->minutes.likely.count(), 60.0);
}

TEST(corrections, a_bake_that_becomes_a_wait_leaves_the_oven_and_its_heat) {
    const Reading reading = reading_of(words, {{"kind-at-" + place_of(StepKind::bake), "prove"}});
    const Step& prove = reading.recipe.steps.back();
    EXPECT_EQ(prove.kind, StepKind::prove);
    EXPECT_EQ(prove.place, Place::counter);
    EXPECT_FALSE(prove.temperature.has_value());
    EXPECT_TRUE(prove.as_read->temperature.has_value());
}

TEST(corrections, change_the_heat_and_the_place) {
    const std::string prove_at = place_of(StepKind::prove);
    const Reading reading = reading_of(words,
                                       {{"heat-at-" + place_of(StepKind::bake), "gas 6"},
                                        {"place-at-" + prove_at, "fridge"},
                                        {"heat-at-" + prove_at, "5"}});
    EXPECT_NEAR(step_of(reading, StepKind::bake)->temperature->low.degrees(),
                204.0,
                1.0); // gas mark 6 is 400 °F
    const Step* prove = step_of(reading, StepKind::prove);
    EXPECT_EQ(prove->place, Place::fridge);
    EXPECT_DOUBLE_EQ(prove->temperature->low.degrees(), 5.0);
}

TEST(corrections, what_is_no_step_is_left_aside) {
    const Reading before = reading_of(words);
    const Reading reading = reading_of(words, {{"kind-at-" + place_of(StepKind::rise), "none"}});
    EXPECT_EQ(reading.recipe.steps.size() + 1, before.recipe.steps.size());
    EXPECT_EQ(step_of(reading, StepKind::rise), nullptr);
    EXPECT_TRUE(std::any_of(reading.unread.begin(), reading.unread.end(), [](const Unread& phrase) {
        return phrase.why == "you said it is no step";
    }));
}

TEST(corrections, what_was_left_aside_can_be_a_step) {
    const Reading before = reading_of(words);
    const auto sang =
        std::find_if(before.unread.begin(), before.unread.end(), [](const Unread& phrase) {
            return phrase.text.find("aunt") != std::string::npos;
        });
    ASSERT_NE(sang, before.unread.end());
    const Reading reading =
        reading_of(words, {{"kind-at-" + sang->at, "cool"}, {"minutes-at-" + sang->at, "2 hours"}});
    const Step* cool = step_of(reading, StepKind::cool);
    ASSERT_NE(cool, nullptr);
    EXPECT_DOUBLE_EQ(cool->minutes->minutes.likely.count(), 120.0);
    EXPECT_EQ(reading.unread.size() + 1, before.unread.size());
    EXPECT_TRUE(reading.remarks.empty());
}

TEST(corrections, change_an_amount_in_grams_or_in_spoons) {
    const Reading before = reading_of(words);
    const auto salt = [](const Reading& reading) {
        return *std::find_if(reading.recipe.ingredients.begin(),
                             reading.recipe.ingredients.end(),
                             [](const Ingredient& one) { return one.item == "salt"; });
    };
    const std::string key = "grams-at-" + salt(before).at;
    EXPECT_DOUBLE_EQ(salt(reading_of(words, {{key, "9 g"}})).grams->likely.count(), 9.0);
    EXPECT_DOUBLE_EQ(salt(reading_of(words, {{key, "9 g"}})).as_read->grams->likely.count(), 10.0);
    // A teaspoon of fine salt is about 6 g: common practice.
    const Ingredient spoons = salt(reading_of(words, {{key, "2 tsp"}}));
    EXPECT_NEAR(spoons.grams->likely.count(), 12.0, 1.5);
    const Reading without = reading_of(words, {{key, "none"}});
    EXPECT_EQ(without.recipe.ingredients.size() + 1, before.recipe.ingredients.size());
}

TEST(corrections, of_what_is_not_there_or_makes_no_sense_change_nothing) {
    const Reading before = reading_of(words);
    const Reading misplaced = reading_of(words, {{"minutes-at-3", "45"}});
    EXPECT_TRUE(remarks(misplaced, "correction_misplaced"));
    const std::string rise = place_of(StepKind::rise);
    for (const Answer& answer : {Answer{"minutes-at-" + rise, "soon"},
                                 Answer{"kind-at-" + rise, "sing"},
                                 Answer{"place-at-" + rise, "moon"},
                                 Answer{"heat-at-" + rise, "900"}}) {
        const Reading reading = reading_of(words, {answer});
        EXPECT_TRUE(remarks(reading, "answer_unreadable")) << answer.key;
        const Step* step = step_of(reading, StepKind::rise);
        ASSERT_NE(step, nullptr);
        EXPECT_FALSE(step->as_read.has_value());
        EXPECT_EQ(reading.recipe.steps.size(), before.recipe.steps.size());
    }
}

TEST(corrections, a_length_that_the_text_leaves_open_is_not_asked_once_corrected) {
    const std::string open =
        "Knead the dough. Let it rise until doubled. Shape it and bake it at 220°C for 30 minutes.";
    const Reading before = reading_of(open);
    const Step* rise = step_of(before, StepKind::rise);
    ASSERT_NE(rise, nullptr);
    ASSERT_FALSE(before.questions.empty());
    const Reading after = reading_of(open, {{"minutes-at-" + rise->at, "50"}});
    EXPECT_EQ(after.questions.size() + 1, before.questions.size());
}

// Whatever is corrected, the order of what is left stays, and no step points at one that is gone.
RC_GTEST_PROP(corrections, keep_the_steps_in_order_and_their_links_whole, ()) {
    const std::string text =
        words + "6. Fold it every 30 minutes during the rise. While it proves, heat the oven to "
                "220°C.\n7. Make the filling: warm the milk and let it cool for 20 minutes.\n";
    const Reading before = reading_of(text);
    std::vector<std::string> places;
    for (const Step& step : before.recipe.steps) {
        places.push_back(step.at);
    }
    for (const Unread& phrase : before.unread) {
        places.push_back(phrase.at);
    }
    const auto kinds =
        std::vector<std::string>{"none", "rise", "bake", "knead", "mix", "prove", "cool", "fold"};
    Answers answers;
    const auto count = *rc::gen::inRange<std::size_t>(0, 6);
    for (std::size_t index = 0; index < count; ++index) {
        answers.push_back({"kind-at-" + *rc::gen::elementOf(places), *rc::gen::elementOf(kinds)});
    }
    const Reading after = reading_of(text, answers);
    const auto& steps = after.recipe.steps;
    auto next = before.recipe.steps.begin();
    for (const Step& step : steps) {
        const bool pointing = !step.during || *step.during < steps.size();
        RC_ASSERT(pointing);
        for (const std::size_t first : step.after) {
            RC_ASSERT(first < steps.size());
        }
        const auto read = std::find_if(
            next, before.recipe.steps.end(), [&](const Step& one) { return one.at == step.at; });
        const bool was_unread = std::any_of(before.unread.begin(),
                                            before.unread.end(),
                                            [&](const Unread& one) { return one.at == step.at; });
        const bool in_order = read != before.recipe.steps.end() || was_unread;
        RC_ASSERT(in_order);
        next = read != before.recipe.steps.end() ? read + 1 : next;
    }
    RC_ASSERT(steps.size() + after.unread.size() ==
              before.recipe.steps.size() + before.unread.size());
}

} // namespace
} // namespace loafwright
