// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/dough/yeast.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <tl/expected.hpp>

namespace loafwright::formula {

/// The share of the flour that a ripe leaven brings: 15 to 25 % is common practice, a fifth ours.
inline constexpr double leaven_share = 0.20;
inline constexpr double least_leaven_share = 0.15;
/// A leaven is built of one part ripe starter, five of flour and five of water, overnight (common
/// practice).
inline constexpr double build_parts = 5.0;
/// Instant yeast on the flour that raises a dough in the times of data/stage_defaults.toml: 1 %.
inline constexpr double instant_share = 0.01;

/// True where the recipe's baker's yeast stands in the dough itself, or a leaven does.
bool has_bakers_yeast(const Recipe& recipe, const Knowledge& knowledge);
bool has_leaven(const Recipe& recipe, const Knowledge& knowledge);

/// A yeasted dough with a ripe leaven instead.
///
/// Needs:    has_bakers_yeast.
/// Promises: the totals of flour, water and salt stay (to 1e-12): the leaven's flour and water come
///           out of the dough's largest of each, in equal weights; a step that builds the leaven
///           and one in which it ripens come first; the rises become give_leaven_waits'; waking the
///           yeast is gone; `changes` tells all this.
/// Errors:   leaven_does_not_fit: a sponge or a leaven in it already, no weight of flour or water,
///           less water than the smallest usual leaven takes.
tl::expected<Recipe, Diagnostics> with_leaven(const Recipe& recipe, const Knowledge& knowledge);

/// A dough on leaven with baker's yeast instead, `instant_share` or what does the same work.
///
/// Needs:    has_leaven and not has_bakers_yeast.
/// Promises: the totals of flour, water and salt stay (to 1e-12): those of the leaven go into the
///           dough; building the leaven is gone; the rises become give_yeast_waits'; `changes`
///           tells all this.
/// Errors:   leaven_does_not_fit where no flour has a weight.
tl::expected<Recipe, Diagnostics>
with_yeast(const Recipe& recipe, dough::YeastForm form, const Knowledge& knowledge);

} // namespace loafwright::formula
