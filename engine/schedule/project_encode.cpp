// SPDX-License-Identifier: Apache-2.0
//
// The order encoding of a project: a literal [start >= t] for each time between its bounds, a
// clause for each time of each lag, an order literal for each two rivals, and for each resource and
// time a decision diagram of what is used. Activities of which two never run together (ordered by
// lags, or rivals) share a line of the diagram (Bofill, Coll, Suy, Villaret, "SMT encodings for
// resource-constrained project scheduling problems", Computers & Industrial Engineering 149, 2020).
#include "engine/schedule/project_encode.hpp"

#include "engine/schedule/diagrams.hpp"

#include <algorithm>
#include <iterator>
#include <map>

namespace loafwright::schedule::projects {

using sat::always;
using sat::Literal;
using sat::Moment;

namespace {

Moment moment_between(sat::Clauses& clauses, std::int64_t from, std::int64_t to) {
    std::vector<std::int64_t> values;
    for (std::int64_t t = from; t <= to; ++t) {
        values.push_back(t);
    }
    return {clauses, values};
}

} // namespace

Encoding::Encoding(sat::Clauses& clauses,
                   const Project& project,
                   const Network& network,
                   const Rivals& rivals,
                   const Bounds& bounds)
    : clauses_(clauses), project_(project), network_(network), rivals_(rivals),
      running_(project.activities.size()) {
    for (std::size_t i = 0; i < project.activities.size(); ++i) {
        starts_.push_back(moment_between(clauses, bounds.earliest[i], bounds.latest[i]));
    }
    keep_lags();
    keep_end(bounds);
    choose_orders();
    keep_resources(bounds);
}

// On the way over a third activity, unless that one is tied to an end of the lag without any play:
// then each would follow from the other.
bool Encoding::follows_from_others(std::size_t from, std::size_t to, std::int64_t least) const {
    const auto tied = [&](std::size_t a, std::size_t b) {
        return network_.lag(a, b) != no_lag && network_.lag(b, a) != no_lag &&
               network_.lag(a, b) + network_.lag(b, a) == 0;
    };
    for (std::size_t k = 0; k < network_.size(); ++k) {
        if (k != from && k != to && network_.lag(from, k) != no_lag &&
            network_.lag(k, to) != no_lag && network_.lag(from, k) + network_.lag(k, to) >= least &&
            !tied(from, k) && !tied(k, to)) {
            return true;
        }
    }
    return false;
}

void Encoding::keep_lag(std::size_t from, std::size_t to, std::int64_t least) {
    const bool kept_by_bounds = starts_[from].latest() + least <= starts_[to].earliest();
    if (!kept_by_bounds && !clauses_.too_large() && !follows_from_others(from, to, least)) {
        sat::keep_apart(clauses_, starts_[to], starts_[from], least, {});
    }
}

void Encoding::keep_lags() {
    for (const TimeLag& lag : project_.lags) {
        keep_lag(lag.from, lag.to, lag.least);
    }
    for (std::size_t a = 0; a < network_.size(); ++a) {
        for (std::size_t b = 0; b < network_.size(); ++b) {
            if (rivals_.are(a, b) && network_.lag(a, b) >= length(a)) {
                keep_lag(a, b, length(a));
            }
        }
    }
}

void Encoding::keep_end(const Bounds& bounds) {
    std::int64_t earliest = 0;
    std::int64_t latest = 0;
    for (std::size_t i = 0; i < network_.size(); ++i) {
        earliest = std::max(earliest, bounds.earliest[i] + length(i));
        latest = std::max(latest, bounds.latest[i] + length(i));
    }
    end_ = moment_between(clauses_, earliest, latest);
    for (std::size_t i = 0; i < network_.size(); ++i) {
        bool last = bounds.latest[i] + length(i) > earliest;
        for (std::size_t j = 0; j < network_.size() && last; ++j) {
            const std::int64_t lag = network_.lag(i, j);
            const bool both = network_.lag(j, i) != no_lag && j > i; // one of a circle must remain
            last = j == i || lag == no_lag || both || lag + length(j) < length(i);
        }
        if (last) {
            sat::keep_apart(clauses_, end_, starts_[i], length(i), {});
        }
    }
}

void Encoding::choose_orders() {
    for (std::size_t a = 0; a < network_.size(); ++a) {
        for (std::size_t b = a + 1; b < network_.size(); ++b) {
            if (!rivals_.are(a, b) || clauses_.too_large() || network_.lag(a, b) >= length(a) ||
                network_.lag(b, a) >= length(b)) {
                continue;
            }
            const Literal first = clauses_.fresh();
            sat::keep_apart(clauses_, starts_[b], starts_[a], length(a), {-first});
            sat::keep_apart(clauses_, starts_[a], starts_[b], length(b), {first});
        }
    }
}

bool Encoding::never_together(std::size_t a, std::size_t b) const {
    return rivals_.are(a, b) || network_.lag(a, b) >= length(a) || network_.lag(b, a) >= length(b);
}

Literal Encoding::runs_at(std::size_t activity, std::int64_t time) {
    const Moment& start = starts_[activity];
    const Literal begun = start.at_most(time);
    const Literal not_over = start.at_least(time - length(activity) + 1);
    if (begun == always || not_over == always) {
        return begun == always ? not_over : begun;
    }
    auto& known = running_[activity];
    const auto k = static_cast<std::size_t>(time - start.earliest());
    known.resize(std::max(known.size(), k + 1), 0);
    if (known[k] == 0) {
        known[k] = clauses_.fresh();
        clauses_.add({-begun, -not_over, known[k]});
        // Nothing needs these two, and proofs were found in half the time with them.
        clauses_.add({begun, -known[k]});
        clauses_.add({not_over, -known[k]});
    }
    return known[k];
}

void Encoding::keep_resources(const Bounds& bounds) {
    for (std::size_t r = 0; r < project_.capacities.size(); ++r) {
        std::vector<std::size_t> users;
        std::int64_t end = 0;
        for (std::size_t i = 0; i < network_.size(); ++i) {
            if (project_.activities[i].demands[r] > 0 && length(i) > 0) {
                users.push_back(i);
                end = std::max(end, bounds.latest[i] + length(i));
            }
        }
        std::stable_sort(users.begin(), users.end(), [&](std::size_t a, std::size_t b) {
            return project_.activities[a].demands[r] > project_.activities[b].demands[r];
        });
        for (std::int64_t time = 0; time < end && !clauses_.too_large(); ++time) {
            std::vector<std::size_t> here;
            std::copy_if(users.begin(), users.end(), std::back_inserter(here), [&](std::size_t i) {
                return bounds.earliest[i] <= time && time < bounds.latest[i] + length(i);
            });
            keep_resource_at(r, time, here);
        }
    }
}

void Encoding::keep_resource_at(std::size_t resource,
                                std::int64_t time,
                                const std::vector<std::size_t>& users) {
    std::int64_t left = project_.capacities[resource];
    // The first line on which an activity meets nobody that could run with it.
    std::vector<std::vector<std::size_t>> groups;
    for (const std::size_t i : users) {
        if (runs_at(i, time) == always) {
            left -= project_.activities[i].demands[resource];
            continue;
        }
        const auto group = std::find_if(groups.begin(), groups.end(), [&](const auto& others) {
            return std::all_of(others.begin(), others.end(), [&](std::size_t other) {
                return never_together(i, other);
            });
        });
        if (group == groups.end()) {
            groups.push_back({i});
        } else {
            group->push_back(i);
        }
    }
    std::int64_t most = 0;
    for (const auto& group : groups) {
        most += project_.activities[group.front()].demands[resource];
    }
    if (most <= left) {
        return;
    }
    std::vector<sat::Line> lines;
    for (const auto& group : groups) {
        std::map<std::int64_t, std::vector<Literal>> by_weight;
        for (const std::size_t i : group) {
            by_weight[project_.activities[i].demands[resource]].push_back(runs_at(i, time));
        }
        sat::Line line;
        for (const auto& [weight, literals] : by_weight) {
            Literal any = literals.front();
            if (literals.size() > 1) {
                any = clauses_.fresh();
                for (const Literal literal : literals) {
                    clauses_.add({-literal, any});
                }
            }
            line.push_back({weight, any});
        }
        lines.push_back(std::move(line));
    }
    sat::keep_sum(clauses_, std::move(lines), left);
}

std::vector<std::int64_t> Encoding::in_model() const {
    std::vector<std::int64_t> starts;
    for (const Moment& start : starts_) {
        starts.push_back(start.in_model(clauses_));
    }
    return starts;
}

} // namespace loafwright::schedule::projects
