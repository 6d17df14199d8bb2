// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/baker_units.hpp"
#include "engine/dough/curve.hpp"
#include "engine/quantity/tagged.hpp"

#include <optional>

namespace loafwright::dough {

/// Still air around a covered bowl of plastic, glass or china, by convection and radiation
/// together: 7 to 9 (handbook form, computed). A bare steel bowl has 4 to 6, a fridge with a fan 10
/// to 15.
inline constexpr WattsPerSquareMetreKelvin still_air{8.0};

/// A lump of dough on its way to the temperature of its place.
struct Lump {
    Grams mass;
    double risen = 0.0; // 0: fresh from mixing, 1: doubled; between them in between
    WattsPerSquareMetreKelvin surface = still_air;
};

/// How long a lump in a bowl takes to lose 63 % of its distance to the place.
///
/// Likely: the slowest mode of a short cylinder, as high as its radius, all faces alike, computed
/// from conduction for 0.5 to 2 kg at 8 W/(m2 K), fresh (1100 kg/m3, 0.45 W/(m K)) and doubled
/// (550, 0.30), and for 5 and 12 W/(m2 K); straight lines in the logarithms between those and
/// beyond. Low and high: 0.6 and 1.6 times (thick bowls, flat lumps, cold shelves full of food;
/// common practice).
///
/// Needs:    mass > 0, surface > 0, 0 <= risen <= 1.
/// Promises: heavier is never quicker, better exchange never slower, risen dough never slower.
Band<Minutes> time_constant(const Lump& lump);

/// The same for the middle of a ball that hangs free in the air: tau = R^2 / (a z^2), z the first
/// root of z cot z = 1 - h R / k (transient conduction in a sphere, textbook form).
///
/// Needs:    all arguments positive.
Minutes ball_time_constant(Grams mass,
                           double density_kg_m3,
                           double conductivity_w_m_k,
                           KilojoulesPerKilogramKelvin heat,
                           WattsPerSquareMetreKelvin surface);

/// A dough put into the cold.
struct Chilling {
    Celsius dough;        // when it goes in
    Band<Celsius> fridge; // exactly(…) when it was measured
    Band<Minutes> time_constant;
};

/// A home fridge nobody has measured: 3 / 5.5 / 8 °C (common practice, from surveys: means 4.4 in
/// the UK in 2014 and 6.6 in France in 1999, half of UK homes above 5, read).
inline constexpr Band<Celsius> unmeasured_fridge{Celsius(3.0), Celsius(5.5), Celsius(8.0)};

/// Longest retarding that bakers count on (IREKS compendium 6.3.1, read).
inline constexpr Minutes longest_retarding{48.0 * 60.0};

/// The minutes at `warm` that a time in the fridge is worth. A night of twelve hours is worth two
/// or three, most of it made while the lump still cools.
///
/// Needs:    time >= 0; the bands of `chilling` in order.
/// Promises: likely is the integral along the likely cooling; low and high join the fridge, the
///           time constant and the curve's own uncertainty as independent; likely never falls
///           with time.
/// Errors:   nothing where nothing moves at `warm`.
std::optional<Band<Minutes>>
worth_of_chilling(const Chilling& chilling, Minutes time, Celsius warm, Curve curve);

/// How long in the fridge makes the same rise as `rise` at `warm`.
///
/// Promises: likely is the inverse of `worth_of_chilling`; ends past `furthest` are `furthest`.
/// Errors:   nothing where nothing moves at `warm` or when it would take longer than `furthest`.
std::optional<Band<Minutes>>
chilling_for(const Chilling& chilling, Minutes rise, Celsius warm, Curve curve);

/// How long until a lump has come from one temperature to another in a place.
///
/// Promises: zero when it has it already; the width is that of the time constant.
/// Errors:   nothing when the wanted temperature does not lie between the dough and its place: it
///           never gets there.
std::optional<Band<Minutes>>
time_to_reach(Celsius wanted, Celsius dough, Celsius place, const Band<Minutes>& time_constant);

/// A retarded dough should be this warm in the middle before it is baked (IREKS compendium 6.3.1,
/// read).
inline constexpr Celsius warm_enough_to_bake{16.0};

} // namespace loafwright::dough
