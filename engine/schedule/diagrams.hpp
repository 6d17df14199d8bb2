// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/clauses.hpp"

#include <cstdint>
#include <vector>

/// Sums that stay within a bound, as decision diagrams. Other rooms use solve.hpp and
/// project_solve.hpp.
namespace loafwright::schedule::sat {

/// One of several things that a line may add to the sum.
struct Choice {
    std::int64_t weight = 0; // > 0
    Literal literal = never;
};

/// At most one of them holds; somebody else sees to that.
using Line = std::vector<Choice>;

/// What the literals that hold add up to is at most `most`, unless `unless` holds.
void keep_sum(Clauses& clauses, std::vector<Line> lines, std::int64_t most, Literal unless = never);

} // namespace loafwright::schedule::sat
