// SPDX-License-Identifier: Apache-2.0
//
// Numbers on the command line. They are read here and not by the library that takes the words
// apart, so that a wrong one is told in our words, and all wrong ones at once.
#include "shell/cli/told_numbers.hpp"

#include "engine/breads/known_breads.hpp"
#include "engine/kitchen/felt_room.hpp"
#include "engine/quantity/conversion.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <cmath>

namespace loafwright::cli {

namespace {

constexpr std::string_view celsius = "°C";
constexpr NumberOption room{"--room-c", celsius, "19.5", 0.0, 45.0};

std::string out_of_range_hint(const NumberOption& option, const std::string& words, double number) {
    if (option.unit != celsius) {
        return fmt::format("Give it in {}.", option.unit);
    }
    const double degrees = celsius_from_fahrenheit(number).degrees();
    const bool fahrenheit = number >= 32.0 && degrees >= option.low && degrees <= option.high;
    return fahrenheit ? fmt::format("Give it in °C: {} °F is about {:.0f} °C.", words, degrees)
                      : fmt::format("Give it in °C, as in {} {}.", option.name, option.example);
}

std::optional<double>
in_range(const NumberOption& option, const std::string& words, double number, Diagnostics& found) {
    if (number >= option.low && number <= option.high) {
        return number;
    }
    found.push_back(
        {"value_out_of_range",
         Severity::error,
         fmt::format(
             "{} is {}, expected {:g} to {:g}", option.name, words, option.low, option.high),
         "",
         out_of_range_hint(option, words, number)});
    return std::nullopt;
}

} // namespace

std::optional<double>
number_told(const NumberOption& option, const std::string& words, Diagnostics& found) {
    double number = 0.0;
    if (!CLI::detail::lexical_cast(words, number)) {
        found.push_back(
            {"usage",
             Severity::error,
             fmt::format(
                 "{} was given '{}', expected a number of {}", option.name, words, option.unit),
             "",
             fmt::format("Write it as in {} {}.", option.name, option.example)});
        return std::nullopt;
    }
    return in_range(option, words, number, found);
}

std::optional<double> room_told(const std::string& words, Diagnostics& found) {
    if (const auto felt = felt_temperature(words)) {
        return felt->degrees();
    }
    double degrees = 0.0;
    if (!CLI::detail::lexical_cast(words, degrees)) {
        found.push_back({"usage",
                         Severity::error,
                         fmt::format("--room-c was given '{}', expected a number of °C, or {}",
                                     words,
                                     breads::felt_words()),
                         "",
                         "Write it as in --room-c 19.5 or --room-c jumper."});
        return std::nullopt;
    }
    return in_range(room, words, degrees, found);
}

} // namespace loafwright::cli
