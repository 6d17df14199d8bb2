// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstddef>

namespace loafwright::dough {

/// The exact solution for a body of constant properties that is put into other surroundings: the
/// share of the first temperature difference left is the sum over modes of
/// centre * exp(-zeta^2 Fo) at the centre, and of mean * exp(-zeta^2 Fo) in the body's mean.
struct Mode {
    double zeta = 0.0;
    double centre = 0.0;
    double mean = 0.0;
};

/// The first modes of a body whose area grows as x^exponent from its centre: slab 0, long cylinder
/// 1, sphere 2, any number between for stand-ins.
///
/// Source:   Carslaw and Jaeger, Conduction of Heat in Solids (1959), chapters 3, 7 and 9, written
///           for any exponent with Bessel functions of order (exponent - 1)/2.
/// Promises: modes in order; zeta up to 22, which is enough for 3e-5 at Fo = 0.02 and for 1e-10 at
///           Fo = 0.05; no allocation.
struct Modes {
    static constexpr std::size_t most = 8;
    std::array<Mode, most> mode{};
    std::size_t count = 0;
};

/// Needs: exponent in [0, 2]; biot > 0, infinity for a fixed surface temperature; 0 < largest_zeta
/// <= 22.
Modes modes(double exponent, double biot, double largest_zeta = 22.0);

/// What is left at the centre. Promises: 1 below Fo = 0.02, where the centre has felt nothing yet
/// (the most it can have felt is 2e-4 in a slab and 4e-3 in a sphere).
double share_left_at_centre(const Modes& modes, double fourier);

/// What is left in the mean of the body. Needs: fourier >= 0.02.
double share_left_in_mean(const Modes& modes, double fourier);

} // namespace loafwright::dough
