// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/problem.hpp"
#include "engine/schedule/solve.hpp"

#include <cstdint>
#include <optional>

/// A first schedule, one job after the other. Other rooms use solve.hpp.
namespace loafwright::schedule::sat {

struct Serial {
    /// Each job as well as what the ones before it left allows; empty entries for those that found
    /// no place.
    Schedule schedule;
    /// Every job has its place, every rule is kept, and the first start is as wished.
    bool whole = false;
};

/// The best of a few orders of the jobs.
Serial serial_schedule(const Problem& problem, const Wish& wish);

/// No schedule has fewer violations, and none with so few is tied for less.
struct LeastCost {
    std::int64_t violations = 0;
    std::int64_t tied = 0;
    bool impossible = false; // some job cannot be done even alone
};

/// The sum over the jobs, each alone; none where some job is more than one line of tasks.
std::optional<LeastCost> least_cost(const Problem& problem);

} // namespace loafwright::schedule::sat
