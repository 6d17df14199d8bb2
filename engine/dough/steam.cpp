// SPDX-License-Identifier: Apache-2.0
//
// The line between water and steam after IAPWS R7-97(2012), region 4: one equation, quadratic both
// in beta = (p / 1 MPa)^(1/4) and in theta = T + n9 / (T - n10), so that it can be solved either
// way in closed form. Coefficients from memory; the tests hold them against the values that the
// release prints in its table 36.
#include "engine/dough/steam.hpp"

#include <cmath>

namespace loafwright::dough {

namespace {

constexpr double n1 = 0.11670521452767e4;
constexpr double n2 = -0.72421316703206e6;
constexpr double n3 = -0.17073846940092e2;
constexpr double n4 = 0.12020824702470e5;
constexpr double n5 = -0.32325550322333e7;
constexpr double n6 = 0.14915108613530e2;
constexpr double n7 = -0.48232657361591e4;
constexpr double n8 = 0.40511340542057e6;
constexpr double n9 = -0.23855557567849;
constexpr double n10 = 0.65017534844798e3;
constexpr double megapascal = 1e6;

} // namespace

Celsius boiling_point(Pascals pressure) {
    const double beta = std::sqrt(std::sqrt(pressure.count() / megapascal));
    const double e = beta * beta + n3 * beta + n6;
    const double f = n1 * beta * beta + n4 * beta + n7;
    const double g = n2 * beta * beta + n5 * beta + n8;
    const double d = 2.0 * g / (-f - std::sqrt(f * f - 4.0 * e * g));
    const double sum = n10 + d;
    const double kelvin = 0.5 * (sum - std::sqrt(sum * sum - 4.0 * (n9 + n10 * d)));
    return Celsius(kelvin - kelvin_at_zero_celsius);
}

Pascals saturation_pressure(Celsius water) {
    const double kelvin = water.degrees() + kelvin_at_zero_celsius;
    const double theta = kelvin + n9 / (kelvin - n10);
    const double a = theta * theta + n1 * theta + n2;
    const double b = n3 * theta * theta + n4 * theta + n5;
    const double c = n6 * theta * theta + n7 * theta + n8;
    const double root = 2.0 * c / (-b + std::sqrt(b * b - 4.0 * a * c));
    const double square = root * root;
    return Pascals(megapascal * square * square);
}

} // namespace loafwright::dough
