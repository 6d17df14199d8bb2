// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/plan.hpp"

#include <optional>
#include <string>

namespace loafwright::following {

/// What moved between two plans of one bread, in one line; empty where no start ahead of `now` and
/// no time to eat did.
std::string change_line(const Plan& before, const Plan& after, const Day& day, Instant now);

} // namespace loafwright::following
