// SPDX-License-Identifier: Apache-2.0
//
// One job at a time: its ways, moments, lags, anchors and calendars; then what the jobs share. The
// oven's temperatures are kept apart pair by pair (few tasks use it), hands, slots and shelves cell
// by cell (many do): a task covers a cell where it starts by then and ends later. Tasks of one job
// that follow each other share the literal of a cell.
#include "engine/schedule/encode.hpp"

#include "engine/schedule/crowds.hpp"
#include "engine/schedule/sittings.hpp"

#include <algorithm>

namespace loafwright::schedule::sat {

using cells::DayCells;
using cells::JobCells;
using cells::Span;
using cells::TaskUse;
using cells::Way;
using cells::WayLag;
using cells::WayTask;

Encoding::Encoding(Clauses& clauses, const DayCells& day, Guards guards)
    : clauses_(clauses), day_(day), guards_(guards) {
    for (std::size_t j = 0; j < day.jobs.size() && !clauses.too_large(); ++j) {
        make_job(j);
        keep_lags(j);
        keep_anchors(j);
        keep_calendars(j);
    }
    if (!clauses.too_large()) {
        keep_hands();
        keep_oven_apart();
        keep_oven_space();
        keep_fridge_space();
    }
}

// A literal for clauses of this rule: true when the rule is left out.
Literal Encoding::unless(const char* rule, std::optional<std::size_t> job) {
    if (guards_ == Guards::none) {
        return never;
    }
    for (const GuardedRule& known : guarded_) {
        if (known.rule == rule && known.job == job) {
            return -known.guard;
        }
    }
    guarded_.push_back({rule, job, clauses_.fresh()});
    return -guarded_.back().guard;
}

// Tasks with nothing to choose between them share the literals of one start.
std::vector<Encoding::Tow> Encoding::tows_of(std::size_t j) const {
    const JobCells& cells = day_.jobs[j];
    const Way& first = cells.ways.front();
    std::vector<Tow> tows(cells.uses.size());
    for (std::size_t i = 0; i < tows.size(); ++i) {
        tows[i].leader = i;
    }
    for (std::size_t l = 0; l < first.lags.size() && guards_ == Guards::none; ++l) {
        const WayLag& lag = first.lags[l];
        const std::int64_t length = first.tasks[lag.after].least;
        const bool fixed = std::all_of(cells.ways.begin(), cells.ways.end(), [&](const Way& way) {
            return way.tasks[lag.after].least == length && way.tasks[lag.after].most == length &&
                   way.lags[l].min == lag.min && way.lags[l].max == lag.min;
        });
        const Tow from = tows[lag.after];
        const Tow to = tows[lag.before];
        if (!fixed || from.leader == to.leader) {
            continue; // a second way between the same two is kept by clauses
        }
        for (Tow& tow : tows) {
            if (tow.leader == to.leader) {
                tow.leader = from.leader;
                tow.distance += from.distance + length + lag.min - to.distance;
            }
        }
    }
    return tows;
}

// The starts of a leader at which all that it leads may start, too.
Moment Encoding::led_start(std::size_t j, std::size_t leader, const std::vector<Tow>& tows) {
    const JobCells& cells = day_.jobs[j];
    std::vector<std::int64_t> values;
    for (const std::int64_t t : cells.uses[leader].starts) {
        bool allowed = true;
        for (std::size_t i = 0; i < tows.size() && allowed; ++i) {
            const std::vector<std::int64_t>& starts = cells.uses[i].starts;
            allowed = tows[i].leader != leader ||
                      std::binary_search(starts.begin(), starts.end(), t + tows[i].distance);
        }
        if (allowed) {
            values.push_back(t);
        }
    }
    if (values.empty()) {
        clauses_.add({}); // there is no schedule
        values.push_back(cells.uses[leader].starts.front());
    }
    return {clauses_, values};
}

void Encoding::make_job(std::size_t j) {
    const JobCells& cells = day_.jobs[j];
    EncodedJob job;
    if (cells.ways.size() == 1) {
        job.ways = {always};
    } else {
        for (std::size_t w = 0; w < cells.ways.size(); ++w) {
            job.ways.push_back(clauses_.fresh());
        }
        clauses_.add(job.ways);
        at_most_one(clauses_, job.ways, never);
    }
    const std::vector<Tow> tows = tows_of(j);
    std::vector<Moment> leaders(tows.size());
    for (std::size_t i = 0; i < tows.size(); ++i) {
        if (tows[i].leader == i) {
            leaders[i] = led_start(j, i, tows);
        }
    }
    for (std::size_t i = 0; i < cells.uses.size(); ++i) {
        EncodedTask task;
        task.start = leaders[tows[i].leader].plus(tows[i].distance);
        const WayTask& first = cells.ways.front().tasks[i];
        const bool fixed = std::all_of(cells.ways.begin(), cells.ways.end(), [&](const Way& way) {
            return way.tasks[i].least == first.least && way.tasks[i].most == first.least;
        });
        if (fixed) {
            task.end = task.start.plus(first.least);
        } else {
            std::int64_t from = first.end_from;
            std::int64_t to = first.end_to;
            for (const Way& way : cells.ways) {
                from = std::min(from, way.tasks[i].end_from);
                to = std::max(to, way.tasks[i].end_to);
            }
            std::vector<std::int64_t> values;
            for (std::int64_t t = from; t <= to; ++t) {
                values.push_back(t);
            }
            task.end = Moment(clauses_, values);
        }
        for (std::size_t w = 0; w < cells.ways.size(); ++w) {
            const WayTask& way = cells.ways[w].tasks[i];
            const Literal other = -job.ways[w];
            if (!fixed) {
                keep_apart(clauses_, task.end, task.start, way.least, {other});
                keep_apart(clauses_, task.start, task.end, -way.most, {other});
            }
            clauses_.add({other, task.start.at_least(way.start_from)});
            clauses_.add({other, task.start.at_most(way.start_to)});
        }
        if (cells.uses[i].hands) {
            for (std::size_t p = 0; p < day_.blocked.size(); ++p) {
                task.person.push_back(day_.blocked.size() == 1 && guards_ == Guards::none
                                          ? always
                                          : clauses_.fresh());
            }
            std::vector<Literal> somebody = task.person;
            somebody.push_back(unless("hands", std::nullopt));
            clauses_.add(somebody);
        }
        job.tasks.push_back(std::move(task));
    }
    job.precedes = precedence_of(cells);
    jobs_.push_back(std::move(job));
}

void Encoding::keep_lags(std::size_t j) {
    const JobCells& cells = day_.jobs[j];
    const EncodedJob& job = jobs_[j];
    for (std::size_t l = 0; l < cells.ways.front().lags.size(); ++l) {
        const WayLag& first = cells.ways.front().lags[l];
        const Moment& end = job.tasks[first.after].end;
        const Moment& start = job.tasks[first.before].start;
        std::int64_t least = first.min;
        std::optional<std::int64_t> most = first.max;
        for (const Way& way : cells.ways) {
            least = std::min(least, way.lags[l].min);
            most = most && way.lags[l].max ? std::optional(std::max(*most, *way.lags[l].max))
                                           : std::nullopt;
        }
        const auto wait = [&] { return unless("lag_max", j); };
        keep_apart(clauses_, start, end, least, {});
        if (most) {
            keep_apart(clauses_, end, start, -*most, {wait()});
        }
        for (std::size_t w = 0; w < cells.ways.size(); ++w) {
            const WayLag& lag = cells.ways[w].lags[l];
            if (lag.min > least) {
                keep_apart(clauses_, start, end, lag.min, {-job.ways[w]});
            }
            if (lag.max && lag.max != most) {
                keep_apart(clauses_, end, start, -*lag.max, {-job.ways[w], wait()});
            }
        }
    }
}

void Encoding::keep_anchors(std::size_t j) {
    const JobCells& cells = day_.jobs[j];
    for (const EncodedTask& task : jobs_[j].tasks) {
        if (cells.not_before) {
            clauses_.add({unless("not_before", j), task.start.at_least(*cells.not_before)});
        }
    }
    const Moment& last = jobs_[j].tasks.back().end;
    if (cells.ready_from) {
        clauses_.add({unless("ready_from", j), last.at_least(*cells.ready_from)});
    }
    if (cells.ready_by) {
        clauses_.add({unless("ready_by", j), last.at_most(*cells.ready_by)});
    }
}

bool Encoding::may_be_empty(std::size_t j, std::size_t i) const {
    return std::any_of(day_.jobs[j].ways.begin(), day_.jobs[j].ways.end(), [i](const Way& way) {
        return way.tasks[i].least == 0;
    });
}

// [start − heat, end) meets none of the spans, unless `clause` holds. An empty one meets nothing.
void Encoding::keep_clear(std::vector<Literal> clause,
                          std::size_t j,
                          std::size_t i,
                          const std::vector<Span>& spans,
                          std::int64_t heat) {
    const EncodedTask& task = jobs_[j].tasks[i];
    const bool cell_by_cell = heat == 0 && may_be_empty(j, i);
    clause.resize(clause.size() + 2);
    for (const Span& span : spans) {
        const std::int64_t step = cell_by_cell ? 1 : span.to - span.from;
        for (std::int64_t t = span.from; t < span.to; t += step) {
            clause[clause.size() - 2] = task.end.at_most(t);
            clause[clause.size() - 1] = task.start.at_least(t + step + heat);
            clauses_.add(clause);
        }
    }
}

void Encoding::keep_calendars(std::size_t j) {
    for (std::size_t i = 0; i < jobs_[j].tasks.size() && !clauses_.too_large(); ++i) {
        const TaskUse& use = day_.jobs[j].uses[i];
        const EncodedTask& task = jobs_[j].tasks[i];
        if (use.hands) {
            for (std::size_t p = 0; p < task.person.size(); ++p) {
                keep_clear({unless("window", j), -task.person[p]}, j, i, day_.blocked[p], 0);
            }
        }
        if (use.oven) {
            clauses_.add({unless("preheat", j), task.start.at_least(use.heat)});
            keep_clear({unless("unattended", j)}, j, i, day_.unwatched, use.heat);
            for (const Span& claim : use.claims) {
                clauses_.add({unless("oven_claim", j),
                              task.end.at_most(claim.from),
                              task.start.at_least(claim.to)});
            }
        }
    }
}

std::vector<Encoding::Line> Encoding::lines_of(std::size_t j,
                                               const std::vector<bool>& wanted) const {
    const auto& precedes = jobs_[j].precedes;
    const std::size_t count = wanted.size();
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < count; ++i) {
        if (wanted[i]) {
            order.push_back(i);
        }
    }
    const auto before = [&](std::size_t i) {
        std::size_t number = 0;
        for (std::size_t k = 0; k < count; ++k) {
            number += precedes[k][i] ? 1U : 0U;
        }
        return number;
    };
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return before(a) < before(b);
    });
    std::vector<Line> lines;
    for (const std::size_t i : order) {
        const auto fits = std::find_if(
            lines.begin(), lines.end(), [&](const Line& line) { return precedes[line.back()][i]; });
        if (fits == lines.end()) {
            lines.push_back({i});
        } else {
            fits->push_back(i);
        }
    }
    return lines;
}

void Encoding::keep_hands() {
    const Literal rule = unless("hands", std::nullopt);
    for (std::size_t p = 0; p < day_.blocked.size(); ++p) {
        Crowds crowds(clauses_, day_.horizon);
        for (std::size_t j = 0; j < jobs_.size(); ++j) {
            std::vector<bool> wanted;
            for (const TaskUse& use : day_.jobs[j].uses) {
                wanted.push_back(use.hands);
            }
            for (const Line& line : lines_of(j, wanted)) {
                crowds.next_line();
                for (const std::size_t i : line) {
                    const EncodedTask& task = jobs_[j].tasks[i];
                    crowds.add(task.start, task.end, 1, {-task.person[p]});
                }
            }
        }
        crowds.keep(1, rule);
    }
}

void Encoding::keep_oven_apart() {
    std::vector<std::pair<std::size_t, std::size_t>> bakes;
    for (std::size_t j = 0; j < jobs_.size(); ++j) {
        for (std::size_t i = 0; i < jobs_[j].tasks.size(); ++i) {
            if (day_.jobs[j].uses[i].oven) {
                bakes.emplace_back(j, i);
            }
        }
    }
    for (std::size_t x = 0; x < bakes.size(); ++x) {
        for (std::size_t y = x + 1; y < bakes.size() && !clauses_.too_large(); ++y) {
            keep_pair_apart(bakes[x], bakes[y]);
        }
    }
}

// Either is over before the other starts, with the changeover between. One of no length may also
// lie inside the other, which the two literals `a_reaches` (b starts before a ends) and `b_reaches`
// allow together.
void Encoding::keep_pair_apart(std::pair<std::size_t, std::size_t> a,
                               std::pair<std::size_t, std::size_t> b) {
    const int from = day_.jobs[a.first].uses[a.second].temperature;
    const int to = day_.jobs[b.first].uses[b.second].temperature;
    if (from == to) {
        return;
    }
    const Literal rule = unless("oven_temperature", std::nullopt);
    const EncodedTask& first = jobs_[a.first].tasks[a.second];
    const EncodedTask& second = jobs_[b.first].tasks[b.second];
    const std::int64_t there = day_.changeover(from, to);
    const std::int64_t back = day_.changeover(to, from);
    if (!may_be_empty(a.first, a.second) && !may_be_empty(b.first, b.second)) {
        const Literal order = clauses_.fresh();
        keep_apart(clauses_, second.start, first.end, there, {rule, -order});
        keep_apart(clauses_, first.start, second.end, back, {rule, order});
        return;
    }
    const Literal a_reaches = clauses_.fresh();
    const Literal b_reaches = clauses_.fresh();
    const Literal a_is_empty = clauses_.fresh();
    const Literal b_is_empty = clauses_.fresh();
    keep_apart(clauses_, first.end, second.start, 1, {rule, -a_reaches});
    keep_apart(clauses_, second.start, first.end, there, {rule, a_reaches});
    keep_apart(clauses_, second.end, first.start, 1, {rule, -b_reaches});
    keep_apart(clauses_, first.start, second.end, back, {rule, b_reaches});
    keep_apart(clauses_, first.start, first.end, 0, {-a_is_empty});
    keep_apart(clauses_, second.start, second.end, 0, {-b_is_empty});
    clauses_.add({rule, -a_reaches, -b_reaches, a_is_empty, b_is_empty});
}

void Encoding::keep_oven_space() {
    std::map<int, std::vector<std::pair<std::size_t, std::size_t>>> by_temperature;
    for (std::size_t j = 0; j < jobs_.size(); ++j) {
        for (std::size_t i = 0; i < jobs_[j].tasks.size(); ++i) {
            if (day_.jobs[j].uses[i].oven) {
                by_temperature[day_.jobs[j].uses[i].temperature].emplace_back(j, i);
            }
        }
    }
    for (const auto& [temperature, bakes] : by_temperature) {
        Crowds crowds(clauses_, day_.horizon);
        for (std::size_t j = 0; j < jobs_.size(); ++j) {
            std::vector<bool> wanted(jobs_[j].tasks.size(), false);
            for (const auto& [job, task] : bakes) {
                if (job == j) {
                    wanted[task] = true;
                }
            }
            for (const Line& line : lines_of(j, wanted)) {
                crowds.next_line();
                for (const std::size_t i : line) {
                    const EncodedTask& task = jobs_[j].tasks[i];
                    crowds.add(task.start, task.end, day_.jobs[j].uses[i].slots, {});
                }
            }
        }
        crowds.keep(day_.oven_slots, unless("oven_space", std::nullopt));
    }
}

void Encoding::keep_fridge_space() {
    Crowds crowds(clauses_, day_.horizon);
    for (std::size_t j = 0; j < jobs_.size(); ++j) {
        const JobCells& cells = day_.jobs[j];
        std::vector<bool> wanted(jobs_[j].tasks.size(), false);
        for (const Way& way : cells.ways) {
            for (std::size_t i = 0; i < way.tasks.size(); ++i) {
                wanted[i] = wanted[i] || way.tasks[i].fridge > 0;
            }
        }
        for (const Line& line : lines_of(j, wanted)) {
            crowds.next_line();
            for (const std::size_t i : line) {
                const EncodedTask& task = jobs_[j].tasks[i];
                const int first = cells.ways.front().tasks[i].fridge;
                if (std::all_of(cells.ways.begin(), cells.ways.end(), [&](const Way& way) {
                        return way.tasks[i].fridge == first;
                    })) {
                    crowds.add(task.start, task.end, first, {});
                    continue;
                }
                for (std::size_t w = 0; w < cells.ways.size(); ++w) {
                    crowds.add(
                        task.start, task.end, cells.ways[w].tasks[i].fridge, {-jobs_[j].ways[w]});
                }
            }
        }
    }
    crowds.keep(day_.fridge_slots, unless("fridge_space", std::nullopt));
}

Schedule Encoding::in_model() const {
    Schedule schedule;
    for (std::size_t j = 0; j < jobs_.size(); ++j) {
        JobSchedule made;
        for (std::size_t w = 0; w < jobs_[j].ways.size(); ++w) {
            if (clauses_.holds(jobs_[j].ways[w])) {
                made.alternative = day_.jobs[j].ways[w].alternative;
            }
        }
        for (const EncodedTask& task : jobs_[j].tasks) {
            made.starts.push_back(task.start.in_model(clauses_) * day_.grid);
            made.ends.push_back(task.end.in_model(clauses_) * day_.grid);
            made.people.emplace_back();
            for (std::size_t p = task.person.size(); p-- > 0;) {
                if (clauses_.holds(task.person[p])) {
                    made.people.back() = p;
                }
            }
        }
        schedule.jobs.push_back(std::move(made));
    }
    return schedule;
}

} // namespace loafwright::schedule::sat
