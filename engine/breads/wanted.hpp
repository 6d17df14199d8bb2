// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/formula/raised_by.hpp"
#include "engine/formula/scale.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <tl/expected.hpp>

#include <optional>

namespace loafwright::breads {

/// How somebody wants a bread that its text has in another size or with another yeast.
struct Wanted {
    std::optional<Target> size;
    std::optional<RaisedBy> yeast;
};

/// What a number of a size may be: wide enough for a bakery, narrow enough for a slip of the finger
/// to show.
struct SizeRange {
    double low;
    double high;
};
inline constexpr SizeRange pieces_range{0.5, 10000.0};
inline constexpr SizeRange dough_grams_range{20.0, 1000000.0};
inline constexpr SizeRange factor_range{0.01, 1000.0};
inline constexpr SizeRange tin_side_mm_range{20.0, 2000.0};

/// The reading as it is wanted: in its size first, then with its yeast, so that the weights that
/// the change is told with are those on the page.
///
/// Promises: what was asked and is so already changes nothing; a question about a length that is no
///           longer the text's is not asked; what the text tells of other amounts is not reminded
///           of; `recipe.changes` tells what is other.
/// Errors:   dough_unweighed, raised_otherwise.
tl::expected<Reading, Diagnostics>
as_wanted(Reading reading, const Wanted& wanted, const Knowledge& knowledge);

} // namespace loafwright::breads
