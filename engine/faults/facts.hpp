// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/bake_log.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loafwright::faults {

/// Something that the log of a bake shows, with its own numbers in words.
///
/// Invariants: 0 < strength <= 1; `key` is one of fact_keys().
struct Fact {
    std::string_view key;
    double strength = 1.0;
    std::string real;     // "40 min"
    std::string wanted;   // "1 h 35", "220 °C"
    std::string place;    // " at 18 °C", or empty
    std::string measured; // "21 °C", "2.9 %"
    std::string grown;    // "a little", "more than doubled"
};

/// Every fact that a row of data/faults/evidence.toml may name.
const std::vector<std::string_view>& fact_keys();

/// The facts of a log.
///
/// When a fact holds (limits are common practice, marked assumed in the data):
///   - a wait, the bake, kneading, the rest and cooling against the plan: only where somebody timed
///     them, and never where their length was the plan's choice. short is 13 % and more below, long
///     15 % and more above (kneading and resting 30 %, cooling 40 % below); full strength at 1.6
///     times either way;
///   - growth: a look in the last fifth of a wait that saw three quarters or less of what is
///   wanted,
///     or half as much again as is wanted;
///   - the dough cold below 22.5 °C, usual from 23 to 28, warm above 29.5; the kitchen cold below
///     19, warm above 26; full strength 4 °C beyond;
///   - the oven cool or hot 12 °C and more from its setting, right within 8; full strength at 25;
///   - the middle low below 93 °C (88 for an enriched dough), done from 95 (90);
///   - salt low below 1.4 % of the flour, high above 2.6; sugar high from 8, low below 2; fat low
///     below 2; water low below 57, high above 76 (not in enriched doughs, flatbreads and sourdough
///     with its leaven's water unknown); yeast, as fresh, low below 0.7 with a rise under three
///     hours, high above 4.5 (6 in an enriched dough);
///   - what raises the dough, and each trouble that was told.
std::vector<Fact> facts_of(const BakeLog& log);

/// `says` with the fact's words in place of {real}, {wanted}, {place}, {measured} and {grown}.
std::string sentence_of(std::string_view says, const Fact& fact);

} // namespace loafwright::faults
