// SPDX-License-Identifier: Apache-2.0
//
// One bread, one day, one answer or none. Which targets are tried, and in which order, is what "by
// means by" comes to: first bread at its best, then bread that can be cut, never bread that four
// bakes in five would not have ready.
#include "engine/planning/attempt.hpp"

#include "engine/planning/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace loafwright::planning {

namespace {

// Common practice: crust and crumb keep their first freshness about so long.
constexpr std::int64_t fresh_minutes = 240;
constexpr std::int64_t a_day_old = 1440;

// The bakes in a row that end with the last heat: the oven is exact, so they count from where the
// first goes in.
struct LastBakes {
    std::size_t first = 0;
    std::int64_t exact_minutes = 0;
    std::int64_t planned_minutes = 0;
};

std::optional<LastBakes> last_bakes(const BreadChain& chain) {
    if (!chain.last_heat || chain.atoms[*chain.last_heat].kind != StepKind::bake) {
        return std::nullopt;
    }
    LastBakes bakes;
    for (bakes.first = *chain.last_heat + 1;
         bakes.first > 0 && chain.atoms[bakes.first - 1].kind == StepKind::bake;) {
        --bakes.first;
        bakes.exact_minutes += chain.atoms[bakes.first].minutes.likely;
        bakes.planned_minutes += chain.atoms[bakes.first].planned;
    }
    return bakes;
}

Instant out_of_oven(const BreadChain& chain, const Placed& placed) {
    if (!chain.last_heat) {
        return placed.frame.at(placed.ends.back());
    }
    if (const auto bakes = last_bakes(chain)) {
        return later_by_minutes(placed.frame.at(placed.starts[bakes->first]), bakes->exact_minutes);
    }
    return placed.frame.at(placed.ends[*chain.last_heat]);
}

bool hands_after_oven(const BreadChain& chain) {
    return std::any_of(chain.atoms.begin() + static_cast<std::ptrdiff_t>(chain.tail),
                       chain.atoms.end(),
                       [](const Atom& atom) { return atom.attention == Attention::hands; });
}

std::int64_t hands_minutes(const BreadChain& chain) {
    std::int64_t sum = 0;
    for (const Atom& atom : chain.atoms) {
        const bool on_its_own = atom.attention == Attention::hands && !atom.inside;
        sum += on_its_own ? atom.planned : atom.hands_minutes;
    }
    return sum;
}

std::optional<Placed> place_to_eat_by(const Bread& bread, const Day& day, const Rules& rules) {
    for (const Target& target : targets_to_eat_by(bread, day, bread.spread.margin)) {
        if (auto placed = place(bread.chain, day, rules, target)) {
            return placed;
        }
    }
    return std::nullopt;
}

} // namespace

void warn_of_night(Plan& plan, const Day& day, const Frame& frame) {
    const auto nights = nights_of(day.zone, frame);
    const auto in_night = [&nights](Instant from, Instant to) -> std::optional<Instant> {
        for (const auto& [begin, end] : nights) {
            if (std::max(from, begin) < std::min(to, end)) {
                return std::max(from, begin);
            }
        }
        return std::nullopt;
    };
    std::string what;
    int more = 0;
    const auto note = [&](const std::string& title, Instant at) {
        if (what.empty()) {
            what = fmt::format("\"{}\" falls at {}, in the night",
                               title,
                               words::clock_and_day(day.zone, day.now, at));
        } else {
            ++more;
        }
    };
    for (const Stage& stage : plan.stages) {
        if (stage.attention == Attention::hands) {
            if (const auto at = in_night(stage.start, stage.end.likely)) {
                note(stage.title, *at);
            }
        } else if (stage.attention == Attention::near) {
            // Putting in and taking out are work, too. Out on the stroke of the night is before it.
            const auto in = in_night(stage.start, later_by_minutes(stage.start, 1));
            const auto out = in_night(later_by_minutes(stage.end.likely, -1), stage.end.likely);
            if (in || out) {
                note(stage.title, in ? *in : *out);
            }
        } else {
            for (const Act& act : stage.acts) {
                if (const auto at = in_night(act.at, later_by_minutes(act.at, 1))) {
                    note(act.text, *at);
                }
            }
        }
    }
    if (what.empty()) {
        return;
    }
    if (more > 0) {
        what += fmt::format(", and {} more", more);
    }
    plan.warnings.push_back({"at_night",
                             Severity::warning,
                             what,
                             "",
                             "begin at another time, or give a day file that says when you sleep"});
}

Plan plan_of(const Bread& bread, const Day& day, const Placed& placed, bool eat_at_wish) {
    const BreadChain& chain = bread.chain;
    Plan plan;
    plan.proven = true;
    plan.start = placed.frame.at(placed.starts.front());
    plan.out_of_oven = out_of_oven(chain, placed);
    plan.cut_from = later_by_minutes(plan.out_of_oven, bread.cut_minutes);
    if (hands_after_oven(chain)) {
        plan.cut_from = std::max(plan.cut_from, placed.frame.at(placed.ends.back()));
    }
    plan.best_from =
        std::max(plan.cut_from, later_by_minutes(plan.out_of_oven, bread.best_minutes));
    plan.eat = {later_by_minutes(plan.cut_from, bread.spread.early),
                plan.cut_from,
                later_by_minutes(plan.cut_from, bread.spread.late)};
    if (eat_at_wish && day.eat_by) {
        plan.eat.likely = *day.eat_by;
        plan.eat.low = std::min(plan.cut_from, *day.eat_by);
        plan.eat.high = std::max(plan.eat.high, *day.eat_by);
    }
    plan.total_minutes = minutes_between(plan.start, plan.cut_from);
    plan.hands_on_minutes = hands_minutes(chain);
    plan.stages =
        stages_of(bread.recipe, chain, placed, day, {plan.out_of_oven, plan.cut_from, plan.eat});
    for (std::size_t k = 0; k < chain.atoms.size(); ++k) {
        plan.parts.push_back({placed.frame.at(placed.starts[k]), placed.frame.at(placed.ends[k])});
    }
    plan.free = free_time(bread.recipe, plan.stages);
    if (!day.sleep_known) {
        warn_of_night(plan, day, placed.frame);
    }
    return plan;
}

std::vector<Target> targets_to_eat_by(const Bread& bread, const Day& day, std::int64_t margin) {
    // The wish to be at its best moves the moment from which it can be cut.
    const Instant last = later_by_minutes(*day.eat_by, bread.sooner_minutes);
    const Instant sure = later_by_minutes(last, -margin);
    const Instant best =
        later_by_minutes(last, -std::max<std::int64_t>(0, bread.best_minutes - bread.cut_minutes));
    const Instant wish = std::min(sure, best);
    Target target;
    target.start_from = day.now;
    target.aim = schedule::Aim::begin_late;
    target.ready_by = wish;
    std::vector<Target> targets;
    for (const std::int64_t age : {fresh_minutes, a_day_old}) {
        target.ready_from = later_by_minutes(wish, -age);
        targets.push_back(target);
    }
    target.aim = schedule::Aim::end_early;
    target.ready_by = sure;
    target.ready_from.reset();
    targets.push_back(target);
    return targets;
}

Instant next_full_five(const Zone& zone, Instant now) {
    const CivilTime civil = civil_of(zone, now);
    const int past = (civil.clock.minute % 5) * 60 + civil.second;
    return past == 0 ? now : Instant{now.seconds + 300 - past};
}

Bread bread_of(const FittedRecipe& recipe) {
    Bread bread{recipe, chain_of(recipe), {}, 0, 0, 0};
    bread.spread = spread_of(bread.chain);
    bread.cut_minutes = bread.chain.cut_minutes;
    bread.best_minutes =
        bread.chain.last_heat
            ? std::clamp<std::int64_t>(recipe.best_after_minutes.likely, bread.cut_minutes, 100000)
            : 0;
    if (const auto bakes = last_bakes(bread.chain); bakes && !hands_after_oven(bread.chain)) {
        bread.sooner_minutes =
            std::max<std::int64_t>(0, bakes->planned_minutes - bakes->exact_minutes);
    }
    return bread;
}

std::optional<Plan>
attempt_target(const Bread& bread, const Day& day, const Rules& rules, const Target& target) {
    const auto placed = place(bread.chain, day, rules, target);
    if (!placed) {
        return std::nullopt;
    }
    return plan_of(bread, day, *placed, false);
}

std::optional<Plan> attempt_under(const Bread& bread, const Day& day, const Rules& rules) {
    if (day.eat_by) {
        const auto placed = place_to_eat_by(bread, day, rules);
        if (!placed) {
            return std::nullopt;
        }
        return plan_of(bread, day, *placed, true);
    }
    Target target;
    target.aim = schedule::Aim::end_early;
    target.start_from = day.start ? *day.start : next_full_five(day.zone, day.now);
    target.start_to = target.start_from;
    return attempt_target(bread, day, rules, target);
}

std::optional<Plan> attempt(const Bread& bread, const Day& day) {
    Rules rules;
    if (!day.sleep_known) {
        Rules by_day = rules;
        by_day.night = true;
        if (auto plan = attempt_under(bread, day, by_day)) {
            return plan;
        }
    }
    return attempt_under(bread, day, rules);
}

} // namespace loafwright::planning
