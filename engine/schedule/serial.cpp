// SPDX-License-Identifier: Apache-2.0
//
// Serial generation: the jobs in the order of their last moments, the latest first, so that they
// fill the time before the end like bricks. What is placed becomes windows of its people, claims on
// the oven (with the longest changeover before them) and shelves that are gone.
#include "engine/schedule/serial.hpp"

#include "engine/schedule/solve.hpp"

#include <algorithm>
#include <numeric>

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

} // namespace

Schedule serial_schedule(const Problem& problem) {
    Schedule schedule;
    schedule.jobs.resize(problem.jobs.size());
    std::vector<std::size_t> order(problem.jobs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto end = [&](std::size_t j) {
        return problem.jobs[j].ready_by.value_or(problem.horizon);
    };
    std::stable_sort(
        order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return end(a) > end(b); });
    Problem left = problem;
    for (const std::size_t j : order) {
        left.jobs = {problem.jobs[j]};
        const Outcome outcome = solve_chain(left);
        if (const auto* solved = std::get_if<Solved>(&outcome)) {
            schedule.jobs[j] = solved->schedule.jobs.front();
            take(left, problem.jobs[j], schedule.jobs[j]);
        }
    }
    return schedule;
}

} // namespace loafwright::schedule::sat
