// SPDX-License-Identifier: Apache-2.0
//
// Reasons: first the jobs that cannot be done together though they could with any of them left out.
// For these alone every rule gets a guard, bounds come from lengths and least lags alone, and a
// core of guards that cannot hold together is made smaller by leaving one out at a time (deletion;
// Marques-Silva, "Minimal unsatisfiability", ISMVL 2010), keeping the smaller core that each no
// brings. Delay: the anchors move one grid step later each time; a shift is not monotone
// (ready_from moves, too), so after the first that each job could keep alone none is skipped. Ways
// out: each is a problem of its own. Most questions are answered by a job that has no place even
// alone, or by a serial schedule; only the rest needs clauses.
#include "engine/schedule/why.hpp"

#include "engine/schedule/encode.hpp"
#include "engine/schedule/search.hpp"
#include "engine/schedule/serial.hpp"

#include <algorithm>
#include <numeric>

namespace loafwright::schedule {

namespace {

using sat::Answer;
using sat::Clauses;
using sat::Encoding;
using sat::GuardedRule;
using sat::Literal;

Answer possible(const Problem& problem, std::int64_t conflicts) {
    const std::int64_t grid = cells::grid_of_day(problem, {}, {});
    if (cells::work_of(problem, grid) > cells::most_work) {
        return Answer::stopped;
    }
    if (problem.jobs.empty()) {
        return Answer::yes;
    }
    const cells::DayCells day = cells::day_in_cells(problem, grid, {});
    const auto least = day.impossible ? std::nullopt : sat::least_cost(problem);
    if (day.impossible || (least && least->impossible)) {
        return Answer::no;
    }
    if (sat::serial_schedule(problem, {}).whole) {
        return Answer::yes;
    }
    Clauses clauses(conflicts);
    const Encoding encoding(clauses, day, sat::Guards::none);
    return clauses.solve();
}

using Jobs = std::vector<std::size_t>; // ascending

Problem only(const Problem& problem, const Jobs& jobs) {
    Problem some = problem;
    some.jobs.clear();
    for (const std::size_t j : jobs) {
        some.jobs.push_back(problem.jobs[j]);
    }
    return some;
}

// The same for a problem whose jobs `clashing` were impossible together before a change: most
// changes do not help them.
Answer possible(const Problem& problem, const Jobs& clashing, std::int64_t conflicts) {
    if (clashing.size() < problem.jobs.size() &&
        possible(only(problem, clashing), conflicts) == Answer::no) {
        return Answer::no;
    }
    return possible(problem, conflicts);
}

// Jobs that cannot be done together, none of which can be spared.
Jobs clashing_jobs(const Problem& problem, std::int64_t conflicts) {
    for (std::size_t j = 0; j < problem.jobs.size(); ++j) {
        if (std::holds_alternative<NoSchedule>(solve_chain(only(problem, {j})))) {
            return {j};
        }
    }
    Jobs clashing(problem.jobs.size());
    std::iota(clashing.begin(), clashing.end(), std::size_t{0});
    for (std::size_t k = 0; k < clashing.size() && clashing.size() > 1;) {
        Jobs rest = clashing;
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(k));
        if (possible(only(problem, rest), conflicts) == Answer::no) {
            clashing = std::move(rest);
        } else {
            ++k;
        }
    }
    return clashing;
}

// Those of `core` that the last no needed.
std::vector<GuardedRule> needed(const Clauses& clauses, const std::vector<GuardedRule>& core) {
    std::vector<GuardedRule> kept;
    for (const GuardedRule& rule : core) {
        if (clauses.failed(rule.guard)) {
            kept.push_back(rule);
        }
    }
    return kept;
}

std::vector<Literal> guards_of(const std::vector<GuardedRule>& rules) {
    std::vector<Literal> guards;
    guards.reserve(rules.size());
    for (const GuardedRule& rule : rules) {
        guards.push_back(rule.guard);
    }
    return guards;
}

cells::DayCells without_rules(const Problem& problem) {
    const std::int64_t grid = cells::grid_of_day(problem, {}, {});
    return cells::day_in_cells(problem, grid, cells::Looking{false, false, false, false});
}

// Reasons that hold together for some of the jobs.
void find_reasons_among(const Problem& whole,
                        const Jobs& clashing,
                        std::int64_t conflicts,
                        Why& why) {
    const Problem problem = only(whole, clashing);
    const cells::DayCells day = without_rules(problem);
    Clauses clauses(conflicts);
    const Encoding encoding(clauses, day, sat::Guards::one_a_rule);
    std::vector<GuardedRule> core = encoding.guarded();
    Answer answer = clauses.solve(guards_of(core));
    if (answer != Answer::no) {
        why.proof = Proof::best_found;
        return;
    }
    core = needed(clauses, core);
    for (std::size_t k = 0; k < core.size();) {
        std::vector<GuardedRule> without = core;
        without.erase(without.begin() + static_cast<std::ptrdiff_t>(k));
        answer = clauses.solve(guards_of(without));
        if (answer == Answer::stopped) {
            why.proof = Proof::best_found;
            return;
        }
        if (answer == Answer::yes) {
            ++k; // it is needed
        } else {
            core = needed(clauses, without); // those found to be needed stay: they were before k
        }
    }
    for (const GuardedRule& rule : core) {
        why.reasons.push_back(
            {rule.rule, rule.job ? std::optional(clashing[*rule.job]) : std::nullopt});
    }
}

// A rule that all jobs share may be broken by one that does not clash; then none of the others is
// needed, and only the whole problem tells.
void find_reasons(const Problem& problem, const Jobs& clashing, std::int64_t conflicts, Why& why) {
    if (without_rules(problem).impossible) {
        return; // a job that does not clash may be impossible by itself, too
    }
    find_reasons_among(problem, clashing, conflicts, why);
    const bool shared = std::any_of(why.reasons.begin(),
                                    why.reasons.end(),
                                    [](const Reason& reason) { return !reason.job.has_value(); });
    if (shared && clashing.size() < problem.jobs.size()) {
        Jobs all(problem.jobs.size());
        std::iota(all.begin(), all.end(), std::size_t{0});
        why.reasons.clear();
        find_reasons_among(problem, all, conflicts, why);
    }
}

// No smaller delay leaves each job that is one line of tasks a place of its own.
std::int64_t least_delay(const Problem& problem) {
    std::int64_t least = 0;
    Problem alone = problem;
    Wish soon;
    soon.aim = Aim::end_early;
    for (const Job& job : problem.jobs) {
        if (!job.ready_by) {
            continue;
        }
        alone.jobs = {job};
        alone.jobs.front().ready_from.reset();
        alone.jobs.front().ready_by.reset();
        const Outcome outcome = solve_chain(alone, soon);
        if (const auto* solved = std::get_if<Solved>(&outcome)) {
            least = std::max(least, solved->schedule.jobs.front().ends.back() - *job.ready_by);
        }
    }
    return least;
}

void find_delay(const Problem& problem, const Jobs& clashing, std::int64_t conflicts, Why& why) {
    if (std::none_of(problem.jobs.begin(), problem.jobs.end(), [](const Job& job) {
            return job.ready_by.has_value();
        })) {
        return;
    }
    const std::int64_t grid = cells::grid_of_day(problem, {}, {});
    const std::int64_t least = (least_delay(problem) + grid - 1) / grid;
    for (std::int64_t cell = std::max<std::int64_t>(1, least); cell * grid <= problem.horizon;
         ++cell) {
        Problem later = problem;
        bool inside = true;
        for (Job& job : later.jobs) {
            for (std::optional<std::int64_t>* anchor : {&job.ready_from, &job.ready_by}) {
                if (*anchor) {
                    **anchor += cell * grid;
                }
            }
            inside = inside && job.ready_from.value_or(0) <= problem.horizon;
        }
        const Answer answer = inside ? possible(later, clashing, conflicts) : Answer::no;
        if (answer == Answer::stopped) {
            why.proof = Proof::best_found;
            return;
        }
        if (answer == Answer::yes) {
            why.delay = cell * grid;
            return;
        }
    }
}

void find_ways_out(const Problem& problem, const Jobs& clashing, std::int64_t conflicts, Why& why) {
    const auto offer = [&](const std::string& name, const auto& change) {
        Problem changed = problem;
        change(changed);
        const Answer answer = changed.jobs.size() < problem.jobs.size()
                                  ? possible(changed, conflicts)
                                  : possible(changed, clashing, conflicts);
        if (answer == Answer::yes) {
            why.enough.push_back(name);
        } else if (answer == Answer::stopped) {
            why.proof = Proof::best_found;
        }
    };
    const auto without = [](WindowState state) {
        return [state](Problem& changed) {
            for (Person& person : changed.people) {
                person.windows.erase(
                    std::remove_if(person.windows.begin(),
                                   person.windows.end(),
                                   [state](const Window& w) { return w.state == state; }),
                    person.windows.end());
            }
        };
    };
    offer("asleep", without(WindowState::asleep));
    offer("away", without(WindowState::away));
    offer("busy", without(WindowState::busy));
    offer("claims", [](Problem& changed) { changed.oven.claims.clear(); });
    offer("waits", [](Problem& changed) {
        for (Job& job : changed.jobs) {
            for (Lag& lag : job.lags) {
                lag.max.reset();
            }
            for (Alternative& alternative : job.alternatives) {
                for (LagChange& lag : alternative.lags) {
                    lag.max.reset();
                }
            }
        }
    });
    offer("anchors", [](Problem& changed) {
        for (Job& job : changed.jobs) {
            job.not_before.reset();
            job.ready_from.reset();
            job.ready_by.reset();
        }
    });
    offer("person", [](Problem& changed) { changed.people.push_back({"one more", {}}); });
    offer("oven_slot", [](Problem& changed) { ++changed.oven.slots; });
    offer("fridge_slot", [](Problem& changed) { ++changed.fridge.slots; });
    for (const std::size_t j : problem.jobs.size() > 1 ? clashing : Jobs{}) {
        offer("without:" + problem.jobs[j].name, [j](Problem& changed) {
            changed.jobs.erase(changed.jobs.begin() + static_cast<std::ptrdiff_t>(j));
        });
    }
}

constexpr std::size_t most_tasks = 1000;

bool can_be_asked(const Problem& problem) {
    std::size_t tasks = 0;
    for (const Job& job : problem.jobs) {
        tasks += job.tasks.size();
    }
    return faults_in(problem).empty() && tasks <= most_tasks && !problem.jobs.empty() &&
           cells::work_of(problem, cells::grid_of_day(problem, {}, {})) <= cells::most_work;
}

Why not_to_be_asked() {
    Why why;
    why.proof = Proof::best_found;
    return why;
}

} // namespace

Why reasons_why_not(const Problem& problem, std::int64_t conflicts) {
    if (!can_be_asked(problem)) {
        return not_to_be_asked();
    }
    Why why;
    find_reasons(problem, clashing_jobs(problem, conflicts), conflicts, why);
    return why;
}

Why why_not(const Problem& problem, std::int64_t conflicts) {
    if (!can_be_asked(problem)) {
        return not_to_be_asked();
    }
    Why why;
    const Jobs clashing = clashing_jobs(problem, conflicts);
    find_reasons(problem, clashing, conflicts, why);
    find_delay(problem, clashing, conflicts, why);
    find_ways_out(problem, clashing, conflicts, why);
    return why;
}

} // namespace loafwright::schedule
