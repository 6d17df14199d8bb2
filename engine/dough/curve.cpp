// SPDX-License-Identifier: Apache-2.0
#include "engine/dough/curve.hpp"

#include "engine/dough/between_rows.hpp"
#include "engine/dough/fermentation.hpp"
#include "engine/dough/sourdough.hpp"

#include <algorithm>
#include <array>

namespace loafwright::dough {

namespace {

// Assumed. At 34 °C the round figures that Gänzle gave in 1998 and the curve of the same year
// differ by a factor of two for the yeast, at 32 °C by a twentieth.
constexpr std::array<Row, 2> leaven_above{{{30.0, 0.15}, {34.0, 0.60}}};

// Ends of the curves above, and the places where an uncertainty begins to change.
constexpr std::array<Celsius, 8> gas_corners{Celsius(-1.0),
                                             Celsius(5.0),
                                             Celsius(8.0),
                                             Celsius(15.0),
                                             Celsius(18.0),
                                             Celsius(32.0),
                                             Celsius(35.0),
                                             Celsius(48.0)};
constexpr std::array<Celsius, 8> growth_corners{Celsius(2.8),
                                                Celsius(5.0),
                                                Celsius(8.0),
                                                Celsius(15.0),
                                                Celsius(18.0),
                                                Celsius(32.0),
                                                Celsius(35.0),
                                                Celsius(45.4)};
constexpr std::array<Celsius, 7> yeast_corners{Celsius(5.0),
                                               Celsius(8.0),
                                               Celsius(15.0),
                                               Celsius(18.0),
                                               Celsius(30.0),
                                               Celsius(34.0),
                                               Celsius(36.0)};
constexpr std::array<Celsius, 7> bacteria_corners{Celsius(5.0),
                                                  Celsius(8.0),
                                                  Celsius(15.0),
                                                  Celsius(18.0),
                                                  Celsius(30.0),
                                                  Celsius(34.0),
                                                  Celsius(41.0)};

} // namespace

double rate_of(Curve curve, Celsius dough) {
    switch (curve) {
    case Curve::gas:
        return relative_rate(gas_in_dough, dough);
    case Curve::growth:
        return relative_rate(yeast_growth, dough);
    case Curve::leaven_yeast:
        return growth_rate(yeast_of_leaven, dough) / growth_rate(yeast_of_leaven, best_of(curve));
    case Curve::leaven_bacteria:
        return growth_rate(bacteria_of_leaven, dough) /
               growth_rate(bacteria_of_leaven, best_of(curve));
    }
    return 0.0;
}

Celsius best_of(Curve curve) {
    switch (curve) {
    case Curve::gas:
        return gas_in_dough.best;
    case Curve::growth:
        return yeast_growth.best;
    case Curve::leaven_yeast:
        return best_temperature(yeast_of_leaven);
    case Curve::leaven_bacteria:
        return best_temperature(bacteria_of_leaven);
    }
    return gas_in_dough.best;
}

double uncertainty_of(Curve curve, Celsius dough) {
    const double plain = transfer_uncertainty(dough);
    if (curve == Curve::gas || curve == Curve::growth) {
        return plain;
    }
    return std::max(plain, between_rows(leaven_above, dough.degrees()));
}

std::span<const Celsius> corners_of(Curve curve) {
    switch (curve) {
    case Curve::gas:
        return gas_corners;
    case Curve::growth:
        return growth_corners;
    case Curve::leaven_yeast:
        return yeast_corners;
    case Curve::leaven_bacteria:
        return bacteria_corners;
    }
    return gas_corners;
}

} // namespace loafwright::dough
