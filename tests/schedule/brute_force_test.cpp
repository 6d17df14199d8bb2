// SPDX-License-Identifier: Apache-2.0
//
// Small random chains, solved twice: by the sweep, and by trying everything. Lengths are at most 6
// minutes and the horizon at most 12, so that everything can be tried.
#include "engine/schedule/check.hpp"
#include "tests/schedule/brute_force.hpp"
#include "tests/schedule/small_problems.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace loafwright::schedule {

namespace {

void compare(const Problem& problem, const Wish& wish) {
    RC_PRE(faults_in(problem).empty());
    const std::optional<Worth> best = best_by_trying_all(problem, wish);
    const Outcome outcome = solve(problem, wish);
    RC_ASSERT(!std::holds_alternative<OutOfReach>(outcome));
    RC_ASSERT(std::holds_alternative<Solved>(outcome) == best.has_value());
    RC_CLASSIFY(best.has_value(), "possible");
    if (best) {
        const Solved& solved = std::get<Solved>(outcome);
        RC_ASSERT(violations(problem, solved.schedule).empty());
        RC_ASSERT(worth_of(problem, solved.schedule, wish.aim) == *best);
        RC_ASSERT(objective_of(problem, solved.schedule) == solved.objective);
    }
}

} // namespace

RC_GTEST_PROP(schedule, the_latest_beginning_is_the_one_found_by_trying_everything, ()) {
    compare(small_problem(), Wish{});
}

RC_GTEST_PROP(schedule, every_other_aim_reaches_what_trying_everything_reaches, ()) {
    Wish wish;
    wish.aim = static_cast<Aim>(1 + up_to(2));
    if (sometimes()) {
        wish.first_start_from = up_to(4);
    }
    if (sometimes()) {
        wish.first_start_to = 2 + up_to(4);
    }
    compare(small_problem(), wish);
}

// Two temperatures with something short between them: the changeover spans the middle task.
RC_GTEST_PROP(schedule,
              a_changeover_across_other_tasks_is_kept_and_costs_no_more_than_it_must,
              ()) {
    Problem problem = small_problem(3);
    Job& job = problem.jobs.front();
    for (const std::size_t i : {std::size_t{0}, job.tasks.size() - 1}) {
        job.tasks[i].kind = TaskKind::oven;
        job.tasks[i].oven = OvenUse{1, i == 0 ? 200 : 230};
        job.tasks[i].minutes = {1, 1, 1};
    }
    for (std::size_t i = 1; i + 1 < job.tasks.size(); ++i) {
        job.tasks[i].kind = sometimes() ? TaskKind::hands : TaskKind::wait;
        job.tasks[i].oven.reset();
    }
    problem.oven.changeover = {{200, 230, 2 + up_to(4)}, {230, 200, 1}};
    Wish wish;
    wish.aim = static_cast<Aim>(up_to(3));
    compare(problem, wish);
}

RC_GTEST_PROP(schedule, a_finer_grid_changes_no_objective, ()) {
    Problem problem = small_problem();
    RC_PRE(faults_in(problem).empty());
    const Outcome outcome = solve_chain(problem);
    // Everything five times as long, and one number that forces the sweep back to single minutes.
    Problem longer = problem;
    longer.horizon *= 5;
    for (Person& person : longer.people) {
        for (Window& window : person.windows) {
            window.from *= 5;
            window.to *= 5;
        }
    }
    for (HeatUp& row : longer.oven.heat_up) {
        row.minutes *= 5;
    }
    for (Changeover& row : longer.oven.changeover) {
        row.minutes *= 5;
    }
    for (Claim& claim : longer.oven.claims) {
        claim.from *= 5;
        claim.to *= 5;
    }
    for (RatherNot& span : longer.rather_not) {
        span.from *= 5;
        span.to *= 5;
    }
    const auto five = [](std::optional<std::int64_t>& value) {
        if (value) {
            *value *= 5;
        }
    };
    Job& job = longer.jobs.front();
    five(job.not_before);
    five(job.ready_by);
    five(job.ready_from);
    for (Task& task : job.tasks) {
        task.minutes = {task.minutes.low * 5, task.minutes.likely * 5, task.minutes.high * 5};
        if (task.stretch) {
            task.stretch = Stretch{task.stretch->min * 5, task.stretch->max * 5};
        }
        five(task.start_from);
        five(task.start_to);
    }
    for (Lag& lag : job.lags) {
        lag.min *= 5;
        five(lag.max);
        five(lag.good);
    }
    for (Alternative& alternative : job.alternatives) {
        for (TaskChange& change : alternative.tasks) {
            change.stretch = Stretch{change.stretch->min * 5, change.stretch->max * 5};
        }
        for (LagChange& change : alternative.lags) {
            change.min *= 5;
            five(change.max);
        }
    }
    for (const bool single_minutes : {false, true}) {
        if (single_minutes) {
            longer.oven.heat_up.push_back({999, 1}); // used by nothing
        }
        const Outcome slow = solve_chain(longer);
        RC_ASSERT(slow.index() == outcome.index());
        if (std::holds_alternative<Solved>(outcome)) {
            const Objective& a = std::get<Solved>(outcome).objective;
            const Objective& b = std::get<Solved>(slow).objective;
            RC_ASSERT(a.violations == b.violations);
            RC_ASSERT(a.tied * 5 == b.tied);
            RC_ASSERT(a.earliest * 5 == b.earliest);
        }
    }
}

} // namespace loafwright::schedule
