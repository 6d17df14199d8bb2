// SPDX-License-Identifier: Apache-2.0
//
// Every start, every length, every alternative, judged one by one. Slow and plainly right.
#include "tests/schedule/brute_force.hpp"

#include "engine/schedule/check.hpp"

#include <algorithm>

namespace loafwright::schedule {

namespace {

class Trial {
public:
    Trial(const Problem& problem, const Wish& wish) : problem_(problem), wish_(wish) {}

    std::optional<Worth> run() {
        for (std::size_t a = 0; a < problem_.jobs.front().alternatives.size(); ++a) {
            JobSchedule job;
            job.alternative = a;
            const std::size_t count = problem_.jobs.front().tasks.size();
            job.starts.assign(count, 0);
            job.ends.assign(count, 0);
            job.people.assign(count, std::nullopt);
            place(job, 0, 0);
        }
        return best_;
    }

private:
    // One person after the other: the judge says whether any of them can do it.
    void try_people(JobSchedule& job, std::size_t task) {
        if (task == job.starts.size()) {
            const Schedule schedule{{job}};
            if (violations(problem_, schedule).empty()) { // the judge alone decides
                Worth worth = worth_of(problem_, schedule, wish_.aim);
                if (!best_ || worth < *best_) {
                    best_ = worth;
                }
            }
            return;
        }
        if (problem_.jobs.front().tasks[task].kind != TaskKind::hands) {
            try_people(job, task + 1);
            return;
        }
        for (std::size_t p = 0; p < problem_.people.size(); ++p) {
            job.people[task] = p;
            try_people(job, task + 1);
        }
    }

    [[nodiscard]] std::int64_t longest(std::size_t task) const {
        const Job& job = problem_.jobs.front();
        std::int64_t most =
            job.tasks[task].stretch ? job.tasks[task].stretch->max : job.tasks[task].minutes.likely;
        for (const Alternative& alternative : job.alternatives) {
            for (const TaskChange& change : alternative.tasks) {
                if (change.task == task && change.stretch) {
                    most = std::max(most, change.stretch->max);
                }
            }
        }
        return most;
    }

    // No later than the lag before it allows, where no alternative changes lags.
    [[nodiscard]] std::int64_t latest(const JobSchedule& job, std::size_t task) const {
        if (task == 0 || problem_.jobs.front().alternatives.size() > 1) {
            return problem_.horizon;
        }
        const Lag& lag = problem_.jobs.front().lags[task - 1];
        return lag.max ? job.ends[task - 1] + *lag.max : problem_.horizon;
    }

    void place(JobSchedule& job, std::size_t task, std::int64_t earliest) {
        if (task == job.starts.size()) {
            try_people(job, 0);
            return;
        }
        for (std::int64_t start = earliest; start <= std::min(problem_.horizon, latest(job, task));
             ++start) {
            if (task == 0 && ((wish_.first_start_from && start < *wish_.first_start_from) ||
                              (wish_.first_start_to && start > *wish_.first_start_to))) {
                continue;
            }
            // A length that neither the task nor any alternative names is never right.
            for (std::int64_t end = start; end <= problem_.horizon && end <= start + longest(task);
                 ++end) {
                job.starts[task] = start;
                job.ends[task] = end;
                place(job, task + 1, end);
            }
        }
    }

    const Problem& problem_;
    const Wish& wish_;
    std::optional<Worth> best_;
};

} // namespace

Worth worth_of(const Problem& problem, const Schedule& schedule, Aim aim) {
    const Objective objective = objective_of(problem, schedule);
    std::int64_t end = 0;
    for (const JobSchedule& job : schedule.jobs) {
        end = std::max(end, job.ends.back());
    }
    switch (aim) {
    case Aim::begin_late:
        return {objective.violations, objective.tied, -objective.earliest};
    case Aim::end_early:
        return {end, objective.violations, objective.tied, -objective.earliest};
    case Aim::begin_soonest:
        return {objective.earliest, end, objective.violations, objective.tied};
    case Aim::begin_last:
        return {-objective.earliest, end, objective.violations, objective.tied};
    }
    return {};
}

std::optional<Worth> best_by_trying_all(const Problem& problem, const Wish& wish) {
    return Trial(problem, wish).run();
}

} // namespace loafwright::schedule
