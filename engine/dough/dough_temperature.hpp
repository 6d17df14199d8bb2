// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/baker_units.hpp"
#include "engine/quantity/tagged.hpp"

#include <optional>
#include <vector>

namespace loafwright::dough {

/// Specific heats near 20 °C, read in Geankoplis, Transport Processes and Separation Process
/// Principles, table A.4-1; flour of 12 to 13.5 % water is the middle of 1.80 to 1.88.
namespace specific_heat {
inline constexpr KilojoulesPerKilogramKelvin flour{1.84};
inline constexpr KilojoulesPerKilogramKelvin water{4.186};
inline constexpr KilojoulesPerKilogramKelvin ice{1.958};
inline constexpr KilojoulesPerKilogramKelvin milk{3.85};
inline constexpr KilojoulesPerKilogramKelvin butter{2.30};
inline constexpr KilojoulesPerKilogramKelvin oil{2.01};
inline constexpr KilojoulesPerKilogramKelvin egg{3.18};
} // namespace specific_heat

/// Melting a kilogram of ice takes 334 kJ (read).
inline constexpr double melting_kj_kg = 334.0;

/// Wetting a kilogram of flour of 11 to 12 % moisture sets free 15.1 kJ (6.5 Btu a pound, bakers'
/// dictionary, read): a good part of the "rise by kneading".
inline constexpr double hydration_kj_kg = 15.1;

/// Something that goes into the dough, at its own temperature.
struct DoughPart {
    Grams mass;
    Celsius temperature;
    KilojoulesPerKilogramKelvin heat;
};

/// How the dough is worked, and what that does to its temperature besides hydration.
///
/// Each offset makes the heat balance agree with the trade's friction factor for that method
/// (stand mixer 20 to 24 °F, hand 5 to 12, food processor 25, read) at one place: room and flour
/// 21 °C, dough 24 °C, 65 % water, a room share of 0.33. Computed, widened to a degree or more; one
/// offset a kitchen is worth learning. Hand work loses heat to the bench, hence below zero. For
/// `stirred` there is no factor; assumed.
enum class MixingMethod { stirred, by_hand, stand_mixer, food_processor };
Band<CelsiusDifference> mixing_offset(MixingMethod method);

/// How far bowl, bench and air pull the mixed dough towards the room: 0.2 / 0.33 / 0.45 (a bakery's
/// 2 °F of dough for 5 °F of water where no loss would give 3, read; the spread assumed).
inline constexpr Band<double> usual_room_share{0.20, 0.33, 0.45};

/// A dough before mixing. `parts` are all but water and ice; `flour` is the weight of the flour
/// among them that is still dry, which sets free heat.
///
/// Invariants: no negative weight; the whole is heavier than nothing; ice at most 0 °C;
/// 0 <= room_share < 1.
struct DoughMix {
    std::vector<DoughPart> parts;
    Grams flour;
    DoughPart water{Grams(0.0), Celsius(20.0), specific_heat::water};
    Grams ice{0.0};
    Celsius ice_temperature{0.0};
    Celsius room{20.0};
    double room_share = usual_room_share.likely;
    CelsiusDifference offset{0.0};
};

/// The dough's temperature after mixing:
///
///   inner = (sum m c T - ice (334 - 1.958 T_ice)) / (sum m c + 4.186 ice) + hydration + offset
///   dough = inner + room_share (room - inner)
Celsius dough_temperature(const DoughMix& mix);

/// The water temperature that gives the wanted dough, all liquid: it may lie below freezing or
/// above boiling. `mix.water.temperature` and ice are not used.
///
/// Promises: the inverse of `dough_temperature` without ice.
/// Errors:   nothing when there is no water to set.
std::optional<Celsius> water_temperature(const DoughMix& mix, Celsius wanted);

/// The same with the spread of room share and mixing method, as independent.
std::optional<Band<Celsius>> water_temperature(const DoughMix& mix,
                                               Celsius wanted,
                                               const Band<double>& room_share,
                                               const Band<CelsiusDifference>& offset);

/// Ice for part of the water, so that it counts as the wanted water; total weight unchanged:
/// water (tap - wanted) / (tap + 79.8), the trade's rule with its 80 made exact.
///
/// Needs:    water >= 0, wanted <= tap, ice at 0 °C.
/// Errors:   nothing when more ice than water would be needed.
std::optional<Grams> ice_replacing(Grams water, Celsius tap, Celsius wanted);

/// Ice to add to all of the water. Errors: nothing when the wanted water is at or below 0 °C.
std::optional<Grams> ice_on_top(Grams water, Celsius tap, Celsius wanted);

/// Just boiled water in a weight of mixed water. Water cools while it is poured: what is measured
/// counts, this is the plan.
///
/// Needs:    tap <= wanted, tap < boiling_point.
/// Errors:   nothing when the wanted water is hotter than boiling.
struct BoiledAndTap {
    Grams boiled;
    Grams tap;
};
std::optional<BoiledAndTap>
boiled_and_tap(Grams water, Celsius wanted, Celsius tap, Celsius boiling_point);

/// How the yeast meets the water, and how warm that may be: fresh yeast crumbled into it 35, dry
/// yeast woken in it 46, dry yeast mixed into the flour 54 °C (Gisslen 2014, read; upper ends).
enum class YeastMeetsWater { fresh_in_water, dry_in_water, dry_in_flour, none };
Celsius hottest_water(YeastMeetsWater meeting);

/// What to do for a wanted dough temperature.
enum class WaterAdvice {
    tap_as_it_is,    // within half a degree
    tap_and_boiled,  // `boiled` and `tap` grams
    tap_and_ice,     // `ice` and `tap` grams
    would_harm,      // the water would be hotter than `limit`; the rest is for water at the limit
    beyond_ice,      // not even ice alone is cold enough: cool the flour or the room
    beyond_boiling,  // not even boiling water is warm enough: warm the flour or the room
    no_water_to_set, // nothing to adjust
};
struct WaterPlan {
    WaterAdvice advice = WaterAdvice::no_water_to_set;
    Celsius wanted_water; // what the balance asks for
    Celsius water;        // what the plan's water counts as, limits kept; below 0 with much ice
    Celsius limit;        // hottest_water, for would_harm
    Grams tap;
    Grams boiled;
    Grams ice;
    Celsius dough; // what comes out with this plan
};

/// Needs:    as `DoughMix`; tap and boiling_point of this kitchen.
/// Promises: tap + boiled + ice is the water of the mix; `dough` is the wanted temperature unless
///           the advice says it cannot be (within half a degree of water for `tap_as_it_is`).
WaterPlan plan_water(const DoughMix& mix,
                     Celsius wanted,
                     Celsius tap,
                     Celsius boiling_point,
                     YeastMeetsWater meeting);

} // namespace loafwright::dough
