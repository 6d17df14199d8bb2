// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/learning/progress.hpp"

#include <string>
#include <vector>

namespace loafwright::wire {

/// The bakes of one bread.
struct BreadProgress {
    std::string bread; // its title
    Progress progress;
};

/// {"version": 1, "breads": [{"bread", "better_than_last", "better_than_first", "differed",
/// "our_time", "bakes": […]}]}, times in UTC; what nobody told is null.
std::string progress_json(const std::vector<BreadProgress>& breads);

} // namespace loafwright::wire
