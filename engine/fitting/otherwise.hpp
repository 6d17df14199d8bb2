// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/fit.hpp"
#include "engine/kitchen/kitchen.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace loafwright::fitting {

/// How a whole bread can be made otherwise than its text says, the smallest change first.
enum class Otherwise {
    warm_prove,   // the last rise in the kitchen's warm spot
    warm_rise,    // those before it
    warm_rises,   // all of them
    rolls,        // a loaf's dough as rolls
    more_yeast,   // half as much again
    less_yeast,   // half
    fridge_prove, // a night in the fridge for the last rise, with the yeast that this needs
    fridge_rise,  // for the first rise
    slow_rise,    // the first rise overnight where it stands, with little yeast
};

inline constexpr std::array<Otherwise, 9> all_otherwise{Otherwise::warm_prove,
                                                        Otherwise::warm_rise,
                                                        Otherwise::warm_rises,
                                                        Otherwise::rolls,
                                                        Otherwise::more_yeast,
                                                        Otherwise::less_yeast,
                                                        Otherwise::fridge_prove,
                                                        Otherwise::fridge_rise,
                                                        Otherwise::slow_rise};

/// What a baker asks for: the answer "rolls" to the key below. No bread is made otherwise unasked.
inline constexpr std::string_view otherwise_key = "make-it";
std::string_view name_of(Otherwise how);
std::optional<Otherwise> otherwise_named(std::string_view name);

/// True for the three with a night in them.
bool takes_a_night(Otherwise how);

/// A bread made otherwise.
struct MadeOtherwise {
    FittedRecipe recipe;
    /// As a baker would say it, to go on with a colon: "the same dough as rolls".
    std::string change;
};

/// The same bread made otherwise in this kitchen.
///
/// Needs:    `told` from `fit` for the same kitchen.
/// Promises: a changed dose changes all waits that its gas makes (rise_again.hpp), and the weight
///           of yeast in `recipe.ingredients`; a wait begins as warm as the one before it left the
///           dough; a night is a choice between its ends (`stretch`); the first note says what is
///           other, those about the kitchen's waits are gone; no further change is offered for the
///           result.
/// Errors:   nothing where it does not suit: nowhere warm, no baker's yeast, a leaven or a sponge
///           whose dose would change, a wait that is long or cold already, folds in the night, a
///           dough that is not a loaf.
/// Never:    reads a clock, throws on input.
std::optional<MadeOtherwise>
made_otherwise(const FittedRecipe& told, const Kitchen& kitchen, Otherwise how);

} // namespace loafwright::fitting
