// SPDX-License-Identifier: Apache-2.0
//
// The page moves when the dough does. What is left of the day is asked for again with what is over
// nailed down; where that has no answer, the rule that can bend is bent and said.
#include "engine/following/replan.hpp"

#include "engine/following/change_line.hpp"
#include "engine/following/progress.hpp"
#include "engine/following/rest_of_day.hpp"
#include "engine/following/troubles.hpp"
#include "engine/planning/merge.hpp"
#include "engine/schedule/solve.hpp"

#include <algorithm>
#include <utility>
#include <variant>

namespace loafwright {

namespace {

using namespace following;
using planning::Bread;
using planning::OvenOn;
using planning::Placed;

struct Answered {
    std::vector<Placed> placed;
    Insist insist = Insist::told_soon;
    bool best = false;
};

// Where nothing at all is found (there is no such day: with no rule left everything is laid end to
// end) the parts keep their order and begin when those before them are over.
std::vector<Placed> end_to_end(const planning::SharedProblem& rest,
                               const std::vector<BreadStand>& stands) {
    std::vector<Placed> all;
    for (std::size_t b = 0; b < stands.size(); ++b) {
        const schedule::Job& job = rest.problem.jobs[b];
        Placed placed{rest.frame, {}, {}, {}, {}};
        std::int64_t free = 0;
        for (std::size_t k = 0; k < job.tasks.size(); ++k) {
            const bool ahead = k >= stands[b].first_ahead;
            const std::int64_t own = minutes_between(rest.frame.origin, stands[b].starts[k]);
            const std::int64_t start =
                ahead ? std::max(free, job.tasks[k].start_from.value_or(own)) : own;
            const schedule::Task& task = job.tasks[k];
            const std::int64_t length = task.stretch ? task.stretch->min : task.minutes.likely;
            placed.starts.push_back(start);
            placed.ends.push_back(
                ahead ? start + length
                      : std::max(start, minutes_between(rest.frame.origin, stands[b].ends[k])));
            placed.people.emplace_back();
            free = placed.ends.back();
        }
        all.push_back(std::move(placed));
    }
    return all;
}

Answered answer(const planning::Breads& breads,
                const std::vector<const Plan*>& plans,
                const std::vector<BreadStand>& stands,
                const Day& day,
                Instant now) {
    for (const Insist insist :
         {Insist::told_soon, Insist::all_rules, Insist::people_only, Insist::nothing}) {
        const planning::SharedProblem rest = rest_problem(breads, plans, stands, day, now, insist);
        const schedule::Outcome outcome = schedule::solve(rest.problem, rest.wish);
        if (const auto* solved = std::get_if<schedule::Solved>(&outcome)) {
            return {placed_rest(rest, solved->schedule, stands),
                    insist,
                    solved->proof == schedule::Proof::best};
        }
        if (insist == Insist::nothing) {
            return {end_to_end(rest, stands), insist, false};
        }
    }
    return {};
}

// What is still to come is as uncertain as it was; what runs, as far as it may still be late.
planning::Spread spread_ahead(const Bread& bread, const BreadStand& stand) {
    std::vector<Band<std::int64_t>> bands;
    for (std::size_t k = 0; k < bread.chain.tail && k < bread.chain.atoms.size(); ++k) {
        const planning::Atom& atom = bread.chain.atoms[k];
        if (k >= stand.first_ahead && !atom.stretch) {
            bands.push_back(atom.minutes);
        } else if (stand.running == k) {
            bands.push_back({0, 0, atom.minutes.high - atom.minutes.likely});
        }
    }
    return planning::spread_of(bands);
}

// An oven that is on was switched on when it was.
std::vector<OvenOn>
ovens_now(std::vector<OvenOn> moments, const Plan& before, const Placed& placed, Instant now) {
    for (OvenOn& oven : moments) {
        const Instant was_on =
            later_by_minutes(before.parts[oven.bake].start, -oven.before_minutes);
        const Instant bake = placed.frame.at(placed.starts[oven.bake]);
        if (was_on <= now) {
            oven.before_minutes = std::max<std::int64_t>(0, minutes_between(was_on, bake));
        } else {
            // Not before now, and not so late that it is cold.
            oven.before_minutes = std::min(oven.before_minutes,
                                           std::max<std::int64_t>(0, minutes_between(now, bake)));
        }
    }
    return moments;
}

Plan plan_again(const Bread& bread, const Plan& before, const Day& day, Placed placed) {
    placed.lines.emplace();
    for (const Stage& line : before.stages) {
        placed.lines->push_back(line.first_part);
    }
    Plan made = planning::plan_of(bread, day, placed, false);
    if (day.eat_by && made.cut_from <= *day.eat_by) {
        made = planning::plan_of(bread, day, placed, true);
    }
    for (std::size_t s = 0; s < std::min(made.stages.size(), before.stages.size()); ++s) {
        made.stages[s].who = made.stages[s].who.empty() ? before.stages[s].who : made.stages[s].who;
    }
    return made;
}

void warn(Plan& plan, Insist insist) {
    if (insist == Insist::people_only || insist == Insist::nothing) {
        plan.warnings.push_back({"dough_waits_long",
                                 Severity::warning,
                                 "a dough waits longer than it likes",
                                 "",
                                 "put it in the fridge, or knock it back and let it rise again"});
    }
    if (insist == Insist::nothing) {
        plan.warnings.push_back({"nobody_there",
                                 Severity::warning,
                                 "something falls into a time when nobody is there",
                                 "",
                                 "look through the times ahead, and ask for help or stop here"});
    }
}

} // namespace

Replanned replan(const Plan& plan,
                 const std::vector<FittedRecipe>& recipes,
                 const Kitchen& kitchen,
                 const Day& day_planned,
                 const std::vector<Event>& events,
                 Instant now,
                 const Knowledge& knowledge) {
    const Day day = day_after(day_planned, events);
    planning::Breads breads = planning::breads_of(recipes, kitchen);
    const std::vector<const Plan*> plans = following::breads_of(plan);
    const std::vector<BreadProgress> progress = progress_of(plan, events, knowledge);
    std::vector<BreadStand> stands;
    for (std::size_t b = 0; b < plans.size(); ++b) {
        stands.push_back(stand_of(*plans[b], breads.breads[b].chain, progress[b], now));
    }
    const Answered answered = answer(breads, plans, stands, day, now);
    const bool several = plans.size() > 1;
    const auto moments = several
                             ? planning::oven_moments(breads.runs, answered.placed, kitchen)
                             : std::vector<std::vector<OvenOn>>{breads.breads.front().chain.ovens};
    std::vector<Plan> made;
    std::string change;
    for (std::size_t b = 0; b < plans.size(); ++b) {
        Bread bread = breads.breads[b];
        bread.chain.ovens = ovens_now(moments[b], *plans[b], answered.placed[b], now);
        bread.spread = spread_ahead(bread, stands[b]);
        made.push_back(plan_again(bread, *plans[b], day, answered.placed[b]));
        made.back().proven = answered.best;
        const std::string line = change_line(*plans[b], made.back(), day, now);
        if (!line.empty()) {
            change += (change.empty() ? "" : " ") +
                      (several ? made.back().stages.front().bread + ": " + line : line);
        }
    }
    Replanned again{several ? planning::merged(made) : made.front(), change};
    again.plan.proven = answered.best;
    warn(again.plan, answered.insist);
    return again;
}

} // namespace loafwright
