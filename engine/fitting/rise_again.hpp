// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/curve.hpp"
#include "engine/dough/temperature_history.hpp"
#include "engine/fitting/doses.hpp"
#include "engine/quantity/tagged.hpp"
#include "engine/recipe/recipe.hpp"

#include <cstdint>
#include <optional>

namespace loafwright::fitting {

/// A wait in which the dough rises, as it is here.
///
/// Invariants: 0 < minutes.low <= minutes.likely <= minutes.high; time_constant >= 0; mass > 0.
struct Rising {
    StepKind kind = StepKind::rise;
    Place place = Place::counter;
    Band<Minutes> minutes; // in this kitchen, with the recipe's yeast
    Celsius dough;         // at the start of the wait
    Celsius stands;        // the place, in this kitchen
    Minutes time_constant; // towards the place: dough/lump.hpp
    DoughFamily family = DoughFamily::lean;
    bool leaven = false; // raised by leaven: its yeast's curve, and no dose to change
    std::optional<YeastInDough> yeast;
    Grams mass; // of one lump as it stands; decides how it cools in the fridge
};

/// The yeast at work in a wait, as fresh yeast on the flour: as the recipe has it, and instead.
struct OtherDose {
    dough::BakersPercent told;
    dough::BakersPercent now;
};

/// What may be other about the same rise.
struct OtherRise {
    Celsius dough;                 // at its start
    Celsius stands;                // its place
    std::optional<OtherDose> dose; // none: the recipe's
};

/// What makes the gas of this rise.
dough::Curve curve_of(const Rising& rising);

/// The dough's own temperature through the wait as told.
dough::TemperatureHistory history_of(const Rising& rising);

/// The baker's yeast whose dose can be changed; none for leaven.
std::optional<YeastInDough> doseable(const Rising& rising);

/// So much yeast has grown in a dough after so long, whatever its dose (dough::yeast_gained).
dough::BakersPercent grown_in(const dough::TemperatureHistory& history, Minutes minutes);

/// So much of the rise as minutes at its place, as if the dough had the place's temperature all
/// along.
std::optional<Minutes> at_the_place(const Rising& rising, Minutes stated);

/// The time along `history` in which the dough makes what so many minutes at the place make.
std::optional<Minutes>
along(const dough::TemperatureHistory& history, const Rising& rising, Minutes at_the_place);

/// The same rise where something about it is other, the wait's own width joined with that of the
/// models (dough::joined, as independent).
///
/// Needs:    the invariants of `rising`.
/// Promises: the told minutes where nothing is other.
/// Errors:   nothing where it is not made within dough::furthest, or where neither dose works.
/// Source:   dough::rise_with_dose at the place; dough::transferred along the dough's temperature.
std::optional<Band<Minutes>> rise_again(const Rising& rising, const OtherRise& other);

} // namespace loafwright::fitting
