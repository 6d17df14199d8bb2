// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/kitchen/kitchen.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loafwright {

/// What one part of the bread takes of a thing: "120 g boiling water, for the soaker".
struct PartShare {
    std::string part; // part_word; empty for the dough
    std::string item; // as the recipe calls it there
    std::optional<Band<Grams>> grams;
};

struct ToBuy {
    std::string item;     // as the recipe calls it first
    std::string known_as; // as Ingredient::known_as
    std::optional<Band<Grams>> grams;
    std::string as_written; // "2 tsp", for those without a scale; empty when the text has grams
                            // itself, or the recipe has been scaled
    bool optional = false;
    std::vector<PartShare> shares; // where the recipe has parts; in its own order
};

struct Ahead {
    std::string what;
    double hours_before = 0.0;
};

struct AllergenNote {
    std::string allergen;
    std::vector<std::string> because;
};

struct Caution {
    std::string code;
    std::string text;
    std::string source;
    std::optional<StepKind> stage;
    int weight = 50; // heavier ones first
};

/// What to weigh, what to have ready, and what to mind.
struct Provisions {
    std::vector<ToBuy> buy;
    std::vector<std::string> kit;
    std::vector<Ahead> ahead;
    std::vector<AllergenNote> allergens;
    std::vector<Caution> cautions; // heaviest first
    /// Of each step: what is normal there although it worries a beginner; empty for nothing.
    std::vector<std::string> normal;
};

/// Everything to have out before the flour is touched.
///
/// Promises: amounts of the same item are added; nothing is called free from anything; cautions
/// only where their trigger is met.
Provisions gather(const Recipe& recipe, const Kitchen& kitchen, const Knowledge& knowledge);

/// One list for several breads: amounts of the same thing are added, kit and cautions stand once.
///
/// Promises: the list of one bread is its own; with more it does not hang on their order: weights
///           from the heaviest, kit and allergens by the alphabet, what is furthest ahead first;
///           `normal`, which goes with one recipe's steps, is empty.
Provisions together(const std::vector<Provisions>& each);

} // namespace loafwright
