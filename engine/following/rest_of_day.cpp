// SPDX-License-Identifier: Apache-2.0
//
// The same problem as that of the whole day with most of it nailed down. Marks of five minutes are
// counted from the planned start, so that what does not move keeps its time to the minute.
#include "engine/following/rest_of_day.hpp"

#include "engine/following/growth.hpp"
#include "engine/following/replan.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::following {

namespace {

using planning::Atom;
using planning::Frame;

// A line that is over: its parts as planned, squeezed or stretched to the time it took.
void stand_done(
    BreadStand& stand, const Plan& bread, const Stage& line, Instant begun, Instant done) {
    const std::int64_t shift = minutes_between(bread.parts[line.first_part].start, begun);
    for (std::size_t k = line.first_part; k < line.last_part; ++k) {
        stand.starts[k] = std::min(later_by_minutes(bread.parts[k].start, shift), done);
        stand.ends[k] = k + 1 == line.last_part
                            ? done
                            : std::min(later_by_minutes(bread.parts[k].end, shift), done);
    }
    stand.first_ahead = line.last_part;
}

// How long a wait is here, as a share of what was planned: what the dough showed, or what was done
// to it.
double share_of_wait(const Plan& bread,
                     const planning::BreadChain& chain,
                     const Stage& line,
                     const LineProgress& progress) {
    double share = progress.again_percent.value_or(100.0) / 100.0 +
                   progress.longer_percent.value_or(0.0) / 100.0;
    if (line.attention != Attention::wait || !progress.grown ||
        progress.grown->at < *progress.begun) {
        return share;
    }
    Band<std::int64_t> planned{0, 0, 0};
    for (std::size_t k = line.first_part; k < line.last_part; ++k) {
        if (chain.atoms[k].stretch) {
            return share; // the plan chooses its length
        }
        const auto likely = minutes_between(bread.parts[k].start, bread.parts[k].end);
        planned.low += std::min(chain.atoms[k].minutes.low, likely);
        planned.likely += likely;
        planned.high += std::max(chain.atoms[k].minutes.high, likely);
    }
    if (planned.low < 1) {
        return share;
    }
    const auto scaled = [share](std::int64_t minutes) {
        return std::max<std::int64_t>(
            1, static_cast<std::int64_t>(std::lround(static_cast<double>(minutes) * share)));
    };
    const double wanted = growth_wanted(line.cue ? line.cue->text : std::string(),
                                        chain.atoms[line.last_part - 1].kind);
    const Band<std::int64_t> here =
        wait_after_look({scaled(planned.low), scaled(planned.likely), scaled(planned.high)},
                        minutes_between(*progress.begun, progress.grown->at),
                        progress.grown->growth,
                        wanted);
    return static_cast<double>(here.likely) / static_cast<double>(planned.likely);
}

// A line that was begun: what of it is over, what runs, what is still ahead.
void stand_begun(BreadStand& stand,
                 const Plan& bread,
                 const planning::BreadChain& chain,
                 const Stage& line,
                 const LineProgress& progress,
                 Instant now) {
    const double share = share_of_wait(bread, chain, line, progress);
    std::int64_t late = minutes_between(bread.parts[line.first_part].start, *progress.begun);
    for (std::size_t k = line.first_part; k < line.last_part; ++k) {
        stand.starts[k] = later_by_minutes(bread.parts[k].start, late);
        if (share != 1.0 && chain.atoms[k].attention == Attention::wait) {
            const std::int64_t planned = minutes_between(bread.parts[k].start, bread.parts[k].end);
            late +=
                static_cast<std::int64_t>(std::lround(static_cast<double>(planned) * share / 5.0)) *
                    5 -
                planned;
        }
        stand.ends[k] = later_by_minutes(bread.parts[k].end, late);
    }
    stand.share_of_wait = share;
    for (std::size_t k = line.first_part; k < line.last_part; ++k) {
        const bool last = k + 1 == line.last_part;
        if (stand.ends[k] <= now && !last) {
            continue;
        }
        if (stand.starts[k] <= now || k == line.first_part) {
            stand.ends[k] = std::max(stand.ends[k], now);
            if (last && progress.look_again) {
                stand.ends[k] = std::max(stand.ends[k], *progress.look_again);
            }
            stand.running = k;
            stand.first_ahead = k + 1;
        } else {
            stand.first_ahead = k;
        }
        stand.line_end = line.last_part;
        return;
    }
}

// When the oven is hot for a line that was only ticked up to, where nobody had lit it by then.
std::optional<Instant> hot_from(const Plan& bread,
                                const planning::BreadChain& chain,
                                const Stage& line,
                                const LineProgress& progress) {
    if (line.attention != Attention::near || progress.told_begun) {
        return std::nullopt;
    }
    for (const planning::OvenOn& oven : chain.ovens) {
        const bool here = oven.bake >= line.first_part && oven.bake < line.last_part;
        const Instant on = later_by_minutes(bread.parts[oven.bake].start, -oven.before_minutes);
        if (here && on > *progress.begun) {
            return later_by_minutes(*progress.begun, chain.heat_minutes);
        }
    }
    return std::nullopt;
}

schedule::Task fixed_at(std::int64_t mark) {
    schedule::Task task;
    task.start_from = mark;
    task.start_to = mark;
    return task;
}

// Whoever works now is there, whatever the day said; what lies behind us forbids nothing.
Day day_from(const Day& day, Instant plan_start, Instant now, Instant busy_until) {
    Day rest = day;
    rest.now = std::min(plan_start, now);
    rest.windows.clear();
    for (PresenceWindow window : day.windows) {
        if (window.from <= now) {
            window.from = std::max(now, busy_until);
        }
        if (window.from < window.to) {
            rest.windows.push_back(window);
        }
    }
    rest.oven_claims.clear();
    for (OvenClaim claim : day.oven_claims) {
        if (claim.from <= now) {
            claim.from = std::max(now, busy_until);
        }
        if (claim.from < claim.to) {
            rest.oven_claims.push_back(claim);
        }
    }
    return rest;
}

Instant
busy_until(const planning::Breads& breads, const std::vector<BreadStand>& stands, Instant now) {
    Instant until = now;
    for (std::size_t b = 0; b < stands.size(); ++b) {
        const auto& running = stands[b].running;
        if (running && breads.breads[b].chain.atoms[*running].attention != Attention::wait) {
            until = std::max(until, stands[b].ends[*running]);
        }
    }
    return until;
}

// A cold oven is not hot sooner because the dough is early.
void heat_first(schedule::Job& job,
                const planning::Bread& bread,
                const Plan& plan,
                Instant now,
                std::int64_t now_mark) {
    for (const planning::OvenOn& oven : bread.chain.ovens) {
        const Instant on = later_by_minutes(plan.parts[oven.bake].start, -oven.before_minutes);
        schedule::Task& bake = job.tasks[oven.bake];
        if (on > now && bake.oven) {
            bake.start_from =
                std::max(bake.start_from.value_or(0), now_mark + bread.chain.heat_minutes);
        }
    }
}

} // namespace

BreadStand stand_of(const Plan& bread,
                    const planning::BreadChain& chain,
                    const BreadProgress& progress,
                    Instant now) {
    BreadStand stand;
    for (const PlanPart& part : bread.parts) {
        stand.starts.push_back(part.start);
        stand.ends.push_back(part.end);
    }
    for (std::size_t s = 0; s < bread.stages.size(); ++s) {
        const Stage& line = bread.stages[s];
        if (line.first_part >= line.last_part || line.last_part > bread.parts.size()) {
            continue;
        }
        if (progress[s].done && *progress[s].done <= now) {
            stand_done(stand, bread, line, *progress[s].begun, *progress[s].done);
        } else if (progress[s].begun && *progress[s].begun <= now) {
            if (const auto hot = hot_from(bread, chain, line, progress[s])) {
                const std::int64_t shift =
                    minutes_between(bread.parts[line.first_part].start, *hot);
                for (std::size_t k = line.first_part; k < line.last_part; ++k) {
                    stand.starts[k] = later_by_minutes(bread.parts[k].start, shift);
                }
                continue;
            }
            stand_begun(stand, bread, chain, line, progress[s], now);
        }
    }
    // What comes after an early dough comes sooner by as much, up to the next wait whose length the
    // plan chooses: a night takes it up.
    const std::size_t last = stand.first_ahead;
    if (last == 0 || last > bread.parts.size()) {
        return stand;
    }
    const std::int64_t early =
        std::max<std::int64_t>(0, minutes_between(stand.ends[last - 1], bread.parts[last - 1].end));
    for (std::size_t k = last; k < bread.parts.size(); ++k) {
        if (stand.starts[k] == bread.parts[k].start) {
            stand.starts[k] = later_by_minutes(bread.parts[k].start, -early);
        }
    }
    return stand;
}

planning::SharedProblem rest_problem(const planning::Breads& breads,
                                     const std::vector<const Plan*>& plans,
                                     const std::vector<BreadStand>& stands,
                                     const Day& day,
                                     Instant now,
                                     Insist insist) {
    Instant plan_start = plans.front()->start;
    for (const Plan* plan : plans) {
        plan_start = std::min(plan_start, plan->start);
    }
    const Day rest_of_day = day_from(day, plan_start, now, busy_until(breads, stands, now));
    planning::SharedTarget target;
    target.aim = schedule::Aim::end_early;
    target.start_from = plan_start;
    target.start_to = plan_start;
    const planning::Rules rules =
        insist == Insist::nothing ? planning::Rules{false, false, false} : planning::Rules{};
    planning::SharedProblem rest =
        planning::problem_of(breads, rest_of_day, rules, target, planning::OvenUseRules{});
    rest.wish = {schedule::Aim::end_early, std::nullopt, std::nullopt};
    const Frame& frame = rest.frame;
    const std::int64_t now_mark = planning::ceil_mark(frame.origin, now);
    for (std::size_t b = 0; b < stands.size(); ++b) {
        const BreadStand& stand = stands[b];
        schedule::Job& job = rest.problem.jobs[b];
        job.not_before = now_mark;
        std::int64_t sooner = 0; // by how much the dough is early
        for (std::size_t k = 0; k < job.tasks.size(); ++k) {
            schedule::Task& task = job.tasks[k];
            if (stand.running == k) {
                const std::int64_t end =
                    std::max(now_mark, planning::ceil_mark(frame.origin, stand.ends[k]));
                task.minutes = {end - now_mark, end - now_mark, end - now_mark};
                task.stretch.reset();
                task.start_from = task.start_to = now_mark;
            } else if (k < stand.first_ahead) {
                task = fixed_at(now_mark);
            } else {
                if (stand.share_of_wait != 1.0 && k < stand.line_end && !task.stretch) {
                    const std::int64_t length = minutes_between(stand.starts[k], stand.ends[k]);
                    task.minutes = {length, length, length};
                }
                const std::int64_t from =
                    std::max(now_mark, planning::ceil_mark(frame.origin, stand.starts[k]) + sooner);
                task.start_from = from;
                const bool soon = stand.starts[k] == plans[b]->parts[k].start &&
                                  minutes_between(now, stand.starts[k]) <= told_soon_minutes;
                if (insist == Insist::told_soon && soon) {
                    task.start_to = from;
                }
            }
            if (task.stretch) {
                // A night ends when it was to end, however early it began.
                sooner = std::max<std::int64_t>(
                    0, minutes_between(stand.starts[k], plans[b]->parts[k].start));
            }
        }
        for (schedule::Lag& lag : job.lags) {
            const bool over = lag.after < stand.first_ahead && stand.running != lag.after;
            if (over || insist == Insist::people_only || insist == Insist::nothing) {
                lag.max.reset();
            }
            if (over) {
                lag.good.reset();
            }
        }
        heat_first(job, breads.breads[b], *plans[b], now, now_mark);
    }
    return rest;
}

std::vector<planning::Placed> placed_rest(const planning::SharedProblem& rest,
                                          const schedule::Schedule& schedule,
                                          const std::vector<BreadStand>& stands) {
    std::vector<planning::Placed> all;
    for (std::size_t b = 0; b < stands.size(); ++b) {
        const schedule::JobSchedule& job = schedule.jobs[b];
        planning::Placed placed{rest.frame, job.starts, job.ends, job.people, {}};
        const auto minute = [&rest](Instant moment) {
            return minutes_between(rest.frame.origin, moment);
        };
        for (std::size_t k = 0; k < stands[b].first_ahead; ++k) {
            placed.starts[k] = minute(stands[b].starts[k]);
            if (stands[b].running != k) {
                placed.ends[k] = minute(stands[b].ends[k]);
            }
        }
        all.push_back(std::move(placed));
    }
    return all;
}

} // namespace loafwright::following
