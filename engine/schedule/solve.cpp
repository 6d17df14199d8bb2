// SPDX-License-Identifier: Apache-2.0
//
// Every alternative is swept and the best one kept; equal ones are decided by the lowest number.
// Work is counted in cells of the table before any is done, so that an absurd problem is turned
// away and never waited for.
#include "engine/schedule/solve.hpp"

#include "engine/schedule/cells.hpp"
#include "engine/schedule/chain.hpp"
#include "engine/schedule/check.hpp"
#include "engine/schedule/sweep.hpp"

#include <algorithm>
#include <cassert>

namespace loafwright::schedule {

namespace {

OutOfReach too_large(std::int64_t cells) {
    return OutOfReach{{{"value_out_of_range",
                        Severity::error,
                        "found " + std::to_string(cells) + " cells of work, expected at most " +
                            std::to_string(most_cells),
                        "",
                        "use fewer steps, fewer alternatives or a coarser grid"}}};
}

struct Candidate {
    std::size_t alternative = 0;
    std::int64_t start = 0;
    chain::Cost cost = chain::no_way;
};

bool better(Aim aim, const Candidate& a, const Candidate& b) {
    if (b.cost == chain::no_way) {
        return a.cost != chain::no_way;
    }
    if (aim == Aim::begin_soonest && a.start != b.start) {
        return a.start < b.start;
    }
    if (aim == Aim::begin_last && a.start != b.start) {
        return a.start > b.start;
    }
    if (a.cost != b.cost) {
        return a.cost < b.cost;
    }
    return a.start > b.start;
}

// The best first start of one alternative.
Candidate
best_start(Aim aim, const chain::Table& first, std::size_t alternative, std::int64_t weight) {
    Candidate best;
    for (std::int64_t t = first.from; t <= first.to(); ++t) {
        if (first.at(t) == chain::no_way) {
            continue;
        }
        const Candidate here{alternative, t, first.at(t) + weight * chain::one_violation};
        if (better(aim, here, best)) {
            best = here;
        }
    }
    return best;
}

Schedule schedule_of(const Problem& problem,
                     const chain::Order& order,
                     const chain::Line& line,
                     const chain::Calendar& calendar,
                     std::int64_t grid,
                     std::size_t alternative,
                     const chain::Sweep::Times& times) {
    const std::size_t count = order.tasks.size();
    JobSchedule job;
    job.alternative = alternative;
    job.starts.resize(count);
    job.ends.resize(count);
    job.people.resize(count);
    for (std::size_t k = 0; k < count; ++k) {
        const std::size_t task = order.tasks[k];
        job.starts[task] = times.starts[k] * grid;
        job.ends[task] = times.ends[k] * grid;
        if (line.links[k].hands) {
            const auto at = static_cast<std::size_t>(times.starts[k]);
            for (std::size_t p = 0; p < problem.people.size(); ++p) {
                if (calendar.free_until[p][at] >= times.ends[k]) {
                    job.people[task] = p;
                    break;
                }
            }
        }
    }
    return Schedule{{job}};
}

bool solves(const Problem& problem) {
    return std::holds_alternative<Solved>(solve_chain(problem));
}

} // namespace

Outcome solve_chain(const Problem& problem, const Wish& wish) {
    Diagnostics faults = faults_in(problem);
    if (!faults.empty()) {
        return OutOfReach{std::move(faults)};
    }
    const auto order = chain::order_of(problem);
    if (!order) {
        return OutOfReach{{order.error()}};
    }
    const std::int64_t grid = chain::grid_of(problem, wish.first_start_from, wish.first_start_to);
    const std::int64_t cells_a_day = problem.horizon / grid;
    if (cells_a_day > chain::most_cells_a_task) {
        return too_large(cells_a_day);
    }
    std::int64_t work = cells_a_day * static_cast<std::int64_t>(problem.people.size() + 1);
    const auto count = static_cast<std::int64_t>(order->tasks.size());
    const auto alternatives = problem.jobs.front().alternatives.size();
    if (work > most_cells || count * static_cast<std::int64_t>(alternatives) > most_cells) {
        return too_large(std::max(work, count * static_cast<std::int64_t>(alternatives)));
    }
    std::vector<chain::Line> lines;
    for (std::size_t a = 0; a < alternatives; ++a) {
        lines.push_back(
            chain::line_of(problem, *order, a, grid, wish.first_start_from, wish.first_start_to));
        if (!lines.back().dead) {
            work += chain::Sweep::work(lines.back());
        }
        if (work > most_cells) {
            return too_large(work);
        }
    }
    const chain::Calendar calendar = chain::calendar_of(problem, grid);
    Candidate best;
    std::optional<chain::Sweep> best_sweep;
    for (std::size_t a = 0; a < alternatives; ++a) {
        if (lines[a].dead) {
            continue;
        }
        chain::Sweep sweep(lines[a], calendar, wish.aim);
        sweep.run();
        const Candidate here = best_start(wish.aim, sweep.first(), a, lines[a].weight);
        if (here.cost != chain::no_way && better(wish.aim, here, best)) {
            best = here;
            best_sweep.emplace(std::move(sweep));
        }
    }
    if (!best_sweep) {
        return NoSchedule{};
    }
    Solved solved;
    solved.schedule = schedule_of(problem,
                                  *order,
                                  lines[best.alternative],
                                  calendar,
                                  grid,
                                  best.alternative,
                                  best_sweep->trace(best.start));
    if (cells::bakes_may_be_empty(problem) && !violations(problem, solved.schedule).empty()) {
        return OutOfReach{{{"usage",
                            Severity::error,
                            "found two oven steps at one moment, neither of which takes any time",
                            "",
                            "give each oven step a length"}}};
    }
    assert(violations(problem, solved.schedule).empty());
    solved.objective = objective_of(problem, solved.schedule);
    return solved;
}

Relief relief_of_chain(const Problem& problem) {
    Relief relief;
    if (std::holds_alternative<OutOfReach>(solve_chain(problem))) {
        return relief;
    }
    const auto without_state = [&problem](WindowState state) {
        Problem changed = problem;
        for (Person& person : changed.people) {
            person.windows.erase(
                std::remove_if(person.windows.begin(),
                               person.windows.end(),
                               [state](const Window& window) { return window.state == state; }),
                person.windows.end());
        }
        return changed;
    };
    const auto offer = [&relief](const char* name, const Problem& changed) {
        if (solves(changed)) {
            relief.enough.emplace_back(name);
        }
    };
    offer("asleep", without_state(WindowState::asleep));
    offer("away", without_state(WindowState::away));
    offer("busy", without_state(WindowState::busy));
    Problem changed = problem;
    changed.oven.claims.clear();
    offer("claims", changed);
    changed = problem;
    for (Lag& lag : changed.jobs.front().lags) {
        lag.max.reset();
    }
    for (Alternative& alternative : changed.jobs.front().alternatives) {
        for (LagChange& change : alternative.lags) {
            change.max.reset();
        }
    }
    offer("waits", changed);
    changed = problem;
    changed.jobs.front().not_before.reset();
    changed.jobs.front().ready_from.reset();
    changed.jobs.front().ready_by.reset();
    offer("anchors", changed);
    changed = problem;
    changed.people.push_back({"one more", {}});
    offer("person", changed);
    changed = problem;
    ++changed.oven.slots;
    offer("oven_slot", changed);
    changed = problem;
    ++changed.fridge.slots;
    offer("fridge_slot", changed);

    // Delay: without ready_from an earliest end says it at once, and it is a bound with one.
    const Job& job = problem.jobs.front();
    if (!job.ready_by) {
        return relief;
    }
    changed = problem;
    changed.jobs.front().ready_by.reset();
    changed.jobs.front().ready_from.reset();
    Wish soon;
    soon.aim = Aim::end_early;
    const Outcome free_end = solve_chain(changed, soon);
    if (!std::holds_alternative<Solved>(free_end)) {
        return relief;
    }
    const std::int64_t bound =
        std::get<Solved>(free_end).schedule.jobs.front().ends.back() - *job.ready_by;
    const std::int64_t grid = chain::grid_of(problem, std::nullopt, std::nullopt);
    for (std::int64_t delay = std::max(bound, grid); delay <= problem.horizon; delay += grid) {
        Job& moved = changed.jobs.front();
        moved.ready_by = *job.ready_by + delay;
        if (job.ready_from) {
            moved.ready_from = *job.ready_from + delay;
            if (*moved.ready_from > problem.horizon) {
                break;
            }
        }
        if (solves(changed)) {
            relief.delay = delay;
            break;
        }
    }
    return relief;
}

} // namespace loafwright::schedule
