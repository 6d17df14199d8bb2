// SPDX-License-Identifier: Apache-2.0
//
// From a problem to cells with bounds. Under each alternative of each job the lags, lengths and
// anchors form a network of differences (Dechter, Meiri, Pearl, "Temporal constraint networks",
// Artificial Intelligence 49, 1991); its shortest paths bound every start and end. Each bound is
// moved on to the next moment that the calendars allow, until nothing moves. What is left are the
// values of the order encoding; alternatives with an empty range are dropped. Bounds shut out
// nothing that is possible, and they are not the proof that something is.
#include "engine/schedule/cells.hpp"

#include <algorithm>

namespace loafwright::schedule::cells {

namespace {

constexpr int most_rounds = 200; // bounds may creep; stopping early leaves them weaker, not wrong

std::int64_t floor_of(std::int64_t value, std::int64_t by) {
    return value >= 0 ? value / by : -((-value + by - 1) / by);
}

std::int64_t ceil_of(std::int64_t value, std::int64_t by) {
    return -floor_of(-value, by);
}

std::vector<Span> runs_of(const std::vector<std::int32_t>& until, std::int64_t horizon) {
    std::vector<Span> runs;
    for (std::int64_t t = 0; t < horizon; ++t) {
        if (until[static_cast<std::size_t>(t)] != t) {
            continue;
        }
        if (!runs.empty() && runs.back().to == t) {
            ++runs.back().to;
        } else {
            runs.push_back({t, t + 1});
        }
    }
    return runs;
}

Way way_of(const Problem& problem,
           const Job& job,
           std::size_t alternative,
           std::int64_t grid,
           const Looking& looking) {
    std::vector<Task> tasks = job.tasks;
    std::vector<Lag> lags = job.lags;
    const Alternative& chosen = job.alternatives[alternative];
    for (const TaskChange& change : chosen.tasks) {
        Task& task = tasks[change.task];
        task.minutes = change.minutes.value_or(task.minutes);
        task.stretch = change.changes_stretch ? change.stretch : task.stretch;
        task.fridge = change.fridge.value_or(task.fridge);
        task.leave = change.leave.value_or(task.leave);
    }
    for (const LagChange& change : chosen.lags) {
        lags[change.lag].min = change.min;
        lags[change.lag].max = change.max;
        lags[change.lag].good = change.good;
    }
    Way way;
    way.alternative = alternative;
    way.weight = chosen.weight;
    for (const Task& task : tasks) {
        WayTask cell;
        cell.least = ceil_of(task.stretch ? task.stretch->min : task.minutes.likely, grid);
        cell.most = floor_of(task.stretch ? task.stretch->max : task.minutes.likely, grid);
        cell.fridge = task.fridge;
        cell.tied = !task.leave;
        // A task of no length uses nothing: no minute finds it.
        if (looking.calendars && (task.fridge > problem.fridge.slots ||
                                  (task.oven && task.oven->slots > problem.oven.slots))) {
            cell.most = 0;
        }
        way.tasks.push_back(cell);
    }
    for (const Lag& lag : lags) {
        WayLag cell{lag.after, lag.before, ceil_of(lag.min, grid), {}, {}};
        if (lag.max) {
            cell.max = floor_of(*lag.max, grid);
        }
        if (lag.good) {
            cell.good = floor_of(*lag.good, grid);
        }
        way.lags.push_back(cell);
    }
    return way;
}

bool may_start(const DayCells& day, const TaskUse& use, std::int64_t start, std::int64_t least) {
    const auto at = static_cast<std::size_t>(start);
    if (use.hands && day.calendar.somebody_free_until[at] < start + least) {
        return false;
    }
    if (!use.oven) {
        return true;
    }
    if (start < use.heat ||
        day.calendar.watched_until[static_cast<std::size_t>(start - use.heat)] < start + least) {
        return false;
    }
    return std::none_of(use.claims.begin(), use.claims.end(), [&](const Span& claim) {
        return start + least > claim.from && start < claim.to;
    });
}

class Bounds {
public:
    Bounds(const DayCells& day, const JobCells& job, Way& way, const Looking& looking)
        : day_(day), job_(job), way_(way), looking_(looking) {}

    // False when nothing is left.
    bool run() {
        if (!begin()) {
            return false;
        }
        moved_ = true;
        for (int round = 0; moved_ && round < most_rounds; ++round) {
            moved_ = false;
            for (std::size_t i = 0; i < way_.tasks.size(); ++i) {
                look_at_task(i);
            }
            for (const WayLag& lag : way_.lags) {
                look_at_lag(lag);
            }
            if (empty_) {
                return false;
            }
        }
        return true;
    }

    [[nodiscard]] bool allowed(std::size_t i, std::int64_t start) const {
        return !looking_.calendars || may_start(day_, job_.uses[i], start, way_.tasks[i].least);
    }

private:
    bool begin() {
        for (std::size_t i = 0; i < way_.tasks.size(); ++i) {
            WayTask& task = way_.tasks[i];
            const TaskUse& use = job_.uses[i];
            task.start_from =
                std::max(use.start_from, use.oven && looking_.calendars ? use.heat : 0);
            if (looking_.not_before && job_.not_before) {
                task.start_from = std::max(task.start_from, *job_.not_before);
            }
            task.start_to = use.start_to;
            task.end_from = 0;
            task.end_to = day_.horizon;
            if (task.least > task.most || task.start_from > task.start_to) {
                return false;
            }
        }
        WayTask& last = way_.tasks.back();
        if (looking_.ready) {
            last.end_to = std::min(last.end_to, job_.ready_by.value_or(day_.horizon));
            last.end_from = std::max(last.end_from, job_.ready_from.value_or(0));
        }
        return std::all_of(way_.lags.begin(), way_.lags.end(), [&](const WayLag& lag) {
            return !looking_.waits || !lag.max || lag.min <= *lag.max;
        });
    }

    void raise(std::int64_t& bound, std::int64_t value) {
        if (value > bound) {
            bound = value;
            moved_ = true;
        }
    }
    void lower(std::int64_t& bound, std::int64_t value) {
        if (value < bound) {
            bound = value;
            moved_ = true;
        }
    }

    void look_at_task(std::size_t i) {
        WayTask& task = way_.tasks[i];
        while (task.start_from <= task.start_to && !allowed(i, task.start_from)) {
            ++task.start_from;
            moved_ = true;
        }
        while (task.start_from <= task.start_to && !allowed(i, task.start_to)) {
            --task.start_to;
            moved_ = true;
        }
        raise(task.end_from, task.start_from + task.least);
        lower(task.end_to, task.start_to + task.most);
        raise(task.start_from, task.end_from - task.most);
        lower(task.start_to, task.end_to - task.least);
        empty_ = empty_ || task.start_from > task.start_to || task.end_from > task.end_to;
    }

    void look_at_lag(const WayLag& lag) {
        WayTask& a = way_.tasks[lag.after];
        WayTask& b = way_.tasks[lag.before];
        raise(b.start_from, a.end_from + lag.min);
        lower(a.end_to, b.start_to - lag.min);
        if (lag.max && looking_.waits) {
            lower(b.start_to, a.end_to + *lag.max);
            raise(a.end_from, b.start_from - *lag.max);
        }
        empty_ = empty_ || b.start_from > b.start_to || a.end_from > a.end_to;
    }

    const DayCells& day_;
    const JobCells& job_;
    Way& way_;
    const Looking& looking_;
    bool moved_ = false;
    bool empty_ = false;
};

TaskUse use_of(const Problem& problem, const DayCells& day, const Task& task) {
    TaskUse use;
    use.hands = task.kind == TaskKind::hands;
    use.start_from = std::max<std::int64_t>(0, ceil_of(task.start_from.value_or(0), day.grid));
    use.start_to =
        task.start_to ? std::min(day.horizon, floor_of(*task.start_to, day.grid)) : day.horizon;
    if (!task.oven) {
        return use;
    }
    use.oven = true;
    use.slots = task.oven->slots;
    use.temperature = task.oven->temperature;
    for (const HeatUp& row : problem.oven.heat_up) {
        if (row.temperature == use.temperature) {
            use.heat = ceil_of(row.minutes, day.grid);
        }
    }
    for (const Claim& claim : problem.oven.claims) {
        const std::int64_t settle =
            !claim.temperature ? use.heat : day.changeover(*claim.temperature, use.temperature);
        use.claims.push_back(
            {floor_of(claim.from, day.grid), ceil_of(claim.to, day.grid) + settle});
    }
    return use;
}

// Drops the ways that bounds shut out and lists the starts that the others leave.
void bound_job(const DayCells& day, JobCells& job, const Looking& looking) {
    std::vector<std::vector<bool>> left(
        job.uses.size(), std::vector<bool>(static_cast<std::size_t>(day.horizon) + 1, false));
    std::vector<Way> ways = std::move(job.ways);
    job.ways.clear();
    for (Way& way : ways) {
        Bounds bounds(day, job, way, looking);
        if (!bounds.run()) {
            continue;
        }
        for (std::size_t i = 0; i < way.tasks.size(); ++i) {
            for (std::int64_t t = way.tasks[i].start_from; t <= way.tasks[i].start_to; ++t) {
                if (bounds.allowed(i, t)) {
                    left[i][static_cast<std::size_t>(t)] = true;
                }
            }
        }
        job.ways.push_back(std::move(way));
    }
    for (std::size_t i = 0; i < job.uses.size(); ++i) {
        job.uses[i].starts.clear();
        for (std::int64_t t = 0; t <= day.horizon; ++t) {
            if (left[i][static_cast<std::size_t>(t)]) {
                job.uses[i].starts.push_back(t);
            }
        }
    }
}

JobCells
job_in_cells(const Problem& problem, const DayCells& day, const Job& job, const Looking& looking) {
    JobCells made;
    const auto up = [&](const std::optional<std::int64_t>& value) {
        return value ? std::optional(ceil_of(*value, day.grid)) : std::nullopt;
    };
    made.not_before = up(job.not_before);
    made.ready_from = up(job.ready_from);
    if (job.ready_by) {
        made.ready_by = floor_of(*job.ready_by, day.grid);
    }
    for (const Task& task : job.tasks) {
        made.uses.push_back(use_of(problem, day, task));
    }
    for (std::size_t a = 0; a < job.alternatives.size(); ++a) {
        made.ways.push_back(way_of(problem, job, a, day.grid, looking));
    }
    bound_job(day, made, looking);
    return made;
}

} // namespace

std::int64_t DayCells::changeover(int from, int to) const {
    std::int64_t cells = 0;
    for (const Changeover& row : changeovers) {
        if (from != to && row.from == from && row.to == to) {
            cells = row.minutes;
        }
    }
    return cells;
}

std::int64_t work_of(const Problem& problem, std::int64_t grid) {
    const std::int64_t cells = problem.horizon / grid + 1;
    std::int64_t work = static_cast<std::int64_t>(problem.people.size() + 1) * cells;
    const auto claims = static_cast<std::int64_t>(problem.oven.claims.size());
    for (const Job& job : problem.jobs) {
        const auto tasks = static_cast<std::int64_t>(job.tasks.size());
        const auto lags = static_cast<std::int64_t>(job.lags.size());
        const auto ways = static_cast<std::int64_t>(job.alternatives.size());
        work += tasks * (cells + claims) + (tasks + lags) * ways + tasks * ways * cells;
    }
    return work;
}

bool bakes_may_be_empty(const Problem& problem) {
    std::optional<int> temperature;
    bool several = false;
    bool no_length = false;
    for (const Job& job : problem.jobs) {
        for (std::size_t i = 0; i < job.tasks.size(); ++i) {
            const Task& task = job.tasks[i];
            if (!task.oven) {
                continue;
            }
            several = several || (temperature && *temperature != task.oven->temperature);
            temperature = task.oven->temperature;
            no_length = no_length || (task.stretch ? task.stretch->min : task.minutes.likely) == 0;
            for (const Alternative& alternative : job.alternatives) {
                for (const TaskChange& change : alternative.tasks) {
                    no_length = no_length || (change.task == i &&
                                              ((change.stretch && change.stretch->min == 0) ||
                                               (change.minutes && change.minutes->likely == 0)));
                }
            }
        }
    }
    return several && no_length;
}

std::int64_t grid_of_day(const Problem& problem,
                         const std::optional<std::int64_t>& from,
                         const std::optional<std::int64_t>& to) {
    return bakes_may_be_empty(problem) ? 1 : chain::grid_of(problem, from, to);
}

DayCells day_in_cells(const Problem& problem, std::int64_t grid, const Looking& looking) {
    DayCells day;
    day.grid = grid;
    day.horizon = problem.horizon / grid;
    day.oven_slots = problem.oven.slots;
    day.fridge_slots = problem.fridge.slots;
    day.calendar = chain::calendar_of(problem, grid);
    for (const auto& person : day.calendar.free_until) {
        day.blocked.push_back(runs_of(person, day.horizon));
    }
    day.unwatched = runs_of(day.calendar.watched_until, day.horizon);
    day.unwelcome = runs_of(day.calendar.welcome_until, day.horizon);
    for (const Changeover& row : problem.oven.changeover) {
        day.changeovers.push_back({row.from, row.to, ceil_of(row.minutes, grid)});
    }
    for (const Job& job : problem.jobs) {
        day.jobs.push_back(job_in_cells(problem, day, job, looking));
        day.impossible = day.impossible || day.jobs.back().ways.empty();
    }
    return day;
}

void look_again(DayCells& day) {
    for (JobCells& job : day.jobs) {
        bound_job(day, job, {});
        day.impossible = day.impossible || job.ways.empty();
    }
}

std::int64_t starts_left(const DayCells& day) {
    std::int64_t count = 0;
    for (const JobCells& job : day.jobs) {
        for (const TaskUse& use : job.uses) {
            count += static_cast<std::int64_t>(use.starts.size());
        }
    }
    return count;
}

} // namespace loafwright::schedule::cells
