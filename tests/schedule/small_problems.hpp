// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/problem.hpp"

#include <cstdint>

/// Random problems small enough to be solved by trying everything. To be called inside a RapidCheck
/// property.
namespace loafwright::schedule {

/// 0 to `most`.
std::int64_t up_to(std::int64_t most);

/// One time in three.
bool sometimes();

/// One chain of one to four tasks.
Problem small_problem(std::int64_t fewest_tasks = 1);

/// Jobs of any shape, `most_tasks` tasks in all, that share people, oven and fridge.
Problem small_day(std::int64_t most_tasks);

} // namespace loafwright::schedule
