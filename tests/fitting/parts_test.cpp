// SPDX-License-Identifier: Apache-2.0
//
// The parts of fitting one by one: oven and cooling, rooms, and the words for
// lengths.
#include "engine/fitting/cooling.hpp"
#include "engine/fitting/heat.hpp"
#include "engine/fitting/room.hpp"
#include "engine/fitting/words.hpp"
#include "tests/fitting/recipes.hpp"

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

namespace loafwright::fitting {
namespace {

const Knowledge& knowledge() {
    static const Knowledge built = built_in_knowledge();
    return built;
}

Recipe recipe_of(std::string title, std::vector<Ingredient> ingredients) {
    Recipe recipe;
    recipe.title = std::move(title);
    recipe.ingredients = std::move(ingredients);
    recipe.steps = {step_of(StepKind::mix, "Mix."), step_of(StepKind::bake, "Bake.")};
    return recipe;
}

Cooling cooling(const Recipe& recipe) {
    return cooling_of(recipe,
                      DoughFamily::lean,
                      form_of(recipe),
                      makeup_of(recipe, knowledge()),
                      knowledge(),
                      usual_room,
                      Grams(0.0));
}

TEST(fitting, a_loaf_cools_an_hour_whatever_shorter_time_the_text_states) {
    Recipe recipe = tin_loaf().recipe;
    recipe.steps.push_back(
        timed(step_of(StepKind::cool, "Cool for 10 minutes in the tin."), 10, 10));
    EXPECT_EQ(cooling(recipe).cut.likely, 60);
    recipe.steps.push_back(timed(step_of(StepKind::cool, "Then two hours on a rack."), 120, 120));
    EXPECT_EQ(cooling(recipe).cut.likely, 130);
    EXPECT_GE(cooling(recipe).best.likely, 130);
}

TEST(fitting, cool_completely_means_at_its_best) {
    Recipe recipe = tin_loaf().recipe;
    recipe.steps.push_back(step_of(StepKind::cool, "Cool completely on a rack."));
    EXPECT_EQ(cooling(recipe).cut.likely, cooling(recipe).best.likely);
    EXPECT_GT(cooling(recipe).cut.likely, 60);
}

TEST(fitting, rolls_cool_twenty_minutes_and_a_flatbread_none) {
    EXPECT_EQ(cooling(recipe_of("Rolls", {})).cut.likely, 20);
    EXPECT_EQ(cooling(recipe_of("Flatbreads", {})).cut.likely, 0);
    Recipe griddled = recipe_of("Muffins", {});
    griddled.steps.back() = step_of(StepKind::cook, "Cook on a griddle.");
    EXPECT_EQ(cooling(griddled).cut.likely, 0);
}

TEST(fitting, a_loaf_mostly_of_rye_is_best_next_day) {
    const Recipe rye = recipe_of("Rye loaf", {ingredient_of("rye flour", 500)});
    EXPECT_EQ(cooling(rye).cut.likely, 60);
    EXPECT_GE(cooling(rye).best.likely, 720);
}

TEST(fitting, the_oven_heats_in_proportion_and_a_stone_takes_longer) {
    const Kitchen kitchen = kitchen_at(20);
    EXPECT_EQ(heat_up_minutes(kitchen, Celsius(220.0), false), 20);
    EXPECT_EQ(heat_up_minutes(kitchen, Celsius(120.0), false), 10);
    EXPECT_EQ(heat_up_minutes(kitchen, Celsius(240.0), false), 25);
    EXPECT_EQ(heat_up_minutes(kitchen, Celsius(220.0), true), 45);
    EXPECT_TRUE(heats_a_stone("Heat the oven with a baking stone in it.", StepKind::preheat));
    EXPECT_TRUE(heats_a_stone("Put the lidded pot in to heat.", StepKind::preheat));
    EXPECT_FALSE(heats_a_stone("Set a pot of water on the floor of the oven.", StepKind::bake));
}

TEST(fitting, an_oven_that_runs_hot_is_set_lower) {
    Kitchen kitchen = kitchen_at(20);
    kitchen.oven.offset = CelsiusDifference(10.0);
    const auto heats = oven_heats(tin_loaf(), kitchen, DoughFamily::lean);
    ASSERT_TRUE(heats.back());
    EXPECT_EQ(heats.back()->wanted, Celsius(220.0));
    EXPECT_EQ(heats.back()->setting, Celsius(210.0));
}

TEST(fitting, an_open_questions_default_is_used_before_words_for_ovens_and_those_before_the_usual) {
    Reading reading = tin_loaf();
    Step& bake = reading.recipe.steps.back();
    bake.temperature.reset();
    EXPECT_EQ(oven_heats(reading, Kitchen{}, DoughFamily::enriched).back()->wanted, Celsius(190.0));
    bake.oven_words = TemperatureRange{Celsius(175.0), Celsius(185.0)};
    EXPECT_EQ(oven_heats(reading, Kitchen{}, DoughFamily::enriched).back()->wanted, Celsius(180.0));
    bake.temperature_question = "oven-c";
    reading.questions = {{"oven-c", "oven temperature", "How hot?", "205 °C"}};
    EXPECT_EQ(oven_heats(reading, Kitchen{}, DoughFamily::enriched).back()->wanted, Celsius(205.0));
}

TEST(fitting, a_bake_without_a_figure_keeps_what_the_oven_has) {
    Reading reading = tin_loaf();
    reading.recipe.steps.back().temperature.reset();
    reading.recipe.steps.insert(reading.recipe.steps.begin(),
                                heated(step_of(StepKind::preheat, "Oven to 230."), 230));
    EXPECT_EQ(oven_heats(reading, Kitchen{}, DoughFamily::lean).back()->wanted, Celsius(230.0));
}

TEST(fitting, a_room_through_the_day_is_taken_at_its_mean) {
    Kitchen kitchen;
    kitchen.room = {RoomPeriod{ClockTime{18, 0}, Celsius(16.0)},
                    RoomPeriod{ClockTime{6, 0}, Celsius(20.0)}};
    const auto room = room_here(kitchen);
    ASSERT_TRUE(room);
    EXPECT_DOUBLE_EQ(room->likely.degrees(), 18.0);
    EXPECT_EQ(room->low, Celsius(16.0));
    EXPECT_EQ(room->high, Celsius(20.0));
    EXPECT_FALSE(room_here(Kitchen{}));
}

TEST(fitting, lengths_read_as_people_write_them) {
    EXPECT_EQ(duration_text(0), "0 min");
    EXPECT_EQ(duration_text(35), "35 min");
    EXPECT_EQ(duration_text(60), "1 h");
    EXPECT_EQ(duration_text(95), "1 h 35");
    EXPECT_EQ(duration_text(65), "1 h 05");
    EXPECT_EQ(degrees_text(Celsius(18.0)), "18 °C");
    EXPECT_EQ(degrees_text(Celsius(18.5)), "18.5 °C");
}

} // namespace
} // namespace loafwright::fitting
