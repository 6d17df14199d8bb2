// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>

namespace loafwright::fitting {

/// ASCII letters in lower case; every other byte stays.
std::string lower_case(std::string_view text);

/// True when `word` (lower case, may hold blanks) stands in `text` (lower case) with no letter or
/// digit on either side.
bool has_word(std::string_view text, std::string_view word);
bool has_any_word(std::string_view text, std::initializer_list<std::string_view> words);

/// A length for people: "35 min", "1 h", "1 h 35".
std::string duration_text(std::int64_t minutes);

/// "18 °C", and one decimal only where it says something: "18.5 °C".
std::string degrees_text(Celsius temperature);

/// Whole minutes, halves up, never below zero.
std::int64_t whole_minutes(Minutes minutes);
/// The nearest five minutes, at least five.
std::int64_t nearest_five(Minutes minutes);
/// The next five minutes not below.
std::int64_t next_five(Minutes minutes);

} // namespace loafwright::fitting
