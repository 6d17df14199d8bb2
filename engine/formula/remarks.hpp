// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/formula/analyse.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

namespace loafwright::formula {

/// What is unusual about a formula for a bread of its kind, gravest first: salt, water, yeast,
/// leaven, fat, sugar, flour by the cup.
///
/// Needs:    the formula's figures; its remarks are not looked at.
/// Promises: nothing for a figure inside its range or so near that it makes no other dough; codes
///           salt_unusual, water_unusual, yeast_unusual, leaven_unusual, richness_unusual,
///           flour_by_volume; a warning where the figure is likely a slip of the pen, else a note.
/// Source:   data/formula_ranges.toml.
Diagnostics remarks_on(const Formula& formula, const Recipe& recipe, const Knowledge& knowledge);

} // namespace loafwright::formula
