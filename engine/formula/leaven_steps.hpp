// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::formula {

/// The part of a recipe that makes its leaven.
inline constexpr std::string_view leaven_part = "leaven";

/// "91 g", for the words of a step.
std::string weight_words(Grams grams);

/// The leaven's own two steps: mixing it of so much starter and of `each` flour and water, and
/// leaving it to ripen, at the usual room of 21 °C.
std::vector<Step>
building(const Knowledge& knowledge, Grams seed, Grams each, const Band<Minutes>& ripens);

/// The first mixing of the dough says what of each goes in, since the text tells the whole.
void say_what_is_left(Recipe& recipe, Grams flour, Grams water);

/// Takes out where a leaven is built; a dough that is mixed once and left keeps its mixing, and its
/// long wait is a rise. Until the first night in the fridge nothing is said of nights and clocks.
void take_leaven_steps_out(Recipe& recipe);

/// Steps that took one of the old take the new.
void rename_use(std::vector<Step>& steps,
                const std::vector<std::string>& old,
                const std::string& item);

/// Drops the reminders that have one of these words.
void forget_words(std::vector<Step>& steps, std::initializer_list<std::string_view> words);

} // namespace loafwright::formula
