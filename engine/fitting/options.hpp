// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/rise_again.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/recipe/recipe.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loafwright::fitting {

enum class OptionKind { as_told, warm_spot, fridge, less_yeast, more_yeast };

/// One way to let the dough rise, for people to choose from.
///
/// Invariants: 0 < minutes.low <= minutes.likely <= minutes.high.
struct WaitOption {
    OptionKind kind = OptionKind::as_told;
    Place place = Place::counter;
    /// From the start of the wait to its end. For a night low and high are a choice: from when the
    /// dough is fit to be taken out, and until when it keeps.
    Band<std::int64_t> minutes;
    /// What it does to the dough, in the trade's words (all of them common practice).
    std::string effect;
    /// What to weigh or to do otherwise, "half the yeast: 3.5 g instead of 7 g; the prove takes
    /// longer too"; empty for nothing.
    std::string change;
    /// What to weigh instead, in the recipe's form of yeast and in steps a kitchen can weigh.
    std::optional<Band<Grams>> yeast;
};

/// Nobody puts dough warmer than this: the upper end of the best range (bake magazine, May 2015,
/// read); and leaven not above 30 °C, where published rates of its yeast disagree.
inline constexpr Celsius warmest_spot{40.0};
inline constexpr Celsius warmest_spot_for_leaven{30.0};

/// True where the kitchen has a warm spot that is warmer than the place, and not too warm for it.
bool suits_warm_spot(const Rising& rising, const Kitchen& kitchen);

/// "half the yeast: 3.5 g instead of 7 g; the prove takes longer too": the dose belongs to the
/// whole dough, so the other rise is named with it.
std::string dose_change(const Rising& rising, const YeastInDough& yeast, Grams weighed);

/// What a wait could be instead: the same rise, made warmer, colder or with another dose.
///
/// Needs:    the invariants of `rising`.
/// Promises: as_told first, with the minutes in whole ones and nothing to change; then, each at
///           most once and only where it holds:
///           - warm_spot: a first rise, a prove or a ferment where the kitchen has a spot warmer
///             than the place and not above `warmest_spot`; the same progress along the dough's own
///             temperature (dough::transferred); likely and high never later than as told;
///           - fridge: a first rise or a final prove outside the fridge, where the fridge is
///             colder than the place. With the full yeast where the rise is made within
///             `longest_night` and the dough then keeps (dough::usable_window, used up along its
///             temperature; a prove not beyond `over_proved`) for a night of at least
///             `shortest_night`; else with the dose that makes the rise in `usual_night`, or none
///             outside dough::least_dose to most_dose; for leaven with as long a start where it
///             stands, stated in `change`, as a night falls short. A night without start is inside
///             shortest_night to longest_night, and at least an hour lies between its ends;
///           - less_yeast, more_yeast: half and one and a half times as much, by
///             dough::rise_with_dose, for doughs with baker's yeast and no leaven outside the
///             fridge, within dough::least_dose to most_dose; likely and high never quicker than as
///             told, or never later.
///           Computed minutes in fives; an option at least five minutes away from as_told. Ends
///           join the wait's own width and that of the model as independent (dough::joined); a
///           night's do not: what nobody knows of a fridge moves its rise by about half, so
///           the cue decides in the morning too.
///           The dose belongs to the whole dough: who takes it must fit the other waits again.
/// Never:    throws on input, reads a clock.
std::vector<WaitOption> options_for(const Rising& rising, const Kitchen& kitchen);

} // namespace loafwright::fitting
