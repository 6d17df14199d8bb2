// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/event.hpp"
#include "engine/knowledge/knowledge.hpp"

#include <vector>

namespace loafwright::following {

/// What was seen on a bread, and what was not although somebody looked.
///
/// Invariants: no row twice, and none in both.
struct Signs {
    std::vector<const FaultSymptomRow*> seen;
    std::vector<const FaultSymptomRow*> absent;
};

/// The signs in what a baker said afterwards: "close" is a close crumb, "right" means neither pale
/// nor dark, and the symptoms are looked up by their words.
Signs signs_of(const Told& told, const Knowledge& knowledge);

} // namespace loafwright::following
