// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/kitchen/kitchen.hpp"
#include "engine/knowledge/family.hpp"
#include "engine/recipe/recipe.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::fitting {

/// The oven temperature when neither a figure nor words are given (common practice).
Celsius usual_oven(DoughFamily family);

/// How hot the oven is to be for one step.
struct OvenHeat {
    Celsius wanted;          // what the recipe asks for, or the default
    Celsius setting;         // what to set on this oven, conventional heat
    bool is_guess = false;   // no figure in the text
    bool is_limited = false; // this oven does not reach what is wanted
};

/// One entry a step of the recipe; filled for bakes and for heating the oven.
///
/// Promises: a bake without a figure keeps what the oven has before it; heating without a figure
/// takes the next bake's;
///           an open question's default is used before words for ovens, those before the default by
///           family.
std::vector<std::optional<OvenHeat>>
oven_heats(const Reading& reading, const Kitchen& kitchen, DoughFamily family);

/// True when the words put a stone, a steel or a pot with a lid into the oven to get hot with it.
bool heats_a_stone(std::string_view text, StepKind kind);

/// From switching on to hot, up to the next five minutes: an oven that takes as long to 220 °C as
/// the kitchen says; with a stone or a heavy pot until that has come 95 % of the way.
/// Source:   dough::heating_up, dough::hot_through.
std::int64_t heat_up_minutes(const Kitchen& kitchen, Celsius setting, bool with_stone);

/// From one setting to another with the door shut, up to the next five minutes: the heater on all
/// the while, or off and the oven leaking. 0 for the same setting. Promises: c(a, c) <= c(a, b) +
/// c(b, c). Source:   dough::heating_up, dough::cooling_down, for an oven that takes as long to 220
/// °C as the
///           kitchen says.
std::int64_t oven_change_minutes(const Kitchen& kitchen, Celsius from, Celsius to);

/// The first number in an answer, such as "220" in "220 °C".
std::optional<double> first_number(std::string_view answer);

/// The question with this key, or null.
const Question* question_named(const std::vector<Question>& questions, std::string_view key);

} // namespace loafwright::fitting
