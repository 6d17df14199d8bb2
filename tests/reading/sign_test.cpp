// SPDX-License-Identifier: Apache-2.0
//
// Every wait and the last bake have a cue: the text's where it has one, else a usual one without a
// span.
#include "engine/reading/read.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace loafwright {
namespace {

Recipe recipe_of(const std::string& words) {
    static const Knowledge knowledge = built_in_knowledge();
    static const Reader reader(knowledge);
    auto text = check_text(words, "test");
    EXPECT_TRUE(text.has_value());
    return reader.read(*text).recipe;
}

std::vector<Step> steps_of(const Recipe& recipe, StepKind kind) {
    std::vector<Step> found;
    for (const Step& step : recipe.steps) {
        if (step.kind == kind) {
            found.push_back(step);
        }
    }
    return found;
}

const std::string lean = "500g strong white flour\n10g salt\n7g instant yeast\n330g water\n\n"
                         "Mix and knead the dough. ";

TEST(sign, the_cue_of_the_text_goes_before_the_usual_one) {
    const Recipe recipe = recipe_of(
        lean + "Leave it to rise for an hour, until it wobbles. Shape it. Prove for 40 minutes.");
    const auto rises = steps_of(recipe, StepKind::rise);
    const auto proves = steps_of(recipe, StepKind::prove);
    ASSERT_EQ(rises.size(), 1U);
    ASSERT_TRUE(rises[0].cue);
    EXPECT_TRUE(rises[0].cue->span);
    ASSERT_EQ(proves.size(), 1U);
    ASSERT_TRUE(proves[0].cue);
    EXPECT_FALSE(proves[0].cue->span);
    // The finger test belongs to the final prove (common practice).
    EXPECT_NE(proves[0].cue->text.find("springs back slowly"), std::string::npos);
}

TEST(sign, a_bake_in_two_heats_has_its_usual_cue_at_the_end_only) {
    const Recipe recipe = recipe_of(
        lean + "Let it rise for 2 hours. Bake at 240C for 15 minutes, then at 200C for 20.");
    const auto bakes = steps_of(recipe, StepKind::bake);
    ASSERT_EQ(bakes.size(), 2U);
    EXPECT_FALSE(bakes[0].cue);
    EXPECT_TRUE(bakes[1].cue);
}

TEST(sign, the_usual_cue_follows_the_kind_of_dough) {
    const Recipe rich = recipe_of("500g flour\n100g butter\n80g sugar\n2 eggs\n7g instant "
                                  "yeast\n\nKnead. Let it rise for 2 hours.");
    const Recipe plain = recipe_of(lean + "Let it rise for 2 hours.");
    const auto rich_rise = steps_of(rich, StepKind::rise);
    const auto plain_rise = steps_of(plain, StepKind::rise);
    ASSERT_EQ(rich_rise.size(), 1U);
    ASSERT_EQ(plain_rise.size(), 1U);
    ASSERT_TRUE(rich_rise[0].cue && plain_rise[0].cue);
    EXPECT_NE(rich_rise[0].cue->text, plain_rise[0].cue->text);
}

} // namespace
} // namespace loafwright
