// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <string>

namespace loafwright {

/// What the bread looks like on the rack, which decides how it is baked by default and how long it
/// cools.
enum class Form { loaf, rolls, flat };

/// What the ingredients say about the dough.
struct Makeup {
    double flour_grams = 0.0;
    double rye_share = 0.0;        // of the flour
    double wholegrain_share = 0.0; // of the flour, rye included
    /// Fat, sugar and egg whole, milk by its solids (an eighth), as a share of the flour.
    double enrichment_share = 0.0;
    bool has_yeast = false;
    bool has_leaven = false;
    bool has_baking_powder = false;
};

/// Promises: shares are 0 where no flour has a weight.
Makeup makeup_of(const Recipe& recipe, const Knowledge& knowledge);

/// The kind of dough, for stage defaults and cues: sourdough before quick before flatbread before
/// enriched before wholegrain before lean.
DoughFamily family_of(const Recipe& recipe, const Knowledge& knowledge);

/// What raises the dough: the row of its first preferment in the ingredient table, or "leaven";
/// else "yeast"; else nothing.
std::string leaven_of(const Recipe& recipe, const Knowledge& knowledge);

/// By the title first, then by the words of dividing, shaping and baking, then by the number of
/// pieces that the text makes; else a loaf. What is made for one tin is a loaf.
Form form_of(const Recipe& recipe);

} // namespace loafwright
