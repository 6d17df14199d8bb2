// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/loaf.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/knowledge/family.hpp"
#include "engine/quantity/phrase.hpp"
#include "engine/recipe/recipe.hpp"

#include <optional>
#include <string>

namespace loafwright::fitting {

/// The piece of dough that is baked, as the recipe means it: usual size for its weight. None where
/// the weight is not known, or where the heat models have not been looked at for such a piece.
std::optional<dough::Loaf> loaf_of(const Recipe& recipe, Form form, Grams mass);

/// How much longer or shorter the bake takes here.
struct BakeHere {
    Band<double> factor{1.0, 1.0, 1.0};
    std::string reason; // "your tin is smaller"
    std::string advice; // about the crust, empty mostly
};

/// Promises: nothing where the recipe's bake stands: the size that it was written for, no tin of
///           another size, no height, an oven that gets hot enough. The factor holds for all parts
///           of a bake.
/// Source:   dough::transferred_bake.
std::optional<BakeHere> bake_here(const Recipe& recipe,
                                  const Kitchen& kitchen,
                                  Form form,
                                  Grams mass,
                                  std::optional<Celsius> wanted);

/// What to say where a piece of another size is baked for the recipe's own time, because the heat
/// models have not been looked at for it; nothing where they have, or where the size is the text's.
std::optional<Phrase> unknown_size_words(const Recipe& recipe, Form form, Grams mass);

} // namespace loafwright::fitting
