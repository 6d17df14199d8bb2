// SPDX-License-Identifier: Apache-2.0
//
// Reasons: every rule gets a guard, bounds come from lengths and least lags alone, and a core of
// guards that cannot hold together is made smaller by leaving one out at a time (deletion;
// Marques-Silva, "Minimal unsatisfiability", ISMVL 2010), keeping the smaller core that each no
// brings. Delay: the end of the last tasks is assumed and not fixed, one grid step later each time;
// a shift is not monotone (ready_from moves, too), so none is skipped. Ways out: each is a problem
// of its own.
#include "engine/schedule/why.hpp"

#include "engine/schedule/encode.hpp"
#include "engine/schedule/search.hpp"

#include <algorithm>

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
    if (day.impossible) {
        return Answer::no;
    }
    Clauses clauses(conflicts);
    const Encoding encoding(clauses, day, sat::Guards::none);
    return clauses.solve();
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

void find_reasons(const Problem& problem, std::int64_t conflicts, Why& why) {
    const std::int64_t grid = cells::grid_of_day(problem, {}, {});
    const cells::DayCells day =
        cells::day_in_cells(problem, grid, cells::Looking{false, false, false, false});
    if (day.impossible) {
        return;
    }
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
        why.reasons.push_back({rule.rule, rule.job});
    }
}

void find_delay(const Problem& problem, std::int64_t conflicts, Why& why) {
    const std::int64_t grid = cells::grid_of_day(problem, {}, {});
    if (std::none_of(problem.jobs.begin(), problem.jobs.end(), [](const Job& job) {
            return job.ready_by.has_value();
        })) {
        return;
    }
    cells::Looking looking;
    looking.ready = false;
    cells::DayCells day = cells::day_in_cells(problem, grid, looking);
    if (day.impossible) {
        return;
    }
    std::vector<cells::JobCells> anchors = day.jobs;
    for (cells::JobCells& job : day.jobs) {
        job.ready_from.reset();
        job.ready_by.reset();
    }
    Clauses clauses(conflicts);
    const Encoding encoding(clauses, day, sat::Guards::none);
    for (std::int64_t cell = 1; cell <= day.horizon; ++cell) {
        std::vector<Literal> assumed;
        bool inside = true;
        for (std::size_t j = 0; j < anchors.size(); ++j) {
            const sat::Moment& last = encoding.jobs()[j].tasks.back().end;
            for (const auto& [anchor, literal] :
                 {std::pair(anchors[j].ready_from,
                            last.at_least(anchors[j].ready_from.value_or(0) + cell)),
                  std::pair(anchors[j].ready_by,
                            last.at_most(anchors[j].ready_by.value_or(0) + cell))}) {
                inside = inside && !(anchor && literal == sat::never);
                if (anchor && literal != sat::always && literal != sat::never) {
                    assumed.push_back(literal);
                }
            }
        }
        if (!inside) {
            continue;
        }
        const Answer answer = clauses.solve(assumed);
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

void find_ways_out(const Problem& problem, std::int64_t conflicts, Why& why) {
    const auto offer = [&](const std::string& name, const auto& change) {
        Problem changed = problem;
        change(changed);
        const Answer answer = possible(changed, conflicts);
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
    for (std::size_t j = 0; j < problem.jobs.size() && problem.jobs.size() > 1; ++j) {
        offer("without:" + problem.jobs[j].name, [j](Problem& changed) {
            changed.jobs.erase(changed.jobs.begin() + static_cast<std::ptrdiff_t>(j));
        });
    }
}

} // namespace

Why why_not(const Problem& problem, std::int64_t conflicts) {
    Why why;
    constexpr std::size_t most_tasks = 1000;
    std::size_t tasks = 0;
    for (const Job& job : problem.jobs) {
        tasks += job.tasks.size();
    }
    if (!faults_in(problem).empty() || tasks > most_tasks || problem.jobs.empty() ||
        cells::work_of(problem, cells::grid_of_day(problem, {}, {})) > cells::most_work) {
        why.proof = Proof::best_found;
        return why;
    }
    find_reasons(problem, conflicts, why);
    find_delay(problem, conflicts, why);
    find_ways_out(problem, conflicts, why);
    return why;
}

} // namespace loafwright::schedule
