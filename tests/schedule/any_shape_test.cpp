// SPDX-License-Identifier: Apache-2.0
//
// Small random days of any shape, solved twice: by the search, and by trying everything. Chains are
// solved three times, since the sweep knows them, too.
#include "engine/schedule/check.hpp"
#include "engine/schedule/search.hpp"
#include "engine/schedule/why.hpp"
#include "tests/schedule/brute_force.hpp"
#include "tests/schedule/small_problems.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

namespace loafwright::schedule {

namespace {

constexpr std::int64_t plenty = 1000000;

void compare(const Problem& problem, const Wish& wish, const Outcome& outcome) {
    const std::optional<Worth> best = best_of_any_shape(problem, wish);
    RC_ASSERT(!std::holds_alternative<OutOfReach>(outcome));
    RC_CLASSIFY(best.has_value(), "possible");
    RC_ASSERT(std::holds_alternative<Solved>(outcome) == best.has_value());
    if (best) {
        const Solved& solved = std::get<Solved>(outcome);
        RC_ASSERT(solved.proof == Proof::best);
        RC_ASSERT(violations(problem, solved.schedule).empty());
        RC_ASSERT(worth_of(problem, solved.schedule, wish.aim) == *best);
        RC_ASSERT(objective_of(problem, solved.schedule) == solved.objective);
    }
}

Wish small_wish() {
    Wish wish;
    wish.aim = static_cast<Aim>(up_to(3));
    if (sometimes()) {
        wish.first_start_from = up_to(4);
    }
    if (sometimes()) {
        wish.first_start_to = 1 + up_to(4);
    }
    return wish;
}

// The problem with one rule left out; of all jobs where the reason names none.
Problem without(Problem problem, const Reason& reason) {
    for (std::size_t j = 0; j < problem.jobs.size(); ++j) {
        if (reason.job && *reason.job != j) {
            continue;
        }
        Job& job = problem.jobs[j];
        if (reason.rule == "not_before") {
            job.not_before.reset();
        } else if (reason.rule == "ready_from") {
            job.ready_from.reset();
        } else if (reason.rule == "ready_by") {
            job.ready_by.reset();
        } else if (reason.rule == "lag_max") {
            for (Lag& lag : job.lags) {
                lag.max.reset();
            }
            for (Alternative& alternative : job.alternatives) {
                for (LagChange& change : alternative.lags) {
                    change.max.reset();
                }
            }
        } else if (reason.rule == "oven_temperature") {
            for (Task& task : job.tasks) {
                task.oven = task.oven ? std::optional(OvenUse{task.oven->slots, 200}) : task.oven;
            }
        }
    }
    if (reason.rule == "fridge_space") {
        problem.fridge.slots = 100;
    } else if (reason.rule == "oven_space") {
        problem.oven.slots = 100;
    } else if (reason.rule == "preheat") {
        problem.oven.heat_up = {{200, 0}, {230, 0}};
    } else if (reason.rule == "oven_claim") {
        problem.oven.claims.clear();
    } else if (reason.rule == "window" || reason.rule == "unattended") {
        for (Person& person : problem.people) {
            person.windows.clear();
        }
    } else if (reason.rule == "hands") {
        problem.people.resize(4);
    }
    return problem;
}

bool names(const Why& why, const Reason& reason) {
    return std::find(why.reasons.begin(), why.reasons.end(), reason) != why.reasons.end();
}

bool names(const Why& why, const char* rule) {
    return std::any_of(why.reasons.begin(), why.reasons.end(), [rule](const Reason& reason) {
        return reason.rule == rule;
    });
}

// Everything that is not among the reasons left out, as far as a problem can be written without it.
Problem bare(Problem problem, const Why& why) {
    for (const char* rule : {"not_before", "ready_from", "ready_by", "lag_max"}) {
        for (std::size_t j = 0; j < problem.jobs.size(); ++j) {
            if (!names(why, Reason{rule, j})) {
                problem = without(std::move(problem), Reason{rule, j});
            }
        }
    }
    for (const char* rule :
         {"fridge_space", "oven_space", "oven_temperature", "oven_claim", "preheat"}) {
        // A rule that stands on another's numbers stays with it.
        const bool used =
            names(why, rule) ||
            (rule == std::string("preheat") &&
             (names(why, "unattended") || names(why, "oven_claim"))) ||
            (rule == std::string("oven_temperature") &&
             (names(why, "preheat") || names(why, "unattended") || names(why, "oven_claim")));
        if (!used) {
            problem = without(std::move(problem), Reason{rule, std::nullopt});
        }
    }
    if (!names(why, "window") && !names(why, "unattended")) {
        problem = without(std::move(problem), Reason{"window", std::nullopt});
        if (!names(why, "hands")) {
            problem = without(std::move(problem), Reason{"hands", std::nullopt});
        }
    }
    return problem;
}

// Two jobs that only their names tell apart.
Problem twins() {
    Problem problem = small_day(2);
    problem.jobs.resize(1);
    problem.jobs.push_back(problem.jobs.front());
    problem.jobs.back().name = std::string(1, static_cast<char>('a' + up_to(2)));
    return problem;
}

} // namespace

RC_GTEST_PROP(schedule, the_search_finds_the_best_that_trying_everything_finds, ()) {
    const Problem problem = small_day(3);
    RC_PRE(faults_in(problem).empty());
    compare(problem, Wish{}, solve(problem));
}

RC_GTEST_PROP(schedule, the_search_reaches_every_aim_that_trying_everything_reaches, ()) {
    const Problem problem = small_day(3);
    RC_PRE(faults_in(problem).empty());
    const Wish wish = small_wish();
    compare(problem, wish, solve(problem, wish));
}

RC_GTEST_PROP(schedule, the_search_finds_the_best_for_jobs_that_are_the_same, ()) {
    const Problem problem = twins();
    RC_PRE(faults_in(problem).empty());
    const Wish wish = small_wish();
    compare(problem, wish, solve(problem, wish));
}

// A `high` that nothing looks at makes two jobs different for the search and the same for the
// rules.
RC_GTEST_PROP(schedule, jobs_that_are_the_same_get_the_times_of_jobs_that_seem_different, ()) {
    const Problem problem = twins();
    RC_PRE(faults_in(problem).empty());
    const Wish wish = small_wish();
    Problem seeming = problem;
    ++seeming.jobs.back().tasks.front().minutes.high;
    const Outcome same = sat::Search(problem, wish, plenty).run();
    const Outcome different = sat::Search(seeming, wish, plenty).run();
    RC_ASSERT(same.index() == different.index());
    if (const auto* solved = std::get_if<Solved>(&same)) {
        const Schedule& other = std::get<Solved>(different).schedule;
        for (std::size_t j = 0; j < 2; ++j) {
            RC_ASSERT(solved->schedule.jobs[j].alternative == other.jobs[j].alternative);
            RC_ASSERT(solved->schedule.jobs[j].starts == other.jobs[j].starts);
            RC_ASSERT(solved->schedule.jobs[j].ends == other.jobs[j].ends);
            RC_ASSERT(solved->schedule.jobs[j].people == other.jobs[j].people);
        }
    }
}

RC_GTEST_PROP(schedule, the_search_and_the_sweep_agree_on_chains, ()) {
    const Problem problem = small_problem();
    RC_PRE(faults_in(problem).empty());
    const Wish wish = small_wish();
    const Outcome sweep = solve_chain(problem, wish);
    RC_PRE(!std::holds_alternative<OutOfReach>(sweep));
    const Outcome search = sat::Search(problem, wish, plenty).run();
    RC_ASSERT(sweep.index() == search.index());
    if (const auto* solved = std::get_if<Solved>(&search)) {
        const Solved& swept = std::get<Solved>(sweep);
        RC_ASSERT(violations(problem, solved->schedule).empty());
        RC_ASSERT(worth_of(problem, solved->schedule, wish.aim) ==
                  worth_of(problem, swept.schedule, wish.aim));
        RC_ASSERT(solved->schedule.jobs[0].alternative == swept.schedule.jobs[0].alternative);
        RC_ASSERT(solved->schedule.jobs[0].starts == swept.schedule.jobs[0].starts);
    }
}

RC_GTEST_PROP(schedule, reasons_hold_together_and_none_of_them_is_idle, ()) {
    Problem problem = small_day(3);
    RC_PRE(faults_in(problem).empty());
    RC_PRE(std::holds_alternative<NoSchedule>(solve(problem)));
    const Why why = why_not(problem);
    RC_ASSERT(why.proof == Proof::best);
    const Problem rest = bare(problem, why);
    RC_ASSERT(!best_of_any_shape(rest, Wish{}).has_value());
    // Rules that a problem can be written without, one by one.
    bool whole = true;
    for (const char* rule : {"window", "unattended", "preheat", "oven_claim", "oven_temperature"}) {
        whole = whole && !names(why, rule);
    }
    RC_CLASSIFY(whole, "each reason left out");
    for (std::size_t k = 0; whole && k < why.reasons.size(); ++k) {
        RC_ASSERT(best_of_any_shape(without(rest, why.reasons[k]), Wish{}).has_value());
    }
    if (why.delay) {
        for (Job& job : problem.jobs) {
            for (std::optional<std::int64_t>* anchor : {&job.ready_from, &job.ready_by}) {
                if (*anchor) {
                    **anchor += *why.delay;
                }
            }
        }
        RC_ASSERT(best_of_any_shape(problem, Wish{}).has_value());
    }
}

RC_GTEST_PROP(schedule, every_way_out_is_one_and_none_is_forgotten, ()) {
    const Problem problem = small_day(3);
    RC_PRE(faults_in(problem).empty());
    RC_PRE(!best_of_any_shape(problem, Wish{}).has_value());
    const Why why = why_not(problem);
    const auto said = [&](const std::string& name) {
        return std::find(why.enough.begin(), why.enough.end(), name) != why.enough.end();
    };
    Problem changed = problem;
    changed.people.push_back({"one more", {}});
    RC_ASSERT(said("person") == best_of_any_shape(changed, Wish{}).has_value());
    changed = problem;
    for (Job& job : changed.jobs) {
        job.not_before.reset();
        job.ready_from.reset();
        job.ready_by.reset();
    }
    RC_ASSERT(said("anchors") == best_of_any_shape(changed, Wish{}).has_value());
    changed = problem;
    ++changed.oven.slots;
    RC_ASSERT(said("oven_slot") == best_of_any_shape(changed, Wish{}).has_value());
    changed = problem;
    ++changed.fridge.slots;
    RC_ASSERT(said("fridge_slot") == best_of_any_shape(changed, Wish{}).has_value());
}

} // namespace loafwright::schedule
