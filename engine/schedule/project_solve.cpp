// SPDX-License-Identifier: Apache-2.0
//
// From both sides: a schedule made quickly bounds the makespan from above, ends refuted by bounds
// alone (Klein, Scholl, "Computing lower bounds by destructive improvement", European Journal of
// Operational Research 112, 1999) from below, and the solver closes what is left.
//
// Where lags lead back, activities that reach each other form a block. The project can be done
// exactly if each block by itself can, since between blocks one can always wait (Neumann,
// Schwindt, Zimmermann, "Project scheduling with time windows and scarce resources", 2003, chapter
// 2.3); so whether there is any schedule is asked of small problems first.
#include "engine/schedule/project_solve.hpp"

#include "engine/schedule/project_bounds.hpp"
#include "engine/schedule/project_encode.hpp"
#include "engine/schedule/project_serial.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <optional>

namespace loafwright::schedule {

namespace {

using projects::Block;
using projects::Bounds;
using projects::Depth;
using projects::Encoding;
using projects::Network;
using projects::no_lag;
using projects::Rivals;

// Work of the quick tries, in looks at a resource: a fraction of a millisecond, and for each pair
// of activities some more where that was not enough.
constexpr std::int64_t first_tries = 300000;
constexpr std::int64_t more_tries = 3000;
constexpr std::int64_t most_tries = 10000000;

// What about twenty seconds are, in conflicts times literals of all clauses: a conflict takes 0.6
// to 1 ns a literal, measured from 150,000 literals to 4.5 million.
constexpr std::int64_t usual_effort = 40000000000;

// Beyond these an encoding is not begun: it would only be cut off.
constexpr std::int64_t most_starts = 1500000;
constexpr std::int64_t most_encoding_work = 1000000000;

std::int64_t grid_of(const Project& project) {
    std::int64_t grid = 0;
    for (const Activity& activity : project.activities) {
        grid = std::gcd(grid, activity.duration);
    }
    for (const TimeLag& lag : project.lags) {
        grid = std::gcd(grid, lag.least);
    }
    return std::max<std::int64_t>(1, grid);
}

Project on_grid(Project project, std::int64_t grid) {
    for (Activity& activity : project.activities) {
        activity.duration /= grid;
    }
    for (TimeLag& lag : project.lags) {
        lag.least /= grid;
    }
    return project;
}

bool fits_alone(const Project& project) {
    for (const Activity& activity : project.activities) {
        for (std::size_t r = 0; r < project.capacities.size(); ++r) {
            if (activity.duration > 0 && activity.demands[r] > project.capacities[r]) {
                return false;
            }
        }
    }
    return true;
}

OutOfReach limit_came_first() {
    return {{{"value_out_of_range",
              Severity::error,
              "no schedule was found within the limit, and none was ruled out",
              "",
              "Allow more --conflicts, or take a smaller project."}}};
}

/// Orders every two rivals that the bounds leave only one order.
bool order_within(const Project& project,
                  const Rivals& rivals,
                  const Bounds& bounds,
                  Network& network) {
    for (std::size_t a = 0; a < network.size(); ++a) {
        for (std::size_t b = 0; b < network.size(); ++b) {
            if (rivals.are(a, b) && !network.spent() &&
                bounds.earliest[b] + project.activities[b].duration > bounds.latest[a] &&
                !network.add(a, b, project.activities[a].duration)) {
                return false;
            }
        }
    }
    return true;
}

bool can_be_encoded(const Project& project, const Bounds& bounds) {
    std::int64_t starts = 0;
    std::int64_t work = 0;
    const auto n = static_cast<std::int64_t>(project.activities.size());
    for (std::size_t i = 0; i < project.activities.size(); ++i) {
        const std::int64_t between = bounds.latest[i] - bounds.earliest[i];
        starts += between;
        work += (between + project.activities[i].duration) * n *
                static_cast<std::int64_t>(project.capacities.size() + 1);
    }
    return starts <= most_starts && work <= most_encoding_work;
}

class ProjectSearch {
public:
    ProjectSearch(const Project& project, std::optional<std::int64_t> conflicts)
        : project_(project), implied_(project), network_(project), rivals_(project),
          conflicts_(conflicts) {}

    ProjectOutcome run();

private:
    enum class Found { yes, no, unknown };

    Found find_blocks();
    Found settle(const std::vector<std::size_t>& members, Block& block);
    [[nodiscard]] bool refuted(std::int64_t end, Depth depth) const;
    void raise_lower_bound(Depth depth);
    void take(std::vector<std::int64_t> starts);
    void close();
    void give_limit(sat::Clauses& clauses) const;

    const Project& project_;
    Project implied_;
    Network network_;
    Rivals rivals_;
    std::optional<std::int64_t> conflicts_;
    std::vector<Block> blocks_;
    std::int64_t lower_ = 0;
    std::vector<std::int64_t> best_;
    std::int64_t upper_ = 0;
};

ProjectSearch::Found ProjectSearch::find_blocks() {
    std::vector<bool> taken(network_.size(), false);
    for (std::size_t i = 0; i < network_.size(); ++i) {
        if (taken[i]) {
            continue;
        }
        Block block;
        for (std::size_t j = i; j < network_.size(); ++j) {
            if (network_.lag(i, j) != no_lag && network_.lag(j, i) != no_lag) {
                taken[j] = true;
                block.members.push_back(j);
            }
        }
        block.offsets.assign(block.members.size(), 0);
        if (block.members.size() > 1) {
            const std::vector<std::size_t> members = block.members;
            const Found found = settle(members, block);
            if (found != Found::yes) {
                return found;
            }
        }
        blocks_.push_back(std::move(block));
    }
    return Found::yes;
}

/// One schedule of some activities by themselves, every lag between them kept.
ProjectSearch::Found ProjectSearch::settle(const std::vector<std::size_t>& members, Block& block) {
    // One activity stands still, the one that leaves the others the least room.
    std::size_t still = members.front();
    std::int64_t least_room = std::numeric_limits<std::int64_t>::max();
    for (const std::size_t i : members) {
        std::int64_t room = 0;
        for (const std::size_t j : members) {
            room -= network_.lag(i, j) + network_.lag(j, i);
        }
        if (room < least_room && members.front() != 0) {
            least_room = room;
            still = i;
        }
    }
    Project part;
    part.capacities = project_.capacities;
    part.activities.push_back({0, std::vector<std::int64_t>(part.capacities.size(), 0)});
    std::int64_t ahead = 0;
    for (const std::size_t i : members) {
        part.activities.push_back(project_.activities[i]);
        ahead = std::max(ahead, -network_.lag(still, i));
    }
    std::int64_t end = 0;
    for (std::size_t a = 0; a < members.size(); ++a) {
        for (std::size_t b = 0; b < members.size(); ++b) {
            part.lags.push_back({a + 1, b + 1, network_.lag(members[a], members[b])});
        }
        if (members[a] == still) {
            part.lags.push_back({0, a + 1, ahead});
            part.lags.push_back({a + 1, 0, -ahead});
        }
        end = std::max(end,
                       ahead - network_.lag(members[a], still) +
                           project_.activities[members[a]].duration);
    }
    Network network(part);
    const Rivals rivals(part);
    if (!network.sound() || !projects::order_rivals(part, rivals, network)) {
        return Found::no;
    }
    std::optional<Bounds> bounds = projects::network_bounds(part, network, end);
    if (!bounds || !projects::narrow(part, network, rivals, Depth::energy, *bounds) ||
        !order_within(part, rivals, *bounds, network)) {
        return Found::no;
    }
    if (!can_be_encoded(part, *bounds)) {
        return Found::unknown;
    }
    sat::Clauses clauses(0);
    const Encoding encoding(clauses, part, network, rivals, *bounds);
    give_limit(clauses);
    const sat::Answer answer = clauses.solve();
    if (conflicts_) {
        conflicts_ = clauses.conflicts_left();
    }
    if (answer != sat::Answer::yes) {
        return answer == sat::Answer::no ? Found::no : Found::unknown;
    }
    const std::vector<std::int64_t> starts = encoding.in_model();
    const std::int64_t first = *std::min_element(starts.begin() + 1, starts.end());
    for (std::size_t k = 0; k < members.size(); ++k) {
        block.offsets[k] = starts[k + 1] - first;
    }
    return Found::yes;
}

bool ProjectSearch::refuted(std::int64_t end, Depth depth) const {
    std::optional<Bounds> bounds = projects::network_bounds(project_, network_, end);
    const Project& looked_at = depth == Depth::energy ? implied_ : project_;
    return !bounds || !projects::narrow(looked_at, network_, rivals_, depth, *bounds);
}

// An end that is refuted refutes all before it, so the step may double.
void ProjectSearch::raise_lower_bound(Depth depth) {
    std::int64_t step = 1;
    while (lower_ < upper_ && refuted(lower_ + step - 1, depth)) {
        lower_ = std::min(upper_, lower_ + step);
        step *= 2;
    }
    for (step /= 2; step > 0; step /= 2) {
        if (lower_ + step <= upper_ && refuted(lower_ + step - 1, depth)) {
            lower_ += step;
        }
    }
}

void ProjectSearch::take(std::vector<std::int64_t> starts) {
    const std::int64_t end = makespan_of(project_, starts);
    if (best_.empty() || end < upper_) {
        best_ = std::move(starts);
        upper_ = end;
    }
}

void ProjectSearch::give_limit(sat::Clauses& clauses) const {
    clauses.limit(conflicts_.value_or(usual_effort / (clauses.literals() + 1)));
}

void ProjectSearch::close() {
    std::optional<Bounds> bounds = projects::network_bounds(project_, network_, upper_ - 1);
    Network network = network_;
    if (!bounds || !projects::narrow(implied_, network, rivals_, Depth::energy, *bounds) ||
        !order_within(project_, rivals_, *bounds, network)) {
        lower_ = upper_;
        return;
    }
    if (!can_be_encoded(project_, *bounds)) {
        return;
    }
    sat::Clauses clauses(0);
    const Encoding encoding(clauses, project_, network, rivals_, *bounds);
    give_limit(clauses);
    // From above: each schedule that is found shortens the next, and the clauses learned stay true.
    while (lower_ < upper_) {
        const sat::Answer answer = clauses.solve();
        if (answer == sat::Answer::stopped) {
            return;
        }
        if (answer == sat::Answer::no) {
            lower_ = upper_;
        } else {
            take(encoding.in_model());
            clauses.add({encoding.over_by(upper_ - 1)});
        }
    }
}

ProjectOutcome ProjectSearch::run() {
    if (!network_.sound() || !fits_alone(project_) ||
        !projects::order_rivals(project_, rivals_, network_)) {
        return NoSchedule{};
    }
    const Found found = find_blocks();
    if (found != Found::yes) {
        return found == Found::no ? ProjectOutcome{NoSchedule{}}
                                  : ProjectOutcome{limit_came_first()};
    }
    upper_ = length_in_a_row(project_);
    raise_lower_bound(Depth::pairs_and_parts);
    projects::Serial serial(project_, blocks_);
    take(serial.run(lower_, first_tries));
    if (lower_ < upper_) {
        implied_ = projects::with_implied_resources(project_, network_, rivals_);
        raise_lower_bound(Depth::energy);
    }
    if (lower_ < upper_) {
        const auto n = static_cast<std::int64_t>(project_.activities.size());
        take(serial.run(lower_, std::min(most_tries, n * n * more_tries)));
    }
    if (lower_ < upper_) {
        close();
    }
    return ProjectSolved{best_, upper_, lower_, lower_ == upper_ ? Proof::best : Proof::best_found};
}

} // namespace

ProjectOutcome solve_project(const Project& project, std::optional<std::int64_t> conflicts) {
    Diagnostics faults = faults_in(project);
    if (!faults.empty()) {
        return OutOfReach{std::move(faults)};
    }
    const std::int64_t grid = grid_of(project);
    const Project smaller = on_grid(project, grid);
    ProjectOutcome outcome = ProjectSearch(smaller, conflicts).run();
    if (auto* solved = std::get_if<ProjectSolved>(&outcome)) {
        for (std::int64_t& start : solved->starts) {
            start *= grid;
        }
        solved->makespan *= grid;
        solved->lower_bound *= grid;
    }
    return outcome;
}

} // namespace loafwright::schedule
