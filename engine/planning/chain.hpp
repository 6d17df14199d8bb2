// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/fit.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace loafwright::planning {

/// One thing after the other as the clock sees it: a step, or a part of a wait between two folds.
///
/// Invariants: `planned` is a multiple of five; minutes.low <= minutes.likely <= minutes.high.
struct Atom {
    std::optional<std::size_t>
        fitted; // index in FittedRecipe::steps; none for the last minutes until it can be cut
    StepKind kind = StepKind::mix;
    Attention attention = Attention::hands;
    Band<std::int64_t> minutes;
    std::int64_t planned = 0;
    bool stretch = false; // any length from planned to planned_most
    std::int64_t planned_most = 0;
    std::int64_t hands_minutes = 0;    // what the hands really work
    std::optional<std::int64_t> holds; // until the next must begin; none: as long as you like
    bool inside = false;               // work inside a wait, in that wait's own time
    bool leave = false;                // nobody need stay at home for it
};

/// Something that happens in a bake without a place in the chain: turn the tin, lid off.
struct InBake {
    std::size_t atom = 0;
    std::size_t fitted = 0;
    std::int64_t after_minutes = 0; // from the start of that atom
};

/// Switching the oven on for a bake, or up or down where it is hot from another.
struct OvenOn {
    std::size_t bake = 0; // index in atoms
    std::int64_t before_minutes = 0;
    std::optional<Celsius> setting;
    std::optional<Celsius> hot_at; // what it was set to until then; none: it was cold
};

/// A bread as one line of atoms.
struct BreadChain {
    std::vector<Atom> atoms;
    std::vector<InBake> in_bake;
    std::optional<std::size_t> first_bake; // index in atoms
    std::optional<std::size_t> last_heat;  // last bake or cook
    /// Atoms from here on come after the oven, or after everything where nothing is heated.
    std::size_t tail = 0;
    /// Heating the oven: which fitted step says so, and how long; 0 where nothing is heated
    /// beforehand.
    std::vector<std::size_t> preheats;
    std::optional<Celsius> oven;
    std::int64_t heat_minutes = 0;
    /// From switching the oven on to the planned start of the first bake: the oven is hot at the
    /// early end of the last wait before it.
    std::int64_t on_before_bake = 0;
    /// The first bake's, and one more for each bake that comes so long after another that the oven
    /// is cold again.
    std::vector<OvenOn> ovens;
    /// From the last heat's end (as planned) to when it can be cut.
    std::int64_t cut_minutes = 0;
    bool eaten = true;
};

/// Needs:    `recipe.steps` not empty.
/// Promises: every step that takes time stands in exactly one atom, or is work inside one; hands
/// minutes in a run are
///           rounded up to five together, waits each, bakes together; a branch that runs beside the
///           longest line is put inside one of its waits where it fits, else its hands come first
///           and its wait runs beside the rest.
BreadChain chain_of(const FittedRecipe& recipe);

/// Sum of planned minutes of atoms [first, last).
std::int64_t planned_sum(const BreadChain& chain, std::size_t first, std::size_t last);

std::int64_t up_to_five(std::int64_t minutes);

} // namespace loafwright::planning
