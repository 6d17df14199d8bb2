// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/kitchen/kitchen.hpp"
#include "engine/planning/plan.hpp"
#include "engine/sheet/compose.hpp"

#include <string>
#include <string_view>

namespace loafwright::cli {

bool is_calendar(const std::string& path);

/// Needs:    `sheet` has one line for each stage of the plan; `recipe` is the recipe's words.
/// Promises: the bytes that `path` is to hold: the plan as a calendar, the next revision of what
/// stands there when that is the same bake, which means the same recipe to be eaten on the same
/// day.
std::string bake_calendar(const std::string& path,
                          const Plan& plan,
                          const Sheet& sheet,
                          std::string_view recipe,
                          const Day& day);

} // namespace loafwright::cli
