// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/time.hpp"

namespace loafwright::fuzz {

/// Wednesday 25 November 2026, 09:00 in London: the moment at which every input is read.
Instant now();

/// A zone like London's, a year either side of now: an hour ahead from the end of March to the end
/// of October. It is a value, so that inputs mean the same on every machine.
Zone london();

/// The judge of a zone: changes in order, each to another offset, and every moment around a change
/// comes back from the wall clock as itself or as the earlier one that shows the same time.
void promise_zone(const Zone& zone);

} // namespace loafwright::fuzz
