// SPDX-License-Identifier: Apache-2.0
//
// Which kind of dough, and which form of bread. The lines between them are common practice.
#include "engine/knowledge/family.hpp"

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

namespace loafwright {
namespace {

const Knowledge& knowledge() {
    static const Knowledge built = built_in_knowledge();
    return built;
}

Ingredient ingredient_of(std::string item, double grams) {
    Ingredient ingredient;
    ingredient.text = item;
    ingredient.item = std::move(item);
    ingredient.grams = Band<Grams>{Grams(grams), Grams(grams), Grams(grams)};
    return ingredient;
}

Step step_of(StepKind kind, std::string text) {
    Step step;
    step.kind = kind;
    step.text = std::move(text);
    return step;
}

Recipe recipe_of(std::string title, std::vector<Ingredient> ingredients) {
    Recipe recipe;
    recipe.title = std::move(title);
    recipe.ingredients = std::move(ingredients);
    recipe.steps = {step_of(StepKind::mix, "Mix."), step_of(StepKind::bake, "Bake.")};
    return recipe;
}

struct FamilyRow {
    std::string name;
    std::vector<Ingredient> ingredients;
    std::string title;
    DoughFamily family;
};

class Families : public testing::TestWithParam<FamilyRow> {};

TEST_P(Families, are_told_by_what_is_in_the_bowl) {
    const FamilyRow& row = GetParam();
    EXPECT_EQ(name_of(family_of(recipe_of(row.title, row.ingredients), knowledge())),
              name_of(row.family));
}

INSTANTIATE_TEST_SUITE_P(
    knowledge,
    Families,
    testing::Values(
        FamilyRow{"flour_water_yeast_is_lean",
                  {ingredient_of("strong white flour", 500), ingredient_of("instant yeast", 7)},
                  "Loaf",
                  DoughFamily::lean},
        FamilyRow{"a_spoon_of_butter_stays_lean",
                  {ingredient_of("strong white flour", 500),
                   ingredient_of("butter", 25),
                   ingredient_of("instant yeast", 7)},
                  "Loaf",
                  DoughFamily::lean},
        FamilyRow{"butter_egg_and_sugar_are_rich",
                  {ingredient_of("strong white flour", 500),
                   ingredient_of("butter", 60),
                   ingredient_of("egg", 55),
                   ingredient_of("sugar", 40),
                   ingredient_of("instant yeast", 7)},
                  "Loaf",
                  DoughFamily::enriched},
        FamilyRow{"milk_alone_is_not_rich",
                  {ingredient_of("strong white flour", 500),
                   ingredient_of("whole milk", 330),
                   ingredient_of("instant yeast", 7)},
                  "Loaf",
                  DoughFamily::lean},
        FamilyRow{"half_rye_is_coarse",
                  {ingredient_of("strong white flour", 250),
                   ingredient_of("rye flour", 250),
                   ingredient_of("instant yeast", 7)},
                  "Loaf",
                  DoughFamily::wholegrain},
        FamilyRow{
            "a_leaven_makes_sourdough",
            {ingredient_of("strong white flour", 500), ingredient_of("sourdough starter", 100)},
            "Loaf",
            DoughFamily::sourdough},
        FamilyRow{"a_leaven_with_yeast_does_not",
                  {ingredient_of("strong white flour", 500),
                   ingredient_of("sourdough starter", 100),
                   ingredient_of("instant yeast", 3)},
                  "Loaf",
                  DoughFamily::lean},
        FamilyRow{"soda_is_quick",
                  {ingredient_of("plain flour", 500), ingredient_of("bicarbonate of soda", 5)},
                  "Soda bread",
                  DoughFamily::quick},
        FamilyRow{"pizza_is_flat",
                  {ingredient_of("strong white flour", 500), ingredient_of("instant yeast", 7)},
                  "Pizza",
                  DoughFamily::flatbread}),
    [](const auto& row) { return row.param.name; });

TEST(knowledge, the_title_tells_the_form_before_the_words_of_the_method) {
    EXPECT_EQ(form_of(recipe_of("Soft rolls", {})), Form::rolls);
    EXPECT_EQ(form_of(recipe_of("Naan", {})), Form::flat);
    Recipe loaf = recipe_of("A loaf", {});
    loaf.steps.push_back(step_of(StepKind::shape, "Or shape it into rolls."));
    EXPECT_EQ(form_of(loaf), Form::loaf);
}

TEST(knowledge, rolling_up_a_loaf_does_not_make_rolls) {
    Recipe recipe = recipe_of("Everyday bread", {});
    recipe.steps.insert(recipe.steps.begin() + 1, step_of(StepKind::shape, "Roll it up tightly."));
    EXPECT_EQ(form_of(recipe), Form::loaf);
}

TEST(knowledge, many_pieces_are_rolls) {
    Recipe recipe = recipe_of("Supper bread", {});
    recipe.pieces = 8.0;
    EXPECT_EQ(form_of(recipe), Form::rolls);
}

} // namespace
} // namespace loafwright
