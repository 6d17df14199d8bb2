// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"
#include "engine/recipe/recipe.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright {

/// What a kitchen's own bakes say of the length of one kind of step: real over fitted minutes, as
/// the natural logarithm, normal with this mean and deviation.
///
/// Invariants: factor_deviation >= 0; within_deviation > 0; `bakes` <= `group_bakes`; where
/// `group_bakes` is 0 it is the prior: log_mean is 0 and nothing is changed by it.
struct KindFactor {
    StepKind kind = StepKind::rise;
    std::string leaven; // what it rises by; empty: for every leaven that has no entry of its own
    double log_mean = 0.0;
    double factor_deviation = 0.0; // how unsure the factor itself is
    double within_deviation = 0.1; // from one bake to the next
    /// What one new bake would have been off by, before anything was known: the width that fitting
    /// stands for.
    double prior_deviation = 0.0;
    std::size_t bakes = 0;       // that told of this kind
    std::size_t group_bakes = 0; // and of any kind of its group
};

/// What an oven really has, less what it is set to.
struct OvenOffset {
    CelsiusDifference likely{0.0};
    CelsiusDifference deviation{0.0};
    std::size_t measured = 0; // bakes in which a thermometer was in it
};

/// What the bakes of one kitchen, and one baker, have taught.
///
/// Invariants: no two entries for one kind and leaven. Empty `kinds`: nothing was learned.
struct KitchenFactors {
    std::vector<KindFactor> kinds;
    OvenOffset oven;
};

/// False where no bake has told of anything.
inline bool teaches(const KitchenFactors& factors) {
    return factors.oven.measured > 0 ||
           std::any_of(factors.kinds.begin(), factors.kinds.end(), [](const KindFactor& factor) {
               return factor.group_bakes > 0;
           });
}

/// The entry for a kind and a leaven, or that for every leaven; null where nothing is to be changed
/// because no bake has told of it or of its like.
inline const KindFactor*
learned_factor(const KitchenFactors& factors, StepKind kind, std::string_view leaven) {
    const KindFactor* general = nullptr;
    for (const KindFactor& entry : factors.kinds) {
        if (entry.kind != kind || entry.group_bakes == 0) {
            continue;
        }
        if (entry.leaven == leaven) {
            return &entry;
        }
        general = entry.leaven.empty() ? &entry : general;
    }
    return general;
}

} // namespace loafwright
