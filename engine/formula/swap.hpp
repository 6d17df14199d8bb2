// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/yeast.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

namespace loafwright {

/// The recipe with another form of baker's yeast that does the same work, so that its times stand.
///
/// Promises: there and back gives the weights again (to 1e-12); likely weights go by
///           dough::grams_for_one_fresh, low and high keep their distance; yeast that is in this
///           form already, and everything else, stays; a swapped yeast is called by its row and is
///           no longer offered in the forms that the text allowed.
/// Source:   Hamelman 2004, as dough::grams_for_one_fresh.
Recipe swap(const Recipe& recipe, dough::YeastForm form, const Knowledge& knowledge);

} // namespace loafwright
