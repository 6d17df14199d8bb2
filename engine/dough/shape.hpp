// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

namespace loafwright::dough {

enum class Outline { brick, cylinder };

/// A body of plain shape: a brick of three edges, or a cylinder of a diameter and a length (a flat
/// one is a disc).
///
/// A cylinder has across == through, its diameter. Every edge is positive.
struct Shape {
    Outline outline = Outline::brick;
    Millimetres length; ///< of a cylinder: along its axis
    Millimetres across;
    Millimetres through; ///< of a brick: its height
};

Shape brick(Millimetres length, Millimetres width, Millimetres height);
Shape cylinder(Millimetres diameter, Millimetres length);

Millilitres volume(const Shape& shape);

/// Surface over volume, in 1/m.
double surface_per_volume_per_m(const Shape& shape);

/// Half of the smallest edge or diameter: the way heat has to go.
Metres smallest_half(const Shape& shape);

/// The same shape with every edge stretched alike to hold `factor` times as much. Needs factor > 0.
Shape stretched(const Shape& shape, double factor);

/// The one-dimensional body that warms through like this one.
struct StandIn {
    double exponent = 0.0; ///< n: the area at distance x from the centre grows as x^n; in [0, 2]
    double fourier = 0.0;  ///< when its centre has the share asked for, in L^2/alpha
};

/// Which one-dimensional body, as thick as the smallest half-dimension of `shape`, has the same
/// share of the first temperature difference left at its centre at the same time.
///
/// A slab is 0, a long cylinder 1, a sphere 2; a tin loaf is close to 0.8. The match is exact at
/// `share_left` and within ±5 % of time for shares from 0.05 to 0.2; at a share of 0.5 the stand-in
/// is up to 12 % too quick. Flat and long bodies that are hardly cooled from their edges are as a
/// slab or a cylinder.
///
/// Needs:    biot > 0 (h L / k, infinity for a fixed surface temperature); 0 < share_left <= 0.5.
/// Promises: exponent in [0, 2]; no allocation.
StandIn stand_in(const Shape& shape, double biot, double share_left);

} // namespace loafwright::dough
