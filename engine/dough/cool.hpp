// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/bake.hpp"

#include <optional>

namespace loafwright::dough {

enum class Standing { rack, in_its_tin };

struct CoolingCourse {
    CoreCourse core;
    double loss = 0.0; ///< of weight while cooling, as a share of the dough
};

struct Cooling {
    std::optional<Band<Minutes>> to_35; ///< until the core is at 35 °C: at its best from then on
    Minutes can_be_cut;
    Celsius core_when_cut; ///< likely
};

/// A loaf as a bake leaves it when no bake is known: crumb 2 K below boiling, a dry crust.
BakedLoaf plainly_baked(const Loaf& loaf, Celsius boiling = Celsius(100.0));

/// The core of a loaf that stands in a room of even temperature for so long.
///
/// Needs:    0 °C <= room <= 40 °C; 0 < lasts <= 24 h.
/// Promises: never below the room once above it.
CoolingCourse
simulate_cooling(const BakedLoaf& baked, Celsius room, Standing standing, Minutes lasts);

/// When a loaf can be cut and when it is at its best.
///
/// The band of `to_35` spans what crusts let through (on a rack), or ±15 % (in a tin, assumed).
/// Cutting follows common practice: a flatbread at once, a roll or baguette after 20 minutes, other
/// loaves after an hour; rye is better the next day, which this does not know.
///
/// Needs:    0 °C <= room <= 40 °C.
/// Errors:   no `to_35` where the core has not come down to 35 °C after a day.
Cooling cooling(const BakedLoaf& baked, Celsius room, Standing standing);

} // namespace loafwright::dough
