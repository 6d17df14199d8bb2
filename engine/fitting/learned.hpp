// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/fit.hpp"
#include "engine/kitchen/kitchen.hpp"

#include <string_view>
#include <vector>

/// What the kitchen's own bakes change about fitted lengths.
namespace loafwright::fitting {

/// The band of one kind with what was learned of it.
///
/// likely moves by exp(log_mean); low and high lie 1.2816 deviations of the logarithm to either
/// side, the tenth and the ninetieth percentile of one more bake: what the factor is unsure by,
/// what bakes differ by, and, where `band` is wider than a kitchen of which nothing is known
/// explains (prior_deviation), what the text itself leaves open beyond that.
///
/// Needs:    0 <= band.low <= band.likely <= band.high; factor.within_deviation > 0.
/// Promises: low <= likely <= high.
Band<double> with_factor(const Band<double>& band, const KindFactor& factor);

/// Puts it into the steps that it concerns: work of the hands, waits of the dough outside the
/// fridge and bakes. Waits of twenty minutes and more in fives, the rest in whole minutes.
///
/// Promises: a step that nothing was learned of stays as it is; so do lengths that are the plan's
/// to choose and those with an open question. What changes has basis `learned`, keeps its old
/// minutes in `usual_minutes` and says so in its reason.
void apply_learned(const KitchenFactors& factors,
                   std::string_view leaven,
                   std::vector<FittedStep>& steps);

/// One sentence for the foot of the page for each wait that came out longer or shorter.
std::vector<Phrase> learned_notes(const std::vector<FittedStep>& steps);

/// In fives, as ovens are set.
CelsiusDifference learned_offset(const OvenOffset& oven);

/// The kitchen with the oven's offset that its thermometer taught, where the kitchen states none.
Kitchen kitchen_as_learned(Kitchen kitchen);

} // namespace loafwright::fitting
