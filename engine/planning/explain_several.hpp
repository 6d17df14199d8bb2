// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/several.hpp"

namespace loafwright::planning {

/// Why these breads cannot all be made on this day, and what would work.
///
/// Needs:    `tried.plan` is none, or the wished time has passed; at least two breads.
/// Promises: where one bread cannot be made even alone, the answer is about that one; else the
/// rules that clash, in words; each way out was planned again, all of it, and found to hold; at
/// most four, nearest the wish first.
Impossible explain(const Breads& breads, const Day& day, const Tried& tried);

} // namespace loafwright::planning
