// SPDX-License-Identifier: Apache-2.0
#include "tests/dough/exact_conduction.hpp"

#include <cmath>

namespace loafwright::dough {

namespace {

double characteristic(int exponent, double biot, double zeta) {
    switch (exponent) {
    case 0:
        return zeta * std::sin(zeta) - biot * std::cos(zeta);
    case 1:
        return zeta * std::cyl_bessel_j(1.0, zeta) - biot * std::cyl_bessel_j(0.0, zeta);
    default:
        return (1.0 - biot) * std::sin(zeta) - zeta * std::cos(zeta);
    }
}

ShareLeft term(int exponent, double zeta) {
    const double s = std::sin(zeta);
    const double c = std::cos(zeta);
    if (exponent == 0) {
        const double centre = 4.0 * s / (2.0 * zeta + std::sin(2.0 * zeta));
        return {centre, centre * s / zeta};
    }
    if (exponent == 1) {
        const double j0 = std::cyl_bessel_j(0.0, zeta);
        const double j1 = std::cyl_bessel_j(1.0, zeta);
        const double centre = 2.0 * j1 / (zeta * (j0 * j0 + j1 * j1));
        return {centre, centre * 2.0 * j1 / zeta};
    }
    const double centre = 4.0 * (s - zeta * c) / (2.0 * zeta - std::sin(2.0 * zeta));
    return {centre, centre * 3.0 * (s - zeta * c) / (zeta * zeta * zeta)};
}

} // namespace

ShareLeft exactly_left(int exponent, double biot, double fourier) {
    ShareLeft sum;
    double from = 1e-6;
    for (int found = 0; found < 60;) {
        double low = from;
        double high = from + 0.1;
        from = high;
        const bool sign = characteristic(exponent, biot, low) > 0.0;
        if (sign == (characteristic(exponent, biot, high) > 0.0)) {
            continue;
        }
        for (int i = 0; i < 60; ++i) {
            const double middle = 0.5 * (low + high);
            ((characteristic(exponent, biot, middle) > 0.0) == sign ? low : high) = middle;
        }
        const double zeta = 0.5 * (low + high);
        const ShareLeft next = term(exponent, zeta);
        const double decay = std::exp(-zeta * zeta * fourier);
        sum.centre += next.centre * decay;
        sum.mean += next.mean * decay;
        ++found;
    }
    return sum;
}

} // namespace loafwright::dough
