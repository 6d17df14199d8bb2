// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/clauses.hpp"

#include <cstdint>
#include <map>
#include <vector>

/// Sums of costs as literals. Other rooms use solve.hpp.
namespace loafwright::schedule::sat {

/// A number >= 0 that a model has: for each value it can take but 0, a literal that holds at least
/// where the number is that large. It may hold elsewhere, too: only its denial says something.
using Sum = std::map<std::int64_t, Literal>;

/// The sum of all parts, exact below `cap`; what is larger is `cap`.
Sum total(Clauses& clauses, std::vector<Sum> parts, std::int64_t cap);

/// What to assume so that the sum is at most `bound`.
///
/// Needs: bound < cap, where it was made with one.
std::vector<Literal> at_most(const Sum& sum, std::int64_t bound);

} // namespace loafwright::schedule::sat
