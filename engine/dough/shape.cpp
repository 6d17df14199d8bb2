// SPDX-License-Identifier: Apache-2.0
//
// A brick or a short cylinder is the product of slabs and a long cylinder (uniform start, alike
// surroundings on all sides, constant properties): its share left is the product of theirs. The
// stand-in is the one-dimensional body with the same centre at one share. Matching the first
// eigenvalue or A L/V - 1 instead would be 4 to 38 % too quick.
#include "engine/dough/shape.hpp"

#include "engine/dough/root.hpp"
#include "engine/dough/series.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace loafwright::dough {

namespace {

// Terms beyond exp(-20) change nothing, and no body is at a share of one half before Fo = 0.12.
constexpr double last_power = 20.0;
constexpr double earliest_fourier = 0.12;
constexpr double largest_zeta = 22.0;

// One of the one-dimensional bodies whose product a shape is.
struct Direction {
    double exponent = 0.0;
    double half_m = 0.0;
    Modes modes{};
};

struct Directions {
    std::array<Direction, 3> direction{};
    std::size_t count = 0;

    void add(double exponent, Millimetres edge) {
        direction[count].exponent = exponent;
        direction[count].half_m = 0.0005 * edge.count();
        ++count;
    }
};

Directions directions(const Shape& shape) {
    Directions made;
    made.add(0.0, shape.length);
    if (shape.outline == Outline::cylinder) {
        made.add(1.0, shape.across);
    } else {
        made.add(0.0, shape.across);
        made.add(0.0, shape.through);
    }
    return made;
}

} // namespace

Shape brick(Millimetres length, Millimetres width, Millimetres height) {
    return {Outline::brick, length, width, height};
}

Shape cylinder(Millimetres diameter, Millimetres length) {
    return {Outline::cylinder, length, diameter, diameter};
}

Millilitres volume(const Shape& shape) {
    const double box = shape.length.count() * shape.across.count() * shape.through.count() / 1000.0;
    return Millilitres(shape.outline == Outline::brick ? box : box * std::numbers::pi / 4.0);
}

double surface_per_volume_per_m(const Shape& shape) {
    const double of_length = 2000.0 / shape.length.count();
    if (shape.outline == Outline::cylinder) {
        return of_length + 4000.0 / shape.across.count();
    }
    return of_length + 2000.0 / shape.across.count() + 2000.0 / shape.through.count();
}

Metres smallest_half(const Shape& shape) {
    const Millimetres edge = std::min({shape.length, shape.across, shape.through});
    return Metres(0.0005 * edge.count());
}

Shape stretched(const Shape& shape, double factor) {
    const double edge = std::cbrt(factor);
    return {shape.outline, shape.length * edge, shape.across * edge, shape.through * edge};
}

StandIn stand_in(const Shape& shape, double biot, double share_left) {
    const double half_m = smallest_half(shape).count();
    Directions made = directions(shape);
    for (std::size_t i = 0; i < made.count; ++i) {
        Direction& direction = made.direction[i];
        const double ratio = direction.half_m / half_m;
        const bool again = i > 0 && direction.exponent == made.direction[i - 1].exponent &&
                           direction.half_m == made.direction[i - 1].half_m;
        direction.modes =
            again ? made.direction[i - 1].modes
                  : modes(direction.exponent,
                          biot * ratio,
                          std::min(largest_zeta, ratio * std::sqrt(last_power / earliest_fourier)));
    }
    // Shares fall nearly as exp(-Fo), so their logarithms are near to straight. A slab of
    // Fo = 5 (1 + 1/Bi) has less than 1 % left.
    const double wanted = std::log(share_left);
    const double fourier = crossing(
        [&](double at) {
            double share = 1.0;
            for (std::size_t i = 0; i < made.count; ++i) {
                const double ratio = half_m / made.direction[i].half_m;
                share *= share_left_at_centre(made.direction[i].modes, at * ratio * ratio);
            }
            return std::log(share) - wanted;
        },
        0.02,
        5.0 * (1.0 + 1.0 / biot),
        1e-9);
    const double zeta = std::min(largest_zeta, std::sqrt(last_power / fourier));
    const double exponent = crossing(
        [&](double n) {
            return std::log(share_left_at_centre(modes(n, biot, zeta), fourier)) - wanted;
        },
        0.0,
        2.0,
        1e-7);
    return {exponent, fourier};
}

} // namespace loafwright::dough
