// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/time.hpp"

#include <cstddef>
#include <optional>
#include <string>

namespace loafwright {

enum class EventKind {
    begun,     // a line was begun, the first of a bake or any other: "I've already begun"
    done,      // a line was ticked off; the next one begins
    not_ready, // looked at and not there yet: look again at `until`
    taken_back // the event `undoes` never happened
};

/// Something that happened at a bake, as a screen tells it.
///
/// Invariants: `id` is made by the sender and is its own; the same one again is a retry.
struct Event {
    std::string id;
    Instant at; // when it happened, which may be before it was told
    EventKind kind = EventKind::done;
    std::size_t bread = 0; // in the order of the plan's breads; 0 for a plan of one
    int stage = 1;         // the line's number on that bread's own page
    std::optional<Instant> until;
    std::string undoes;
};

} // namespace loafwright
