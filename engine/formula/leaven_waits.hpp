// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/quantity/tagged.hpp"
#include "engine/recipe/recipe.hpp"

#include <string>

namespace loafwright::formula {

/// How long the dough's own rises take, together, before and after.
struct WaitsChanged {
    Minutes before{0.0};
    Minutes after{0.0};
};

/// The rises and proves outside the fridge as a leaven makes them, at the usual room of 21 °C.
///
/// Together they take dough::ripening_time for that share of leaven (computed; up to half as long
/// again at the high end in a rich dough, assumed); the last one gets 30 % of it, since a first
/// rise is about 70 % of all fermentation (Lowe, read second-hand), and those before share the rest
/// as the recipe's own times do. What stands in the fridge keeps its time.
///
/// Needs: 0 < inoculum <= 1, the leaven's flour as a share of all flour; `told` the family of the
///        dough as its text has it, for rises that it gives no time.
WaitsChanged
give_leaven_waits(Recipe& recipe, double inoculum, DoughFamily told, const Knowledge& knowledge);

/// The same with baker's yeast: the usual times of data/stage_defaults.toml (assumed), at 24 °C.
WaitsChanged give_yeast_waits(Recipe& recipe, const Knowledge& knowledge);

/// "about 5 h longer": whole hours from two hours up, else to a quarter of an hour.
std::string rough_time(Minutes minutes);

} // namespace loafwright::formula
