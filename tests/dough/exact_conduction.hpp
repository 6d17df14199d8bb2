// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace loafwright::dough {

/// What is left at the centre, and in the mean, of a slab (exponent 0), a long cylinder (1) or a
/// sphere (2): the textbook series of 60 terms with the library's sines and Bessel functions, so
/// that it shares nothing with engine/dough/series.cpp.
///
/// Source: Carslaw and Jaeger, Conduction of Heat in Solids (1959), chapters 3, 7 and 9.
struct ShareLeft {
    double centre = 0.0;
    double mean = 0.0;
};
ShareLeft exactly_left(int exponent, double biot, double fourier);

} // namespace loafwright::dough
