// SPDX-License-Identifier: Apache-2.0
#include "shell/cli/day_arguments.hpp"

#include "shell/cli/told_numbers.hpp"

#include <CLI/CLI.hpp>

namespace loafwright::cli {

void add_day(CLI::App& command, DayWords& words) {
    command.add_option("--start", words.start);
    command.add_option("--eat-by", words.eat_by);
    command.add_option("--kitchen", words.kitchen);
    command.add_option("--day", words.day);
    command.add_option("--room-c", words.room_c);
    command.add_option("--zone", words.zone);
    command.add_option("--now", words.now);
}

DayArguments day_from(const CLI::App& command, const DayWords& words, Diagnostics& wrong) {
    const auto if_given = [&command](const char* option, const std::string& value) {
        return command.count(option) > 0 ? std::optional(value) : std::nullopt;
    };
    DayArguments day;
    day.start = if_given("--start", words.start);
    day.eat_by = if_given("--eat-by", words.eat_by);
    day.kitchen = if_given("--kitchen", words.kitchen);
    day.day = if_given("--day", words.day);
    day.zone = if_given("--zone", words.zone);
    day.now = if_given("--now", words.now);
    if (command.count("--room-c") > 0) {
        day.room_c = room_told(words.room_c, wrong);
    }
    if (day.start && day.eat_by) {
        wrong.push_back({"both_start_and_eat_by",
                         Severity::error,
                         "found both --start and --eat-by, expected one of them",
                         "",
                         "Leave out the one that matters less."});
    }
    return day;
}

} // namespace loafwright::cli
