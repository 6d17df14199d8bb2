// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/core_course.hpp"
#include "engine/dough/loaf.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

namespace loafwright::dough {

enum class OvenAir { still, fan };

/// What stands between the loaf and the oven. On a stone the model sees no more than on a tray.
enum class Vessel { none, stone, dark_tin, shiny_tin, lidded_pot };

/// The oven is at `temperature` at once and for so long.
struct OvenSetting {
    Celsius temperature;
    Minutes lasts;
};

/// One loaf going into a hot oven.
///
/// `settings` is not empty and each lasts > 0; every oven temperature lies in [100, 350] °C, the
/// dough in [0, 45] and `boiling` in [80, 101]; 0.3 <= water <= 0.6; 0.3 <= vapour_factor <= 3.
struct Bake {
    Loaf loaf;
    std::vector<OvenSetting> settings;
    OvenAir air = OvenAir::still;
    Vessel vessel = Vessel::none;
    Minutes lid_off_after; ///< of a lidded pot, from the start
    Celsius dough{25.0};
    Celsius boiling{100.0};     ///< at this height, see altitude.hpp
    double water = 0.45;        ///< share of the dough, that of the flour itself counted
    double vapour_factor = 1.0; ///< learned from a log: how lively vapour carries heat, 0.6 to 2
};

inline constexpr std::size_t production_cells = 24;

/// A loaf that leaves the oven, or stands as if it just had: from the core out.
struct BakedLoaf {
    Loaf loaf;
    std::array<double, production_cells> temperature_c{};
    std::array<double, production_cells> dried{}; ///< share of the water gone, in [0, 1]
    Celsius surface;
    Celsius boiling{100.0};
    double water = 0.45;
    double vapour_factor = 1.0;
};

/// A bake from the oven door to the end of its last setting.
struct BakeCourse {
    CoreCourse core;
    Celsius core_at_end;
    Celsius surface_at_end; ///< over a crust of that depth, its inside at the boiling point
    Millimetres crust;      ///< depth of all that is dry
    double loss = 0.0;      ///< of weight, as a share of the dough
    BakedLoaf end;
};

/// Whether form, size and oven (160 to 260 °C) are of the kind the model was looked at for.
bool within_known(const Bake& bake);

/// How warm the loaf becomes, minute by minute, from the oven to its end.
///
/// A one-dimensional stand-in of the loaf, in 24 cells, by the enthalpy model of
/// docs/models/heat.md. Without a log of this oven expect ±30 % in the time of the core.
///
/// Needs:    as Bake says.
/// Promises: the core only rises while the oven is hotter than it; loss in [0, 0.6]; the same on
///           every machine to the last digits of exp and pow.
/// Never:    reads a clock; allocates while it steps.
BakeCourse simulate_bake(const Bake& bake);

/// When the core has reached `target`, the last setting staying on for as long as it takes.
///
/// Errors:   nothing when it has not after `longest`.
std::optional<Minutes>
time_to_core(const Bake& bake, Celsius target, Minutes longest = Minutes(300.0));

} // namespace loafwright::dough
