// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <CLI/App.hpp>

#include <optional>
#include <string>

namespace loafwright::cli {

/// The day and the kitchen that a call speaks of.
struct DayArguments {
    std::optional<std::string> start;
    std::optional<std::string> eat_by;
    std::optional<std::string> kitchen;
    std::optional<std::string> day;
    std::optional<double> room_c;
    std::optional<std::string> zone;
    std::optional<std::string> now;
};

/// Where CLI11 puts what it finds.
struct DayWords {
    std::string start;
    std::string eat_by;
    std::string kitchen;
    std::string day;
    std::string room_c;
    std::string zone;
    std::string now;
};

void add_day(CLI::App& command, DayWords& words);

/// Errors, added to `wrong`: both_start_and_eat_by, value_out_of_range (--room-c).
DayArguments day_from(const CLI::App& command, const DayWords& words, Diagnostics& wrong);

} // namespace loafwright::cli
