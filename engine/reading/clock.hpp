// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/time.hpp"
#include "engine/reading/token.hpp"

#include <vector>

namespace loafwright::reading {

/// A time of day told in words: "at eleven", "by five o'clock", "3 p.m.". Not a length of time.
struct ClockPhrase {
    ClockTime clock;
    bool until = false; // "by five o'clock", "till six"
    TokenRange range;
};
std::vector<ClockPhrase> clocks_in(const std::vector<Token>& tokens, TokenRange range);

/// "At two o'clock, and by nine in the evening": where a dough would stand longer than fourteen
/// hours from an early hour to a late one, the early one is of the afternoon.
int afternoon_rather(int minutes, ClockTime from, ClockTime to);

} // namespace loafwright::reading
