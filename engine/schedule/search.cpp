// SPDX-License-Identifier: Apache-2.0
//
// Lexicographic optimisation in one solver: an objective is asked for from below (0, 1, 2, 4 …)
// until the answer is yes, then halved; what was found is fixed by clauses and the next objective
// begins. Every yes is the best schedule so far, so that the counted limit may come at any time.
// Ties are settled by the stated rule, moment by moment, which makes the schedule the same whatever
// the solver is. The first answers lean towards a serial schedule (Kolisch, "Serial and parallel
// resource-constrained project scheduling methods revisited", EJOR 90, 1996).
#include "engine/schedule/search.hpp"

#include "engine/schedule/check.hpp"
#include "engine/schedule/serial.hpp"

#include <algorithm>
#include <cassert>
#include <numeric>

namespace loafwright::schedule::sat {

namespace {

OutOfReach past(const std::string& found, const std::string& do_this) {
    return OutOfReach{{{"value_out_of_range", Severity::error, found, "", do_this}}};
}

} // namespace

Search::Search(const Problem& problem, const Wish& wish, std::int64_t conflicts)
    : problem_(problem), wish_(wish), clauses_(std::in_place, conflicts),
      order_(problem.jobs.size()) {
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
        return problem_.jobs[a].name < problem_.jobs[b].name;
    });
}

Outcome Search::run() {
    constexpr std::size_t most_tasks = 1000;
    std::size_t tasks = 0;
    for (const Job& job : problem_.jobs) {
        tasks += job.tasks.size();
    }
    if (tasks > most_tasks || problem_.jobs.empty()) {
        return past("found " + std::to_string(tasks) + " steps, expected 1 to " +
                        std::to_string(most_tasks),
                    "plan fewer at a time");
    }
    const std::int64_t grid =
        cells::grid_of_day(problem_, wish_.first_start_from, wish_.first_start_to);
    const std::int64_t work = cells::work_of(problem_, grid);
    if (work > cells::most_work) {
        return past("found " + std::to_string(work) + " cells of work, expected at most " +
                        std::to_string(cells::most_work),
                    "use fewer steps, fewer alternatives or a coarser grid");
    }
    day_ = cells::day_in_cells(problem_, grid, {});
    if (day_.impossible) {
        return NoSchedule{};
    }
    const auto least = least_cost(problem_);
    if (least && least->impossible) {
        return NoSchedule{};
    }
    const Serial serial = serial_schedule(problem_, wish_);
    if (serial.whole) {
        best_ = serial.schedule;
        note_proven(least);
        day_ = narrowed();
    }
    build();
    if (!keep_first_start()) {
        return NoSchedule{};
    }
    keep_found();
    prefer(serial.schedule);
    const Answer first = ask({});
    clauses_->forget_preferences();
    if (clauses_->too_large() || first == Answer::stopped) {
        return past(clauses_->too_large() ? "found a problem of too many parts for the solver"
                                          : "found no answer within the counted limit",
                    "use fewer steps, a coarser grid or a larger limit");
    }
    if (first == Answer::no) {
        return NoSchedule{};
    }
    const auto fewest_violations = [&] {
        const std::vector<Sum> parts = violation_parts(*clauses_, day_, *encoding_);
        violations_ = least_sum([&](std::int64_t) { return std::vector<Sum>(parts); },
                                [&] { return objective_of(problem_, best_).violations; });
        return violations_.has_value();
    };
    const auto least_tied = [&] {
        TiedParts tied(*clauses_, day_, *encoding_);
        const auto reached =
            least_sum([&](std::int64_t cap) { return tied.parts(cap); },
                      [&] { return objective_of(problem_, best_).tied / grid - tied.base(); });
        if (reached) {
            tied_ = tied.base() + *reached;
        }
        return reached && begin_again(narrowed());
    };
    bool proven = true;
    switch (wish_.aim) {
    case Aim::begin_late:
        proven =
            (violations_ || fewest_violations()) && (tied_ || least_tied()) && latest_first_start();
        break;
    case Aim::end_early:
        proven = earliest_end() && fewest_violations() && least_tied() && latest_first_start();
        break;
    case Aim::begin_soonest:
        proven = earliest_first_start() && earliest_end() && fewest_violations() && least_tied();
        break;
    case Aim::begin_last:
        proven = latest_first_start() && earliest_end() && fewest_violations() && least_tied();
        break;
    }
    proven = proven && settle_ties();
    assert(violations(problem_, best_).empty());
    Solved solved;
    solved.schedule = best_;
    solved.objective = objective_of(problem_, best_);
    solved.proof = proven ? Proof::best : Proof::best_found;
    return solved;
}

Answer Search::ask(const std::vector<Literal>& assumptions) {
    const Answer answer = clauses_->solve(assumptions);
    if (answer == Answer::yes) {
        best_ = encoding_->in_model();
    }
    return answer;
}

void Search::fix(const std::vector<Literal>& literals) {
    for (const Literal literal : literals) {
        clauses_->add({literal});
    }
}

bool Search::keep_first_start() {
    if (wish_.first_start_from) {
        const std::int64_t from = *wish_.first_start_from;
        const std::int64_t cell = from <= 0 ? 0 : (from + day_.grid - 1) / day_.grid;
        if (cell > day_.horizon) {
            return false;
        }
        fix(all_from(cell));
    }
    if (wish_.first_start_to) {
        if (*wish_.first_start_to < 0) {
            return false;
        }
        clauses_->add({some_by(*wish_.first_start_to / day_.grid)});
    }
    return true;
}

void Search::prefer(const Schedule& schedule) {
    for (std::size_t j = 0; j < schedule.jobs.size(); ++j) {
        const JobSchedule& job = schedule.jobs[j];
        const EncodedJob& encoded = encoding_->jobs()[j];
        if (job.starts.empty()) {
            continue; // no place was found for it
        }
        for (std::size_t w = 0; w < encoded.ways.size(); ++w) {
            const bool chosen = day_.jobs[j].ways[w].alternative == job.alternative;
            clauses_->prefer(chosen ? encoded.ways[w] : -encoded.ways[w]);
        }
        for (std::size_t i = 0; i < job.starts.size(); ++i) {
            const Moment& start = encoded.tasks[i].start;
            const std::int64_t cell = job.starts[i] / day_.grid;
            for (std::int64_t t = start.earliest(); t <= start.latest(); ++t) {
                if (start.is_value(t)) {
                    const Literal from = start.at_least(t);
                    clauses_->prefer(t <= cell ? from : -from);
                }
            }
        }
    }
}

std::optional<std::int64_t> Search::least_sum(const Parts& parts, const Value& value) {
    std::int64_t most = value(); // known to be reached
    std::int64_t least = 0;      // known not to be undercut
    std::vector<Literal> bound;
    for (std::int64_t tried = 0; least < most; tried = tried == 0 ? 1 : 2 * tried) {
        tried = std::min(std::max(tried, least), most - 1);
        Sum sum;
        std::vector<Literal> assumed;
        if (tried == 0) {
            for (const Sum& part : parts(1)) {
                const std::vector<Literal> none = at_most(part, 0);
                assumed.insert(assumed.end(), none.begin(), none.end());
            }
        } else {
            sum = total(*clauses_, parts(tried + 1), tried + 1);
            assumed = at_most(sum, tried);
        }
        Answer answer = ask(assumed);
        if (answer == Answer::no) {
            least = tried + 1;
            continue;
        }
        // Reached: halve what lies between.
        while (answer == Answer::yes) {
            most = value();
            bound = tried == 0 ? assumed : at_most(sum, most);
            while (least < most) {
                const std::int64_t middle = least + (most - least) / 2;
                answer = ask(at_most(sum, middle));
                if (answer != Answer::no) {
                    break;
                }
                least = middle + 1;
            }
            if (least >= most) {
                fix(bound);
                return most;
            }
        }
        return std::nullopt; // the limit
    }
    // The value that was there at the beginning is the best.
    if (most == 0) {
        for (const Sum& part : parts(1)) {
            fix(at_most(part, 0));
        }
    } else {
        fix(at_most(total(*clauses_, parts(most + 1), most + 1), most));
    }
    return ask({}) == Answer::yes ? std::optional(most) : std::nullopt;
}

std::vector<Literal> Search::all_from(std::int64_t first) const {
    std::vector<Literal> assumed;
    for (const EncodedJob& job : encoding_->jobs()) {
        for (const EncodedTask& task : job.tasks) {
            const Literal from = task.start.at_least(first);
            if (from != always) {
                assumed.push_back(from);
            }
        }
    }
    return assumed;
}

Literal Search::some_by(std::int64_t last) {
    const Literal asked = clauses_->fresh();
    std::vector<Literal> clause{-asked};
    for (const EncodedJob& job : encoding_->jobs()) {
        for (const EncodedTask& task : job.tasks) {
            clause.push_back(task.start.at_most(last));
        }
    }
    clauses_->add(clause);
    return asked;
}

std::vector<Literal> Search::all_over_by(std::int64_t end) const {
    std::vector<Literal> assumed;
    for (const EncodedJob& job : encoding_->jobs()) {
        const Literal by = job.tasks.back().end.at_most(end);
        if (by != always) {
            assumed.push_back(by);
        }
    }
    return assumed;
}

std::int64_t Search::first_start() const {
    std::int64_t first = day_.horizon;
    for (const JobSchedule& job : best_.jobs) {
        for (const std::int64_t start : job.starts) {
            first = std::min(first, start / day_.grid);
        }
    }
    return first;
}

std::int64_t Search::last_end() const {
    std::int64_t last = 0;
    for (const JobSchedule& job : best_.jobs) {
        last = std::max(last, job.ends.back() / day_.grid);
    }
    return last;
}

bool Search::latest_first_start() {
    std::int64_t most = day_.horizon;
    for (const EncodedJob& job : encoding_->jobs()) {
        for (const EncodedTask& task : job.tasks) {
            most = std::min(most, task.start.latest());
        }
    }
    for (std::int64_t step = 1; first_start() < most;) {
        const std::int64_t reached = first_start();
        first_from_ = reached;
        fix(all_from(reached));
        if (!keep_narrow()) {
            return false;
        }
        const std::int64_t tried = std::min(most, reached + step);
        const Answer answer = ask(all_from(tried));
        if (answer == Answer::stopped) {
            return false;
        }
        if (answer == Answer::no) {
            most = tried - 1;
            step = std::max<std::int64_t>(1, (most - reached + 1) / 2);
        } else {
            step = std::min(2 * step, std::max<std::int64_t>(1, (most - first_start() + 1) / 2));
        }
    }
    first_from_ = most;
    fix(all_from(most));
    return true;
}

bool Search::earliest_first_start() {
    std::int64_t least = 0;
    while (least < first_start()) {
        const std::int64_t middle = least + (first_start() - least) / 2;
        const Answer answer = ask({some_by(middle)});
        if (answer == Answer::stopped) {
            return false;
        }
        if (answer == Answer::no) {
            least = middle + 1;
        }
    }
    clauses_->add({some_by(least)});
    fix(all_from(least));
    first_from_ = least;
    first_to_ = least;
    return true;
}

bool Search::earliest_end() {
    std::int64_t least = 0;
    for (const EncodedJob& job : encoding_->jobs()) {
        least = std::max(least, job.tasks.back().end.earliest());
    }
    while (least < last_end()) {
        last_end_ = last_end();
        fix(all_over_by(*last_end_));
        if (!keep_narrow()) {
            return false;
        }
        const std::int64_t middle = least + (last_end() - least) / 2;
        const Answer answer = ask(all_over_by(middle));
        if (answer == Answer::stopped) {
            return false;
        }
        if (answer == Answer::no) {
            least = middle + 1;
        }
    }
    fix(all_over_by(least));
    last_end_ = least;
    return keep_narrow();
}

} // namespace loafwright::schedule::sat
