// SPDX-License-Identifier: Apache-2.0
#include "bench/project_kinds.hpp"

#include <algorithm>
#include <cmath>
#include <random>

namespace loafwright::bench {

namespace {

using schedule::Activity;
using schedule::Project;

constexpr int ends_of_a_network = 3; // activities without one before, and without one after
constexpr int most_neighbours = 3;

// The distribution is ours: the library's may differ from one to another.
class Dice {
public:
    explicit Dice(unsigned seed) : engine_(seed) {}
    int roll(int low, int high) {
        return low + static_cast<int>(engine_() % static_cast<unsigned long>(high - low + 1));
    }

private:
    std::mt19937 engine_;
};

/// Who comes before whom: 0 and n + 1 are the ends, arcs lead from smaller to larger numbers.
class Arcs {
public:
    explicit Arcs(int activities)
        : size_(activities + 2), direct_(cells(), false), path_(cells(), false) {}

    [[nodiscard]] bool direct(int i, int j) const { return direct_[at(i, j)]; }
    [[nodiscard]] bool path(int i, int j) const { return path_[at(i, j)]; }
    [[nodiscard]] int after(int i) const {
        int count = 0;
        for (int j = 0; j < size_; ++j) {
            count += direct(i, j) ? 1 : 0;
        }
        return count;
    }
    [[nodiscard]] int before(int j) const {
        int count = 0;
        for (int i = 0; i < size_; ++i) {
            count += direct(i, j) ? 1 : 0;
        }
        return count;
    }
    [[nodiscard]] int arcs() const {
        return static_cast<int>(std::count(direct_.begin(), direct_.end(), true));
    }
    /// Part of the pairs of real activities that are ordered.
    [[nodiscard]] double order() const {
        int pairs = 0;
        for (int i = 1; i + 1 < size_; ++i) {
            for (int j = 1; j + 1 < size_; ++j) {
                pairs += path(i, j) ? 1 : 0;
            }
        }
        const int n = size_ - 2;
        return 2.0 * pairs / (n * (n - 1));
    }
    /// Says nothing new, or makes another arc say nothing new.
    [[nodiscard]] bool redundant(int i, int j) const {
        if (path(i, j)) {
            return true;
        }
        for (int a = 0; a < size_; ++a) {
            for (int b = 0; b < size_; ++b) {
                if (direct(a, b) && (a == i || path(a, i)) && (b == j || path(j, b))) {
                    return true;
                }
            }
        }
        return false;
    }
    void add(int i, int j) {
        direct_[at(i, j)] = true;
        for (int a = 0; a <= i; ++a) {
            for (int b = j; b < size_; ++b) {
                if ((a == i || path(a, i)) && (b == j || path(j, b))) {
                    path_[at(a, b)] = true;
                }
            }
        }
    }

private:
    [[nodiscard]] std::size_t cells() const {
        return static_cast<std::size_t>(size_) * static_cast<std::size_t>(size_);
    }
    [[nodiscard]] std::size_t at(int i, int j) const {
        return static_cast<std::size_t>(i) * static_cast<std::size_t>(size_) +
               static_cast<std::size_t>(j);
    }

    int size_;
    std::vector<bool> direct_;
    std::vector<bool> path_;
};

// Every activity gets one before it, then one after it; the ends join last.
Arcs skeleton(int n, Dice& dice) {
    Arcs arcs(n);
    const int first = std::min(ends_of_a_network, n / 3 + 1);
    for (int j = first + 1; j <= n; ++j) {
        const int last = std::min(j - 1, n - first);
        int i = dice.roll(1, last);
        for (int tries = 0; tries < 2 * n && arcs.after(i) >= most_neighbours; ++tries) {
            i = dice.roll(1, last);
        }
        arcs.add(i, j);
    }
    for (int i = 1; i <= n - first; ++i) {
        for (int tries = 0; tries < 4 * n && arcs.after(i) == 0; ++tries) {
            const int j = dice.roll(std::max(i, first) + 1, n);
            if (arcs.before(j) < most_neighbours && !arcs.redundant(i, j)) {
                arcs.add(i, j);
            }
        }
    }
    return arcs;
}

void join_ends(Arcs& arcs, int n) {
    for (int i = 1; i <= n; ++i) {
        if (arcs.before(i) == 0) {
            arcs.add(0, i);
        }
        if (arcs.after(i) == 0) {
            arcs.add(i, n + 1);
        }
    }
}

void add_arc_somewhere(Arcs& arcs, int n, int most, Dice& dice) {
    const int i = dice.roll(1, n - 1);
    const int j = dice.roll(i + 1, n);
    if (j > ends_of_a_network && i <= n - ends_of_a_network && arcs.after(i) < most &&
        arcs.before(j) < most && !arcs.redundant(i, j)) {
        arcs.add(i, j);
    }
}

std::vector<std::int64_t> earliest_starts(const Project& project) {
    std::vector<std::int64_t> starts(project.activities.size(), 0);
    for (std::size_t round = 0; round < starts.size(); ++round) {
        for (const schedule::TimeLag& lag : project.lags) {
            starts[lag.to] = std::max(starts[lag.to], starts[lag.from] + lag.least);
        }
    }
    return starts;
}

// Demands, and of each resource something between the largest demand and the most that is used when
// everything starts as early as the lags allow.
void give_resources(Project& project, int resources, double factor, double strength, Dice& dice) {
    const int n = static_cast<int>(project.activities.size()) - 2;
    std::vector<std::pair<int, int>> uses;
    for (int i = 1; i <= n; ++i) {
        for (int r = 0; r < resources; ++r) {
            uses.emplace_back(i, r);
        }
    }
    for (std::size_t k = uses.size(); k > 1; --k) {
        std::swap(uses[k - 1],
                  uses[static_cast<std::size_t>(dice.roll(0, static_cast<int>(k) - 1))]);
    }
    uses.resize(static_cast<std::size_t>(std::lround(factor * n * resources)));
    for (Activity& activity : project.activities) {
        activity.demands.assign(static_cast<std::size_t>(resources), 0);
    }
    for (const auto& [i, r] : uses) {
        project.activities[static_cast<std::size_t>(i)].demands[static_cast<std::size_t>(r)] =
            dice.roll(1, 10);
    }
    const std::vector<std::int64_t> starts = earliest_starts(project);
    for (std::size_t r = 0; r < static_cast<std::size_t>(resources); ++r) {
        std::vector<std::int64_t> used(
            static_cast<std::size_t>(schedule::makespan_of(project, starts)), 0);
        std::int64_t least = 1;
        for (std::size_t i = 0; i < starts.size(); ++i) {
            const Activity& activity = project.activities[i];
            least = std::max(least, activity.demands[r]);
            for (std::int64_t t = starts[i]; t < starts[i] + activity.duration; ++t) {
                used[static_cast<std::size_t>(t)] += activity.demands[r];
            }
        }
        const std::int64_t most = std::max(least, *std::max_element(used.begin(), used.end()));
        project.capacities.push_back(least +
                                     std::lround(strength * static_cast<double>(most - least)));
    }
}

Project with_durations(int n, Dice& dice) {
    Project project;
    project.activities.resize(static_cast<std::size_t>(n) + 2);
    for (int i = 1; i <= n; ++i) {
        project.activities[static_cast<std::size_t>(i)].duration = dice.roll(1, 10);
    }
    return project;
}

// Some activities must not start too long after others: for a pair with a path between them, the
// path's length and some more.
void tie_back(Project& project, const Arcs& arcs, int n, Dice& dice) {
    const int ties = std::max(2, n / 5);
    for (int k = 0, tries = 0; k < ties && tries < 100 * n; ++tries) {
        const int i = dice.roll(1, n - 1);
        const int j = std::min(n, i + dice.roll(1, std::max(2, n / 3)));
        if (!arcs.path(i, j)) {
            continue;
        }
        // The longest path from i to j alone.
        constexpr std::int64_t none = -1000000;
        std::vector<std::int64_t> far(project.activities.size(), none);
        far[static_cast<std::size_t>(i)] = 0;
        for (std::size_t round = 0; round < far.size(); ++round) {
            for (const schedule::TimeLag& lag : project.lags) {
                if (lag.least >= 0 && far[lag.from] > none) {
                    far[lag.to] = std::max(far[lag.to], far[lag.from] + lag.least);
                }
            }
        }
        const std::int64_t path = far[static_cast<std::size_t>(j)];
        const std::int64_t room = dice.roll(0, static_cast<int>(path) / 2 + 4 + n / 4);
        project.lags.push_back(
            {static_cast<std::size_t>(j), static_cast<std::size_t>(i), -(path + room)});
        ++k;
    }
}

} // namespace

Project project_of(const ProjectKind& kind, unsigned seed) {
    Dice dice(seed);
    const int n = kind.activities;
    Arcs arcs = skeleton(n, dice);
    join_ends(arcs, n);
    const int wanted = static_cast<int>(std::lround(kind.complexity * (n + 2)));
    for (int tries = 0; tries < 200 * n && arcs.arcs() < wanted; ++tries) {
        add_arc_somewhere(arcs, n, most_neighbours, dice);
    }
    Project project = with_durations(n, dice);
    for (int i = 0; i < n + 2; ++i) {
        for (int j = 0; j < n + 2; ++j) {
            if (arcs.direct(i, j)) {
                project.lags.push_back({static_cast<std::size_t>(i),
                                        static_cast<std::size_t>(j),
                                        project.activities[static_cast<std::size_t>(i)].duration});
            }
        }
    }
    give_resources(project, kind.resources, kind.factor, kind.strength, dice);
    return project;
}

Project project_of(const MaxKind& kind, unsigned seed) {
    Dice dice(seed);
    const int n = kind.activities;
    Arcs arcs = skeleton(n, dice);
    for (int tries = 0; tries < 200 * n && arcs.order() < kind.order; ++tries) {
        add_arc_somewhere(arcs, n, n, dice);
    }
    join_ends(arcs, n);
    Project project = with_durations(n, dice);
    for (int i = 0; i < n + 2; ++i) {
        for (int j = 0; j < n + 2; ++j) {
            if (!arcs.direct(i, j)) {
                continue;
            }
            const auto duration =
                static_cast<int>(project.activities[static_cast<std::size_t>(i)].duration);
            // Between half and one and a half of the duration; to the end all of it.
            const int lag = i == 0 || j == n + 1
                                ? duration
                                : dice.roll((duration + 1) / 2, duration + duration / 2);
            project.lags.push_back({static_cast<std::size_t>(i), static_cast<std::size_t>(j), lag});
        }
    }
    tie_back(project, arcs, n, dice);
    give_resources(project, kind.resources, kind.factor, kind.strength, dice);
    return project;
}

std::vector<ProjectKind> project_classes(int activities) {
    std::vector<ProjectKind> classes;
    for (const double complexity : {1.5, 1.8, 2.1}) {
        for (const double factor : {0.25, 0.5, 0.75, 1.0}) {
            for (const double strength : {0.2, 0.5, 0.7, 1.0}) {
                classes.push_back({activities, 4, complexity, factor, strength});
            }
        }
    }
    return classes;
}

std::vector<MaxKind> max_classes(int activities) {
    std::vector<MaxKind> classes;
    for (const double order : {0.25, 0.5, 0.75}) {
        for (const double factor : {0.5, 0.75, 1.0}) {
            for (const double strength : {0.0, 0.25, 0.5}) {
                classes.push_back({activities, 5, order, factor, strength});
            }
        }
    }
    return classes;
}

} // namespace loafwright::bench
