// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/bake.hpp"
#include "engine/fitting/cooling.hpp"
#include "engine/fitting/course.hpp"
#include "engine/fitting/fit.hpp"
#include "engine/fitting/heat.hpp"
#include "engine/fitting/room.hpp"
#include "engine/knowledge/family.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace loafwright::fitting {

/// What every step is judged by.
struct Surroundings {
    const Reading& reading;
    const Kitchen& kitchen;
    const Knowledge& knowledge;
    DoughFamily family;
    Form form;
    Cooling cooling;
    std::vector<std::optional<OvenHeat>> heats;      // one a step
    std::vector<std::optional<DoughCourse>> courses; // one a step
    std::optional<BakeHere> bake;
};

/// How much a transfer to this kitchen changed, for the foot of the page.
struct Transfer {
    std::int64_t longer_minutes = 0; // negative when shorter
    Phrase here;                     // "your kitchen is 19 °C"
    Phrase there;                    // "“not too cold” was read as about 22 °C"
};

/// One step with its length here.
struct StepHere {
    FittedStep fitted;
    std::optional<Transfer> transfer;
    /// Its length hangs on how warm the room is, and nobody has said.
    bool wants_room = false;
};

/// Needs:    `index` inside the recipe's steps.
/// Promises: the invariants of FittedStep; `fitted.step == index`; cooling steps as the text has
/// them.
StepHere step_here(const Surroundings& surroundings, std::size_t index);

/// The three that every bake needs and few texts name.
FittedStep our_weighing(const Surroundings& surroundings);
FittedStep our_preheat(const Surroundings& surroundings, const OvenHeat& heat, bool with_stone);
FittedStep our_cooling(const Surroundings& surroundings, std::int64_t minutes);

} // namespace loafwright::fitting
