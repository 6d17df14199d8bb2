// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

#include <span>

namespace loafwright::dough {

/// What is at work in a dough, each with its own rate against temperature.
enum class Curve {
    gas,             // baker's yeast making gas: fermentation.hpp, gas_in_dough
    growth,          // baker's yeast multiplying: fermentation.hpp, yeast_growth
    leaven_yeast,    // the yeast of a sourdough: sourdough.hpp
    leaven_bacteria, // its lactic bacteria, which sour it: sourdough.hpp
};

/// The rate relative to the best temperature of this curve: inside [0, 1].
double rate_of(Curve curve, Celsius dough);

/// Up to `best_of` warmer is quicker, beyond it slower.
Celsius best_of(Curve curve);

/// How far a time worked out along this curve may be off at this temperature, as a share of it.
/// Baker's yeast: `transfer_uncertainty`. Leaven: the same, and above 30 °C growing to 0.60 at
/// 34 °C, because the yeast's rate falls by half from 28 to 32 and published figures disagree most
/// there.
double uncertainty_of(Curve curve, Celsius dough);

/// The temperatures where rate or uncertainty have a corner, lowest first: what integrates them
/// splits there.
std::span<const Celsius> corners_of(Curve curve);

} // namespace loafwright::dough
