// SPDX-License-Identifier: Apache-2.0
#include "engine/following/change_line.hpp"

#include "engine/planning/words.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>

namespace loafwright::following {

namespace {

namespace words = planning::words;

// The line that is over or running and whose end moved, the last of them.
const Stage* cause_of(const Plan& before, const Plan& after, Instant now) {
    const Stage* cause = nullptr;
    for (std::size_t s = 0; s < std::min(before.stages.size(), after.stages.size()); ++s) {
        const bool looked_at = after.stages[s].start < now;
        if (looked_at && !(before.stages[s].end.likely == after.stages[s].end.likely)) {
            cause = &after.stages[s];
        }
    }
    return cause;
}

} // namespace

std::string change_line(const Plan& before, const Plan& after, const Day& day, Instant now) {
    const auto when = [&](Instant moment) {
        return words::clock_unless_today(day.zone, now, moment);
    };
    const std::size_t lines = std::min(before.stages.size(), after.stages.size());
    const Stage* moved = nullptr;
    for (std::size_t s = 0; s < lines && moved == nullptr; ++s) {
        const bool ahead =
            after.stages[s].start > now && after.stages[s].attention != Attention::none;
        if (ahead && !(before.stages[s].start == after.stages[s].start)) {
            moved = &after.stages[s];
        }
    }
    const bool eats_later = !(before.eat.likely == after.eat.likely);
    if (moved == nullptr && !eats_later) {
        return "";
    }
    std::string line;
    if (const Stage* cause = cause_of(before, after, now)) {
        const auto index = static_cast<std::size_t>(cause - after.stages.data());
        const std::int64_t took =
            minutes_between(cause->start, cause->end.likely) -
            minutes_between(before.stages[index].start, before.stages[index].end.likely);
        if (took != 0) {
            line = fmt::format("{} takes {} {}: ",
                               cause->title,
                               words::duration(std::abs(took)),
                               took > 0 ? "longer" : "less");
        } else {
            const std::int64_t late = minutes_between(before.stages[index].start, cause->start);
            line = fmt::format("{} was begun {} {}: ",
                               cause->title,
                               words::duration(std::abs(late)),
                               late > 0 ? "later" : "sooner");
        }
    }
    if (moved != nullptr) {
        const std::string title = line.empty() ? moved->title : uncapitalised(moved->title);
        line += fmt::format("{} is now at {}", title, when(moved->start));
        line += eats_later ? ", and " : "; ";
    }
    line += eats_later ? fmt::format("you eat at {}.", when(after.eat.likely))
                       : fmt::format("eating at {} still holds.", when(after.eat.likely));
    return capitalised(line);
}

} // namespace loafwright::following
