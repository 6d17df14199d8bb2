// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <tl/expected.hpp>

#include <variant>

namespace loafwright {

/// So many pieces, each as heavy as the recipe's own.
struct PiecesWanted {
    double pieces = 1.0;
};
/// So much dough in all.
struct DoughWanted {
    Grams dough;
};
/// So many times the recipe.
struct FactorWanted {
    double factor = 1.0;
};
/// As much dough as fills a tin of this size as usual.
struct TinWanted {
    TinSize tin;
};
using Target = std::variant<PiecesWanted, DoughWanted, FactorWanted, TinWanted>;

/// The recipe in another size. Amounts are multiplied and never rounded; what is shown is rounded
/// where it is shown.
///
/// A recipe of several pieces gets more or fewer of the same; one of a single loaf, or that names
/// no pieces, gets a larger or smaller loaf, unless pieces are what is wanted. For a tin, each loaf
/// fills one such tin; what was rolls becomes one loaf.
///
/// Needs:    every number of the target > 0.
/// Promises: by k and then by 1/k gives the recipe back (to 1e-12 of each amount); `written_for`
///           keeps what the recipe's own times were for, so that `fit` carries them over; the words
///           of the recipe stay.
/// Errors:   dough_unweighed when the target is a weight or a tin and nothing in the dough has a
///           weight.
/// Source:   data/tin_fill.toml for how full a tin is.
tl::expected<Recipe, Diagnostics>
scale(const Recipe& recipe, const Target& target, const Knowledge& knowledge);

/// All that is mixed into the dough.
Grams dough_mass(const Recipe& recipe, const Knowledge& knowledge);

} // namespace loafwright
