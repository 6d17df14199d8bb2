// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/attempt.hpp"

namespace loafwright::planning {

/// Why this day cannot be, and what would work.
///
/// Needs:    `attempt(bread, day)` is none, or the wished time has passed.
/// Promises: `why` names the wish and the sum or the clash behind it; each way out was planned
/// again, as a day of its own, and
///           found to hold; at most four, nearest the wish first, no two alike; none has anybody
///           work in a window of the day, nor at night where no sleep is known and there is another
///           way.
Impossible explain(const Bread& bread, const Kitchen& kitchen, const Day& day);

/// True when the wished start or time to eat lies before now.
bool wish_has_passed(const Day& day);

} // namespace loafwright::planning
