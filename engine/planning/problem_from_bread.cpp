// SPDX-License-Identifier: Apache-2.0
//
// Bread in, calendar problem out, and back. All lengths are multiples of five and the origin lies
// on a full five minutes, so every start does too.
#include "engine/planning/problem_from_bread.hpp"

#include <algorithm>

namespace loafwright::planning {

namespace {

constexpr std::int64_t day_minutes = 1440;
// Hands that follow the oven ("brush with butter while hot") are not put off for long.
constexpr std::int64_t from_oven_to_hands = 10;

// More steps than a table can hold are still laid end to end where nobody's calendar says
// otherwise: that is then the best there is.
std::optional<Placed>
straight(const schedule::Problem& problem, const schedule::Wish& wish, const Frame& frame) {
    const schedule::Job& job = problem.jobs.front();
    const bool any_window =
        !problem.oven.claims.empty() ||
        std::any_of(problem.people.begin(),
                    problem.people.end(),
                    [](const schedule::Person& person) { return !person.windows.empty(); });
    if (any_window) {
        return std::nullopt;
    }
    std::int64_t length = 0;
    for (const schedule::Task& task : job.tasks) {
        length += task.stretch ? task.stretch->min : task.minutes.likely;
    }
    const std::int64_t earliest =
        std::max(job.not_before.value_or(0), wish.first_start_from.value_or(0));
    std::int64_t start = earliest;
    if (job.ready_by && wish.aim == schedule::Aim::begin_late) {
        start = *job.ready_by - length;
    } else if (job.ready_from) {
        start = std::max(start, *job.ready_from - length);
    }
    const bool fits = start >= earliest &&
                      (!wish.first_start_to || start <= *wish.first_start_to) &&
                      (!job.ready_by || start + length <= *job.ready_by) &&
                      (!job.ready_from || start + length >= *job.ready_from);
    if (!fits) {
        return std::nullopt;
    }
    Placed placed{frame, {}, {}, {}};
    for (const schedule::Task& task : job.tasks) {
        placed.starts.push_back(start);
        start += task.stretch ? task.stretch->min : task.minutes.likely;
        placed.ends.push_back(start);
    }
    return placed;
}

} // namespace

schedule::Job job_of(const BreadChain& chain) {
    schedule::Job job;
    for (std::size_t k = 0; k < chain.atoms.size(); ++k) {
        const Atom& atom = chain.atoms[k];
        schedule::Task task;
        task.minutes = {atom.planned, atom.planned, atom.planned};
        task.kind = atom.attention == Attention::hands  ? schedule::TaskKind::hands
                    : atom.attention == Attention::near ? schedule::TaskKind::oven
                                                        : schedule::TaskKind::wait;
        if (atom.attention == Attention::near) {
            task.oven = schedule::OvenUse{1, 0};
        }
        if (atom.stretch) {
            task.stretch = schedule::Stretch{atom.planned, atom.planned_most};
        }
        task.leave = atom.leave;
        job.tasks.push_back(task);
        if (k + 1 == chain.atoms.size()) {
            break;
        }
        schedule::Lag lag{k, k + 1, 0, atom.holds, std::nullopt};
        if (atom.attention == Attention::near && !atom.holds) {
            lag.max = chain.atoms[k + 1].attention == Attention::hands ? from_oven_to_hands : 0;
        }
        if (lag.max) {
            lag.good = 0;
        }
        job.lags.push_back(lag);
    }
    return job;
}

std::int64_t longest_sum(const BreadChain& chain) {
    std::int64_t sum = 0;
    for (const Atom& atom : chain.atoms) {
        sum += std::max(atom.planned, atom.planned_most);
    }
    return sum;
}

Frame frame_of(std::int64_t longest_minutes, const Day& day, const Target& target) {
    Frame frame;
    const std::int64_t needed = longest_minutes + 2 * day_minutes;
    const Instant now_mark = full_five_before(day.zone, day.now);
    Instant first = now_mark;
    const bool fixed =
        target.start_from && target.start_to && *target.start_from == *target.start_to;
    if (target.start_from && *target.start_from > first) {
        first = fixed ? *target.start_from : full_five_before(day.zone, *target.start_from);
    }
    if (target.ready_by) {
        // Long before the wish nothing that matters can happen.
        const Instant earliest = full_five_before(
            day.zone, later_by_minutes(*target.ready_by, -needed - 2 * day_minutes));
        first = std::max(first, earliest);
    }
    if (fixed) {
        first = *target.start_from; // an exact start is kept to the second
    }
    // A day before, so that heating and windows that began earlier are seen.
    frame.origin = later_by_minutes(first, -day_minutes);
    Instant last = later_by_minutes(first, needed);
    if (target.ready_by && *target.ready_by > last) {
        last = *target.ready_by;
    }
    frame.horizon =
        std::min<std::int64_t>(ceil_mark(frame.origin, last), schedule::longest_horizon_minutes);
    frame.now = ceil_mark(frame.origin, day.now);
    if (fixed) {
        frame.now = std::min(frame.now, ceil_mark(frame.origin, *target.start_from));
    }
    return frame;
}

schedule::Problem problem_of(const BreadChain& chain,
                             const Day& day,
                             const Rules& rules,
                             const Target& target,
                             const Frame& frame) {
    schedule::Problem problem;
    problem.horizon = frame.horizon;
    problem.jobs = {job_of(chain)};
    problem.people = people_of(day, rules, frame);
    // Somebody is awake at home for as long as any of its bakes has the oven on beforehand.
    std::int64_t watched = chain.on_before_bake;
    for (const OvenOn& oven : chain.ovens) {
        watched = std::max(watched, oven.hot_at ? 0 : oven.before_minutes);
    }
    problem.oven.heat_up = {{0, watched}};
    problem.oven.claims = claims_of(day, rules, frame);
    schedule::Job& job = problem.jobs.front();
    job.not_before = std::max<std::int64_t>(0, frame.now);
    if (target.ready_from) {
        job.ready_from = ceil_mark(frame.origin, *target.ready_from);
    }
    if (target.ready_by) {
        job.ready_by = floor_mark(frame.origin, *target.ready_by);
    }
    return problem;
}

std::optional<Placed>
place(const BreadChain& chain, const Day& day, const Rules& rules, const Target& target) {
    if (chain.atoms.empty() ||
        longest_sum(chain) + 4 * day_minutes > schedule::longest_horizon_minutes) {
        return std::nullopt;
    }
    Placed placed;
    placed.frame = frame_of(longest_sum(chain), day, target);
    schedule::Wish wish;
    wish.aim = target.aim;
    if (target.start_from) {
        wish.first_start_from =
            std::max<std::int64_t>(0, ceil_mark(placed.frame.origin, *target.start_from));
    }
    if (target.start_to) {
        wish.first_start_to = floor_mark(placed.frame.origin, *target.start_to);
    }
    if (wish.first_start_to && *wish.first_start_to < 0) {
        return std::nullopt;
    }
    const schedule::Problem problem = problem_of(chain, day, rules, target, placed.frame);
    const schedule::Outcome outcome = schedule::solve_chain(problem, wish);
    if (std::holds_alternative<schedule::OutOfReach>(outcome)) {
        return straight(problem, wish, placed.frame);
    }
    if (!std::holds_alternative<schedule::Solved>(outcome)) {
        return std::nullopt;
    }
    const schedule::JobSchedule& times = std::get<schedule::Solved>(outcome).schedule.jobs.front();
    placed.starts = times.starts;
    placed.ends = times.ends;
    placed.people = times.people;
    return placed;
}

} // namespace loafwright::planning
