// SPDX-License-Identifier: Apache-2.0
//
// The bare scheduler's answer for people who try it: rules go by the names of
// engine/schedule/README.md, minutes count from the problem's own midnight.
#include "shell/cli/schedule_page.hpp"

#include "shell/output/text_lines.hpp"

#include <fmt/format.h>

#include <cstdint>
#include <vector>

namespace loafwright::cli {

namespace {

constexpr std::int64_t minutes_of_a_day = 1440;

std::string clock_words(std::int64_t minute) {
    const std::int64_t day = minute / minutes_of_a_day;
    const std::int64_t rest = minute % minutes_of_a_day;
    return fmt::format(
        "{:02}:{:02}{}", rest / 60, rest % 60, day > 0 ? fmt::format("+{}", day) : std::string());
}

std::string task_line(const schedule::Problem& problem,
                      const schedule::Task& task,
                      const schedule::JobSchedule& times,
                      std::size_t index) {
    const std::int64_t start = times.starts[index];
    const std::int64_t end = times.ends[index];
    std::string line = fmt::format("  {:>5} {:<8} to {:>5} {:<8}  {}",
                                   start,
                                   clock_words(start),
                                   end,
                                   clock_words(end),
                                   output::printable(task.name));
    if (const auto person = times.people[index]) {
        line += ", " + output::printable(problem.people[*person].name);
    }
    return line + "\n";
}

std::string listed(const std::vector<std::string>& words) {
    std::string list;
    for (const std::string& word : words) {
        list += (list.empty() ? "" : ", ") + output::printable(word);
    }
    return list;
}

} // namespace

std::string schedule_page(const schedule::Problem& problem, const schedule::Solved& solved) {
    std::string page = fmt::format(
        "{}: {}\nwishes not kept {}, minutes tied {}, first start {} {}\n",
        output::printable(problem.id),
        solved.proof == schedule::Proof::best ? "proven best" : "best found, not proven",
        solved.objective.violations,
        solved.objective.tied,
        solved.objective.earliest,
        clock_words(solved.objective.earliest));
    for (std::size_t j = 0; j < problem.jobs.size(); ++j) {
        const schedule::Job& job = problem.jobs[j];
        const schedule::JobSchedule& times = solved.schedule.jobs[j];
        page += fmt::format("\n{}, {}\n",
                            output::printable(job.name),
                            output::printable(job.alternatives[times.alternative].name));
        for (std::size_t i = 0; i < job.tasks.size(); ++i) {
            page += task_line(problem, job.tasks[i], times, i);
        }
    }
    return page;
}

std::string no_schedule_page(const schedule::Problem& problem, const schedule::Why& why) {
    std::string page = fmt::format("{}: impossible, no schedule keeps every rule\n",
                                   output::printable(problem.id));
    std::vector<std::string> reasons;
    for (const schedule::Reason& reason : why.reasons) {
        reasons.push_back(reason.job ? reason.rule + " of " + problem.jobs[*reason.job].name
                                     : reason.rule);
    }
    if (!reasons.empty()) {
        page += "cannot be kept together: " + listed(reasons) + "\n";
    }
    if (why.delay) {
        page += fmt::format("possible when everything may be ready {} minutes later\n", *why.delay);
    }
    if (!why.enough.empty()) {
        page += "possible with any one of these changes: " + listed(why.enough) + "\n";
    }
    if (why.proof != schedule::Proof::best) {
        page += "the limit came first: there may be more ways\n";
    }
    return page;
}

std::string project_page(const std::string& id,
                         const schedule::Project& project,
                         const schedule::ProjectSolved& solved) {
    std::string page = fmt::format("{}: {}\nover at {}, cannot be over before {}\n\n",
                                   output::printable(id),
                                   solved.proof == schedule::Proof::best ? "proven best"
                                                                         : "best found, not proven",
                                   solved.makespan,
                                   solved.lower_bound);
    for (std::size_t i = 0; i < solved.starts.size(); ++i) {
        page += fmt::format("  {:>5}  {:>6} to {:>6}\n",
                            i,
                            solved.starts[i],
                            solved.starts[i] + project.activities[i].duration);
    }
    return page;
}

std::string no_project_page(const std::string& id) {
    return fmt::format("{}: impossible, no schedule keeps every rule\n", output::printable(id));
}

} // namespace loafwright::cli
