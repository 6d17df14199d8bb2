// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <tl/expected.hpp>

#include <array>
#include <optional>
#include <string_view>

namespace loafwright {

/// What can raise a dough at a baker's wish.
enum class RaisedBy { fresh, active_dry, instant, leaven };

inline constexpr std::array<RaisedBy, 4> all_raised_by{
    RaisedBy::fresh, RaisedBy::active_dry, RaisedBy::instant, RaisedBy::leaven};

std::string_view name_of(RaisedBy raised_by);
std::optional<RaisedBy> raised_by_named(std::string_view name);

/// The recipe with what the baker has in the cupboard instead of what it names.
///
/// One form of baker's yeast goes for another (swap.hpp), wherever there is any; leaven goes for
/// yeast and yeast for leaven (leaven.hpp).
///
/// Promises: a recipe that has it already comes back as it is; otherwise `changes` says in a
///           sentence what is other, with the weights of this recipe; what the text tells of the
///           old weights is no longer reminded of.
/// Errors:   raised_otherwise where there is neither yeast nor leaven; leaven_does_not_fit.
tl::expected<Recipe, Diagnostics>
raised_by(const Recipe& recipe, RaisedBy raised_by, const Knowledge& knowledge);

} // namespace loafwright
