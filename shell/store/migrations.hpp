// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/store/database.hpp"

#include <string>
#include <vector>

namespace loafwright::store {

/// The statements that bring the tables from version n - 1 to version n; the first entry is version
/// 1. A migration that was released is never changed: the next one mends it.
std::vector<std::vector<std::string>> migrations(Dialect dialect);

} // namespace loafwright::store
