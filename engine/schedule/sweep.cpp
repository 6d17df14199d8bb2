// SPDX-License-Identifier: Apache-2.0
//
// The exact dynamic programme over (task, cell). Backwards, f_i(t) is the least cost of doing tasks
// i, i+1, … when task i starts at t, and g_i(e) the same when task i ends at e:
//
//   g_i(e) = min over s in [e + lag_min, e + lag_max] of lag cost (e, s) + f_{i+1}(s)
//   f_i(t) = min over e in [t + least, t + most]      of task cost (t, e) + g_i(e)
//
// Both are minima over a window that slides with t, found in constant time a cell by a queue of
// falling candidates; a wait that ties somebody costs its length, which is added before the minimum
// and taken off after it. Only tasks that meet a calendar and may stretch look at each length one
// by one. Two oven tasks of different temperature with short tasks between them need one more thing
// to be remembered, the first one's end: for those the part between is swept once for each end.
#include "engine/schedule/sweep.hpp"

#include <algorithm>

namespace loafwright::schedule::chain {

namespace {

Cost plus(Cost a, Cost b) {
    return a == no_way || b == no_way ? no_way : a + b;
}

// For each x in [first, last]: the least of values over [x + low, x + high], no_way where that is
// empty.
std::vector<Cost> window_minima(const Table& values,
                                std::int64_t first,
                                std::int64_t last,
                                std::int64_t low,
                                std::int64_t high) {
    if (first > last) {
        return {};
    }
    std::vector<Cost> minima(static_cast<std::size_t>(last - first + 1), no_way);
    if (low > high || values.costs.empty()) {
        return minima;
    }
    std::vector<std::int64_t> queue; // positions falling, costs rising from `head` on
    queue.reserve(values.costs.size());
    std::size_t head = 0;
    std::int64_t next = std::min(values.to(), last + high);
    for (std::int64_t x = last; x >= first; --x) {
        for (; next >= std::max(x + low, values.from); --next) {
            const Cost cost = values.at(next);
            while (queue.size() > head && values.at(queue.back()) >= cost) {
                queue.pop_back();
            }
            queue.push_back(next);
        }
        while (head < queue.size() && queue[head] > x + high) {
            ++head;
        }
        if (head < queue.size()) {
            minima[static_cast<std::size_t>(x - first)] = values.at(queue[head]);
        }
    }
    return minima;
}

// values(t) + sign * t where `on`.
Table tilted(const Table& values, bool on, std::int64_t sign) {
    Table result = values;
    if (on) {
        for (std::size_t k = 0; k < result.costs.size(); ++k) {
            if (result.costs[k] != no_way) {
                result.costs[k] += sign * (result.from + static_cast<std::int64_t>(k));
            }
        }
    }
    return result;
}

} // namespace

Sweep::Sweep(const Line& line, const Calendar& calendar, Aim aim)
    : line_(line), calendar_(calendar), aim_(aim) {}

std::int64_t Sweep::work(const Line& line) {
    std::int64_t cells = 0;
    for (std::size_t i = 0; i < line.links.size(); ++i) {
        const Link& link = line.links[i];
        const std::int64_t starts = std::max<std::int64_t>(0, link.to - link.from + 1);
        const bool each_length = (link.hands || link.oven) && link.most > link.least;
        const std::int64_t lengths =
            each_length ? std::min(link.most - link.least + 1, most_cells_a_task) : 1;
        cells += starts * lengths;
        if (link.next_oven > 0) {
            std::int64_t between = 0;
            for (std::size_t k = i + 1; k <= link.next_oven; ++k) {
                between += std::max<std::int64_t>(0, line.links[k].to - line.links[k].from + 1);
            }
            cells += (starts + lengths) * between;
        }
    }
    return cells;
}

Cost Sweep::last_end(std::int64_t end) const {
    if (end > line_.ready_by || (line_.ready_from && end < *line_.ready_from)) {
        return no_way;
    }
    return aim_ == Aim::begin_late ? 0 : end * one_end;
}

Cost Sweep::of_task(std::size_t i, std::int64_t start, std::int64_t end) const {
    const Link& link = line_.links[i];
    Cost cost = link.tied ? end - start : 0;
    const auto at = static_cast<std::size_t>(start);
    if (link.hands) {
        if (calendar_.somebody_free_until[at] < end || calendar_.free_until.empty()) {
            return no_way;
        }
        cost += calendar_.welcome_until[at] < end ? one_violation : 0;
    }
    if (link.oven) {
        if (start < link.heat ||
            calendar_.watched_until[static_cast<std::size_t>(start - link.heat)] < end) {
            return no_way;
        }
        for (const Blocked& claim : line_.claims[i]) {
            if (end > claim.from && start < claim.until) {
                return no_way;
            }
        }
    }
    return cost;
}

Cost Sweep::of_lag(std::size_t i, std::int64_t end, std::int64_t next_start) const {
    const Link& link = line_.links[i];
    const std::int64_t gap = next_start - end;
    if (gap < link.lag_min || gap > link.lag_max) {
        return no_way;
    }
    return (link.lag_tied ? gap : 0) + (link.lag_good && gap > *link.lag_good ? one_violation : 0);
}

Table Sweep::ends_before(std::size_t i, const Table& next_starts) const {
    const Link& link = line_.links[i];
    Table ends;
    ends.from = link.from + link.least;
    const std::int64_t last = std::min(link.to + std::min(link.most, calendar_.horizon),
                                       line_.links[i + 1].to - link.lag_min);
    if (last < ends.from) {
        return ends;
    }
    const Table costs = tilted(next_starts, link.lag_tied, 1);
    const std::int64_t good = link.lag_good ? std::min(*link.lag_good, link.lag_max) : link.lag_max;
    ends.costs = window_minima(costs, ends.from, last, link.lag_min, good);
    if (good < link.lag_max) {
        const std::vector<Cost> late =
            window_minima(costs, ends.from, last, std::max(link.lag_min, good + 1), link.lag_max);
        for (std::size_t k = 0; k < late.size(); ++k) {
            ends.costs[k] = std::min(ends.costs[k], plus(late[k], one_violation));
        }
    }
    return tilted(ends, link.lag_tied, -1);
}

Table Sweep::starts_before(std::size_t i, const Table& ends) const {
    const Link& link = line_.links[i];
    Table starts;
    starts.from = link.from;
    if (link.from > link.to) {
        return starts;
    }
    if (!link.hands && !link.oven) {
        starts.costs =
            window_minima(tilted(ends, link.tied, 1), link.from, link.to, link.least, link.most);
        return tilted(starts, link.tied, -1);
    }
    starts.costs.assign(static_cast<std::size_t>(link.to - link.from + 1), no_way);
    for (std::int64_t t = link.from; t <= link.to; ++t) {
        Cost& best = starts.costs[static_cast<std::size_t>(t - link.from)];
        const std::int64_t last = std::min({t + link.most, calendar_.horizon, ends.to()});
        for (std::int64_t e = t + link.least; e <= last; ++e) {
            if (ends.at(e) != no_way) {
                best = std::min(best, plus(of_task(i, t, e), ends.at(e)));
            }
        }
    }
    return starts;
}

// Starts of the tasks i + 1 … next_oven when task i ends at `end`; index 0 is task i + 1.
std::vector<Table> Sweep::through_changeover(std::size_t i, std::int64_t end) const {
    const std::size_t oven = line_.links[i].next_oven;
    std::vector<Table> tables(oven - i);
    Table masked = starts_[oven];
    for (std::size_t k = 0; k < masked.costs.size(); ++k) {
        if (masked.from + static_cast<std::int64_t>(k) < end + line_.links[i].changeover) {
            masked.costs[k] = no_way;
        }
    }
    tables.back() = masked;
    for (std::size_t k = oven; k-- > i + 1;) {
        tables[k - i - 1] = starts_before(k, ends_before(k, tables[k - i]));
    }
    return tables;
}

Table Sweep::ends_by_changeover(std::size_t i) const {
    Table ends = ends_before(i, starts_[i + 1]);
    for (std::size_t k = 0; k < ends.costs.size(); ++k) {
        // A way that exists without the changeover is needed for one that exists with it.
        if (ends.costs[k] != no_way) {
            const std::int64_t end = ends.from + static_cast<std::int64_t>(k);
            ends.costs[k] = ends_before(i, through_changeover(i, end).front()).at(end);
        }
    }
    return ends;
}

void Sweep::run() {
    const std::size_t count = line_.links.size();
    starts_.assign(count, Table{});
    const Link& last = line_.links.back();
    Table ends;
    ends.from = last.from + last.least;
    const std::int64_t end_to =
        std::min(line_.ready_by, last.to + std::min(last.most, calendar_.horizon));
    for (std::int64_t e = ends.from; e <= end_to; ++e) {
        ends.costs.push_back(last_end(e));
    }
    starts_[count - 1] = starts_before(count - 1, ends);
    for (std::size_t i = count - 1; i-- > 0;) {
        starts_[i] = starts_before(i,
                                   line_.links[i].next_oven > 0 ? ends_by_changeover(i)
                                                                : ends_before(i, starts_[i + 1]));
    }
}

Sweep::Times Sweep::trace(std::int64_t start) const {
    const std::size_t count = line_.links.size();
    Times times;
    std::vector<Table> tables = starts_;
    Cost rest = tables.front().at(start);
    for (std::size_t i = 0; i < count; ++i) {
        const Link& link = line_.links[i];
        times.starts.push_back(start);
        const std::int64_t first_end = start + link.least;
        const std::int64_t last_possible = std::min(start + link.most, calendar_.horizon);
        if (i + 1 == count) {
            // The end of the last task is in the cost, or does not matter: the latest that reaches
            // it.
            for (std::int64_t e = last_possible; e >= first_end; --e) {
                if (plus(of_task(i, start, e), last_end(e)) == rest) {
                    times.ends.push_back(e);
                    break;
                }
            }
            break;
        }
        const bool late = aim_ == Aim::begin_late;
        const bool each_length = link.hands || link.oven || link.next_oven > 0;
        std::int64_t chosen_end = -1;
        std::int64_t chosen_start = -1;
        std::vector<Table> chosen_tables;
        const auto reaches = [&](std::int64_t e, std::int64_t s) {
            if (e < first_end || e > last_possible) {
                return false;
            }
            const Cost here = plus(of_task(i, start, e), of_lag(i, e, s));
            if (link.next_oven == 0) {
                return here != no_way && plus(here, tables[i + 1].at(s)) == rest;
            }
            if (here == no_way || tables[i + 1].at(s) == no_way ||
                plus(here, tables[i + 1].at(s)) > rest) {
                return false;
            }
            std::vector<Table> through = through_changeover(i, e);
            if (plus(here, through.front().at(s)) != rest) {
                return false;
            }
            chosen_tables = std::move(through);
            return true;
        };
        const std::int64_t low = std::max(tables[i + 1].from, first_end + link.lag_min);
        const std::int64_t high = std::min(tables[i + 1].to(), last_possible + link.lag_max);
        for (std::int64_t step = 0; step <= high - low && chosen_end < 0; ++step) {
            const std::int64_t s = late ? high - step : low + step;
            if (tables[i + 1].at(s) == no_way) {
                continue;
            }
            // Between these the cost of an end runs straight, so one of them is best; the longest
            // comes first.
            const std::int64_t longest = std::min(last_possible, s - link.lag_min);
            if (!each_length) {
                const std::int64_t candidates[3] = {
                    longest,
                    std::max(first_end, s - link.lag_good.value_or(link.lag_max)),
                    std::max(first_end, s - link.lag_max)};
                for (const std::int64_t e : candidates) {
                    if (e <= longest && reaches(e, s)) {
                        chosen_end = e;
                        chosen_start = s;
                        break;
                    }
                }
                continue;
            }
            for (std::int64_t e = longest; e >= first_end; --e) {
                if (reaches(e, s)) {
                    chosen_end = e;
                    chosen_start = s;
                    break;
                }
            }
        }
        times.ends.push_back(chosen_end);
        std::copy(chosen_tables.begin(),
                  chosen_tables.end(),
                  tables.begin() + static_cast<std::ptrdiff_t>(i) + 1);
        start = chosen_start;
        rest = tables[i + 1].at(chosen_start);
    }
    return times;
}

} // namespace loafwright::schedule::chain
