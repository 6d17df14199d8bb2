// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/bake.hpp"
#include "engine/dough/heat_units.hpp"

#include <optional>

namespace loafwright::dough {

/// An oven as one lump of metal and air that is heated and leaks. All positive. The standard values
/// are from memory, ±40 %; one measured time puts them right, see `measured_oven`.
struct OvenModel {
    Watts power{2500.0};
    JoulesPerKelvin capacity{9000.0};
    WattsPerKelvin leak{4.0};
};

/// How long the oven takes from one temperature to a higher one, its heater on all the while.
///
/// Formula:  C dT/dt = P - G (T - room), an energy balance.
/// Errors:   nothing where it never gets so hot; 0 where it is that hot already.
std::optional<Minutes>
heating_up(const OvenModel& oven, Celsius from, Celsius to, Celsius room = Celsius(20.0));

/// How long it takes to fall to a lower temperature, door shut and heater off; opening the door for
/// half a minute saves most of it.
///
/// Errors:   nothing where `to` is not above the room; 0 where it is that cool already.
std::optional<Minutes>
cooling_down(const OvenModel& oven, Celsius from, Celsius to, Celsius room = Celsius(20.0));

/// The same oven with the heat capacity that makes `heating_up` give the time somebody measured.
///
/// Needs:    room < to, from < to, measured > 0.
/// Errors:   nothing where the power of `oven` cannot reach `to`.
std::optional<OvenModel> measured_oven(const OvenModel& oven,
                                       Celsius from,
                                       Celsius to,
                                       Minutes measured,
                                       Celsius room = Celsius(20.0));

/// How far a heavy thing in the oven trails behind its air: m c / (h A) with 22 W/m2K, 35 with a
/// fan (computed from the coefficients in bake.cpp; from memory).
///
/// Needs:    all positive. `surface_m2` counts every side that meets the air.
Minutes lag(Grams mass, double specific_heat_j_kgk, double surface_m2, OvenAir air);

enum class Heavy { stone, steel_plate, lidded_pot };

/// The lag of a usual one: a stone of 15 mm, a steel plate of 6 mm, a cast-iron pot of 5.5 kg with
/// its lid (material data from memory).
Minutes usual_lag(Heavy thing, OvenAir air);

/// When something that trails by `lag` has come `share` of the way to the set temperature, from
/// switching on a cold oven that climbs evenly for `climb` and then stays.
///
/// Needs:    climb > 0, lag > 0, 0 < share < 1.
/// Promises: never before the oven itself is there; longer for a longer climb, lag or share.
Minutes hot_through(Minutes climb, Minutes lag, double share = 0.95);

/// What to set when this oven runs hotter than it says by `offset` (measured minus set, the mean of
/// three cycles of the thermostat), and how hot it is when set so.
Celsius set_for(Celsius wanted, CelsiusDifference offset);
Celsius truly_at(Celsius set, CelsiusDifference offset);

/// The setting of an oven of the other kind that bakes alike: 20 K lower with a fan (common
/// practice in the UK; IEC 60350-1 pairs 200 °C of forced air with 225 °C without).
Celsius with_fan(Celsius still);
Celsius without_fan(Celsius fan);

} // namespace loafwright::dough
