// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/recipe/recipe.hpp"

#include <string>
#include <string_view>

namespace loafwright {

/// Do the words name something that ripens beforehand: a leaven, a levain, a sponge, a poolish, a
/// biga, a preferment? A starter, which is bought or kept, is none.
bool names_a_leaven(std::string_view words);

/// What the recipe itself calls one of its parts. All that ripens beforehand has "leaven" for its
/// part's name; a sponge, a poolish or a biga is called so where its steps or lists do.
///
/// Promises: the part's own name for any other.
std::string part_word(const Recipe& recipe, std::string_view part);

/// The same for what one step makes, also where the recipe has no parts.
std::string preferment_word(const Recipe& recipe, const Step& step);

} // namespace loafwright
