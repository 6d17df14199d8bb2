// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/bake_log.hpp"
#include "engine/kitchen/factors.hpp"
#include "engine/knowledge/knowledge.hpp"

#include <vector>

namespace loafwright {

/// This kitchen's and this baker's own factors, with how sure they are.
///
/// For each leaven the waits of the dough, for the baker the work of the hands, and the bakes:
/// kinds of a group share what the kitchen has (normal_levels.hpp), so that three first rises say
/// something of the prove. How much bakes differ from one to the next is learned too: a kitchen
/// that is steadier than most gets narrower times, one that is not gets wider ones.
///
/// Needs:    logs of one kitchen; `knowledge.learning` not empty.
/// Promises: no logs, or none that tells anything, give the prior exactly: learn({}, knowledge).
///           The order of the logs does not matter. One reading moves the logarithm of a factor by
///           no more than learning::most_pull. The oven's offset likewise, in °C.
/// Never:    reads a clock, throws on input.
KitchenFactors learn(const std::vector<BakeLog>& logs, const Knowledge& knowledge);

} // namespace loafwright
