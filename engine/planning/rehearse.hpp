// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"
#include "engine/schedule/problem.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace loafwright::planning {

/// How often a day is rehearsed: the eightieth percentile of so many stands on about ±3 in a
/// hundred.
inline constexpr std::size_t rehearsals = 200;

/// When each task ends on days on which tasks are quicker and slower: result[n][job][task].
///
/// The rule: who does what, and the order in which people and the oven are used, stay as planned.
/// Each task starts as early as its lags, its person, the oven and the windows then allow; the
/// first of a job not before its time, a job's chosen lengths end not before theirs. Lengths are
/// drawn from two halves of a normal curve whose tenth and ninetieth percentiles are low and high,
/// each task by itself, always the same way.
///
/// Needs:    `schedule` keeps every rule of `problem`; bands[job][task] with low <= likely <= high.
std::vector<std::vector<std::vector<std::int64_t>>>
rehearse(const schedule::Problem& problem,
         const schedule::Schedule& schedule,
         const std::vector<std::vector<Band<std::int64_t>>>& bands);

/// The value that `share` of the values do not exceed. Needs: not empty, 0 < share <= 1.
std::int64_t percentile(std::vector<std::int64_t> values, double share);

} // namespace loafwright::planning
