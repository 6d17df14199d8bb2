// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/bake.hpp"

#include <optional>

namespace loafwright::dough {

/// What to do about a crust that would be ready long before the core.
enum class CrustAdvice {
    none,
    lower_the_oven,  ///< the oven is at 200 °C or more: bake longer at less
    cover_with_foil, ///< it is below that: cover the loaf for the last part
};

/// A recipe's bake, in another kitchen.
struct BakeTransfer {
    Band<Minutes> time;
    Minutes core;  ///< of the likely time, until the core is baked
    Minutes crust; ///< the rest, until the crust is
    CrustAdvice advice = CrustAdvice::none;
    bool within_known = false; ///< both bakes are of the kind the model was looked at for
};

/// The share of a stated bake after which the core is done, the rest being for the crust: 0.85 in a
/// tin, 0.8 for rolls, 0.75 for crusty loaves. The last is how a hearth loaf of a published bake
/// stood (98.9 °C at 45 of 60 minutes); the others are assumed.
double core_share(Form form);

/// The time that a bake written for one loaf and oven takes with another.
///
/// The core's part goes by the ratio of both simulated core times, the crust's by how much faster
/// it browns in this oven (both reach `core_target`, told for the sea). Whatever the model gets
/// wrong in the same way for both drops out.
///
/// Needs:    as Bake says, for both. The settings of `stated` last as long as the recipe says;
///           those of `here` say which oven, and the last of them lasts as long as it must.
/// Promises: low <= likely <= high; with both alike likely is the stated time to 1e-12 of it; the
///           band is ±12 %, ±20 % where the shape changes (assumed, for a log to replace).
/// Errors:   nothing where one of the two cores never gets there.
std::optional<BakeTransfer>
transferred_bake(const Bake& stated, const Bake& here, Celsius core_target = Celsius(95.0));

} // namespace loafwright::dough
