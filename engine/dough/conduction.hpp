// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

// Heat in one dimension by finite volumes: mesh, time step and surface, and the plain body of
// constant properties made of them. What is special to bread stands in bread_heat.hpp.
//
// Numbers here are SI and degrees Celsius; the unit stands in the name.
namespace loafwright::dough {

inline constexpr double stefan_boltzmann_w_m2k4 =
    5.670374419e-8; // CODATA 2018, exact by definition

/// Equal steps from the centre of a body to its surface, the area growing as x^exponent.
///
/// Lengths are shares of the half-thickness, so the outer area is 1, the body holds
/// 1/(exponent + 1), and sums over cells are per square metre of surface and metre of
/// half-thickness.
template <std::size_t Cells>
struct Mesh {
    static_assert(Cells >= 2);

    double exponent = 0.0;
    double half_m = 0.0;
    double step_m = 0.0;
    std::array<double, Cells> inner_area{}; ///< of the face towards the centre; 0 for the first
    std::array<double, Cells> volume{};

    /// Needs: exponent >= 0, half_m > 0.
    Mesh(double exponent_of_area, double half_thickness_m)
        : exponent(exponent_of_area), half_m(half_thickness_m),
          step_m(half_thickness_m / static_cast<double>(Cells)) {
        double held = 0.0;
        for (std::size_t i = 0; i < Cells; ++i) {
            const double from = static_cast<double>(i) / static_cast<double>(Cells);
            const double to = static_cast<double>(i + 1) / static_cast<double>(Cells);
            inner_area[i] = i == 0 ? 0.0 : std::pow(from, exponent);
            const double up_to = std::pow(to, exponent + 1.0) / (exponent + 1.0);
            volume[i] = up_to - held;
            held = up_to;
        }
    }

    /// A bound on the fastest rate of the mesh, in 1/s, for the largest diffusivity of the body, by
    /// Gershgorin's circles; the surface counts as held at a fixed temperature.
    [[nodiscard]] double fastest_rate(double diffusivity_m2_s) const {
        double fastest = 0.0;
        for (std::size_t i = 0; i < Cells; ++i) {
            const double inside = inner_area[i];
            const double outside = i + 1 < Cells ? inner_area[i + 1] : 0.0;
            const double surface = i + 1 < Cells ? 0.0 : 2.0;
            fastest = std::max(fastest, (2.0 * (inside + outside) + surface) / volume[i]);
        }
        return fastest * diffusivity_m2_s / (step_m * half_m);
    }
};

/// The centre's value by the parabola through the two innermost cells.
inline double at_centre(double first, double second) {
    return first + (first - second) / 8.0;
}

/// One large explicit step made of small stages: the second-order Runge-Kutta-Legendre method of
/// Meyer, Balsara and Aslam, Journal of Computational Physics 257 (2014) 594-626 (formulas from
/// memory; the tests show the order). With s stages it is stable for steps (s^2 + s - 2)/4 times as
/// long as those of the plain explicit method, keeps every linear sum that the rates keep, and
/// needs no system of equations.
template <std::size_t Stages>
class StabilisedSteps {
    static_assert(Stages >= 3);

public:
    /// How many times longer than 2 / (fastest rate) a step may be.
    static constexpr double reach = (Stages * Stages + Stages - 2) / 4.0;

    /// Moves `state` on by `seconds`. `first` holds its rates; rates(state, into) works out others.
    template <std::size_t Size, typename Rates>
    static void advance(std::array<double, Size>& state,
                        const std::array<double, Size>& first,
                        double seconds,
                        Rates&& rates) {
        std::array<double, Size> one = state;
        std::array<double, Size> two{};
        std::array<double, Size> three{};
        std::array<double, Size> rate{};
        auto* before = &one;
        auto* now = &two;
        auto* next = &three;
        const double opening = weight / 3.0 * seconds;
        for (std::size_t i = 0; i < Size; ++i) {
            (*now)[i] = state[i] + opening * first[i];
        }
        for (const Stage& stage : stages) {
            rates(*now, rate);
            const double stretch = stage.stretch * seconds;
            const double shift = stage.shift * seconds;
            for (std::size_t i = 0; i < Size; ++i) {
                (*next)[i] = stage.mu * (*now)[i] + stage.nu * (*before)[i] +
                             stage.rest * state[i] + stretch * rate[i] + shift * first[i];
            }
            std::swap(before, now);
            std::swap(now, next);
        }
        state = *now;
    }

private:
    static constexpr double weight = 1.0 / reach;

    // Names after the source: Y_j = mu Y_{j-1} + nu Y_{j-2} + rest Y_0 + stretch t M(Y_{j-1}) +
    // shift t M(Y_0).
    struct Stage {
        double mu, nu, rest, stretch, shift;
    };

    static constexpr double b(std::size_t j) {
        const auto count = static_cast<double>(j < 2 ? 2 : j);
        return (count * count + count - 2.0) / (2.0 * count * (count + 1.0));
    }

    static constexpr std::array<Stage, Stages - 1> made_stages() {
        std::array<Stage, Stages - 1> made{};
        for (std::size_t j = 2; j <= Stages; ++j) {
            const auto count = static_cast<double>(j);
            const double mu = (2.0 * count - 1.0) / count * b(j) / b(j - 1);
            const double nu = -(count - 1.0) / count * b(j) / b(j - 2);
            made[j - 2] = {mu, nu, 1.0 - mu - nu, mu * weight, -(1.0 - b(j - 1)) * mu * weight};
        }
        return made;
    }

    static constexpr std::array<Stage, Stages - 1> stages = made_stages();
};

/// What a surface gives and takes: air of one temperature that also stands for the walls.
struct Surroundings {
    double air_c = 0.0;
    double transfer_w_m2k = 0.0; ///< by moving air, the same at any difference
    double emissivity = 0.0;
};

/// The temperature of a surface that passes on what it receives, `conductance_w_m2k` leading to a
/// place of `inside_c`. Newton's method from `guess_c`, `rounds` times; exact at once without
/// radiation.
inline double surface_temperature(const Surroundings& around,
                                  double conductance_w_m2k,
                                  double inside_c,
                                  double guess_c,
                                  int rounds) {
    constexpr double kelvin = 273.15;
    const double radiation = around.emissivity * stefan_boltzmann_w_m2k4;
    const double air_k = around.air_c + kelvin;
    const double air_fourth = air_k * air_k * air_k * air_k;
    const double straight = around.transfer_w_m2k + conductance_w_m2k;
    const double fed = around.transfer_w_m2k * around.air_c + conductance_w_m2k * inside_c;
    double surface_c = guess_c;
    for (int i = 0; i < rounds; ++i) {
        const double surface_k = surface_c + kelvin;
        const double cube = surface_k * surface_k * surface_k;
        const double surplus =
            fed - straight * surface_c + radiation * (air_fourth - cube * surface_k);
        surface_c += surplus / (straight + 4.0 * radiation * cube);
    }
    return surface_c;
}

/// A body of constant properties.
struct PlainBody {
    double exponent = 0.0;
    double half_m = 0.0;
    double conductivity_w_mk = 0.0;
    double density_kg_m3 = 0.0;
    double specific_heat_j_kgk = 0.0;
};

/// How heat spreads in a plain body, from one even temperature, in surroundings that stay.
///
/// Promises: second order in step and time; the heat that went in is what the body gained, to
///           rounding; the same numbers on every machine.
/// Never:    allocates.
template <std::size_t Cells>
class PlainConduction {
public:
    /// Needs: positive properties.
    PlainConduction(const PlainBody& body, const Surroundings& around, double start_c)
        : body_(body), around_(around), mesh_(body.exponent, body.half_m), surface_c_(start_c) {
        state_.fill(start_c);
        state_[Cells] = 0.0;
        const double diffusivity =
            body.conductivity_w_mk / (body.density_kg_m3 * body.specific_heat_j_kgk);
        longest_s_ = Steps::reach * 2.0 / mesh_.fastest_rate(diffusivity);
    }

    /// Lets `seconds` pass, in even steps.
    void advance(double seconds) {
        const auto count = static_cast<std::size_t>(std::max(1.0, std::ceil(seconds / longest_s_)));
        const double step_s = seconds / static_cast<double>(count);
        const auto rates = [this](const State& state, State& rate) { find_rates(state, rate); };
        State first{};
        for (std::size_t i = 0; i < count; ++i) {
            rates(state_, first);
            Steps::advance(state_, first, step_s, rates);
        }
    }

    [[nodiscard]] double centre_c() const { return at_centre(state_[0], state_[1]); }
    [[nodiscard]] double mean_c() const {
        double sum = 0.0;
        for (std::size_t i = 0; i < Cells; ++i) {
            sum += mesh_.volume[i] * state_[i];
        }
        return sum * (body_.exponent + 1.0);
    }
    [[nodiscard]] double surface_c() const { return surface_c_; }
    /// Per square metre of surface, since the start.
    [[nodiscard]] double heat_taken_j_m2() const { return state_[Cells]; }

private:
    using Steps = StabilisedSteps<5>;
    using State = std::array<double, Cells + 1>;

    void find_rates(const State& state, State& rate) {
        const double conductance = body_.conductivity_w_mk / mesh_.step_m;
        const double capacity = body_.density_kg_m3 * body_.specific_heat_j_kgk * body_.half_m;
        double inflow = 0.0;
        for (std::size_t i = 0; i + 1 < Cells; ++i) {
            const double outer = conductance * mesh_.inner_area[i + 1] * (state[i + 1] - state[i]);
            rate[i] = (outer - inflow) / (capacity * mesh_.volume[i]);
            inflow = outer;
        }
        const double skin = 2.0 * conductance;
        surface_c_ = surface_temperature(around_, skin, state[Cells - 1], surface_c_, 3);
        const double taken = skin * (surface_c_ - state[Cells - 1]);
        rate[Cells - 1] = (taken - inflow) / (capacity * mesh_.volume[Cells - 1]);
        rate[Cells] = taken;
    }

    PlainBody body_;
    Surroundings around_;
    Mesh<Cells> mesh_;
    State state_{};
    double surface_c_;
    double longest_s_ = 0.0;
};

} // namespace loafwright::dough
