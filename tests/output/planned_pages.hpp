// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/plan.hpp"
#include "engine/sheet/compose.hpp"

#include <string>
#include <vector>

namespace loafwright {

/// A text and its page, the whole way: read, fitted, planned and composed.
struct PlannedPage {
    std::string name;
    Plan plan;
    Day day;
    Sheet sheet;
};

/// The recipes of examples/ and, where they are, those of ../shared/recipes/texts, begun at ten on
/// Thursday 26 November 2026 in UTC.
std::vector<PlannedPage> planned_pages();

/// Breads on one clock: their pages, the shared one first, and the plan of all of them.
struct PlannedTogether {
    std::string name;
    Plan plan;
    std::vector<Sheet> pages;
};

/// Each text of planned_pages() with the one after it, and the three examples together.
std::vector<PlannedTogether> planned_together();

/// False where ../shared/recipes/texts is not there.
bool has_real_recipes();

} // namespace loafwright
