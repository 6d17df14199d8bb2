// SPDX-License-Identifier: Apache-2.0
//
// The options of `loafwright schedule`.
#include "shell/cli/schedule_arguments.hpp"

#include "engine/schedule/solve.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <array>
#include <charconv>
#include <system_error>

namespace loafwright::cli {

namespace {

// A sign or a blank is no digit, so both are refused.
bool is_whole(const std::string& words) {
    return !words.empty() && words.find_first_not_of("0123456789") == std::string::npos;
}

constexpr std::array<const char*, 3> formats{"days", "psplib", "rcpspmax"};

ScheduleFormat format_from(const std::string& words, Diagnostics& found) {
    for (std::size_t k = 0; k < formats.size(); ++k) {
        if (words == formats.at(k)) {
            return static_cast<ScheduleFormat>(k);
        }
    }
    found.push_back({"value_unknown",
                     Severity::error,
                     fmt::format("--format is '{}', expected days, psplib or rcpspmax", words),
                     "",
                     "Leave it out for days."});
    return ScheduleFormat::days;
}

std::optional<std::int64_t> conflicts_from(const std::string& words, Diagnostics& found) {
    std::int64_t number = 0;
    const char* end = words.data() + words.size();
    const auto [stop, fault] = std::from_chars(words.data(), end, number);
    if (!is_whole(words)) {
        found.push_back({"usage",
                         Severity::error,
                         fmt::format("--conflicts was given '{}', expected a whole number", words),
                         "",
                         fmt::format("Write it as in --conflicts {}.", schedule::usual_conflicts)});
    } else if (fault != std::errc() || stop != end || number < 1 || number > most_conflicts) {
        found.push_back({"value_out_of_range",
                         Severity::error,
                         fmt::format("--conflicts is {}, expected 1 to {}", words, most_conflicts),
                         "",
                         "Leave it out for some seconds of search."});
    } else {
        return number;
    }
    return std::nullopt;
}

} // namespace

void add_schedule(CLI::App& command, ScheduleWords& words) {
    command.add_option("FILE", words.files);
    command.add_option("--format", words.format);
    command.add_option("--conflicts", words.conflicts);
}

ScheduleArguments
schedule_from(const CLI::App& command, const ScheduleWords& words, Diagnostics& found) {
    ScheduleArguments schedule;
    if (words.files.size() == 1) {
        schedule.file = words.files.front();
    } else {
        found.push_back(
            {"usage",
             Severity::error,
             fmt::format("found {} files, expected one scheduling problem", words.files.size()),
             "",
             "Name one file, or - for standard input."});
    }
    if (command.count("--format") > 0) {
        schedule.format = format_from(words.format, found);
    }
    if (command.count("--conflicts") > 0) {
        schedule.conflicts = conflicts_from(words.conflicts, found);
    }
    return schedule;
}

} // namespace loafwright::cli
