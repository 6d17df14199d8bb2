// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/event.hpp"
#include "engine/quantity/tagged.hpp"
#include "engine/recipe/recipe.hpp"

#include <cstdint>

/// What a look at the dough says about how long it will take.
namespace loafwright::following {

/// The gain in volume that each word stands for, as a share of what it had (common practice).
double gain_of(Growth seen);

/// How much volume the dough is to gain by the end of the wait, as a share of what it had: 1 for
/// "doubled". From the words of the cue; where they name none, 1 for a rise and 0.8 for a final
/// prove, which is taken to four fifths of the finished volume (common practice).
double growth_wanted(const std::string& cue, StepKind kind);

/// How long the wait is in all, from its begin, after a look.
///
/// The model: gas in a dough of usual yeast is close to proportional to time (up to three hours),
/// so a dough that gained `seen` by now gains `wanted` after elapsed · wanted / seen. What was
/// planned and what was seen are both uncertain and are joined as two normal distributions of the
/// logarithm of the time: the plan's by its low and high as tenth and ninetieth percentile, the
/// eye's by the neighbours of the word it chose.
///
/// Needs:    0 < planned.low <= planned.likely <= planned.high; elapsed >= 0.
/// Promises: low <= likely <= high; no later answer is wider than the plan; a dough that has gained
/// what is wanted is ready at `elapsed`; within the first five minutes a look says nothing.
Band<std::int64_t> wait_after_look(Band<std::int64_t> planned_minutes,
                                   std::int64_t elapsed_minutes,
                                   Growth seen,
                                   double wanted);

} // namespace loafwright::following
