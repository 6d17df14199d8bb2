// SPDX-License-Identifier: Apache-2.0
//
// Numbers and square brackets only, so lines matter for the first one alone: it may leave out its
// two zeros, the counts of resources that are not renewable.
#include "engine/wire/project_files.hpp"
#include "engine/wire/project_words.hpp"

#include <fmt/format.h>

#include <string>
#include <utility>

namespace loafwright::wire {

namespace {

std::string numbered(const char* what, std::size_t number) {
    return fmt::format("{} of activity {}", what, number);
}

void read_counts(ProjectWords& first, schedule::Project& project) {
    constexpr std::int64_t ends = 2;
    const std::int64_t activities =
        first.number("the number of activities without the two ends",
                     0,
                     static_cast<std::int64_t>(schedule::most_activities) - ends);
    const std::int64_t resources = first.number(
        "the number of resources", 0, static_cast<std::int64_t>(schedule::most_resources));
    for (int k = 0; k < 2 && !first.at_end(); ++k) {
        first.exactly("the number of other resources", 0);
    }
    first.end("the counts of the first line");
    project.activities.resize(static_cast<std::size_t>(activities + ends));
    project.capacities.resize(static_cast<std::size_t>(resources));
}

void read_followers(ProjectWords& next, std::size_t from, schedule::Project& project) {
    const auto last = static_cast<std::int64_t>(project.activities.size()) - 1;
    next.exactly("the number of the activity", static_cast<std::int64_t>(from));
    next.exactly(numbered("the number of modes", from), 1);
    const std::int64_t followers =
        next.number(numbered("the number of successors", from),
                    0,
                    static_cast<std::int64_t>(schedule::most_time_lags - project.lags.size()));
    const std::size_t first = project.lags.size();
    for (std::int64_t k = 0; k < followers && !next.failed(); ++k) {
        const std::int64_t to = next.number(numbered("a successor", from), 0, last);
        project.lags.push_back({from, static_cast<std::size_t>(to), 0});
    }
    for (std::size_t k = first; k < project.lags.size() && !next.failed(); ++k) {
        next.word("[");
        project.lags[k].least =
            next.number(fmt::format("the lag from activity {} to {}", from, project.lags[k].to),
                        -schedule::longest_project,
                        schedule::longest_project);
        next.word("]");
    }
}

void read_request(ProjectWords& next, std::size_t i, schedule::Project& project) {
    schedule::Activity& activity = project.activities[i];
    next.exactly("the number of the activity", static_cast<std::int64_t>(i));
    next.exactly(numbered("the mode", i), 1);
    activity.duration = next.number(numbered("the duration", i), 0, schedule::longest_project);
    for (std::size_t r = 0; r < project.capacities.size(); ++r) {
        activity.demands.push_back(next.number(numbered("a demand", i), 0, schedule::most_units));
    }
}

} // namespace

tl::expected<schedule::Project, Diagnostics> project_from_rcpspmax(std::string_view bytes,
                                                                   std::string_view file) {
    if (auto fault = fault_of_size(bytes, file)) {
        return tl::make_unexpected(std::move(*fault));
    }
    const std::vector<ProjectLine> lines = project_lines(bytes);
    if (lines.empty()) {
        return tl::make_unexpected(
            unreadable_project(file, "found nothing in it, expected a project"));
    }
    schedule::Project project;
    ProjectWords first(lines.front(), file, lines.front().front().line);
    read_counts(first, project);
    if (first.failed()) {
        return tl::make_unexpected(first.faults());
    }
    std::vector<ProjectWord> words;
    for (std::size_t k = 1; k < lines.size(); ++k) {
        words.insert(words.end(), lines[k].begin(), lines[k].end());
    }
    ProjectWords next(words, file, lines.back().front().line);
    for (std::size_t i = 0; i < project.activities.size() && !next.failed(); ++i) {
        read_followers(next, i, project);
    }
    for (std::size_t i = 0; i < project.activities.size() && !next.failed(); ++i) {
        read_request(next, i, project);
    }
    for (std::size_t r = 0; r < project.capacities.size(); ++r) {
        project.capacities[r] =
            next.number(fmt::format("the units of resource {}", r + 1), 0, schedule::most_units);
    }
    next.end("the units of the resources");
    if (next.failed()) {
        return tl::make_unexpected(next.faults());
    }
    return finished_project(std::move(project), file);
}

} // namespace loafwright::wire
