// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"
#include "engine/reading/token.hpp"

#include <optional>
#include <vector>

namespace loafwright::reading {

/// A temperature as written, in all the scales that the text gives for the same heat.
///
/// Invariants: low <= high; `fan_only` when nothing but a fan setting was given (20 °C has then
/// been added).
struct TemperaturePhrase {
    Celsius low;
    Celsius high;
    bool fan_only = false;
    bool scale_guessed = false; // "heat the oven to 220"
    TokenRange range;

    [[nodiscard]] double middle() const { return (low.degrees() + high.degrees()) / 2.0; }
};

/// All temperatures in a range, in order. Figures for the same heat ("425 °F (218 °C)", "200C/180C
/// fan/gas 6") are one phrase, Celsius for conventional heat before Fahrenheit before fan before
/// gas mark.
///
/// Grammar:  group  := figure ((","|"/"|"("|"or") figure)*
///           figure := number (("-"|"to") number)? "degrees"? scale "fan"? | "fan" number scale? |
///           "gas" "mark"? number
std::vector<TemperaturePhrase> temperatures_in(const std::vector<Token>& tokens, TokenRange range);

} // namespace loafwright::reading
