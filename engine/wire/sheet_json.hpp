// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/sheet/compose.hpp"

#include <string>

namespace loafwright::wire {

/// A page, everything that stands on it, ready to show: {"version", "sheet"}; the form stands in
/// docs/openapi.yaml.
std::string sheet_json(const Sheet& sheet);

} // namespace loafwright::wire
