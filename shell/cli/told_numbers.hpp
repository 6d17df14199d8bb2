// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace loafwright::cli {

/// What an option's number may be.
struct NumberOption {
    std::string_view name;    // "--tap-c"
    std::string_view unit;    // "°C"
    std::string_view example; // "12"
    double low = 0.0;
    double high = 0.0;
};

/// The number in `words`.
///
/// Errors: usage (no number), value_out_of_range (with degrees Celsius for what looks like degrees
///         Fahrenheit); told in `found`, and nothing is returned.
std::optional<double>
number_told(const NumberOption& option, const std::string& words, Diagnostics& found);

/// How warm the kitchen is by --room-c: a number of °C from 0 to 45, or one of the words of
/// felt_room.hpp. Errors as above.
std::optional<double> room_told(const std::string& words, Diagnostics& found);

} // namespace loafwright::cli
