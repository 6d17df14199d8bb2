// SPDX-License-Identifier: Apache-2.0
#include "tests/schedule/small_problems.hpp"

#include <rapidcheck.h>

#include <algorithm>

namespace loafwright::schedule {

std::int64_t up_to(std::int64_t most) {
    // The whole range from the first try on: the problems are small as they are.
    return *rc::gen::resize(rc::kNominalSize, rc::gen::inRange<std::int64_t>(0, most + 1));
}

bool sometimes() {
    return up_to(2) == 0;
}

namespace {

// Now and then a task with its own first or last start.
void narrow(Task& task) {
    if (up_to(7) == 0) {
        task.start_from = up_to(5);
    }
    if (up_to(7) == 0) {
        task.start_to = 2 + up_to(6);
    }
}

} // namespace

Problem small_problem(std::int64_t fewest_tasks) {
    Problem problem;
    problem.horizon = 8 + up_to(4);
    const std::int64_t people = 1 + up_to(1);
    for (std::int64_t p = 0; p < people; ++p) {
        Person person;
        for (std::int64_t w = up_to(2); w > 0; --w) {
            const std::int64_t from = up_to(problem.horizon) - 1;
            person.windows.push_back({from, from + up_to(4), static_cast<WindowState>(up_to(2))});
        }
        problem.people.push_back(person);
    }
    problem.fridge.slots = static_cast<int>(up_to(1));
    problem.oven.heat_up = {{200, up_to(2)}, {230, up_to(3)}};
    problem.oven.changeover = {{200, 230, up_to(4)}, {230, 200, up_to(4)}};
    if (sometimes()) {
        const std::int64_t from = up_to(problem.horizon);
        std::optional<int> temperature;
        if (sometimes()) {
            temperature = sometimes() ? 200 : 230;
        }
        problem.oven.claims.push_back({from, from + up_to(4), temperature});
    }
    if (sometimes()) {
        const std::int64_t from = up_to(problem.horizon);
        problem.rather_not.push_back({from, from + up_to(4)});
    }
    Job job;
    const std::int64_t tasks = std::max(fewest_tasks, 1 + up_to(3));
    for (std::int64_t i = 0; i < tasks; ++i) {
        Task task;
        task.kind = static_cast<TaskKind>(up_to(2));
        const std::int64_t likely = up_to(3);
        task.minutes = {likely, likely, likely};
        if (sometimes()) {
            const std::int64_t min = up_to(3);
            task.stretch = Stretch{min, min + up_to(2)};
        }
        if (task.kind == TaskKind::oven) {
            task.oven = OvenUse{1, sometimes() ? 200 : 230};
        }
        task.leave = sometimes();
        narrow(task);
        job.tasks.push_back(task);
        if (i > 0) {
            Lag lag{static_cast<std::size_t>(i) - 1, static_cast<std::size_t>(i), up_to(1), {}, {}};
            if (!sometimes()) {
                lag.max = lag.min + up_to(2);
            }
            if (sometimes()) {
                lag.good = lag.max ? std::min(*lag.max, up_to(2)) : up_to(2);
            }
            job.lags.push_back(lag);
        }
    }
    if (sometimes()) {
        job.not_before = up_to(3);
    }
    if (sometimes()) {
        job.ready_by = problem.horizon - up_to(4);
    }
    if (sometimes()) {
        job.ready_from = up_to(6);
    }
    if (sometimes()) {
        Alternative other;
        other.weight = up_to(2);
        TaskChange change;
        change.task = static_cast<std::size_t>(up_to(tasks - 1));
        change.changes_stretch = true;
        change.stretch = Stretch{up_to(2), 2 + up_to(2)};
        change.fridge = static_cast<int>(up_to(1));
        change.leave = sometimes();
        other.tasks.push_back(change);
        if (tasks > 1 && sometimes()) {
            other.lags.push_back({0, 0, up_to(3), {}});
        }
        job.alternatives.push_back(other);
    }
    problem.jobs.push_back(job);
    return problem;
}

namespace {

Job small_job(std::int64_t horizon, std::int64_t tasks) {
    Job job;
    for (std::int64_t i = 0; i < tasks; ++i) {
        Task task;
        task.kind = static_cast<TaskKind>(up_to(2));
        const std::int64_t likely = up_to(2);
        task.minutes = {likely, likely, likely};
        if (up_to(3) == 0) {
            const std::int64_t min = up_to(2);
            task.stretch = Stretch{min, min + up_to(2)};
        }
        if (task.kind == TaskKind::oven || up_to(9) == 0) {
            task.oven = OvenUse{static_cast<int>(1 + up_to(1)), sometimes() ? 200 : 230};
        }
        task.fridge = static_cast<int>(up_to(3) == 0 ? up_to(2) : 0);
        task.leave = sometimes();
        narrow(task);
        job.tasks.push_back(task);
        // A line, a branch, or nothing that joins it; now and then an overlap.
        if (i > 0 && up_to(5) > 0) {
            const auto after = static_cast<std::size_t>(sometimes() ? i - 1 : up_to(i - 1));
            Lag lag{after, static_cast<std::size_t>(i), up_to(5) == 0 ? -1 : up_to(1), {}, {}};
            if (sometimes()) {
                lag.max = lag.min + up_to(2);
            }
            if (sometimes()) {
                lag.good = std::min(lag.max.value_or(2), up_to(2));
            }
            job.lags.push_back(lag);
        }
    }
    if (up_to(3) == 0) {
        job.not_before = up_to(3);
    }
    if (sometimes()) {
        job.ready_by = horizon - up_to(3);
    }
    if (up_to(3) == 0) {
        job.ready_from = up_to(5);
    }
    for (std::int64_t a = up_to(3) == 0 ? 1 + up_to(1) : 0; a > 0; --a) {
        Alternative other;
        other.weight = up_to(2);
        TaskChange change;
        change.task = static_cast<std::size_t>(up_to(tasks - 1));
        change.changes_stretch = true;
        change.stretch = Stretch{up_to(2), 2 + up_to(1)};
        change.fridge = static_cast<int>(up_to(1));
        change.leave = sometimes();
        other.tasks.push_back(change);
        if (!job.lags.empty() && sometimes()) {
            const std::int64_t min = up_to(2);
            other.lags.push_back({0, min, min + up_to(1), min});
        }
        job.alternatives.push_back(other);
    }
    return job;
}

} // namespace

Problem small_day(std::int64_t most_tasks) {
    Problem problem = small_problem(1);
    problem.horizon = 6 + up_to(2);
    problem.oven.slots = static_cast<int>(1 + up_to(1));
    problem.fridge.slots = static_cast<int>(up_to(2));
    problem.jobs.clear();
    for (std::int64_t left = 1 + up_to(most_tasks - 1); left > 0;) {
        const std::int64_t tasks = 1 + up_to(left - 1);
        problem.jobs.push_back(small_job(problem.horizon, tasks));
        problem.jobs.back().name = std::string(1, static_cast<char>('a' + up_to(2)));
        left -= tasks;
    }
    return problem;
}

} // namespace loafwright::schedule
