// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/project.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

/// What lags and resources say about starts without any search. Other rooms use project_solve.hpp.
namespace loafwright::schedule::projects {

/// No lag between two activities.
inline constexpr std::int64_t no_lag = -4 * longest_project;

/// The least time from one start to another, by longest paths.
class Network {
public:
    /// Needs: `faults_in(project)` is empty.
    explicit Network(const Project& project);

    /// False when the lags contradict each other: round some circle they add up to more than 0.
    [[nodiscard]] bool sound() const { return sound_; }
    [[nodiscard]] std::size_t size() const { return size_; }
    [[nodiscard]] std::int64_t lag(std::size_t from, std::size_t to) const {
        return lags_[from * size_ + to];
    }
    /// One more lag, with all that follows from it. False when it contradicts the others.
    bool add(std::size_t from, std::size_t to, std::int64_t least);
    /// So much was added that more would take long; what is not added is only not used.
    [[nodiscard]] bool spent() const { return work_ > most_work; }

private:
    static constexpr std::int64_t most_work = 300000000;

    std::int64_t work_ = 0;
    std::size_t size_ = 0;
    std::vector<std::int64_t> lags_;
    bool sound_ = true;
};

/// Pairs that cannot run at the same time because together they need too much.
class Rivals {
public:
    explicit Rivals(const Project& project);

    [[nodiscard]] bool are(std::size_t a, std::size_t b) const { return are_[a * size_ + b]; }

private:
    std::size_t size_ = 0;
    std::vector<bool> are_;
};

/// Between which starts each activity can begin.
struct Bounds {
    std::vector<std::int64_t> earliest;
    std::vector<std::int64_t> latest;
};

/// Bounds from the network alone for a project that ends by `end`; none when it cannot.
std::optional<Bounds>
network_bounds(const Project& project, const Network& network, std::int64_t end);

/// The project with resources that follow from its own: one for each set of activities of which no
/// two can run together, and for each resource some in which small demands count nothing and large
/// ones all of it. Starts that keep every rule of the one keep every rule of the other.
Project
with_implied_resources(const Project& project, const Network& network, const Rivals& rivals);

/// How far resources are thought through.
enum class Depth {
    pairs_and_parts, // rivals, and the time in which an activity runs wherever it starts
    energy           // the work that must fall between two times, too
};

/// Narrows the bounds to what lags and resources leave; false when nothing is left.
///
/// Promises: no start that any schedule within the old bounds has is lost; stops early rather than
///           take long.
bool narrow(const Project& project,
            const Network& network,
            const Rivals& rivals,
            Depth depth,
            Bounds& bounds);

/// Orders rivals of which only one order is possible, as lags in the network, unless that takes
/// long; false when neither order is.
bool order_rivals(const Project& project, const Rivals& rivals, Network& network);

} // namespace loafwright::schedule::projects
