// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

// The library names it so.
namespace CLI { // NOLINT(readability-identifier-naming)
class App;
}

namespace loafwright::cli {

/// The largest --conflicts.
inline constexpr std::int64_t most_conflicts = 1000000000;

/// What the file holds: a bake day, or a project of one of the public sets.
enum class ScheduleFormat { days, psplib, rcpspmax };

struct ScheduleArguments {
    std::string file; // "-" is standard input
    ScheduleFormat format = ScheduleFormat::days;
    std::optional<std::int64_t> conflicts; // none: what the solver takes for some seconds
    bool json = false;
};

/// Where CLI11 puts the words of the command's options.
struct ScheduleWords {
    std::vector<std::string> files;
    std::string format;
    std::string conflicts;
};

/// Adds the options of `loafwright schedule`; `words` must outlive the command.
void add_schedule(CLI::App& command, ScheduleWords& words);

/// What the words ask for.
///
/// Errors, told in `found` as far as they can be found: usage (no file, several, --conflicts not a
/// whole number), value_out_of_range (--conflicts), value_unknown (--format).
ScheduleArguments
schedule_from(const CLI::App& command, const ScheduleWords& words, Diagnostics& found);

} // namespace loafwright::cli
