// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/kitchen/kitchen.hpp"
#include "engine/planning/plan.hpp"
#include "engine/reading/read.hpp"
#include "engine/sheet/compose.hpp"

#include <string>

namespace loafwright::cli {

bool is_calendar(const std::string& path);

/// The bytes that `path` is to hold: the plan as a calendar, the next revision of what stands there
/// when that is the same bake, which means the same recipe to be eaten on the same day.
std::string bake_calendar(const std::string& path,
                          const Plan& plan,
                          const Sheet& sheet,
                          const CheckedText& recipe,
                          const Day& day);

} // namespace loafwright::cli
