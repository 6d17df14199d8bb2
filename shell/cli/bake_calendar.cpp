// SPDX-License-Identifier: Apache-2.0
//
// A calendar file and the one that it takes the place of. The old file is the only memory: it says
// how often this bake has been planned (docs/decisions/0009). A bake is known by the words of its
// recipe and the day of the meal, which stays when the hours move.
#include "shell/cli/bake_calendar.hpp"

#include "engine/reading/read.hpp"
#include "shell/cli/files.hpp"
#include "shell/output/calendar_file.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <system_error>

namespace loafwright::cli {

namespace {

// What stands at `path`; nothing where that is no plain file, which might wait for a writer.
std::string old_bytes(const std::string& path) {
    std::error_code failure;
    if (!std::filesystem::is_regular_file(path, failure)) {
        return {};
    }
    auto bytes = file_bytes(path);
    return bytes && bytes->size() <= longest_text_bytes ? std::move(*bytes) : std::string();
}

} // namespace

bool is_calendar(const std::string& path) {
    return std::filesystem::path(path).extension() == ".ics";
}

std::string bake_calendar(const std::string& path,
                          const Plan& plan,
                          const Sheet& sheet,
                          std::string_view recipe,
                          const Day& day) {
    const CivilDate meal = civil_of(day.zone, day.eat_by.value_or(plan.eat.likely)).date;
    output::CalendarMarks marks;
    marks.identity = fmt::format("{}-{:02}-{:02}\n{}", meal.year, meal.month, meal.day, recipe);
    marks.now = day.now;
    return output::calendar_file_after(old_bytes(path), plan, sheet, day.zone, std::move(marks));
}

} // namespace loafwright::cli
