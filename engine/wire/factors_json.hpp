// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/kitchen/factors.hpp"

#include <string>

namespace loafwright::wire {

/// What a kitchen's bakes have taught, as one JSON object, to be kept with a request: the same
/// request gives the same plan, whatever is learned later. Only kinds that some bake told of.
std::string factors_json(const KitchenFactors& factors);

} // namespace loafwright::wire
