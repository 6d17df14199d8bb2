// SPDX-License-Identifier: Apache-2.0
//
// Serial generation: the jobs in the order of their last moments, the latest first, so that they
// fill the time before the end like bricks. What is placed becomes windows of its people, claims on
// the oven (with the longest changeover before them) and shelves that are gone. Whoever came off
// worst goes first the next time (Joslin, Clements, "Squeaky wheel optimization", JAIR 10, 1999).
#include "engine/schedule/serial.hpp"

#include "engine/schedule/check.hpp"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace loafwright::schedule::sat {

namespace {

void take(Problem& left, const Job& job, const JobSchedule& placed) {
    std::int64_t longest = 0;
    for (const Changeover& row : left.oven.changeover) {
        longest = std::max(longest, row.minutes);
    }
    int shelves = 0;
    for (std::size_t i = 0; i < job.tasks.size(); ++i) {
        const std::int64_t start = placed.starts[i];
        const std::int64_t end = placed.ends[i];
        if (placed.people[i] && start < end) {
            left.people[*placed.people[i]].windows.push_back({start, end, WindowState::busy});
        }
        if (job.tasks[i].oven) {
            left.oven.claims.push_back({start - longest, end, job.tasks[i].oven->temperature});
        }
        int fridge = job.tasks[i].fridge;
        for (const TaskChange& change : job.alternatives[placed.alternative].tasks) {
            if (change.task == i && change.fridge) {
                fridge = *change.fridge;
            }
        }
        shelves = std::max(shelves, fridge);
    }
    left.fridge.slots = std::max(0, left.fridge.slots - shelves);
}

bool placed(const JobSchedule& job) {
    return !job.starts.empty();
}

std::int64_t first_start(const JobSchedule& job) {
    return *std::min_element(job.starts.begin(), job.starts.end());
}

Schedule in_order(const Problem& problem, const Wish& wish, const std::vector<std::size_t>& order) {
    Schedule schedule;
    schedule.jobs.resize(problem.jobs.size());
    Problem left = problem;
    for (const std::size_t j : order) {
        left.jobs = {problem.jobs[j]};
        const Outcome outcome = solve_chain(left, wish);
        if (const auto* solved = std::get_if<Solved>(&outcome)) {
            schedule.jobs[j] = solved->schedule.jobs.front();
            take(left, problem.jobs[j], schedule.jobs[j]);
        }
    }
    return schedule;
}

bool is_whole(const Problem& problem, const Wish& wish, const Schedule& schedule) {
    if (!std::all_of(schedule.jobs.begin(), schedule.jobs.end(), placed)) {
        return false;
    }
    std::int64_t first = problem.horizon;
    for (const JobSchedule& job : schedule.jobs) {
        first = std::min(first, first_start(job));
    }
    return first >= wish.first_start_from.value_or(first) &&
           first <= wish.first_start_to.value_or(first) && violations(problem, schedule).empty();
}

// The one without a place, or else the one that ends last or begins first.
std::size_t worst_off(const Schedule& schedule, bool late) {
    std::size_t worst = 0;
    for (std::size_t j = 0; j < schedule.jobs.size(); ++j) {
        const JobSchedule& job = schedule.jobs[j];
        const JobSchedule& other = schedule.jobs[worst];
        if (!placed(job)) {
            return j;
        }
        if (late ? first_start(job) < first_start(other) : job.ends.back() > other.ends.back()) {
            worst = j;
        }
    }
    return worst;
}

bool is_better(const Problem& problem, const Schedule& a, const Schedule& b, bool late) {
    const Objective here = objective_of(problem, a);
    const Objective there = objective_of(problem, b);
    const auto end = [](const Schedule& schedule) {
        std::int64_t last = 0;
        for (const JobSchedule& job : schedule.jobs) {
            last = std::max(last, job.ends.back());
        }
        return last;
    };
    if (!late && end(a) != end(b)) {
        return end(a) < end(b);
    }
    return std::tuple(here.violations, here.tied, -here.earliest) <
           std::tuple(there.violations, there.tied, -there.earliest);
}

} // namespace

Serial serial_schedule(const Problem& problem, const Wish& wish) {
    // A sweep of two days by the minute costs a millisecond or two, as much as a small search.
    const int most_orders = problem.jobs.size() > 4 ? 6 : 1;
    const bool late = wish.aim == Aim::begin_late;
    Wish alone;
    alone.aim = late ? Aim::begin_late : Aim::end_early;
    alone.first_start_from = wish.first_start_from;
    std::vector<std::size_t> order(problem.jobs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto end = [&](std::size_t j) {
        return problem.jobs[j].ready_by.value_or(problem.horizon);
    };
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return late ? end(a) > end(b) : end(a) < end(b);
    });
    Serial best;
    for (int n = 0; n < most_orders; ++n) {
        Schedule schedule = in_order(problem, alone, order);
        const std::size_t worst = worst_off(schedule, late);
        const bool whole = is_whole(problem, wish, schedule);
        if (n == 0 ||
            (whole && (!best.whole || is_better(problem, schedule, best.schedule, late)))) {
            best = {std::move(schedule), whole};
        }
        if (order.front() == worst) {
            break;
        }
        const auto at = std::find(order.begin(), order.end(), worst);
        std::rotate(order.begin(), at, at + 1);
    }
    return best;
}

std::optional<LeastCost> least_cost(const Problem& problem) {
    LeastCost least;
    Problem alone = problem;
    for (const Job& job : problem.jobs) {
        alone.jobs = {job};
        const Outcome outcome = solve_chain(alone);
        if (std::holds_alternative<OutOfReach>(outcome)) {
            return std::nullopt;
        }
        if (std::holds_alternative<NoSchedule>(outcome)) {
            least.impossible = true;
            return least;
        }
        const Objective& objective = std::get<Solved>(outcome).objective;
        least.violations += objective.violations;
        least.tied += objective.tied;
    }
    return least;
}

} // namespace loafwright::schedule::sat
