// SPDX-License-Identifier: Apache-2.0
//
// Three headings matter, whatever their case and blanks: PRECEDENCE RELATIONS, REQUESTS/DURATIONS
// and RESOURCEAVAILABILITIES. The counts further up are compared where they stand; what else a file
// says there (horizon, due date, seed) is of no use here. A list may run over several lines.
#include "engine/wire/project_files.hpp"
#include "engine/wire/project_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace loafwright::wire {

namespace {

constexpr std::array<std::pair<const char*, const char*>, 3> headings{
    {{"precedencerelations", "PRECEDENCE RELATIONS"},
     {"requests/durations", "REQUESTS/DURATIONS"},
     {"resourceavailabilities", "RESOURCEAVAILABILITIES"}}};

constexpr std::array<std::pair<const char*, const char*>, 4> counts{
    {{"jobs", "jobs"},
     {"-renewable", "renewable"},
     {"-nonrenewable", "nonrenewable"},
     {"-doublyconstrained", "doubly constrained"}}};

struct Section {
    std::vector<ProjectWord> words;
    bool seen = false;
    std::size_t last_line = 0;
};

struct Count {
    std::vector<ProjectWord> words; // the number alone
    std::size_t line = 0;
};

struct Sections {
    std::array<Section, headings.size()> below;
    std::array<Count, counts.size()> told;
};

std::string squeezed(const ProjectLine& line) {
    std::string text;
    for (const ProjectWord& word : line) {
        for (const char c : word.text) {
            text += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        }
    }
    return text;
}

bool starts_with(const std::string& text, const std::string& start) {
    return text.compare(0, start.size(), start) == 0;
}

// "jobs (incl. supersource/sink ):  32": what stands behind the colon.
void note_count(const ProjectLine& line, const std::string& squeezed_line, Sections& sections) {
    for (std::size_t k = 0; k < counts.size(); ++k) {
        if (!starts_with(squeezed_line, counts[k].first)) {
            continue;
        }
        for (std::size_t w = 0; w < line.size(); ++w) {
            const std::size_t colon = line[w].text.find(':');
            if (colon == std::string_view::npos) {
                continue;
            }
            ProjectWord number{line[w].text.substr(colon + 1), line[w].line};
            if (number.text.empty() && w + 1 < line.size()) {
                number = line[w + 1];
            }
            if (!number.text.empty()) {
                sections.told[k] = {{number}, number.line};
            }
            return;
        }
    }
}

Sections sections_of(const std::vector<ProjectLine>& lines) {
    Sections sections;
    Section* open = nullptr;
    for (const ProjectLine& line : lines) {
        const std::string text = squeezed(line);
        bool is_heading = false;
        for (std::size_t k = 0; k < headings.size(); ++k) {
            if (starts_with(text, headings[k].first)) {
                open = &sections.below[k];
                open->seen = true;
                is_heading = true;
            }
        }
        if (open == nullptr) {
            note_count(line, text, sections);
            continue;
        }
        open->last_line = line.front().line;
        // Names of columns may stand above the numbers.
        if (!is_heading && (!open->words.empty() || looks_whole(line.front().text))) {
            open->words.insert(open->words.end(), line.begin(), line.end());
        }
    }
    return sections;
}

std::string numbered(const char* what, std::size_t number) {
    return fmt::format("{} of activity {}", what, number);
}

class Reader {
public:
    Reader(const Sections& sections, std::string_view file) : sections_(sections), file_(file) {}

    tl::expected<schedule::Project, Diagnostics> run() {
        for (std::size_t k = 0; k < headings.size(); ++k) {
            if (!sections_.below[k].seen) {
                return tl::make_unexpected(unreadable_project(
                    file_,
                    fmt::format("found no line \"{}\", expected it and numbers below it",
                                headings[k].second)));
            }
        }
        if (read_capacities() && read_followers() && read_requests() && compare_counts()) {
            return std::move(project_);
        }
        return tl::make_unexpected(std::move(faults_));
    }

private:
    ProjectWords words(std::size_t section) const {
        return {sections_.below[section].words, file_, sections_.below[section].last_line};
    }
    bool done(const ProjectWords& words) {
        if (words.failed()) {
            faults_ = words.faults();
        }
        return !words.failed();
    }

    bool read_capacities() {
        ProjectWords next = words(2);
        do {
            project_.capacities.push_back(
                next.number(fmt::format("the units of resource {}", project_.capacities.size() + 1),
                            0,
                            schedule::most_units));
        } while (!next.at_end() && !next.failed() &&
                 project_.capacities.size() < schedule::most_resources);
        next.end(fmt::format("{} resources", schedule::most_resources));
        return done(next);
    }

    bool read_followers() {
        ProjectWords next = words(0);
        const auto most = static_cast<std::int64_t>(schedule::most_activities);
        std::size_t count = 0;
        do {
            ++count;
            next.exactly("the number of the activity", static_cast<std::int64_t>(count));
            next.exactly(numbered("the number of modes", count), 1);
            const std::int64_t followers =
                next.number(numbered("the number of successors", count), 0, most);
            for (std::int64_t k = 0; k < followers && !next.failed(); ++k) {
                const std::int64_t to = next.number(numbered("a successor", count), 1, most);
                project_.lags.push_back({count - 1, static_cast<std::size_t>(to - 1), 0});
            }
        } while (!next.at_end() && !next.failed() && count < schedule::most_activities);
        next.end(fmt::format("{} activities", schedule::most_activities));
        project_.activities.resize(count);
        return done(next) && followers_exist();
    }

    bool followers_exist() {
        const auto stray = std::find_if(
            project_.lags.begin(), project_.lags.end(), [&](const schedule::TimeLag& lag) {
                return lag.to >= project_.activities.size();
            });
        if (stray == project_.lags.end()) {
            return true;
        }
        faults_ =
            unreadable_project(file_,
                               fmt::format("activity {} has the successor {}, expected 1 to {}",
                                           stray->from + 1,
                                           stray->to + 1,
                                           project_.activities.size()));
        faults_.front().code = "value_out_of_range";
        return false;
    }

    bool read_requests() {
        ProjectWords next = words(1);
        for (std::size_t i = 0; i < project_.activities.size() && !next.failed(); ++i) {
            next.exactly("the number of the activity", static_cast<std::int64_t>(i + 1));
            next.exactly(numbered("the mode", i + 1), 1);
            project_.activities[i].duration =
                next.number(numbered("the duration", i + 1), 0, schedule::longest_project);
            for (std::size_t r = 0; r < project_.capacities.size(); ++r) {
                project_.activities[i].demands.push_back(
                    next.number(numbered("a demand", i + 1), 0, schedule::most_units));
            }
        }
        next.end(fmt::format("{} activities with {} resources",
                             project_.activities.size(),
                             project_.capacities.size()));
        for (schedule::TimeLag& lag : project_.lags) {
            lag.least = project_.activities[lag.from].duration;
        }
        return done(next);
    }

    bool compare_counts() {
        const std::array<std::size_t, counts.size()> read{
            project_.activities.size(), project_.capacities.size(), 0, 0};
        for (std::size_t k = 0; k < counts.size(); ++k) {
            if (!sections_.told[k].words.empty()) {
                ProjectWords told(sections_.told[k].words, file_, sections_.told[k].line);
                told.exactly(
                    fmt::format("the number of \"{}\" that the lists below have", counts[k].second),
                    static_cast<std::int64_t>(read[k]));
                if (!done(told)) {
                    return false;
                }
            }
        }
        return true;
    }

    const Sections& sections_;
    std::string_view file_;
    schedule::Project project_;
    Diagnostics faults_;
};

} // namespace

tl::expected<schedule::Project, Diagnostics> project_from_psplib(std::string_view bytes,
                                                                 std::string_view file) {
    if (auto fault = fault_of_size(bytes, file)) {
        return tl::make_unexpected(std::move(*fault));
    }
    const Sections sections = sections_of(project_lines(bytes));
    auto project = Reader(sections, file).run();
    return project ? finished_project(std::move(*project), file) : project;
}

} // namespace loafwright::wire
