// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/ingredient.hpp"
#include "engine/recipe/recipe.hpp"

#include <vector>

namespace loafwright::reading {

/// Says of every step, ingredient and unread phrase where it was read.
void name_places(Reading& reading);

/// Takes what the baker says against the reading. An answer corrects, where its key is one of
///     kind-at-P      a StepKind, or "none": it is no step; of an unread phrase: it is one
///     place-at-P     a Place
///     minutes-at-P   how long it takes
///     heat-at-P      the oven, or how warm the dough stands
///     grams-at-P     the amount of an ingredient ("500 g", "2 tsp"), or "none": it is none
/// and P is the place where it was read (Step::at).
///
/// Needs:    places named; `found` beside the ingredients of `reading`, one for one; `region`,
/// whose
///           measures the text uses.
/// Promises: a step's or amount's first reading is kept in its `as_read`; a step that is none
///           becomes an unread phrase; one that cannot be understood, or whose place holds nothing
///           of the kind, becomes a remark.
/// Gives:    the answers that correct nothing.
Answers take_corrections(const Knowledge& knowledge,
                         const Lexicon& lexicon,
                         const Units& units,
                         std::optional<Region> region,
                         const Answers& answers,
                         std::vector<FoundIngredient>& found,
                         Reading& reading);

} // namespace loafwright::reading
