// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/sheet/compose.hpp"
#include "engine/wire/json_values.hpp"

namespace loafwright::wire {

/// A page as part of a larger answer.
Json sheet_value(const Sheet& sheet);

} // namespace loafwright::wire
