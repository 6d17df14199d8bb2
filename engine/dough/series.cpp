// SPDX-License-Identifier: Apache-2.0
//
// With nu = (n - 1)/2 the modes of a body with area ~ x^n are z^-nu J_nu(zeta x), and zeta solves
// zeta J_{nu+1}(zeta) = Bi J_nu(zeta). All of it is written in
//
//   L_nu(z) = Gamma(nu + 1) (2/z)^nu J_nu(z) = sum over k of (-z^2/4)^k / (k! (nu + 1)_k),
//
// which is cos z, J_0(z) and sin(z)/z for n = 0, 1, 2 and needs neither a Gamma nor a library
// Bessel function (those of the C++ standard are missing from some libraries). The sum loses about
// z/2.3 digits, so zeta stops at 22, where nine digits are left.
#include "engine/dough/series.hpp"

#include "engine/dough/root.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::dough {

namespace {

// Shorter than the least distance of two roots, which is 2.4 (from 0 to that of J_0) and about pi
// between others.
constexpr double stride = 1.0;
constexpr double feels_nothing_below = 0.02;

// L of one order.
class LFunction {
public:
    explicit LFunction(double order) {
        for (std::size_t k = 1; k <= most_terms; ++k) {
            const auto count = static_cast<double>(k);
            // OPTIMIZATION: the divisions of a term, done once an order.
            factor_[k - 1] = -0.25 / (count * (order + count));
        }
    }

    double operator()(double z) const {
        const double square = z * z;
        double term = 1.0;
        double sum = 1.0;
        double count = 0.0;
        for (const double factor : factor_) {
            term *= factor * square;
            sum += term;
            count += 1.0;
            if (std::abs(term) < 1e-17 && count > z) {
                break;
            }
        }
        return sum;
    }

private:
    static constexpr std::size_t most_terms = 64; // enough for z = 22: the last is below 1e-15
    std::array<double, most_terms> factor_{};
};

class Equation {
public:
    Equation(double exponent, double biot)
        : order_(0.5 * (exponent - 1.0)), edge_(exponent + 1.0), resistance_(1.0 / biot),
          own_(order_), next_(order_ + 1.0) {}

    // zeta J_{nu+1} / Bi - J_nu, in L functions. A finite Bi divides, so that infinity works too.
    [[nodiscard]] double operator()(double zeta) const {
        return zeta * zeta * resistance_ * next_(zeta) - edge_ * own_(zeta);
    }

    [[nodiscard]] Mode mode(double zeta) const {
        const double a = own_(zeta);
        const double next = next_(zeta);
        const double b = zeta * next / edge_;
        const double centre = (b / zeta) / (0.5 * (a * a + b * b) - (order_ / zeta) * a * b);
        return {zeta, centre, centre * next};
    }

private:
    double order_;
    double edge_;
    double resistance_;
    LFunction own_;
    LFunction next_;
};

} // namespace

Modes modes(double exponent, double biot, double largest_zeta) {
    const Equation equation(exponent, biot);
    Modes found;
    double low = 0.0;
    double at_low = equation(low);
    while (low < largest_zeta && found.count < Modes::most) {
        const double high = low + stride;
        const double at_high = equation(high);
        if ((at_low > 0.0) != (at_high > 0.0)) {
            found.mode[found.count] = equation.mode(crossing(equation, low, high, 1e-12));
            ++found.count;
        }
        low = high;
        at_low = at_high;
    }
    return found;
}

double share_left_at_centre(const Modes& modes, double fourier) {
    if (fourier < feels_nothing_below) {
        return 1.0;
    }
    double sum = 0.0;
    for (std::size_t i = 0; i < modes.count; ++i) {
        const Mode& mode = modes.mode[i];
        sum += mode.centre * std::exp(-mode.zeta * mode.zeta * fourier);
    }
    return std::min(sum, 1.0);
}

double share_left_in_mean(const Modes& modes, double fourier) {
    double sum = 0.0;
    for (std::size_t i = 0; i < modes.count; ++i) {
        const Mode& mode = modes.mode[i];
        sum += mode.mean * std::exp(-mode.zeta * mode.zeta * fourier);
    }
    return sum;
}

} // namespace loafwright::dough
