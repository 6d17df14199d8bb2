// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

namespace loafwright::formula {

/// What a tin with upright sides holds up to its rim.
Millilitres volume(const TinSize& tin);

/// What a tin with sloping sides holds: `rim` and `base` are its inside edges above and below,
/// `height` of `rim` its depth.
///
/// Source: the prismoidal formula V = h / 6 (A_rim + 4 A_middle + A_base), exact for plane sides.
Millilitres volume(const TinSize& rim, Millimetres base_length, Millimetres base_width);

/// The dough that fills so much of a tin as usual for its kind.
///
/// Source: data/tin_fill.toml.
Band<Grams> dough_for(Millilitres tin, DoughFamily family, const Knowledge& knowledge);

} // namespace loafwright::formula
