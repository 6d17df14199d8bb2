// SPDX-License-Identifier: Apache-2.0
//
// Cautions come when their trigger is met and at no other time. Facts behind them stand with their
// sources in data/cautions.toml.

#include "engine/provisions/gather.hpp"
#include "tests/provisions/kitchen_table.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace loafwright {
namespace {

using provisions::table::ingredient;
using provisions::table::known;
using provisions::table::step;

const Caution* caution_in(const std::vector<Caution>& all, const std::string& code) {
    const auto found = std::find_if(
        all.begin(), all.end(), [&](const Caution& caution) { return caution.code == code; });
    return found == all.end() ? nullptr : &*found;
}

bool warns(const Recipe& recipe, const std::string& code, const Kitchen& kitchen = Kitchen{}) {
    const Provisions all = gather(recipe, kitchen, known());
    return caution_in(all.cautions, code) != nullptr;
}

Recipe with_step(const Step& one) {
    Recipe recipe;
    recipe.steps = {one};
    return recipe;
}

Recipe with_ingredient(const Ingredient& one) {
    Recipe recipe;
    recipe.ingredients = {one};
    return recipe;
}

TEST(provisions, honey_is_not_for_infants_whether_listed_or_brushed_on) {
    EXPECT_TRUE(warns(with_ingredient(ingredient("1 tbsp honey", "honey", 21)), "honey_infant"));
    EXPECT_TRUE(warns(with_step(step(StepKind::finish, "Brush with honey")), "honey_infant"));
    EXPECT_FALSE(warns(with_step(step(StepKind::finish, "Brush with milk")), "honey_infant"));
    EXPECT_FALSE(warns(with_step(step(StepKind::mix, "There is no honey in it")), "honey_infant"));
}

TEST(provisions, lye_comes_first_and_flour_is_raw) {
    Recipe recipe;
    recipe.ingredients = {ingredient("500 g flour", "plain white flour", 500),
                          ingredient("40 g lye", "food-grade sodium hydroxide", 40)};
    recipe.steps = {step(StepKind::mix, "Mix"), step(StepKind::finish, "Dip them in the lye")};
    const Provisions all = gather(recipe, Kitchen{}, known());
    ASSERT_FALSE(all.cautions.empty());
    EXPECT_EQ(all.cautions.front().code, "lye");
    const Caution* raw = caution_in(all.cautions, "raw_dough");
    ASSERT_NE(raw, nullptr);
    EXPECT_EQ(raw->stage, StepKind::mix);
    EXPECT_FALSE(raw->source.empty());
}

TEST(provisions, cautions_stand_in_the_order_of_their_weight) {
    Recipe recipe;
    recipe.ingredients = {ingredient("500 g flour", "plain white flour", 500),
                          ingredient("2 eggs", "egg", 100),
                          ingredient("1 tbsp honey", "honey", 21)};
    recipe.steps = {step(StepKind::rise, "Leave it to rise", 180),
                    step(StepKind::bake, "Bake with steam", 30)};
    std::vector<std::string> order;
    for (const Caution& caution : gather(recipe, Kitchen{}, known()).cautions) {
        order.push_back(caution.code);
    }
    const std::vector<std::string> expected{
        "honey_infant", "enriched_warm", "steam_burn", "raw_dough"};
    std::vector<std::string> met;
    for (const std::string& code : order) {
        if (std::find(expected.begin(), expected.end(), code) != expected.end()) {
            met.push_back(code);
        }
    }
    EXPECT_EQ(met, expected);
}

// USDA danger-zone advice, quoted: two hours, one above 32 °C.
TEST(provisions, a_dough_with_egg_or_milk_is_minded_after_two_hours_outside_the_fridge) {
    const auto risen = [](const std::string& item, double minutes, Place place) {
        Recipe recipe;
        recipe.ingredients = {ingredient(item, item, 100)};
        recipe.steps = {step(StepKind::rise, "Leave it", minutes)};
        recipe.steps[0].place = place;
        return recipe;
    };
    EXPECT_TRUE(warns(risen("egg", 150, Place::counter), "enriched_warm"));
    EXPECT_TRUE(warns(risen("whole milk", 150, Place::warm), "enriched_warm"));
    EXPECT_FALSE(warns(risen("egg", 120, Place::counter), "enriched_warm"));
    EXPECT_FALSE(warns(risen("egg", 600, Place::fridge), "enriched_warm"));
    EXPECT_FALSE(warns(risen("water", 150, Place::counter), "enriched_warm"));
    EXPECT_FALSE(warns(risen("oat drink", 150, Place::counter), "enriched_warm"));

    Kitchen hot;
    hot.room = {{ClockTime{0, 0}, Celsius{34}}};
    EXPECT_TRUE(warns(risen("egg", 90, Place::counter), "enriched_hot_room", hot));
    EXPECT_FALSE(warns(risen("egg", 90, Place::counter), "enriched_hot_room"));

    const Provisions all = gather(risen("egg", 150, Place::counter), Kitchen{}, known());
    EXPECT_EQ(caution_in(all.cautions, "enriched_warm")->stage, StepKind::rise);
}

TEST(provisions, a_long_stay_in_the_fridge_asks_how_cold_it_is) {
    Step cold = step(StepKind::prove, "Overnight in the fridge", 600);
    cold.place = Place::fridge;
    const Provisions all = gather(with_step(cold), Kitchen{}, known());
    ASSERT_NE(caution_in(all.cautions, "fridge_temperature"), nullptr);
    EXPECT_EQ(caution_in(all.cautions, "fridge_temperature")->stage, StepKind::prove);
    EXPECT_FALSE(warns(with_step(step(StepKind::prove, "Prove", 600)), "fridge_temperature"));
}

TEST(provisions, burns_are_warned_of_where_there_is_steam_or_a_hot_pot) {
    EXPECT_TRUE(
        warns(with_step(step(StepKind::bake, "Throw ice cubes into the tray")), "steam_burn"));
    EXPECT_TRUE(warns(with_step(step(StepKind::bake, "Bake in a Dutch oven")), "hot_pot"));
    EXPECT_FALSE(warns(with_step(step(StepKind::bake, "Bake on a tray")), "steam_burn"));
    EXPECT_FALSE(warns(with_step(step(StepKind::bake, "Bake on a tray")), "hot_pot"));
}

TEST(provisions, baking_paper_is_minded_in_a_hot_oven_only) {
    Step bake = step(StepKind::bake, "Bake on baking paper", 20);
    bake.temperature = TemperatureRange{Celsius{230}, Celsius{230}};
    EXPECT_TRUE(warns(with_step(bake), "paper_limit"));
    bake.temperature = TemperatureRange{Celsius{180}, Celsius{180}};
    EXPECT_FALSE(warns(with_step(bake), "paper_limit"));
}

TEST(provisions, dough_in_the_oven_comes_out_before_it_is_switched_on) {
    Step prove = step(StepKind::prove, "Prove in the oven with the light on", 60);
    prove.place = Place::oven;
    EXPECT_TRUE(warns(with_step(prove), "proving_in_oven"));
    Step bake = step(StepKind::bake, "Bake", 30);
    bake.place = Place::oven;
    EXPECT_FALSE(warns(with_step(bake), "proving_in_oven"));
}

TEST(provisions, a_stage_alone_calls_for_its_caution) {
    EXPECT_TRUE(warns(with_step(step(StepKind::cool, "On to the rack")), "cool_before_cutting"));
    EXPECT_FALSE(warns(with_step(step(StepKind::bake, "Bake")), "cool_before_cutting"));
}

TEST(provisions, a_stage_of_a_caution_is_one_that_the_recipe_has) {
    Recipe recipe;
    recipe.ingredients = {ingredient("500 g flour", "plain white flour", 500)};
    recipe.steps = {step(StepKind::knead, "Knead"), step(StepKind::bake, "Bake with steam", 30)};
    for (const Caution& caution : gather(recipe, Kitchen{}, known()).cautions) {
        if (caution.stage) {
            EXPECT_TRUE(*caution.stage == StepKind::knead || *caution.stage == StepKind::bake)
                << caution.code;
        }
    }
}

} // namespace
} // namespace loafwright
