// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

/// Projects: activities without breaks that share renewable resources, with time lags between their
/// starts, and one aim, to be finished early. In the field: the resource-constrained project
/// scheduling problem, and with greatest lags RCPSP/max. Nothing here knows what they are for.
namespace loafwright::schedule {

inline constexpr std::size_t most_activities = 1200;
inline constexpr std::size_t most_resources = 16;
inline constexpr std::size_t most_time_lags = 100000;
inline constexpr std::int64_t most_units = 1000000; // of a resource, needed or there
/// Of a project done one activity after the other, waits for lags included.
inline constexpr std::int64_t longest_project = 100000;

/// Once started it runs for `duration` and holds demands[r] units of resource r all the while.
struct Activity {
    std::int64_t duration = 0;
    std::vector<std::int64_t> demands; // one for each resource
};

/// start(to) >= start(from) + least. What may be at most m later is a lag backwards: least = -m.
struct TimeLag {
    std::size_t from = 0;
    std::size_t to = 0;
    std::int64_t least = 0;
};

/// Invariants: at least one activity; the first starts at 0 and no other earlier.
struct Project {
    std::vector<std::int64_t> capacities; // one for each resource
    std::vector<Activity> activities;
    std::vector<TimeLag> lags;
};

/// The end of the last activity to end.
///
/// Needs: one start for each activity.
std::int64_t makespan_of(const Project& project, const std::vector<std::int64_t>& starts);

/// A time by which all is over if it can be done at all: what lags backwards tie together stays
/// together, everything else waits for what is before it.
std::int64_t length_in_a_row(const Project& project);

/// Everything about a project that has no meaning or is larger than the limits above.
///
/// Promises: empty for a project that keeps them; at most twenty entries; never a crash.
Diagnostics faults_in(const Project& project);

} // namespace loafwright::schedule
