// SPDX-License-Identifier: Apache-2.0
//
// One method under several lists: which steps make the leaven, which the soaker, and what waits for
// what.
#include "engine/reading/read.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace loafwright::reading {
namespace {

Reading read_text(const std::string& text) {
    static const Knowledge knowledge = built_in_knowledge();
    static const Reader reader(knowledge);
    return reader.read(*check_text(text, "text"));
}

std::vector<std::string> parts_of(const Recipe& recipe) {
    std::vector<std::string> parts;
    for (const Step& step : recipe.steps) {
        parts.push_back(std::string(name_of(step.kind)) + " " + step.part.value_or("dough"));
    }
    return parts;
}

const std::string lists =
    "# Seeded loaf\n\nFor the leaven:\n\n- 20 g ripe starter\n- 100 g white flour\n"
    "- 100 g water\n\nFor the soaker:\n\n- 60 g sunflower seeds\n"
    "- 120 g boiling water\n\nFor the dough:\n\n- 400 g white flour\n"
    "- 250 g water\n- 10 g salt\n\n";

TEST(parts, of_one_method_are_told_by_what_its_words_name) {
    const Reading reading = read_text(
        lists +
        "1. The evening before, mix the leaven and leave it for 10 to 12 hours.\n"
        "2. Pour the boiling water over the seeds and let the soaker stand for 2 hours.\n"
        "3. Mix the flour, the water and all of the leaven and rest the dough for 30 minutes.\n"
        "4. Work in the salt and the soaker and knead for 8 minutes.\n"
        "5. Let it rise for 4 hours. Shape it, prove it for 2 hours and bake for 40 minutes.\n");
    EXPECT_EQ(parts_of(reading.recipe),
              (std::vector<std::string>{"mix leaven",
                                        "ferment leaven",
                                        "mix soaker",
                                        "soak soaker",
                                        "mix dough",
                                        "rest dough",
                                        "mix dough",
                                        "knead dough",
                                        "rise dough",
                                        "shape dough",
                                        "prove dough",
                                        "bake dough"}));
    // The dough begins with the leaven; the soaker may still stand until it is worked in.
    EXPECT_EQ(reading.recipe.steps[4].after, (std::vector<std::size_t>{1}));
    EXPECT_EQ(reading.recipe.steps[6].after, (std::vector<std::size_t>{5, 3}));
}

TEST(parts, that_are_mixed_in_together_are_both_waited_for) {
    const Reading reading = read_text(lists + "The night before: Stir together the leaven, cover "
                                              "and leave for 12 hours. Pour the boiling water over "
                                              "the seeds, cover and leave overnight.\n\nIn the "
                                              "morning: Combine leaven, soaker and all the dough "
                                              "ingredients. Knead for 6 minutes. Rise 90 minutes. "
                                              "Shape. Prove 1 hour. Bake for 40 minutes.\n");
    const auto parts = parts_of(reading.recipe);
    ASSERT_GE(parts.size(), 5U);
    EXPECT_EQ(parts[3], "soak soaker") << "not a second sponge";
    EXPECT_EQ(reading.recipe.steps[4].after, (std::vector<std::size_t>{1, 3}));
}

TEST(parts, one_part_alone_is_in_the_texts_own_order) {
    const Reading reading = read_text(
        "# Rye\n\nFor the leaven:\n\n- 20 g starter\n- 100 g rye flour\n- 100 g water\n\nFor the "
        "dough:\n\n"
        "- 400 g flour\n- 250 g water\n- 9 g salt\n\n1. Mix the leaven and leave for 12 hours.\n"
        "2. Mix the dough with the leaven. Rise 3 hours. Shape. Prove 1 hour. Bake 50 minutes.\n");
    for (const Step& step : reading.recipe.steps) {
        EXPECT_TRUE(step.after.empty());
    }
    EXPECT_EQ(parts_of(reading.recipe)[1], "ferment leaven");
}

TEST(parts, seeds_without_a_soaker_are_only_seeds) {
    const Reading reading =
        read_text("# Loaf\n\n- 400 g flour\n- 60 g seeds\n- 260 g water\n- 7 g yeast\n\n"
                  "1. Mix the seeds with the flour and the water and leave for 1 hour.\n"
                  "2. Shape, prove 40 minutes, bake 35 minutes.\n");
    for (const Step& step : reading.recipe.steps) {
        EXPECT_FALSE(step.part);
    }
}

} // namespace
} // namespace loafwright::reading
