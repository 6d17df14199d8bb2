// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/fit.hpp"
#include "engine/quantity/time.hpp"

#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The few words that planning itself puts on a page.
namespace loafwright::planning::words {

/// "55 min", "1 h", "4 h 25".
std::string duration(std::int64_t minutes);

/// "today", "tomorrow", "yesterday" or "on Sat 28 Nov", seen from `now`.
std::string day(const Zone& zone, Instant now, Instant then);

/// "15:40 today", "08:20 tomorrow".
std::string clock_and_day(const Zone& zone, Instant now, Instant then);

/// "15:40", "08:20 tomorrow".
std::string clock_unless_today(const Zone& zone, Instant now, Instant then);

/// "200 °C (fan 180, gas 6)".
std::string oven(Celsius temperature);

/// True when any of `stems` begins a word of `text`, whatever its case.
bool has_word(std::string_view text, std::initializer_list<std::string_view> stems);

/// How often the text says to do it: "three times", "4 sets", "twice"; none where it does not say.
std::optional<std::int64_t> times_said(std::string_view text);

/// The first clause of a step, eight words at most, with a small letter in front.
std::string first_words(std::string_view text);

/// What the hands do, in the trade's word: "knead", "knock back", "slash the top".
std::string verb(StepKind kind, std::string_view text);

/// Title of a stage of hands work on these steps of the recipe (indices in fitted.steps, in order).
std::string hands_title(const FittedRecipe& recipe, const std::vector<std::size_t>& fitted);

/// Which of several waits of one kind this is.
struct WaitPlace {
    int number = 1; // among the rises of the bread
    int rises = 1;
    bool later_prove = false;
    bool night = false; // it lasts over the small hours
};
std::string wait_title(const FittedRecipe& recipe, std::size_t fitted, const WaitPlace& place);

/// "Out of the tin, on to the rack" or "Out of the oven, on to the rack".
std::string out_title(const FittedRecipe& recipe);

/// What is done in a bake: oven down, lid off, turn the tin. Empty where the step asks for nothing.
std::string bake_act(const FittedRecipe& recipe, std::size_t before, std::size_t fitted);

} // namespace loafwright::planning::words
