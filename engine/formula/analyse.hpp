// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/dough/baker_units.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

namespace loafwright {

struct FormulaItem {
    std::string item;     // as the recipe calls it first
    std::string known_as; // as Ingredient::known_as
    std::optional<std::string> part;
    Band<Grams> grams;
    dough::BakersPercent percent{}; // of all flour
    bool in_dough = true;           // no topping, glaze or filling, and not only if you like
};

/// A recipe as bakers compare them: everything in percent of all its flour, that of preferments
/// included.
///
/// Invariants: flour > 0; dough >= flour; hydration <= total_hydration; 0 <= prefermented <= 100.
struct Formula {
    Grams flour;
    Grams dough; // all that is mixed into it
    /// Water that is poured, and that of leavens and sponges.
    dough::BakersPercent hydration{};
    /// With the water in milk, egg, butter, honey, fresh yeast and mashed potato; not flour's own.
    dough::BakersPercent total_hydration{};
    dough::BakersPercent prefermented{}; // the share of the flour that ferments beforehand
    dough::BakersPercent salt{};
    dough::BakersPercent fat{};
    dough::BakersPercent sugar{};
    /// The baker's yeast as so much fresh yeast; none where there is none, or no weight of it.
    std::optional<Band<Grams>> yeast_as_fresh;
    /// In the recipe's order; the same thing named twice within a part is one item.
    std::vector<FormulaItem> items;
    /// What the recipe names and gives no weight for.
    std::vector<std::string> unweighed;
    /// What is unusual about it for a bread of its kind, and what to do about it.
    Diagnostics remarks;
};

/// The formula of a recipe.
///
/// Needs:    ingredients with their rows (`known_as`).
/// Promises: percentages stay when all amounts are multiplied by the same number; an ingredient
///           without a weight counts for nothing and is named.
/// Errors:   dough_unweighed when no flour has a weight.
/// Source:   the trade's definitions: ingredient % = 100 x weight / all flour; hydration = water /
///           all flour; prefermented = flour of the preferments / all flour. Water of each
///           ingredient by the ingredient table (USDA SR27).
tl::expected<Formula, Diagnostics> analyse(const Recipe& recipe, const Knowledge& knowledge);

} // namespace loafwright
