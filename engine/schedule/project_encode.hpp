// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/clauses.hpp"
#include "engine/schedule/moments.hpp"
#include "engine/schedule/project.hpp"
#include "engine/schedule/project_bounds.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

/// The rules of a project as clauses. Other rooms use project_solve.hpp.
namespace loafwright::schedule::projects {

/// Starts as literals, with every rule of the project between them.
class Encoding {
public:
    /// Needs: bounds narrowed for this network.
    Encoding(sat::Clauses& clauses,
             const Project& project,
             const Network& network,
             const Rivals& rivals,
             const Bounds& bounds);

    /// All is over by then.
    [[nodiscard]] sat::Literal over_by(std::int64_t end) const { return end_.at_most(end); }
    [[nodiscard]] std::vector<std::int64_t> in_model() const;

private:
    void keep_lags();
    void keep_lag(std::size_t from, std::size_t to, std::int64_t least);
    [[nodiscard]] bool
    follows_from_others(std::size_t from, std::size_t to, std::int64_t least) const;
    void keep_end(const Bounds& bounds);
    void choose_orders();
    void keep_resources(const Bounds& bounds);
    void keep_resource_at(std::size_t resource,
                          std::int64_t time,
                          const std::vector<std::size_t>& users);
    sat::Literal runs_at(std::size_t activity, std::int64_t time);
    [[nodiscard]] bool never_together(std::size_t a, std::size_t b) const;
    [[nodiscard]] std::int64_t length(std::size_t i) const {
        return project_.activities[i].duration;
    }

    sat::Clauses& clauses_;
    const Project& project_;
    const Network& network_;
    const Rivals& rivals_;
    std::vector<sat::Moment> starts_;
    sat::Moment end_;
    std::vector<std::vector<sat::Literal>> running_; // by activity, then time since its earliest
};

} // namespace loafwright::schedule::projects
