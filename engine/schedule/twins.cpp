// SPDX-License-Identifier: Apache-2.0
//
// Exchanging the entries of two twins a, b (a settled before b) in a schedule keeps every rule and
// every objective: both have the same tasks, lags, alternatives and anchors, and no objective looks
// at names. The tie rule picks the least vector of ways in the order of the jobs, and among those
// the greatest vector of starts (the least, for the aims that end early). So in what it picks
// way(a) <= way(b): otherwise the exchange had a lesser vector of ways. And where way(a) = way(b),
// the starts of a, task by task, are not less than those of b (not greater), by the same exchange;
// of this, that the first task of a starts no sooner (no later) is asked. Both hold for every two
// neighbours at once, since they hold in the one schedule that is picked. (Crawford, Ginsberg,
// Luks, Roy, "Symmetry-breaking predicates for search problems", KR 1996.)
#include "engine/schedule/twins.hpp"

#include <algorithm>
#include <tuple>

namespace loafwright::schedule::sat {

namespace {

template <typename Item, typename Same>
bool alike(const std::vector<Item>& a, const std::vector<Item>& b, const Same& same) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), same);
}

std::tuple<std::int64_t, std::int64_t, std::int64_t> numbers(const Length& length) {
    return {length.low, length.likely, length.high};
}

std::pair<std::int64_t, std::int64_t> numbers(const std::optional<Stretch>& stretch) {
    return stretch ? std::pair(stretch->min, stretch->max)
                   : std::pair<std::int64_t, std::int64_t>(-1, -1);
}

std::pair<int, int> numbers(const std::optional<OvenUse>& use) {
    return use ? std::pair(use->slots, use->temperature) : std::pair(-1, -1);
}

bool same_task(const Task& a, const Task& b) {
    const auto key = [](const Task& task) {
        return std::tuple(task.kind,
                          numbers(task.minutes),
                          task.stretch.has_value(),
                          numbers(task.stretch),
                          task.fridge,
                          task.oven.has_value(),
                          numbers(task.oven),
                          task.leave,
                          task.start_from,
                          task.start_to);
    };
    return key(a) == key(b);
}

bool same_lag(const Lag& a, const Lag& b) {
    const auto key = [](const Lag& lag) {
        return std::tuple(lag.after, lag.before, lag.min, lag.max, lag.good);
    };
    return key(a) == key(b);
}

bool same_change(const TaskChange& a, const TaskChange& b) {
    const auto key = [](const TaskChange& change) {
        return std::tuple(change.task,
                          change.minutes.has_value(),
                          numbers(change.minutes.value_or(Length{})),
                          change.changes_stretch,
                          change.stretch.has_value(),
                          numbers(change.stretch),
                          change.fridge,
                          change.leave);
    };
    return key(a) == key(b);
}

bool same_lag_change(const LagChange& a, const LagChange& b) {
    const auto key = [](const LagChange& change) {
        return std::tuple(change.lag, change.min, change.max, change.good);
    };
    return key(a) == key(b);
}

bool same_alternative(const Alternative& a, const Alternative& b) {
    return a.weight == b.weight && alike(a.tasks, b.tasks, same_change) &&
           alike(a.lags, b.lags, same_lag_change);
}

bool same_job(const Job& a, const Job& b) {
    return a.not_before == b.not_before && a.ready_from == b.ready_from &&
           a.ready_by == b.ready_by && alike(a.tasks, b.tasks, same_task) &&
           alike(a.lags, b.lags, same_lag) &&
           alike(a.alternatives, b.alternatives, same_alternative);
}

} // namespace

std::vector<std::pair<std::size_t, std::size_t>> twins_of(const Problem& problem,
                                                          const std::vector<std::size_t>& order) {
    std::vector<std::pair<std::size_t, std::size_t>> twins;
    for (std::size_t a = 0; a < order.size(); ++a) {
        for (std::size_t b = a + 1; b < order.size(); ++b) {
            if (same_job(problem.jobs[order[a]], problem.jobs[order[b]])) {
                twins.emplace_back(order[a], order[b]);
                break;
            }
        }
    }
    return twins;
}

void order_twins(Clauses& clauses,
                 const Encoding& encoding,
                 const std::vector<std::pair<std::size_t, std::size_t>>& twins,
                 Aim aim) {
    for (const auto& [a, b] : twins) {
        const EncodedJob& first = encoding.jobs()[a];
        const EncodedJob& second = encoding.jobs()[b];
        // Twins are narrowed alike, so that their ways have the same numbers.
        for (std::size_t w = 0; w < first.ways.size(); ++w) {
            for (std::size_t lower = 0; lower < w; ++lower) {
                clauses.add({-first.ways[w], -second.ways[lower]});
            }
            const std::vector<Literal> unless{-first.ways[w], -second.ways[w]};
            const Moment& one = first.tasks.front().start;
            const Moment& other = second.tasks.front().start;
            if (aim == Aim::begin_late) {
                keep_apart(clauses, one, other, 0, unless);
            } else {
                keep_apart(clauses, other, one, 0, unless);
            }
        }
    }
}

} // namespace loafwright::schedule::sat
