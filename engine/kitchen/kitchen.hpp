// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/kitchen/factors.hpp"
#include "engine/quantity/tagged.hpp"
#include "engine/quantity/time.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loafwright {

/// What an oven can do. Defaults are used, and said so, when no kitchen is described (common
/// practice).
struct Oven {
    Celsius max{250.0};
    Minutes heat_up{20.0}; // from cold to 220 °C
    bool fan = false;
    int shelves = 1;
    CelsiusDifference offset{0.0}; // measured minus set
};

struct Tin {
    std::string name;
    Millimetres length;
    Millimetres width;
    Millimetres height;
};

enum class MixingMethod { hand, mixer };

/// The room's temperature from a clock time on.
struct RoomPeriod {
    ClockTime from;
    Celsius temperature;
};

/// One baker's kitchen.
///
/// Invariants: `room` empty means nobody has said how warm it is: stated minutes then stand and the
/// room is asked.
struct Kitchen {
    std::vector<RoomPeriod> room;
    std::optional<Celsius> flour; // follows the room unless stated
    Celsius tap{12.0};
    Celsius fridge{5.0};
    Metres altitude{0.0};
    std::optional<Celsius> warm_spot;
    bool warm_spot_is_oven = false; // with its light on: the dough comes out before it heats
    MixingMethod mixing = MixingMethod::hand;
    std::optional<std::string> yeast;
    Oven oven;
    std::vector<Tin> tins;
    KitchenFactors factors; // what its own bakes have taught
};

enum class Presence { away, asleep, busy };

/// When a person cannot bake. Half open: [from, to).
struct PresenceWindow {
    std::size_t person = 0;
    Presence state = Presence::asleep;
    Instant from;
    Instant to;
};

/// Somebody else's use of the oven.
struct OvenClaim {
    Instant from;
    Instant to;
    std::optional<Celsius> temperature;
};

/// One real day: who is where, when to eat, who else wants the oven.
///
/// Invariants: at most one of `start` and `eat_by` is set; windows already unrolled over the
/// horizon, sorted by `from`.
struct Day {
    Zone zone;
    Instant now;
    std::optional<Instant> start;
    std::optional<Instant> eat_by;
    std::vector<std::string> people{"you"};
    std::vector<PresenceWindow> windows;
    std::vector<OvenClaim> oven_claims;
    /// Somebody said when they sleep. If not, the usual night is kept free where that can be
    /// helped, and work in it is warned of.
    bool sleep_known = false;
};

} // namespace loafwright
