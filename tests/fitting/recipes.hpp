// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/kitchen/kitchen.hpp"
#include "engine/recipe/recipe.hpp"

#include <string>
#include <utility>

namespace loafwright {

inline Step step_of(StepKind kind, std::string text = "") {
    Step step;
    step.kind = kind;
    step.text = std::move(text);
    return step;
}

inline Step timed(Step step, double low, double high, Basis basis = Basis::stated) {
    step.minutes = TimedBand{between(Minutes(low), Minutes(high)), basis};
    return step;
}

inline Step heated(Step step, double celsius) {
    step.temperature = TemperatureRange{Celsius(celsius), Celsius(celsius)};
    return step;
}

inline Ingredient ingredient_of(std::string item, double grams) {
    Ingredient ingredient;
    ingredient.text = item;
    ingredient.item = std::move(item);
    ingredient.grams = exactly(Grams(grams));
    return ingredient;
}

/// A plain white tin loaf made in one day, as any beginners' book has it.
inline Reading tin_loaf() {
    Reading reading;
    reading.recipe.title = "Plain tin loaf";
    reading.recipe.ingredients = {ingredient_of("strong white flour", 500),
                                  ingredient_of("water", 330),
                                  ingredient_of("salt", 10),
                                  ingredient_of("instant yeast", 7)};
    Step shape = step_of(StepKind::shape, "Roll it up and lay it seam down in a greased 2lb tin.");
    reading.recipe.steps = {
        step_of(StepKind::mix, "Mix the flour, salt, yeast and water."),
        timed(step_of(StepKind::knead, "Knead for ten minutes."), 10, 10),
        timed(step_of(StepKind::rise, "Leave it to double."), 60, 90),
        step_of(StepKind::knock_back, "Knock it back."),
        std::move(shape),
        timed(step_of(StepKind::prove, "Cover and leave for 45 minutes."), 45, 45),
        heated(timed(step_of(StepKind::bake, "Bake for 35 minutes at 220."), 35, 35), 220)};
    return reading;
}

inline Kitchen kitchen_at(double celsius) {
    Kitchen kitchen;
    kitchen.room = {RoomPeriod{ClockTime{0, 0}, Celsius(celsius)}};
    return kitchen;
}

} // namespace loafwright
