// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/fitting/mixing.hpp"
#include "engine/fitting/options.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/quantity/phrase.hpp"
#include "engine/recipe/recipe.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loafwright {

/// One step with its length in this kitchen, in whole minutes.
///
/// Invariants: 0 <= minutes.low <= minutes.likely <= minutes.high; `reason` is never empty.
struct FittedStep {
    std::optional<std::size_t>
        step; // index in recipe.steps; none for what every bake needs and no text says
    StepKind kind = StepKind::mix;
    Place place = Place::counter;
    Attention attention = Attention::hands;
    Band<std::int64_t> minutes;
    /// What they would be in a kitchen of which nothing was learned; none where that is the same.
    std::optional<Band<std::int64_t>> usual_minutes;
    Basis basis = Basis::assumed;
    std::string reason;
    /// The plan may choose any length between low and high (a night in the fridge, "12 to 24
    /// hours").
    bool stretch = false;
    /// How long the dough forgives after this step before the next must begin; none: as long as you
    /// like.
    std::optional<std::int64_t> holds_minutes;
    /// Oven setting for conventional heat, for bake and preheat.
    std::optional<Celsius> oven;
    /// For the first bake: from switching the oven on to hot.
    std::optional<std::int64_t> heat_up_minutes;
    /// For a bake after another of this bread at another setting, with the bread out of the oven
    /// between them: how long the oven takes from the one to the other.
    std::optional<std::int64_t> oven_change_minutes;
    std::optional<Cue> cue;
    /// For a rise, a prove or a leaven whose place is known: what it could be instead, as it is
    /// told first. Empty otherwise.
    std::vector<fitting::WaitOption> options;
    /// For a rise, a prove or a leaven of a dough that has a weight: what its other ways are worked
    /// out from. Where nobody has said how warm the room is, one of `usual_room`.
    std::optional<fitting::Rising> rising;
};

/// A recipe with the lengths it has in one kitchen.
///
/// Invariants: `steps` are in the order in which they are done; steps of the recipe that run inside
/// another (folds, the oven's
///             heating up, "meanwhile…") stand after their wait with the recipe step's `during`
///             set.
struct FittedRecipe {
    Recipe recipe;
    DoughFamily family = DoughFamily::lean;
    std::vector<FittedStep> steps;
    /// The last rise stands in the oven, which is the kitchen's warm spot: dough out, then oven on.
    bool dough_leaves_oven = false;
    /// From out of the oven: until it can be cut, and until it is at its best. Both 0 for a bread
    /// that is not baked or eaten hot.
    Band<std::int64_t> cut_after_minutes;
    Band<std::int64_t> best_after_minutes;
    /// The baker's yeast of the dough, and the weight of all of it; none, and 0, where not known.
    std::optional<fitting::YeastInDough> yeast;
    Grams dough{0.0};
    /// How warm the water for the main dough should be here; none where the recipe says it or
    /// nobody knows the kitchen.
    std::optional<fitting::WaterHere> water;
    /// Sentences for the foot of the page: what was assumed about this kitchen and why times differ
    /// from the text.
    std::vector<Phrase> notes;
    /// The first so many of them are about how long the waits are here.
    std::size_t notes_about_waits = 0;
    std::vector<Question> questions; // the reading's, and the kitchen's
};

/// How long each step takes in this kitchen.
///
/// Needs:    `reading.recipe.steps` in order.
/// Promises: every step of the recipe stands in the result once, in order, beside the few that no
/// text says (weighing, heating up,
///           cooling); a step without a stated time gets the stage default with basis `assumed`, or
///           `open` where a question is open on it; computed waits are rounded to 5 minutes, stated
///           ones stay; where nobody has said how warm the room is, stated minutes stand; fit for
///           the kitchen the recipe was written for gives the stated minutes back.
/// Never:    reads a clock, throws on input, changes the recipe.
FittedRecipe fit(const Reading& reading, const Kitchen& kitchen, const Knowledge& knowledge);

} // namespace loafwright
