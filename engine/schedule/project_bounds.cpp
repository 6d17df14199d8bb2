// SPDX-License-Identifier: Apache-2.0
//
// Longest paths (Floyd 1962), immediate selection of disjunctive pairs (Carlier, Pinson, "An
// algorithm for solving the job-shop problem", Management Science 35, 1989), compulsory parts
// (Lahrichi 1982), and energetic reasoning (Erschler, Lopez, Thuriot 1991; Baptiste, Le Pape,
// Nuijten, "Constraint-based scheduling", 2001, chapter 3). All of them only take starts away.
#include "engine/schedule/project_bounds.hpp"

#include <algorithm>
#include <utility>

namespace loafwright::schedule::projects {

Network::Network(const Project& project) : size_(project.activities.size()) {
    lags_.assign(size_ * size_, no_lag);
    for (std::size_t i = 0; i < size_; ++i) {
        lags_[i] = 0; // the first activity starts at 0 and none earlier
    }
    for (std::size_t i = 0; i < size_; ++i) {
        lags_[i * size_ + i] = 0;
    }
    for (const TimeLag& lag : project.lags) {
        std::int64_t& known = lags_[lag.from * size_ + lag.to];
        known = std::max(known, lag.least);
    }
    for (std::size_t k = 0; k < size_ && sound_; ++k) {
        const std::int64_t* via = &lags_[k * size_];
        for (std::size_t i = 0; i < size_; ++i) {
            const std::int64_t first = lags_[i * size_ + k];
            if (first == no_lag || i == k) {
                continue;
            }
            std::int64_t* row = &lags_[i * size_];
            for (std::size_t j = 0; j < size_; ++j) {
                if (via[j] != no_lag) {
                    row[j] = std::max(row[j], first + via[j]);
                }
            }
            sound_ = sound_ && row[i] == 0;
        }
        sound_ = sound_ && lags_[k * size_ + k] == 0;
    }
}

bool Network::add(std::size_t from, std::size_t to, std::int64_t least) {
    if (lag(from, to) >= least) {
        return true;
    }
    if (lag(to, from) != no_lag && lag(to, from) + least > 0) {
        sound_ = false;
        return false;
    }
    work_ += static_cast<std::int64_t>(size_ * size_);
    for (std::size_t i = 0; i < size_; ++i) {
        const std::int64_t before = lag(i, from);
        if (before == no_lag) {
            continue;
        }
        for (std::size_t j = 0; j < size_; ++j) {
            const std::int64_t after = lag(to, j);
            if (after != no_lag) {
                std::int64_t& known = lags_[i * size_ + j];
                known = std::max(known, before + least + after);
            }
        }
    }
    return true;
}

Rivals::Rivals(const Project& project) : size_(project.activities.size()) {
    are_.assign(size_ * size_, false);
    for (std::size_t a = 0; a < size_; ++a) {
        for (std::size_t b = 0; b < size_; ++b) {
            const Activity& one = project.activities[a];
            const Activity& other = project.activities[b];
            for (std::size_t r = 0; r < project.capacities.size(); ++r) {
                if (a != b && one.duration > 0 && other.duration > 0 &&
                    one.demands[r] + other.demands[r] > project.capacities[r]) {
                    are_[a * size_ + b] = true;
                }
            }
        }
    }
}

std::optional<Bounds>
network_bounds(const Project& project, const Network& network, std::int64_t end) {
    Bounds bounds;
    const std::size_t n = network.size();
    for (std::size_t i = 0; i < n; ++i) {
        std::int64_t tail = 0;
        for (std::size_t j = 0; j < n; ++j) {
            if (network.lag(i, j) != no_lag) {
                tail = std::max(tail, network.lag(i, j) + project.activities[j].duration);
            }
        }
        bounds.earliest.push_back(network.lag(0, i));
        bounds.latest.push_back(end - tail);
        if (network.lag(i, 0) != no_lag) {
            bounds.latest.back() = std::min(bounds.latest.back(), -network.lag(i, 0));
        }
        if (bounds.earliest.back() > bounds.latest.back()) {
            return std::nullopt;
        }
    }
    return bounds;
}

bool order_rivals(const Project& project, const Rivals& rivals, Network& network) {
    bool changed = true;
    while (changed && !network.spent()) {
        changed = false;
        for (std::size_t a = 0; a < network.size(); ++a) {
            for (std::size_t b = 0; b < network.size(); ++b) {
                const std::int64_t length = project.activities[a].duration;
                // b starts too late to be over before a starts, so a comes first.
                if (rivals.are(a, b) && !network.spent() &&
                    network.lag(a, b) > -project.activities[b].duration &&
                    network.lag(a, b) < length) {
                    changed = true;
                    if (!network.add(a, b, length)) {
                        return false;
                    }
                }
            }
        }
    }
    return true;
}

namespace {

// Grown from one activity: always the longest that can run beside none of those before.
std::vector<std::size_t>
crowd_of(const Project& project, const Network& network, const Rivals& rivals, std::size_t first) {
    const auto never_together = [&](std::size_t a, std::size_t b) {
        return rivals.are(a, b) || network.lag(a, b) >= project.activities[a].duration ||
               network.lag(b, a) >= project.activities[b].duration;
    };
    std::vector<std::size_t> others;
    for (std::size_t i = 0; i < network.size(); ++i) {
        if (i != first && project.activities[i].duration > 0 && never_together(first, i)) {
            others.push_back(i);
        }
    }
    // Rivals of the first before those that lags keep from it anyway.
    std::stable_sort(others.begin(), others.end(), [&](std::size_t a, std::size_t b) {
        return std::make_pair(rivals.are(first, a), project.activities[a].duration) >
               std::make_pair(rivals.are(first, b), project.activities[b].duration);
    });
    std::vector<std::size_t> crowd{first};
    for (const std::size_t i : others) {
        if (std::all_of(crowd.begin(), crowd.end(), [&](std::size_t other) {
                return never_together(i, other);
            })) {
            crowd.push_back(i);
        }
    }
    std::sort(crowd.begin(), crowd.end());
    return crowd;
}

void add_resource(Project& project,
                  std::int64_t capacity,
                  const std::vector<std::int64_t>& demands) {
    project.capacities.push_back(capacity);
    for (std::size_t i = 0; i < project.activities.size(); ++i) {
        project.activities[i].demands.push_back(demands[i]);
    }
}

} // namespace

Project
with_implied_resources(const Project& project, const Network& network, const Rivals& rivals) {
    Project more = project;
    std::vector<std::vector<std::size_t>> crowds;
    for (std::size_t i = 0; i < network.size(); ++i) {
        if (project.activities[i].duration > 0) {
            crowds.push_back(crowd_of(project, network, rivals, i));
        }
    }
    std::sort(crowds.begin(), crowds.end());
    crowds.erase(std::unique(crowds.begin(), crowds.end()), crowds.end());
    for (const std::vector<std::size_t>& crowd : crowds) {
        std::vector<std::int64_t> demands(network.size(), 0);
        for (const std::size_t i : crowd) {
            demands[i] = 1;
        }
        add_resource(more, 1, demands);
    }
    for (std::size_t r = 0; r < project.capacities.size(); ++r) {
        const std::int64_t capacity = project.capacities[r];
        std::vector<std::int64_t> bars;
        for (const Activity& activity : project.activities) {
            if (activity.demands[r] > 0 && 2 * activity.demands[r] <= capacity) {
                bars.push_back(activity.demands[r]);
            }
        }
        std::sort(bars.begin(), bars.end());
        bars.erase(std::unique(bars.begin(), bars.end()), bars.end());
        for (const std::int64_t bar : bars) {
            std::vector<std::int64_t> demands;
            for (const Activity& activity : project.activities) {
                const std::int64_t demand = activity.demands[r];
                const bool large = demand > capacity - bar;
                demands.push_back(large ? capacity : demand < bar ? 0 : demand);
            }
            if (bar != bars.front() ||
                std::any_of(demands.begin(), demands.end(), [&](std::int64_t demand) {
                    return demand == capacity;
                })) {
                add_resource(more, capacity, demands);
            }
        }
    }
    return more;
}

namespace {

/// Bounds that are narrowed until nothing changes.
class Narrowing {
public:
    Narrowing(const Project& project, const Network& network, const Rivals& rivals, Bounds& bounds)
        : project_(project), network_(network), rivals_(rivals), bounds_(bounds) {}

    bool run(Depth depth) {
        do {
            do {
                changed_ = false;
                keep_lags();
                if (possible_) {
                    order_pairs();
                }
                if (possible_) {
                    keep_parts();
                }
            } while (changed_ && possible_ && work_ < most_work);
            if (possible_ && depth == Depth::energy) {
                weigh_energy();
            }
        } while (changed_ && possible_ && work_ < most_work);
        return possible_;
    }

private:
    [[nodiscard]] std::int64_t length(std::size_t i) const {
        return project_.activities[i].duration;
    }
    void not_before(std::size_t i, std::int64_t start) {
        if (start > bounds_.earliest[i]) {
            bounds_.earliest[i] = start;
            changed_ = true;
            possible_ = possible_ && start <= bounds_.latest[i];
        }
    }
    void not_after(std::size_t i, std::int64_t start) {
        if (start < bounds_.latest[i]) {
            bounds_.latest[i] = start;
            changed_ = true;
            possible_ = possible_ && start >= bounds_.earliest[i];
        }
    }

    void keep_lags() {
        work_ += static_cast<std::int64_t>(2 * network_.size() * network_.size());
        for (std::size_t i = 0; i < network_.size(); ++i) {
            for (std::size_t j = 0; j < network_.size(); ++j) {
                const std::int64_t lag = network_.lag(i, j);
                if (lag != no_lag) {
                    not_before(j, bounds_.earliest[i] + lag);
                    not_after(i, bounds_.latest[j] - lag);
                }
            }
        }
    }

    void order_pairs() {
        for (std::size_t a = 0; a < network_.size(); ++a) {
            for (std::size_t b = 0; b < network_.size(); ++b) {
                if (rivals_.are(a, b) && bounds_.earliest[a] + length(a) > bounds_.latest[b]) {
                    not_before(a, bounds_.earliest[b] + length(b));
                    not_after(b, bounds_.latest[a] - length(b));
                }
            }
        }
    }

    void keep_parts();
    void keep_parts_of(std::size_t resource);
    void weigh_energy();
    void weigh_energy_of(std::size_t resource);
    [[nodiscard]] std::int64_t
    least_overlap(std::size_t i, std::int64_t from, std::int64_t to) const;

    const Project& project_;
    const Network& network_;
    const Rivals& rivals_;
    Bounds& bounds_;
    std::vector<std::int64_t> used_;
    static constexpr std::int64_t most_work = 100000000;
    std::int64_t work_ = 0;
    bool changed_ = false;
    bool possible_ = true;
};

void Narrowing::keep_parts() {
    for (std::size_t r = 0; r < project_.capacities.size() && possible_; ++r) {
        keep_parts_of(r);
    }
}

void Narrowing::keep_parts_of(std::size_t resource) {
    const std::int64_t capacity = project_.capacities[resource];
    std::int64_t end = 0;
    for (std::size_t i = 0; i < network_.size(); ++i) {
        end = std::max(end, bounds_.latest[i] + length(i));
    }
    work_ += end;
    used_.assign(static_cast<std::size_t>(end) + 1, 0);
    for (std::size_t i = 0; i < network_.size(); ++i) {
        for (std::int64_t t = bounds_.latest[i]; t < bounds_.earliest[i] + length(i); ++t) {
            used_[static_cast<std::size_t>(t)] += project_.activities[i].demands[resource];
        }
    }
    for (const std::int64_t used : used_) {
        possible_ = possible_ && used <= capacity;
    }
    for (std::size_t i = 0; i < network_.size() && possible_; ++i) {
        const std::int64_t demand = project_.activities[i].demands[resource];
        if (demand == 0 || length(i) == 0 || bounds_.earliest[i] == bounds_.latest[i]) {
            continue;
        }
        const std::int64_t part_from = bounds_.latest[i];
        const std::int64_t part_to = bounds_.earliest[i] + length(i);
        const auto too_much = [&](std::int64_t t) {
            const bool own = part_from <= t && t < part_to;
            return used_[static_cast<std::size_t>(t)] + (own ? 0 : demand) > capacity;
        };
        std::int64_t start = bounds_.earliest[i];
        for (std::int64_t t = start; t < start + length(i) && start <= bounds_.latest[i]; ++t) {
            start = too_much(t) ? t + 1 : start;
        }
        not_before(i, start);
        start = bounds_.latest[i];
        for (std::int64_t t = start + length(i) - 1; t >= start && start >= bounds_.earliest[i];
             --t) {
            start = too_much(t) ? t - length(i) : start;
        }
        not_after(i, start);
    }
}

std::int64_t Narrowing::least_overlap(std::size_t i, std::int64_t from, std::int64_t to) const {
    return std::max<std::int64_t>(0,
                                  std::min({length(i),
                                            to - from,
                                            bounds_.earliest[i] + length(i) - from,
                                            to - bounds_.latest[i]}));
}

void Narrowing::weigh_energy() {
    for (std::size_t r = 0; r < project_.capacities.size() && possible_; ++r) {
        weigh_energy_of(r);
    }
}

void Narrowing::weigh_energy_of(std::size_t resource) {
    std::vector<std::size_t> users;
    std::vector<std::int64_t> begins;
    std::vector<std::int64_t> ends;
    for (std::size_t i = 0; i < network_.size(); ++i) {
        if (length(i) > 0 && project_.activities[i].demands[resource] > 0) {
            users.push_back(i);
            begins.push_back(bounds_.earliest[i]);
            begins.push_back(bounds_.latest[i]);
            ends.push_back(bounds_.latest[i] + length(i));
            ends.push_back(bounds_.earliest[i] + length(i));
        }
    }
    for (auto* times : {&begins, &ends}) {
        std::sort(times->begin(), times->end());
        times->erase(std::unique(times->begin(), times->end()), times->end());
    }
    for (const std::int64_t from : begins) {
        work_ += static_cast<std::int64_t>(ends.size() * users.size());
        for (const std::int64_t to : ends) {
            if (to <= from || work_ > most_work) {
                continue;
            }
            const std::int64_t there = project_.capacities[resource] * (to - from);
            std::int64_t work = 0;
            for (const std::size_t i : users) {
                work += project_.activities[i].demands[resource] * least_overlap(i, from, to);
            }
            if (work > there) {
                possible_ = false;
                return;
            }
            for (const std::size_t i : users) {
                const std::int64_t demand = project_.activities[i].demands[resource];
                const std::int64_t left = there - work + demand * least_overlap(i, from, to);
                const std::int64_t most = left / demand; // of its time in between
                if (most >= std::min(length(i), to - from)) {
                    continue;
                }
                // It must be mostly over by `from`, or begin when `to` is near.
                if (bounds_.earliest[i] > from + most - length(i)) {
                    not_before(i, to - most);
                }
                if (bounds_.latest[i] < to - most) {
                    not_after(i, from + most - length(i));
                }
            }
        }
    }
}

} // namespace

bool narrow(const Project& project,
            const Network& network,
            const Rivals& rivals,
            Depth depth,
            Bounds& bounds) {
    return Narrowing(project, network, rivals, bounds).run(depth);
}

} // namespace loafwright::schedule::projects
