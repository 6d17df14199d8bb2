// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

#include <vector>

namespace loafwright::dough {

/// A time that a dough spends in one place: counter, fridge, warm corner.
///
/// Invariants: lasts >= 0, time_constant >= 0.
struct Stay {
    Minutes lasts;
    /// The place when the dough comes and when it leaves; between them it changes evenly.
    Celsius place_first;
    Celsius place_last;
    /// After this time the dough has lost 63 % of its distance to the place (lump.hpp); 0: it is as
    /// warm as its place at once.
    Minutes time_constant;
};

/// The dough's own temperature over time, from `start` at minute 0: in each stay
///
///   dT/dt = (place(t) - T) / time_constant,
///
/// which has a closed solution. After its last stay the dough remains where it is, the place as it
/// was at the end; without stays it keeps its temperature.
///
/// Leaves out the heat that fermentation makes (less than 1 °C an hour below a kilogram) and the
/// difference between core and surface: this is the mean over the lump.
struct TemperatureHistory {
    Celsius start;
    std::vector<Stay> stays;
};

/// A dough that is in one place for good.
TemperatureHistory steady(Celsius dough);
TemperatureHistory in_one_place(Celsius dough, Celsius place, Minutes time_constant);

/// A dough in a room read at even times, the room between two readings on the straight line: such
/// as one reading an hour through a night. After the last reading the room stays as it is.
///
/// Needs:    at least one reading; apart > 0.
TemperatureHistory in_a_changing_room(Celsius dough,
                                      const std::vector<Celsius>& readings,
                                      Minutes apart,
                                      Minutes time_constant);

/// The dough's temperature at this minute; before minute 0 it is `start`.
Celsius dough_at(const TemperatureHistory& history, Minutes at);

/// Its temperature within one stay, `after` minutes from the beginning where it had `start`.
Celsius dough_within(const Stay& stay, Celsius start, Minutes after);

} // namespace loafwright::dough
