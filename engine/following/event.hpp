// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/trouble.hpp"
#include "engine/quantity/tagged.hpp"
#include "engine/quantity/time.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace loafwright {

enum class EventKind {
    begun,       // a line was begun, the first of a bake or any other: "I've already begun"
    done,        // a line was ticked off; the next one begins
    not_ready,   // looked at and not there yet: look again at `until`, or soon where none is said
    taken_back,  // the event `undoes` never happened
    act_done,    // the act `act` of the line was ticked off
    grown,       // how far the dough had grown when it was looked at
    note,        // something to remember, in `text`
    photo,       // a picture, named in `text` by its content
    temperature, // something was measured
    trouble,     // something happened: one of `Trouble`
    told         // what the baker says of the bread afterwards: `told`
};

/// How far a dough has grown since the wait began, as far as an eye can tell.
enum class Growth { little, half_as_much, doubled, more };

/// What a thermometer was held into.
enum class Measured { dough, room, oven, loaf };

/// Plain words to pick when the bread is cut; none where nobody said.
enum class Crust { pale, right, dark };
enum class Crumb { close, even, open };

/// What the baker says of the bread afterwards.
struct Told {
    std::optional<Crust> crust;
    std::optional<Crumb> crumb;
    std::optional<bool> again;         // bake it again?
    std::vector<std::string> symptoms; // in the baker's own words
    /// What was done otherwise than at the bake of this bread before.
    std::vector<std::string> changed;
};

/// Something that happened at a bake, as a screen tells it.
///
/// Invariants: `id` is made by the sender and is its own; the same one again is a retry.
struct Event {
    std::string id;
    Instant at; // when it happened, which may be before it was told
    EventKind kind = EventKind::done;
    std::size_t bread = 0;        // in the order of the plan's breads; 0 for a plan of one
    int stage = 1;                // the line's number on that bread's own page
    std::optional<Instant> until; // not_ready, trouble
    std::string undoes;           // taken_back
    std::size_t act = 0;          // act_done: in the order of the line's acts
    Growth growth = Growth::little;
    Measured measured = Measured::dough;
    Celsius celsius{0.0};
    Trouble trouble = Trouble::no_salt;
    std::string text;
    Told told;
};

} // namespace loafwright
