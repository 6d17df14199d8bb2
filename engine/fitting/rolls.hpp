// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/fit.hpp"
#include "engine/kitchen/kitchen.hpp"

#include <optional>

namespace loafwright::fitting {

/// The dough of a loaf divided into rolls: what comes after the last rise's shaping is ours, since
/// the text speaks of a loaf.
///
/// Promises: as many rolls as `usual_roll` makes of the dough; one bake at the first setting, by
///           dough::transferred_bake from the loaf's, and nothing done inside it; cooling and best
///           as rolls (cooling.hpp).
/// Errors:   nothing where the bread is not a raised loaf that is baked, where its dough has no
///           weight or makes more rolls than stand on a tray, or where the heat models don't reach.
std::optional<FittedRecipe> as_rolls(const FittedRecipe& loaf, const Kitchen& kitchen);

/// Dough for one roll, and how many stand on a tray (common practice).
inline constexpr Grams usual_roll{85.0};
inline constexpr int fewest_rolls = 4;
inline constexpr int most_rolls = 16;

} // namespace loafwright::fitting
