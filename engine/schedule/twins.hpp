// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/encode.hpp"
#include "engine/schedule/problem.hpp"
#include "engine/schedule/solve.hpp"

#include <cstddef>
#include <utility>
#include <vector>

/// Jobs that nothing but their names tells apart. Other rooms use solve.hpp.
namespace loafwright::schedule::sat {

/// Each two of the same sort that follow each other in `order`.
std::vector<std::pair<std::size_t, std::size_t>> twins_of(const Problem& problem,
                                                          const std::vector<std::size_t>& order);

/// Of a schedule and the same with two twins exchanged, shuts out one.
///
/// Needs:    `order` is the one in which ties are settled.
/// Promises: among the best schedules the one that the tie rule picks stays possible.
void order_twins(Clauses& clauses,
                 const Encoding& encoding,
                 const std::vector<std::pair<std::size_t, std::size_t>>& twins,
                 Aim aim);

} // namespace loafwright::schedule::sat
