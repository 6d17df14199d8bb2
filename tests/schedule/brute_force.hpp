// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/problem.hpp"
#include "engine/schedule/solve.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace loafwright::schedule {

/// What one schedule among all is worth, in the order of the aim; smaller is better.
using Worth = std::vector<std::int64_t>;

Worth worth_of(const Problem& problem, const Schedule& schedule, Aim aim);

/// The best worth that any schedule of a small chain has, by trying every start and every length of
/// every task. Rules are judged by `violations`; nothing is pruned but what the horizon forbids.
std::optional<Worth> best_by_trying_all(const Problem& problem, const Wish& wish);

/// The same for jobs of any shape and number: every alternative, start, length and person, judged
/// by `violations`. Only what one lag or one length forbids by itself is left out beforehand.
std::optional<Worth> best_of_any_shape(const Problem& problem, const Wish& wish);

} // namespace loafwright::schedule
