// SPDX-License-Identifier: Apache-2.0
//
// Every alternative, start, length and person of a few tasks, judged one by one.
#include "engine/schedule/check.hpp"
#include "tests/schedule/brute_force.hpp"

#include <algorithm>

namespace loafwright::schedule {

namespace {

class TrialOfAll {
public:
    TrialOfAll(const Problem& problem, const Wish& wish) : problem_(problem), wish_(wish) {
        schedule_.jobs.resize(problem.jobs.size());
    }

    std::optional<Worth> run() {
        choose(0);
        return best_;
    }

private:
    void choose(std::size_t j) {
        if (j == problem_.jobs.size()) {
            place(0, 0);
            return;
        }
        JobSchedule& job = schedule_.jobs[j];
        job.starts.resize(problem_.jobs[j].tasks.size());
        job.ends.resize(job.starts.size());
        job.people.resize(job.starts.size());
        for (std::size_t a = 0; a < problem_.jobs[j].alternatives.size(); ++a) {
            job.alternative = a;
            choose(j + 1);
        }
    }

    void judge() {
        if (!violations(problem_, schedule_).empty()) {
            return;
        }
        Worth worth = worth_of(problem_, schedule_, wish_.aim);
        const std::int64_t first = objective_of(problem_, schedule_).earliest;
        const bool wished = first >= wish_.first_start_from.value_or(first) &&
                            first <= wish_.first_start_to.value_or(first);
        if (wished && (!best_ || worth < *best_)) {
            best_ = worth;
        }
    }

    // A length that neither the task nor the chosen alternative names is never right.
    [[nodiscard]] Stretch lengths(std::size_t j, std::size_t i) const {
        const Task& task = problem_.jobs[j].tasks[i];
        std::optional<Stretch> stretch = task.stretch;
        std::int64_t likely = task.minutes.likely;
        for (const TaskChange& change :
             problem_.jobs[j].alternatives[schedule_.jobs[j].alternative].tasks) {
            if (change.task == i) {
                stretch = change.changes_stretch ? change.stretch : stretch;
                likely = change.minutes ? change.minutes->likely : likely;
            }
        }
        return stretch.value_or(Stretch{likely, likely});
    }

    // Least lags to tasks placed already, as written or under some alternative.
    [[nodiscard]] bool too_soon(std::size_t j, std::size_t i) const {
        const Job& job = problem_.jobs[j];
        const JobSchedule& times = schedule_.jobs[j];
        for (const Lag& lag : job.lags) {
            if (lag.before == i && lag.after < i && job.alternatives.size() == 1 &&
                times.starts[i] < times.ends[lag.after] + lag.min) {
                return true;
            }
        }
        return false;
    }

    void place(std::size_t j, std::size_t i) {
        if (j == problem_.jobs.size()) {
            judge();
            return;
        }
        if (i == problem_.jobs[j].tasks.size()) {
            place(j + 1, 0);
            return;
        }
        JobSchedule& job = schedule_.jobs[j];
        const Stretch span = lengths(j, i);
        for (std::int64_t start = 0; start + span.min <= problem_.horizon; ++start) {
            job.starts[i] = start;
            if (too_soon(j, i)) {
                continue;
            }
            for (std::int64_t length = span.min;
                 length <= span.max && start + length <= problem_.horizon;
                 ++length) {
                job.ends[i] = start + length;
                if (problem_.jobs[j].tasks[i].kind != TaskKind::hands) {
                    job.people[i].reset();
                    place(j, i + 1);
                    continue;
                }
                for (std::size_t p = 0; p < problem_.people.size(); ++p) {
                    job.people[i] = p;
                    place(j, i + 1);
                }
            }
        }
    }

    const Problem& problem_;
    const Wish& wish_;
    Schedule schedule_;
    std::optional<Worth> best_;
};

} // namespace

std::optional<Worth> best_of_any_shape(const Problem& problem, const Wish& wish) {
    return TrialOfAll(problem, wish).run();
}

} // namespace loafwright::schedule
