// SPDX-License-Identifier: Apache-2.0
//
// From a problem to one line of tasks on a grid. Bounds come first (longest paths along the line,
// both ways): they shrink the table that the sweep has to fill, and say of most impossible
// alternatives at once that they are dead. The grid is the greatest common divisor of all numbers
// that matter. With every choice made, what remains is a system of differences whose right-hand
// sides are multiples of the grid and whose corners therefore are, too.
#include "engine/schedule/chain.hpp"

#include <algorithm>
#include <numeric>

namespace loafwright::schedule::chain {

namespace {

Diagnostic not_a_chain(const std::string& what) {
    return {"usage",
            Severity::error,
            what,
            "",
            "give one job whose steps follow each other in one line"};
}

std::int64_t floor_div(std::int64_t value, std::int64_t by) {
    const std::int64_t quotient = value / by;
    return value % by < 0 ? quotient - 1 : quotient;
}

std::int64_t ceil_div(std::int64_t value, std::int64_t by) {
    return -floor_div(-value, by);
}

std::int64_t heat_of(const Oven& oven, int temperature) {
    const auto row =
        std::find_if(oven.heat_up.rbegin(), oven.heat_up.rend(), [&](const HeatUp& candidate) {
            return candidate.temperature == temperature;
        });
    return row == oven.heat_up.rend() ? 0 : row->minutes;
}

std::int64_t changeover_of(const Oven& oven, int from, int to) {
    if (from == to) {
        return 0;
    }
    const auto row = std::find_if(
        oven.changeover.rbegin(), oven.changeover.rend(), [&](const Changeover& candidate) {
            return candidate.from == from && candidate.to == to;
        });
    return row == oven.changeover.rend() ? 0 : row->minutes;
}

// The next cell >= t at which `good` is false, for every t.
std::vector<std::int32_t> until_table(const std::vector<bool>& good) {
    std::vector<std::int32_t> until(good.size() + 1, static_cast<std::int32_t>(good.size()));
    for (std::size_t t = good.size(); t-- > 0;) {
        until[t] = good[t] ? until[t + 1] : static_cast<std::int32_t>(t);
    }
    return until;
}

// Marks the cells that [from, to) touches, whatever the number of windows, in one pass at the end.
class Painter {
public:
    Painter(std::int64_t cells, std::int64_t grid)
        : cells_(cells), grid_(grid), steps_(static_cast<std::size_t>(cells) + 1, 0) {}

    void paint(std::int64_t from, std::int64_t to) {
        const std::int64_t first = std::clamp<std::int64_t>(floor_div(from, grid_), 0, cells_);
        const std::int64_t last = std::clamp<std::int64_t>(ceil_div(to, grid_), 0, cells_);
        if (from < to && first < last) {
            ++steps_[static_cast<std::size_t>(first)];
            --steps_[static_cast<std::size_t>(last)];
        }
    }

    [[nodiscard]] std::vector<bool> unpainted() const {
        std::vector<bool> clear(static_cast<std::size_t>(cells_), true);
        std::int64_t depth = 0;
        for (std::size_t t = 0; t < clear.size(); ++t) {
            depth += steps_[t];
            clear[t] = depth == 0;
        }
        return clear;
    }

private:
    std::int64_t cells_;
    std::int64_t grid_;
    std::vector<std::int64_t> steps_;
};

struct Chosen {
    std::vector<Task> tasks;
    std::vector<Lag> lags;
};

Chosen under(const Job& job, const Order& order, std::size_t alternative) {
    Chosen chosen{job.tasks, job.lags};
    for (const TaskChange& change : job.alternatives[alternative].tasks) {
        Task& task = chosen.tasks[change.task];
        task.minutes = change.minutes.value_or(task.minutes);
        task.stretch = change.changes_stretch ? change.stretch : task.stretch;
        task.fridge = change.fridge.value_or(task.fridge);
        task.leave = change.leave.value_or(task.leave);
    }
    for (const LagChange& change : job.alternatives[alternative].lags) {
        Lag& lag = chosen.lags[change.lag];
        lag.min = change.min;
        lag.max = change.max;
        lag.good = change.good;
    }
    Chosen in_order;
    for (const std::size_t task : order.tasks) {
        in_order.tasks.push_back(chosen.tasks[task]);
    }
    for (const std::size_t lag : order.lags) {
        in_order.lags.push_back(chosen.lags[lag]);
    }
    return in_order;
}

// Changeovers: neighbours become a longer least lag; further apart they matter only where the tasks
// between could be over sooner. Pairs of consecutive oven tasks suffice because the table keeps the
// triangle inequality.
void keep_changeovers(const Oven& oven, std::int64_t grid, std::vector<Link>& links) {
    std::optional<std::size_t> last;
    for (std::size_t j = 0; j < links.size(); ++j) {
        if (!links[j].oven) {
            continue;
        }
        if (last) {
            Link& before = links[*last];
            const std::int64_t between =
                ceil_div(changeover_of(oven, before.temperature, links[j].temperature), grid);
            std::int64_t shortest = before.lag_min;
            for (std::size_t k = *last + 1; k < j; ++k) {
                shortest += links[k].least + links[k].lag_min;
            }
            if (between > shortest && j == *last + 1) {
                before.lag_min = between;
            } else if (between > shortest) {
                before.next_oven = j;
                before.changeover = between;
            }
        }
        last = j;
    }
}

void bound(Line& line,
           std::int64_t horizon,
           std::int64_t not_before,
           std::int64_t first_from,
           std::int64_t first_to) {
    std::vector<Link>& links = line.links;
    std::int64_t earliest = std::max<std::int64_t>({0, not_before, first_from});
    std::int64_t latest = first_to;
    for (std::size_t i = 0; i < links.size(); ++i) {
        Link& link = links[i];
        earliest = std::max(
            {earliest, link.own_from, link.oven ? std::max(not_before, link.heat) : not_before});
        latest = std::min(latest, link.own_to);
        link.from = earliest;
        link.to = std::min(horizon, latest);
        earliest += link.least + link.lag_min;
        latest = std::min(horizon, latest + link.most + link.lag_max);
    }
    std::int64_t end = line.ready_by;
    for (std::size_t i = links.size(); i-- > 0;) {
        Link& link = links[i];
        link.to = std::min(link.to, end - link.least);
        line.dead = line.dead || link.from > link.to || link.lag_min > link.lag_max;
        if (i > 0) {
            end = link.to - links[i - 1].lag_min;
        }
    }
}

} // namespace

tl::expected<Order, Diagnostic> order_of(const Problem& problem) {
    if (problem.jobs.size() != 1) {
        return tl::unexpected(
            not_a_chain("found " + std::to_string(problem.jobs.size()) + " jobs, expected one"));
    }
    const Job& job = problem.jobs.front();
    const std::size_t count = job.tasks.size();
    if (job.lags.size() + 1 != count) {
        return tl::unexpected(not_a_chain("found " + std::to_string(job.lags.size()) +
                                          " lags between " + std::to_string(count) +
                                          " steps, expected one fewer than steps"));
    }
    const std::size_t none = count;
    std::vector<std::size_t> lag_out(count, none);
    std::vector<bool> has_before(count, false);
    for (std::size_t l = 0; l < job.lags.size(); ++l) {
        const Lag& lag = job.lags[l];
        if (lag_out[lag.after] != none || has_before[lag.before]) {
            return tl::unexpected(not_a_chain(
                "step " + std::to_string(has_before[lag.before] ? lag.before : lag.after) +
                " has two neighbours on one side"));
        }
        lag_out[lag.after] = l;
        has_before[lag.before] = true;
    }
    for (const Alternative& alternative : job.alternatives) {
        for (const LagChange& change : alternative.lags) {
            if (change.min < 0) {
                return tl::unexpected(not_a_chain("a lag below zero lets two steps overlap"));
            }
        }
    }
    for (const Lag& lag : job.lags) {
        if (lag.min < 0) {
            return tl::unexpected(not_a_chain("a lag below zero lets two steps overlap"));
        }
    }
    const auto first = std::find(has_before.begin(), has_before.end(), false);
    Order order;
    std::size_t here = static_cast<std::size_t>(first - has_before.begin());
    while (here < count && order.tasks.size() < count) {
        order.tasks.push_back(here);
        if (lag_out[here] == none) {
            break;
        }
        order.lags.push_back(lag_out[here]);
        here = job.lags[lag_out[here]].before;
    }
    if (order.tasks.size() != count || order.tasks.back() + 1 != count) {
        return tl::unexpected(
            not_a_chain("the lags do not lead through every step to the last one"));
    }
    return order;
}

std::int64_t grid_of(const Problem& problem,
                     const std::optional<std::int64_t>& from,
                     const std::optional<std::int64_t>& to) {
    std::int64_t grid = 0;
    const auto add = [&grid](std::int64_t value) { grid = std::gcd(grid, value); };
    // What lies outside the horizon cuts nothing.
    const auto add_moment = [&](std::int64_t value) {
        if (value > 0 && value < problem.horizon) {
            add(value);
        }
    };
    const auto add_optional = [&](const std::optional<std::int64_t>& value) {
        if (value) {
            add(*value);
        }
    };
    const auto add_length = [&](const Length& length, const std::optional<Stretch>& stretch) {
        if (stretch) {
            add(stretch->min);
            add(stretch->max);
        } else {
            add(length.likely);
        }
    };
    for (const Person& person : problem.people) {
        for (const Window& window : person.windows) {
            add_moment(window.from);
            add_moment(window.to);
        }
    }
    for (const RatherNot& span : problem.rather_not) {
        add_moment(span.from);
        add_moment(span.to);
    }
    for (const HeatUp& row : problem.oven.heat_up) {
        add(row.minutes);
    }
    for (const Changeover& row : problem.oven.changeover) {
        add(row.minutes);
    }
    for (const Claim& claim : problem.oven.claims) {
        add(claim.from);
        add(claim.to);
    }
    add_optional(from);
    add_optional(to);
    for (const Job& job : problem.jobs) {
        add_optional(job.not_before);
        add_optional(job.ready_from);
        add_optional(job.ready_by);
        for (const Task& task : job.tasks) {
            add_length(task.minutes, task.stretch);
            add_optional(task.start_from);
            add_optional(task.start_to);
        }
        for (const Lag& lag : job.lags) {
            add(lag.min);
            add_optional(lag.max);
            add_optional(lag.good);
        }
        for (const Alternative& alternative : job.alternatives) {
            for (const TaskChange& change : alternative.tasks) {
                add_length(change.minutes.value_or(job.tasks[change.task].minutes), change.stretch);
                add(change.minutes.value_or(job.tasks[change.task].minutes).likely);
            }
            for (const LagChange& change : alternative.lags) {
                add(change.min);
                add_optional(change.max);
                add_optional(change.good);
            }
        }
    }
    // A start as late as the horizon allows is a multiple of the grid only if the horizon is.
    add(problem.horizon);
    return grid;
}

Calendar calendar_of(const Problem& problem, std::int64_t grid) {
    Calendar calendar;
    calendar.horizon = problem.horizon / grid;
    const auto cells = static_cast<std::size_t>(calendar.horizon);
    std::vector<bool> watched(cells, false);
    calendar.somebody_free_until.resize(cells + 1);
    for (std::size_t t = 0; t <= cells; ++t) {
        calendar.somebody_free_until[t] = static_cast<std::int32_t>(t);
    }
    for (const Person& person : problem.people) {
        Painter any(calendar.horizon, grid);
        Painter gone(calendar.horizon, grid);
        for (const Window& window : person.windows) {
            any.paint(window.from, window.to);
            if (window.state != WindowState::busy) {
                gone.paint(window.from, window.to);
            }
        }
        calendar.free_until.push_back(until_table(any.unpainted()));
        const std::vector<bool> here = gone.unpainted();
        for (std::size_t t = 0; t < cells; ++t) {
            watched[t] = watched[t] || here[t];
        }
        for (std::size_t t = 0; t <= cells; ++t) {
            calendar.somebody_free_until[t] =
                std::max(calendar.somebody_free_until[t], calendar.free_until.back()[t]);
        }
    }
    calendar.watched_until = until_table(watched);
    Painter minded(calendar.horizon, grid);
    for (const RatherNot& span : problem.rather_not) {
        minded.paint(span.from, span.to);
    }
    calendar.welcome_until = until_table(minded.unpainted());
    return calendar;
}

Line line_of(const Problem& problem,
             const Order& order,
             std::size_t alternative,
             std::int64_t grid,
             const std::optional<std::int64_t>& first_from,
             const std::optional<std::int64_t>& first_to) {
    const Job& job = problem.jobs.front();
    const Chosen chosen = under(job, order, alternative);
    const std::int64_t horizon = problem.horizon / grid;
    Line line;
    line.weight = job.alternatives[alternative].weight;
    line.ready_by = job.ready_by ? std::min(horizon, floor_div(*job.ready_by, grid)) : horizon;
    if (job.ready_from) {
        line.ready_from = ceil_div(*job.ready_from, grid);
    }
    line.claims.resize(chosen.tasks.size());
    for (std::size_t i = 0; i < chosen.tasks.size(); ++i) {
        const Task& task = chosen.tasks[i];
        Link link;
        link.least = ceil_div(task.stretch ? task.stretch->min : task.minutes.likely, grid);
        link.most = floor_div(task.stretch ? task.stretch->max : task.minutes.likely, grid);
        link.hands = task.kind == TaskKind::hands;
        link.oven = task.oven.has_value();
        link.tied = !task.leave;
        link.own_from = ceil_div(task.start_from.value_or(0), grid);
        link.own_to = task.start_to ? floor_div(*task.start_to, grid) : horizon;
        // A step of no length uses nothing: no minute finds it.
        const bool too_large = task.fridge > problem.fridge.slots ||
                               (task.oven && task.oven->slots > problem.oven.slots);
        if (too_large) {
            link.most = 0;
        }
        line.dead = line.dead || link.least > link.most;
        if (task.oven) {
            link.temperature = task.oven->temperature;
            link.heat = ceil_div(heat_of(problem.oven, link.temperature), grid);
            for (const Claim& claim : problem.oven.claims) {
                const std::int64_t settle =
                    claim.temperature
                        ? changeover_of(problem.oven, *claim.temperature, link.temperature)
                        : heat_of(problem.oven, link.temperature);
                line.claims[i].push_back(
                    {floor_div(claim.from, grid), ceil_div(claim.to + settle, grid)});
            }
        }
        if (i + 1 < chosen.tasks.size()) {
            const Lag& lag = chosen.lags[i];
            link.lag_min = ceil_div(lag.min, grid);
            link.lag_max = lag.max ? std::min(horizon, floor_div(*lag.max, grid)) : horizon;
            if (lag.good) {
                link.lag_good = floor_div(*lag.good, grid);
            }
            link.lag_tied = !task.leave && !chosen.tasks[i + 1].leave;
        }
        line.links.push_back(link);
    }
    keep_changeovers(problem.oven, grid, line.links);
    // A first start outside the horizon is impossible, not an overflow.
    const std::int64_t from = first_from ? ceil_div(*first_from, grid) : 0;
    const std::int64_t to = first_to ? floor_div(*first_to, grid) : horizon;
    bound(line,
          horizon,
          job.not_before ? std::max<std::int64_t>(0, ceil_div(*job.not_before, grid)) : 0,
          from,
          to);
    return line;
}

} // namespace loafwright::schedule::chain
