// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/event.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/planning/plan.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace loafwright {

/// What the baker was told to do within so many minutes stays where it is, unless it must move.
inline constexpr std::int64_t told_soon_minutes = 10;

/// The rest of a bake, planned again.
struct Replanned {
    Plan plan;
    /// One line about what moved and why: "First rise took 20 min longer: prove, covered is now at
    /// 15:10, and you eat at 18:30 all the same." Empty where nothing that matters moved.
    std::string change;
};

/// The same bake from here on.
///
/// Needs:    `plan` was made of `recipes` (in its order of breads), in this kitchen, on this day;
///           events at or before `now`.
/// Promises: what is done keeps the times it really had; what runs keeps running, at least until
/// now and until it is to be looked at again; the rest keeps its planned start where it can and
/// moves as little as it must, in the same order along each bread; what is due within
/// `told_soon_minutes` moves last of all. A dough that is ready early takes what hangs on it along;
/// how far it had grown tells how long it will still take; a remedy does what its row says.
/// Where the day leaves no way at all the page still goes on, with warnings that say what it breaks
/// (`dough_waits_long`, `nobody_there`). The time to eat by is kept on the page while it holds,
/// else it is when the bread can be cut. Never:    reads a clock, throws on input, loses a line.
Replanned replan(const Plan& plan,
                 const std::vector<FittedRecipe>& recipes,
                 const Kitchen& kitchen,
                 const Day& day,
                 const std::vector<Event>& events,
                 Instant now,
                 const Knowledge& knowledge);

} // namespace loafwright
