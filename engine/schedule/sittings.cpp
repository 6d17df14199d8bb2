// SPDX-License-Identifier: Apache-2.0
//
// Sittings from lags alone. The length of one with a path from its first to its last task is the
// sum along that path: the least of each piece and what is above it. So a bound on the sum of all
// sittings, less the least of all the others, bounds every piece.
#include "engine/schedule/sittings.hpp"

#include <algorithm>

namespace loafwright::schedule::cells {

namespace {

std::vector<std::size_t> joined(const Way& way, std::size_t first, std::vector<bool>& open) {
    std::vector<std::size_t> tasks{first};
    open[first] = false;
    for (std::size_t next = 0; next < tasks.size(); ++next) {
        for (const WayLag& lag : way.lags) {
            for (const auto& [here, there] :
                 {std::pair(lag.after, lag.before), std::pair(lag.before, lag.after)}) {
                if (here == tasks[next] && open[there]) {
                    open[there] = false;
                    tasks.push_back(there);
                }
            }
        }
    }
    return tasks;
}

// Breadth first over the lags inside the sitting; empty where there is no path.
std::vector<Piece> path_of(const Way& way,
                           const std::vector<std::size_t>& tasks,
                           const std::vector<std::vector<bool>>& precedes) {
    const auto alone = [&](bool first) -> std::optional<std::size_t> {
        for (const std::size_t i : tasks) {
            if (std::all_of(tasks.begin(), tasks.end(), [&](std::size_t k) {
                    return k == i || (first ? precedes[i][k] : precedes[k][i]);
                })) {
                return i;
            }
        }
        return std::nullopt;
    };
    const auto first = alone(true);
    const auto last = alone(false);
    if (!first || !last) {
        return {};
    }
    constexpr auto none = static_cast<std::size_t>(-1);
    std::vector<std::size_t> by(way.tasks.size(), none);
    std::vector<std::size_t> reached{*first};
    for (std::size_t next = 0; next < reached.size(); ++next) {
        for (std::size_t l = 0; l < way.lags.size(); ++l) {
            const WayLag& lag = way.lags[l];
            const bool inside = std::find(tasks.begin(), tasks.end(), lag.before) != tasks.end();
            if (lag.after == reached[next] && inside && lag.before != *first &&
                by[lag.before] == none && lag.min >= 0) {
                by[lag.before] = l;
                reached.push_back(lag.before);
            }
        }
    }
    std::vector<Piece> path;
    for (std::size_t i = *last; i != *first; i = way.lags[by[i]].after) {
        if (by[i] == none) {
            return {};
        }
        path.push_back({i, by[i]});
    }
    path.push_back({*first, std::nullopt});
    std::reverse(path.begin(), path.end());
    return path;
}

} // namespace

std::vector<std::vector<bool>> precedence_of(const JobCells& job) {
    const std::size_t count = job.uses.size();
    std::vector<std::vector<bool>> precedes(count, std::vector<bool>(count, false));
    for (std::size_t l = 0; l < job.ways.front().lags.size(); ++l) {
        const WayLag& lag = job.ways.front().lags[l];
        if (std::all_of(job.ways.begin(), job.ways.end(), [l](const Way& way) {
                return way.lags[l].min >= 0;
            })) {
            precedes[lag.after][lag.before] = true;
        }
    }
    for (std::size_t k = 0; k < count; ++k) {
        for (std::size_t a = 0; a < count; ++a) {
            for (std::size_t b = 0; precedes[a][k] && b < count; ++b) {
                precedes[a][b] = precedes[a][b] || precedes[k][b];
            }
        }
    }
    return precedes;
}

std::vector<Sitting> sittings_of(const Way& way, const std::vector<std::vector<bool>>& precedes) {
    std::vector<bool> open;
    for (const WayTask& task : way.tasks) {
        open.push_back(task.tied);
    }
    std::vector<Sitting> sittings;
    for (std::size_t i = 0; i < way.tasks.size(); ++i) {
        if (!open[i]) {
            continue;
        }
        Sitting sitting;
        sitting.tasks = joined(way, i, open);
        sitting.path = path_of(way, sitting.tasks, precedes);
        for (const Piece& piece : sitting.path) {
            sitting.least +=
                way.tasks[piece.task].least + (piece.lag ? way.lags[*piece.lag].min : 0);
        }
        for (const std::size_t task : sitting.tasks) {
            sitting.least = std::max(sitting.least, way.tasks[task].least);
        }
        sittings.push_back(std::move(sitting));
    }
    return sittings;
}

void keep_tied(DayCells& day, std::int64_t tied) {
    std::vector<std::vector<std::vector<Sitting>>> sittings(day.jobs.size());
    std::vector<std::vector<std::int64_t>> lengths(day.jobs.size());
    std::int64_t spare = tied; // above the least of every job
    for (std::size_t j = 0; j < day.jobs.size(); ++j) {
        const auto precedes = precedence_of(day.jobs[j]);
        for (const Way& way : day.jobs[j].ways) {
            sittings[j].push_back(sittings_of(way, precedes));
            std::int64_t length = 0;
            for (const Sitting& sitting : sittings[j].back()) {
                length += sitting.least;
            }
            lengths[j].push_back(length);
        }
        spare -= *std::min_element(lengths[j].begin(), lengths[j].end());
    }
    for (std::size_t j = 0; j < day.jobs.size(); ++j) {
        const std::int64_t least = *std::min_element(lengths[j].begin(), lengths[j].end());
        std::vector<Way> kept;
        for (std::size_t w = 0; w < lengths[j].size(); ++w) {
            Way& way = day.jobs[j].ways[w];
            const std::int64_t above = spare - (lengths[j][w] - least);
            if (above < 0) {
                continue;
            }
            for (const Sitting& sitting : sittings[j][w]) {
                for (const Piece& piece : sitting.path) {
                    WayTask& task = way.tasks[piece.task];
                    task.most = std::min(task.most, task.least + above);
                    if (piece.lag) {
                        WayLag& lag = way.lags[*piece.lag];
                        lag.max = std::min(lag.max.value_or(lag.min + above), lag.min + above);
                    }
                }
            }
            kept.push_back(std::move(way));
        }
        day.jobs[j].ways = std::move(kept);
    }
}

} // namespace loafwright::schedule::cells
