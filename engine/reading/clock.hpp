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

} // namespace loafwright::reading
