// SPDX-License-Identifier: Apache-2.0
//
// `violations` is a sum of single literals. `tied` is the length of each sitting; where a sitting
// has one first and one last task it is what stands on any path between the two, so only the *gaps*
// on such a path count beyond its least length, each with a literal for every cell it is too wide.
// A sitting without such a path gets its own first and last moment.
#include "engine/schedule/costs.hpp"

#include <algorithm>

namespace loafwright::schedule::sat {

using cells::DayCells;
using cells::JobCells;
using cells::Piece;
using cells::Sitting;
using cells::Span;
using cells::Way;
using cells::WayLag;
using cells::WayTask;

namespace {

void lag_wishes(Clauses& clauses,
                const JobCells& cells,
                const EncodedJob& job,
                std::vector<Sum>& parts) {
    for (std::size_t l = 0; l < cells.ways.front().lags.size(); ++l) {
        const Literal late = clauses.fresh();
        bool wished = false;
        const bool same = std::all_of(cells.ways.begin(), cells.ways.end(), [&](const Way& way) {
            return way.lags[l].good == cells.ways.front().lags[l].good;
        });
        for (std::size_t w = 0; w < (same ? 1 : cells.ways.size()); ++w) {
            const WayLag& lag = cells.ways[w].lags[l];
            if (!lag.good) {
                continue;
            }
            wished = true;
            std::vector<Literal> unless{late};
            if (!same) {
                unless.push_back(-job.ways[w]);
            }
            keep_apart(
                clauses, job.tasks[lag.after].end, job.tasks[lag.before].start, -*lag.good, unless);
        }
        if (wished) {
            parts.push_back({{1, late}});
        }
    }
}

void unwelcome_hours(Clauses& clauses,
                     const DayCells& day,
                     const JobCells& cells,
                     const EncodedJob& job,
                     std::vector<Sum>& parts) {
    for (std::size_t i = 0; i < job.tasks.size() && !day.unwelcome.empty(); ++i) {
        if (!cells.uses[i].hands) {
            continue;
        }
        const bool may_be_empty =
            std::any_of(cells.ways.begin(), cells.ways.end(), [i](const Way& way) {
                return way.tasks[i].least == 0;
            });
        const Literal met = clauses.fresh();
        for (const Span& span : day.unwelcome) {
            const std::int64_t step = may_be_empty ? 1 : span.to - span.from;
            for (std::int64_t t = span.from; t < span.to; t += step) {
                clauses.add(
                    {met, job.tasks[i].end.at_most(t), job.tasks[i].start.at_least(t + step)});
            }
        }
        parts.push_back({{1, met}});
    }
}

// What each way adds, by size: a literal for every size that some way has.
Sum by_way(Clauses& clauses, const EncodedJob& job, const std::vector<std::int64_t>& adds) {
    Sum sum;
    for (const std::int64_t value : adds) {
        if (value > 0 && !sum.contains(value)) {
            const Literal literal = clauses.fresh();
            sum[value] = literal;
            for (std::size_t w = 0; w < adds.size(); ++w) {
                if (adds[w] >= value) {
                    clauses.add({-job.ways[w], literal});
                }
            }
        }
    }
    return sum;
}

} // namespace

std::vector<Sum> violation_parts(Clauses& clauses, const DayCells& day, const Encoding& encoding) {
    std::vector<Sum> parts;
    for (std::size_t j = 0; j < day.jobs.size(); ++j) {
        const JobCells& cells = day.jobs[j];
        const EncodedJob& job = encoding.jobs()[j];
        lag_wishes(clauses, cells, job, parts);
        unwelcome_hours(clauses, day, cells, job, parts);
        std::vector<std::int64_t> weights;
        for (const Way& way : cells.ways) {
            weights.push_back(way.weight);
        }
        Sum choice = by_way(clauses, job, weights);
        if (!choice.empty()) {
            parts.push_back(std::move(choice));
        }
    }
    return parts;
}

TiedParts::TiedParts(Clauses& clauses, const DayCells& day, const Encoding& encoding)
    : clauses_(clauses), day_(day), encoding_(encoding) {
    for (std::size_t j = 0; j < day.jobs.size(); ++j) {
        look_at_job(j);
    }
}

void TiedParts::look_at_job(std::size_t j) {
    const JobCells& cells = day_.jobs[j];
    const EncodedJob& job = encoding_.jobs()[j];
    std::vector<Gap> gaps;
    std::vector<std::int64_t> bases;
    std::vector<std::size_t> live;
    for (std::size_t w = 0; w < cells.ways.size(); ++w) {
        bases.push_back(0);
        if (clauses_.impossible(job.ways[w])) {
            continue;
        }
        live.push_back(w);
        for (const Sitting& sitting : sittings_of(cells.ways[w], job.precedes)) {
            look_at_sitting(j, w, sitting, gaps);
            bases.back() += sitting.least;
        }
    }
    std::int64_t least = bases[live.front()];
    for (const std::size_t w : live) {
        least = std::min(least, bases[w]);
    }
    base_ += least;
    for (std::int64_t& base : bases) {
        base = std::max<std::int64_t>(0, base - least);
    }
    Sum choice = by_way(clauses_, job, bases);
    if (!choice.empty()) {
        choices_.push_back(std::move(choice));
    }
    for (Gap& gap : gaps) {
        if (gap.ways.size() < live.size()) {
            const Literal chosen = clauses_.fresh();
            for (const std::size_t w : gap.ways) {
                clauses_.add({-job.ways[w], chosen});
            }
            gap.unless = {-chosen};
        }
        gaps_.push_back(std::move(gap));
    }
}

void TiedParts::note(std::vector<Gap>& gaps, std::size_t way, const Gap& gap) {
    for (Gap& known : gaps) {
        if (known.base == gap.base && known.later.is_same(gap.later) &&
            known.earlier.is_same(gap.earlier)) {
            known.ways.push_back(way);
            known.most = std::max(known.most, gap.most);
            return;
        }
    }
    gaps.push_back(gap);
    gaps.back().ways = {way};
}

void TiedParts::look_at_sitting(std::size_t j,
                                std::size_t w,
                                const Sitting& sitting,
                                std::vector<Gap>& gaps) {
    if (!sitting.path.empty()) {
        look_at_path(j, w, sitting.path, gaps);
        return;
    }
    const EncodedJob& job = encoding_.jobs()[j];
    std::int64_t from = day_.horizon;
    std::int64_t to = 0;
    for (const std::size_t i : sitting.tasks) {
        from = std::min(from, job.tasks[i].start.earliest());
        to = std::max(to, job.tasks[i].end.latest());
    }
    std::vector<std::int64_t> values;
    for (std::int64_t t = from; t <= to; ++t) {
        values.push_back(t);
    }
    Gap gap;
    gap.later = Moment(clauses_, values);
    gap.earlier = Moment(clauses_, values);
    gap.base = sitting.least;
    gap.most = to - from - sitting.least;
    for (const std::size_t i : sitting.tasks) {
        keep_apart(clauses_, gap.later, job.tasks[i].end, 0, {-job.ways[w]});
        keep_apart(clauses_, job.tasks[i].start, gap.earlier, 0, {-job.ways[w]});
    }
    note(gaps, w, gap);
}

void TiedParts::look_at_path(std::size_t j,
                             std::size_t w,
                             const std::vector<Piece>& path,
                             std::vector<Gap>& gaps) {
    const Way& way = day_.jobs[j].ways[w];
    const EncodedJob& job = encoding_.jobs()[j];
    const auto gap =
        [&](const Moment& later, const Moment& earlier, std::int64_t base, std::int64_t most) {
            if (most > 0) {
                note(gaps, w, {later, earlier, base, most, {}, {}, {}});
            }
        };
    for (std::size_t k = path.size(); k-- > 0;) {
        const WayTask& task = way.tasks[path[k].task];
        const Moment& start = job.tasks[path[k].task].start;
        gap(job.tasks[path[k].task].end, start, task.least, task.most - task.least);
        if (path[k].lag) {
            const WayLag& lag = way.lags[*path[k].lag];
            const Moment& end = job.tasks[lag.after].end;
            const std::int64_t most =
                std::min(start.latest() - end.earliest(), lag.max.value_or(day_.horizon));
            gap(start, end, lag.min, most - lag.min);
        }
    }
}

void TiedParts::extend(Gap& gap, std::int64_t cap) {
    while (static_cast<std::int64_t>(gap.levels.size()) < std::min(cap, gap.most) &&
           !clauses_.too_large()) {
        const Literal level = clauses_.fresh();
        if (!gap.levels.empty()) {
            clauses_.add({-level, gap.levels.back()});
        }
        gap.levels.push_back(level);
        mark_apart(clauses_,
                   gap.later,
                   gap.earlier,
                   gap.base + static_cast<std::int64_t>(gap.levels.size()),
                   level,
                   gap.unless);
    }
}

std::vector<Sum> TiedParts::parts(std::int64_t cap) {
    std::vector<Sum> parts = choices_;
    for (Gap& gap : gaps_) {
        extend(gap, cap);
        Sum sum;
        for (std::size_t k = 0; k < gap.levels.size(); ++k) {
            sum[static_cast<std::int64_t>(k) + 1] = gap.levels[k];
        }
        if (!sum.empty()) {
            parts.push_back(std::move(sum));
        }
    }
    return parts;
}

} // namespace loafwright::schedule::sat
