// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/phrase.hpp"
#include "engine/quantity/tagged.hpp"

#include <cstdint>
#include <string>

namespace loafwright::fitting {

/// A length for people: "35 min", "1 h", "1 h 35".
std::string duration_text(std::int64_t minutes);

/// "18 °C", and one decimal only where it says something: "18.5 °C".
std::string degrees_text(Celsius temperature);

/// A phrase in °C and grams, as JSON and the reasons have it.
std::string plain_text(const Phrase& phrase);

/// Whole minutes, halves up, never below zero.
std::int64_t whole_minutes(Minutes minutes);
/// The nearest five minutes, at least five.
std::int64_t nearest_five(Minutes minutes);
/// The next five minutes not below.
std::int64_t next_five(Minutes minutes);

} // namespace loafwright::fitting
