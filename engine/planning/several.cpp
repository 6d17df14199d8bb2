// SPDX-License-Identifier: Apache-2.0
//
// Each bread is the line of atoms that it is alone; people, oven and clock are shared. What a bread
// alone can add up, several must rehearse: whether they are in time when doughs are slow.
#include "engine/planning/several.hpp"

#include "engine/planning/merge.hpp"
#include "engine/planning/rehearse.hpp"
#include "engine/schedule/solve.hpp"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <string>
#include <utility>
#include <variant>

namespace loafwright::planning {

namespace {

constexpr double four_in_five = 0.8;
constexpr int most_corrections = 4;
constexpr std::int64_t day_minutes = 1440;

using Bands = std::vector<std::vector<Band<std::int64_t>>>;

Bands bands_of(const Breads& breads) {
    Bands bands;
    for (const Bread& bread : breads.breads) {
        std::vector<Band<std::int64_t>> own;
        for (const Atom& atom : bread.chain.atoms) {
            // Planned lengths are what the baker reads; the band lies around them.
            const std::int64_t more = atom.planned - atom.minutes.likely;
            own.push_back(atom.stretch ? exactly(atom.planned)
                                       : Band<std::int64_t>{atom.minutes.low + more,
                                                            atom.planned,
                                                            atom.minutes.high + more});
        }
        bands.push_back(std::move(own));
    }
    return bands;
}

/// When each bread could be cut, in each rehearsal, in minutes of the frame.
std::vector<std::vector<std::int64_t>>
cut_times(const Breads& breads, const SharedProblem& shared, const schedule::Schedule& schedule) {
    const auto days = rehearse(shared.problem, schedule, bands_of(breads));
    std::vector<std::vector<std::int64_t>> cut(breads.breads.size());
    for (const auto& day : days) {
        for (std::size_t b = 0; b < breads.breads.size(); ++b) {
            cut[b].push_back(day[b].back() - breads.breads[b].sooner_minutes);
        }
    }
    return cut;
}

std::vector<Placed> placed_of(const SharedProblem& shared, const schedule::Schedule& schedule) {
    std::vector<Placed> placed;
    for (const schedule::JobSchedule& job : schedule.jobs) {
        placed.push_back({shared.frame, job.starts, job.ends, job.people});
    }
    return placed;
}

/// A schedule and the problem that it answers.
struct Answer {
    SharedProblem shared;
    schedule::Solved solved;
};

struct Asked {
    std::optional<Answer> answer;
    bool gave_up = false;
    std::optional<SharedProblem> refused;
};

Asked ask(const Breads& breads,
          const Day& day,
          const Rules& rules,
          const SharedTarget& target,
          const OvenUseRules& oven) {
    Asked asked;
    SharedProblem shared = problem_of(breads, day, rules, target, oven);
    schedule::Outcome outcome = schedule::solve(shared.problem, shared.wish, breads.conflicts);
    if (auto* solved = std::get_if<schedule::Solved>(&outcome)) {
        asked.answer = Answer{std::move(shared), std::move(*solved)};
    } else {
        asked.gave_up = std::holds_alternative<schedule::OutOfReach>(outcome);
        asked.refused = std::move(shared);
    }
    return asked;
}

std::int64_t end_of(const schedule::Schedule& schedule) {
    std::int64_t end = 0;
    for (const schedule::JobSchedule& job : schedule.jobs) {
        end = std::max(end, job.ends.back());
    }
    return end;
}

// A falling oven is worth this much of a day and no wish (decided).
constexpr std::int64_t worth_a_falling_oven = 30;

// Hottest first instead of as it comes; both have the same frame.
bool worth_it(const Answer& falling, const Answer& answer) {
    return falling.solved.objective.violations <= answer.solved.objective.violations &&
           falling.solved.objective.earliest + worth_a_falling_oven >=
               answer.solved.objective.earliest &&
           end_of(falling.solved.schedule) <= end_of(answer.solved.schedule) + worth_a_falling_oven;
}

Asked ask(const Breads& breads, const Day& day, const Rules& rules, const SharedTarget& target) {
    OvenUseRules oven;
    Asked asked = ask(breads, day, rules, target, oven);
    const auto placed = [&asked] {
        return placed_of(asked.answer->shared, asked.answer->solved.schedule);
    };
    // Breads that change the oven alike may stand in it together; where the best plan has one of
    // them go in later, they take turns.
    if (asked.answer && !hold_together(breads.runs, placed(), breads.kitchen)) {
        oven.sharing = Sharing::none;
        Asked turns = ask(breads, day, rules, target, oven);
        if (turns.answer && !(turns.answer->solved.objective == asked.answer->solved.objective)) {
            turns.answer->solved.proof = schedule::Proof::best_found;
        }
        asked = std::move(turns);
    }
    const bool is_best = asked.answer && asked.answer->solved.proof == schedule::Proof::best;
    if (is_best && !hottest_first(breads.runs, placed())) {
        oven.heats = Heats::hottest_first;
        Asked falling = ask(breads, day, rules, target, oven);
        if (falling.answer && worth_it(*falling.answer, *asked.answer) &&
            hold_together(breads.runs,
                          placed_of(falling.answer->shared, falling.answer->solved.schedule),
                          breads.kitchen)) {
            return falling;
        }
    }
    return asked;
}

Plan plan_from(const Breads& breads, const Day& day, const Answer& answer) {
    const std::vector<Placed> placed = placed_of(answer.shared, answer.solved.schedule);
    const auto moments = oven_moments(breads.runs, placed, breads.kitchen);
    const auto cut = cut_times(breads, answer.shared, answer.solved.schedule);
    std::vector<Plan> plans;
    for (std::size_t b = 0; b < breads.breads.size(); ++b) {
        Bread bread = breads.breads[b];
        bread.chain.ovens = moments[b];
        const std::int64_t planned = placed[b].ends.back() - bread.sooner_minutes;
        bread.spread.early = std::min<std::int64_t>(0, percentile(cut[b], 0.1) - planned);
        bread.spread.late = std::max<std::int64_t>(0, percentile(cut[b], 0.9) - planned);
        plans.push_back(plan_of(bread, day, placed[b], day.eat_by.has_value()));
    }
    Plan plan = merged(plans);
    plan.proven = answer.solved.proof == schedule::Proof::best;
    if (!day.sleep_known) {
        plan.warnings.clear();
        warn_of_night(plan, day, answer.shared.frame);
    }
    return plan;
}

void note_refusal(Tried& tried, Asked& asked) {
    tried.gave_up = tried.gave_up || asked.gave_up;
    if (asked.refused) {
        tried.hardest = std::move(asked.refused);
    }
}

// One aim of a time to eat by: asked again with more room until four rehearsals of five are in
// time.
std::optional<Answer> ask_in_time(
    const Breads& breads, const Day& day, const Rules& rules, std::size_t rung, Tried& tried) {
    std::vector<std::int64_t> margins;
    for (const Bread& bread : breads.breads) {
        margins.push_back(bread.spread.margin);
    }
    for (int n = 0; n < most_corrections; ++n) {
        SharedTarget target;
        target.start_from = day.now;
        for (std::size_t b = 0; b < breads.breads.size(); ++b) {
            const auto rungs = targets_to_eat_by(breads.breads[b], day, margins[b]);
            target.breads.push_back(rungs[rung]);
            target.aim = rungs[rung].aim;
        }
        Asked asked = ask(breads, day, rules, target);
        if (!asked.answer) {
            note_refusal(tried, asked);
            return std::nullopt;
        }
        const auto cut = cut_times(breads, asked.answer->shared, asked.answer->solved.schedule);
        const Frame& frame = asked.answer->shared.frame;
        bool in_time = true;
        for (std::size_t b = 0; b < breads.breads.size(); ++b) {
            const std::int64_t late =
                minutes_between(*day.eat_by, frame.at(percentile(cut[b], four_in_five)));
            if (late > 0) {
                in_time = false;
                margins[b] += up_to_five(late);
            }
        }
        if (in_time) {
            return std::move(asked.answer);
        }
    }
    tried.gave_up = true;
    return std::nullopt;
}

std::size_t rungs_to_eat_by(const Breads& breads, const Day& day) {
    return targets_to_eat_by(breads.breads.front(), day, 0).size();
}

} // namespace

Breads breads_of(const std::vector<FittedRecipe>& recipes, const Kitchen& kitchen) {
    Breads breads;
    breads.kitchen = kitchen;
    for (const FittedRecipe& recipe : recipes) {
        breads.breads.push_back(bread_of(recipe));
    }
    breads.runs = oven_runs(breads.breads);
    return breads;
}

SharedProblem problem_of(const Breads& breads,
                         const Day& day,
                         const Rules& rules,
                         const SharedTarget& target,
                         const OvenUseRules& oven) {
    SharedProblem shared;
    std::int64_t longest = 0;
    std::int64_t hands = 0;
    for (const Bread& bread : breads.breads) {
        longest = std::max(longest, longest_sum(bread.chain));
        for (const Atom& atom : bread.chain.atoms) {
            hands += atom.attention == Attention::wait ? 0 : atom.planned;
        }
    }
    Target frame_target;
    frame_target.aim = target.aim;
    frame_target.start_from = target.start_from;
    frame_target.start_to = target.start_to;
    for (const Target& bread : target.breads) {
        if (bread.ready_by &&
            (!frame_target.ready_by || *frame_target.ready_by < *bread.ready_by)) {
            frame_target.ready_by = bread.ready_by;
        }
    }
    const std::int64_t most = schedule::longest_horizon_minutes - 4 * day_minutes;
    shared.frame = frame_of(std::min(longest + hands, most), day, frame_target);
    const Frame& frame = shared.frame;
    schedule::Problem& problem = shared.problem;
    problem.horizon = frame.horizon;
    problem.people = people_of(day, rules, frame);
    OvenTable table = oven_table(breads.runs, breads.kitchen, oven);
    problem.oven = std::move(table.oven);
    problem.oven.claims = claims_of(day, rules, frame);
    for (std::size_t b = 0; b < breads.breads.size(); ++b) {
        schedule::Job job = job_of(breads.breads[b].chain);
        // Names decide between equals: in the order in which the breads were given.
        job.name = std::string(1, static_cast<char>('A' + std::min<std::size_t>(b / 26, 25))) +
                   static_cast<char>('A' + b % 26);
        job.not_before = std::max<std::int64_t>(0, frame.now);
        if (b < target.breads.size() && target.breads[b].ready_from) {
            job.ready_from = ceil_mark(frame.origin, *target.breads[b].ready_from);
        }
        if (b < target.breads.size() && target.breads[b].ready_by) {
            job.ready_by = floor_mark(frame.origin, *target.breads[b].ready_by);
        }
        problem.jobs.push_back(std::move(job));
    }
    for (std::size_t r = 0; r < breads.runs.size(); ++r) {
        const OvenRun& run = breads.runs[r];
        for (std::size_t k = run.first; k <= run.last; ++k) {
            schedule::Task& task = problem.jobs[run.bread].tasks[k];
            if (task.oven) {
                task.oven->temperature = table.temperature_of_run[r];
            }
        }
    }
    shared.wish.aim = target.aim;
    if (target.start_from) {
        shared.wish.first_start_from =
            std::max<std::int64_t>(0, ceil_mark(frame.origin, *target.start_from));
    }
    if (target.start_to) {
        shared.wish.first_start_to = floor_mark(frame.origin, *target.start_to);
    }
    return shared;
}

Tried attempt_under(const Breads& breads, const Day& day, const Rules& rules) {
    Tried tried;
    std::optional<Answer> answer;
    if (day.eat_by) {
        for (std::size_t rung = 0; rung < rungs_to_eat_by(breads, day) && !answer; ++rung) {
            answer = ask_in_time(breads, day, rules, rung, tried);
        }
    } else {
        SharedTarget target;
        target.start_from = day.start ? *day.start : next_full_five(day.zone, day.now);
        target.start_to = target.start_from;
        Asked asked = ask(breads, day, rules, target);
        answer = std::move(asked.answer);
        note_refusal(tried, asked);
    }
    if (answer) {
        tried.plan = plan_from(breads, day, *answer);
    }
    return tried;
}

Tried attempt(const Breads& breads, const Day& day) {
    Rules rules;
    if (!day.sleep_known) {
        Rules by_day = rules;
        by_day.night = true;
        Tried tried = attempt_under(breads, day, by_day);
        if (tried.plan) {
            return tried;
        }
    }
    return attempt_under(breads, day, rules);
}

} // namespace loafwright::planning
