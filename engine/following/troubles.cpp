// SPDX-License-Identifier: Apache-2.0
#include "engine/following/troubles.hpp"

#include "engine/following/progress.hpp"

#include <algorithm>
#include <array>

namespace loafwright::following {

namespace {

constexpr std::int64_t unsaid_minutes = 60;

constexpr std::array<std::string_view, 7> names{
    "no_salt", "no_yeast", "too_sticky", "not_rising", "gone_too_far", "going_out", "oven_taken"};

} // namespace

std::string_view name_of(Trouble trouble) {
    return names.at(static_cast<std::size_t>(trouble));
}

std::optional<Trouble> trouble_named(std::string_view name) {
    const auto found = std::find(names.begin(), names.end(), name);
    if (found == names.end()) {
        return std::nullopt;
    }
    return static_cast<Trouble>(found - names.begin());
}

const RemedyRow* remedy_for(const Knowledge& knowledge, Trouble trouble) {
    for (const RemedyRow& row : knowledge.remedies) {
        if (row.key == name_of(trouble)) {
            return &row;
        }
    }
    return nullptr;
}

Day day_after(const Day& day, const std::vector<Event>& events) {
    Day after = day;
    for (const Event* event : in_order(events)) {
        if (event->kind != EventKind::trouble) {
            continue;
        }
        const Instant until = event->until.value_or(later_by_minutes(event->at, unsaid_minutes));
        if (until <= event->at) {
            continue;
        }
        if (event->trouble == Trouble::going_out) {
            after.windows.push_back({0, Presence::away, event->at, until});
        } else if (event->trouble == Trouble::oven_taken) {
            after.oven_claims.push_back({event->at, until, std::nullopt});
        }
    }
    std::sort(after.windows.begin(), after.windows.end(), [](const auto& a, const auto& b) {
        return a.from < b.from;
    });
    std::sort(after.oven_claims.begin(), after.oven_claims.end(), [](const auto& a, const auto& b) {
        return a.from < b.from;
    });
    return after;
}

} // namespace loafwright::following
