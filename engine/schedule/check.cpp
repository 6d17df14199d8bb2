// SPDX-License-Identifier: Apache-2.0
//
// The independent judge. It is written from the rules in README.md, minute by minute, the slow and
// plain way, and uses nothing that a solver uses: where the two disagree, one of them is wrong and
// a test says so. It reads the whole problem, any number of jobs, people and branches, not only
// what one solver can do.
#include "engine/schedule/check.hpp"

#include <algorithm>
#include <set>

namespace loafwright::schedule {

namespace {

struct AsChosen {
    std::vector<Task> tasks;
    std::vector<Lag> lags;
};

AsChosen as_chosen(const Job& job, std::size_t alternative) {
    AsChosen chosen{job.tasks, job.lags};
    for (const TaskChange& change : job.alternatives[alternative].tasks) {
        Task& task = chosen.tasks[change.task];
        if (change.minutes) {
            task.minutes = *change.minutes;
        }
        if (change.changes_stretch) {
            task.stretch = change.stretch;
        }
        if (change.fridge) {
            task.fridge = *change.fridge;
        }
        if (change.leave) {
            task.leave = *change.leave;
        }
    }
    for (const LagChange& change : job.alternatives[alternative].lags) {
        Lag& lag = chosen.lags[change.lag];
        lag.min = change.min;
        lag.max = change.max;
        lag.good = change.good;
    }
    return chosen;
}

bool has_form(const Problem& problem, const Schedule& schedule) {
    if (schedule.jobs.size() != problem.jobs.size()) {
        return false;
    }
    for (std::size_t j = 0; j < problem.jobs.size(); ++j) {
        const JobSchedule& job = schedule.jobs[j];
        const std::size_t count = problem.jobs[j].tasks.size();
        if (job.alternative >= problem.jobs[j].alternatives.size() || job.starts.size() != count ||
            job.ends.size() != count || job.people.size() != count) {
            return false;
        }
    }
    return true;
}

std::int64_t heating(const Oven& oven, int temperature) {
    std::int64_t minutes = 0;
    for (const HeatUp& row : oven.heat_up) {
        if (row.temperature == temperature) {
            minutes = row.minutes;
        }
    }
    return minutes;
}

std::int64_t changing(const Oven& oven, int from, int to) {
    std::int64_t minutes = 0;
    for (const Changeover& row : oven.changeover) {
        if (row.from == from && row.to == to) {
            minutes = row.minutes;
        }
    }
    return minutes;
}

bool in_state(const Person& person, std::int64_t minute, bool busy_counts) {
    return std::any_of(person.windows.begin(), person.windows.end(), [&](const Window& window) {
        return window.from <= minute && minute < window.to &&
               (busy_counts || window.state != WindowState::busy);
    });
}

// Whether each minute of the horizon finds the person in one of their windows.
std::vector<bool> minutes_in_windows(const Person& person, std::int64_t horizon, bool busy_counts) {
    std::vector<bool> blocked(static_cast<std::size_t>(horizon), false);
    for (std::int64_t minute = 0; minute < horizon; ++minute) {
        blocked[static_cast<std::size_t>(minute)] = in_state(person, minute, busy_counts);
    }
    return blocked;
}

struct Bake {
    std::int64_t start = 0;
    std::int64_t end = 0;
    OvenUse use;
    std::size_t job = 0;
    std::size_t task = 0;
};

class Judge {
public:
    Judge(const Problem& problem, const Schedule& schedule)
        : problem_(problem), schedule_(schedule) {
        const auto minutes = static_cast<std::size_t>(problem.horizon);
        cold_.assign(minutes, 0);
        watched_.assign(minutes, false);
        for (const Person& person : problem.people) {
            blocked_.push_back(minutes_in_windows(person, problem.horizon, true));
            taken_.emplace_back(minutes, false);
            const std::vector<bool> gone = minutes_in_windows(person, problem.horizon, false);
            for (std::size_t minute = 0; minute < minutes; ++minute) {
                watched_[minute] = watched_[minute] || !gone[minute];
            }
        }
    }

    std::vector<BrokenRule> verdict() {
        for (std::size_t j = 0; j < problem_.jobs.size(); ++j) {
            judge_job(j);
        }
        judge_shared();
        return std::move(broken_);
    }

private:
    void say(const char* rule,
             std::size_t job,
             std::optional<std::size_t> task,
             std::optional<std::int64_t> minute) {
        broken_.push_back({rule, job, task, minute});
    }

    void judge_job(std::size_t j) {
        const Job& job = problem_.jobs[j];
        const JobSchedule& times = schedule_.jobs[j];
        const AsChosen chosen = as_chosen(job, times.alternative);
        for (std::size_t i = 0; i < chosen.tasks.size(); ++i) {
            const Task& task = chosen.tasks[i];
            const std::int64_t start = times.starts[i];
            const std::int64_t end = times.ends[i];
            const std::int64_t least = task.stretch ? task.stretch->min : task.minutes.likely;
            const std::int64_t most = task.stretch ? task.stretch->max : task.minutes.likely;
            if (end - start < least || end - start > most) {
                say("duration", j, i, start);
            }
            if (job.not_before && start < *job.not_before) {
                say("not_before", j, i, start);
            }
            if (start < task.start_from.value_or(start) || start > task.start_to.value_or(start)) {
                say("start_window", j, i, start);
            }
            if (start < 0 || end > problem_.horizon || end < start) {
                say("horizon", j, i, start);
                continue;
            }
            if (task.kind == TaskKind::hands) {
                judge_hands(j, i, start, end, times.people[i]);
            }
            if (task.oven) {
                judge_oven(j, i, start, end, *task.oven);
            }
            for (std::int64_t minute = start; minute < end; ++minute) {
                cold_[static_cast<std::size_t>(minute)] += task.fridge;
            }
        }
        for (const Lag& lag : chosen.lags) {
            const std::int64_t gap = times.starts[lag.before] - times.ends[lag.after];
            if (gap < lag.min) {
                say("lag_min", j, lag.before, times.starts[lag.before]);
            }
            if (lag.max && gap > *lag.max) {
                say("lag_max", j, lag.before, times.starts[lag.before]);
            }
        }
        const std::int64_t last = times.ends.back();
        if (job.ready_by && last > *job.ready_by) {
            say("ready_by", j, times.ends.size() - 1, last);
        }
        if (job.ready_from && last < *job.ready_from) {
            say("ready_from", j, times.ends.size() - 1, last);
        }
    }

    void judge_hands(std::size_t j,
                     std::size_t i,
                     std::int64_t start,
                     std::int64_t end,
                     const std::optional<std::size_t>& who) {
        if (!who || *who >= problem_.people.size()) {
            say("hands", j, i, start);
            return;
        }
        for (std::int64_t minute = start; minute < end; ++minute) {
            const auto m = static_cast<std::size_t>(minute);
            if (blocked_[*who][m]) {
                say("window", j, i, minute);
                break;
            }
            if (taken_[*who][m]) {
                say("hands", j, i, minute);
                break;
            }
        }
        for (std::int64_t minute = start; minute < end; ++minute) {
            taken_[*who][static_cast<std::size_t>(minute)] = true;
        }
    }

    void judge_oven(
        std::size_t j, std::size_t i, std::int64_t start, std::int64_t end, const OvenUse& use) {
        const std::int64_t heat = heating(problem_.oven, use.temperature);
        if (start < heat) {
            say("preheat", j, i, start);
        }
        for (std::int64_t minute = std::max<std::int64_t>(0, start - heat); minute < end;
             ++minute) {
            if (!watched_[static_cast<std::size_t>(minute)]) {
                say("unattended", j, i, minute);
                break;
            }
        }
        for (const Claim& claim : problem_.oven.claims) {
            const std::int64_t settle =
                !claim.temperature ? heat
                : *claim.temperature == use.temperature
                    ? 0
                    : changing(problem_.oven, *claim.temperature, use.temperature);
            if (end > claim.from && start < claim.to + settle) {
                say("oven_claim", j, i, start);
            }
        }
        bakes_.push_back({start, end, use, j, i});
    }

    void judge_shared() {
        std::vector<std::int64_t> slots(static_cast<std::size_t>(problem_.horizon), 0);
        for (const Bake& bake : bakes_) {
            for (std::int64_t minute = bake.start; minute < bake.end; ++minute) {
                slots[static_cast<std::size_t>(minute)] += bake.use.slots;
            }
        }
        for (std::size_t minute = 0; minute < slots.size(); ++minute) {
            if (slots[minute] > problem_.oven.slots) {
                say("oven_space", 0, std::nullopt, static_cast<std::int64_t>(minute));
                break;
            }
        }
        for (std::size_t minute = 0; minute < cold_.size(); ++minute) {
            if (cold_[minute] > problem_.fridge.slots) {
                say("fridge_space", 0, std::nullopt, static_cast<std::int64_t>(minute));
                break;
            }
        }
        for (std::size_t x = 0; x < bakes_.size(); ++x) {
            for (std::size_t y = 0; y < bakes_.size(); ++y) {
                const Bake& a = bakes_[x];
                const Bake& b = bakes_[y];
                if (a.use.temperature == b.use.temperature) {
                    continue;
                }
                if (x < y && std::max(a.start, b.start) < std::min(a.end, b.end)) {
                    say("oven_temperature", b.job, b.task, std::max(a.start, b.start));
                }
                const std::int64_t between =
                    changing(problem_.oven, a.use.temperature, b.use.temperature);
                if (a.end <= b.start && b.start < a.end + between) {
                    say("changeover", b.job, b.task, b.start);
                }
            }
        }
    }

    const Problem& problem_;
    const Schedule& schedule_;
    std::vector<BrokenRule> broken_;
    std::vector<std::vector<bool>> blocked_; // person, minute
    std::vector<std::vector<bool>> taken_;
    std::vector<bool> watched_;
    std::vector<std::int64_t> cold_;
    std::vector<Bake> bakes_;
};

// A sitting is a group of tasks that tie somebody, joined by lags; it ties from its first start to
// its last end.
std::int64_t tied_minutes(const AsChosen& chosen, const JobSchedule& times) {
    std::set<std::size_t> open;
    for (std::size_t i = 0; i < chosen.tasks.size(); ++i) {
        if (!chosen.tasks[i].leave) {
            open.insert(i);
        }
    }
    std::vector<std::vector<std::size_t>> beside(chosen.tasks.size());
    for (const Lag& lag : chosen.lags) {
        beside[lag.after].push_back(lag.before);
        beside[lag.before].push_back(lag.after);
    }
    std::int64_t tied = 0;
    while (!open.empty()) {
        std::vector<std::size_t> group{*open.begin()};
        open.erase(open.begin());
        for (std::size_t next = 0; next < group.size(); ++next) {
            const std::size_t here = group[next];
            for (const std::size_t there : beside[here]) {
                if (open.erase(there) > 0) {
                    group.push_back(there);
                }
            }
        }
        std::int64_t first = times.starts[group.front()];
        std::int64_t last = times.ends[group.front()];
        for (const std::size_t i : group) {
            first = std::min(first, times.starts[i]);
            last = std::max(last, times.ends[i]);
        }
        tied += last - first;
    }
    return tied;
}

} // namespace

std::vector<BrokenRule> violations(const Problem& problem, const Schedule& schedule) {
    if (!has_form(problem, schedule)) {
        return {{"form", 0, std::nullopt, std::nullopt}};
    }
    return Judge(problem, schedule).verdict();
}

Objective objective_of(const Problem& problem, const Schedule& schedule) {
    Objective objective{0, 0, problem.horizon};
    if (!has_form(problem, schedule)) {
        return objective;
    }
    for (std::size_t j = 0; j < problem.jobs.size(); ++j) {
        const JobSchedule& times = schedule.jobs[j];
        const AsChosen chosen = as_chosen(problem.jobs[j], times.alternative);
        objective.violations += problem.jobs[j].alternatives[times.alternative].weight;
        for (const Lag& lag : chosen.lags) {
            if (lag.good && times.starts[lag.before] - times.ends[lag.after] > *lag.good) {
                ++objective.violations;
            }
        }
        for (std::size_t i = 0; i < chosen.tasks.size(); ++i) {
            objective.earliest = std::min(objective.earliest, times.starts[i]);
            if (chosen.tasks[i].kind != TaskKind::hands) {
                continue;
            }
            const bool met = std::any_of(
                problem.rather_not.begin(), problem.rather_not.end(), [&](const RatherNot& span) {
                    return std::max(span.from, times.starts[i]) < std::min(span.to, times.ends[i]);
                });
            objective.violations += met ? 1 : 0;
        }
        objective.tied += tied_minutes(chosen, times);
    }
    return objective;
}

} // namespace loafwright::schedule
