// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/conduction.hpp"
#include "engine/dough/steam.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

// Bread as a body that conducts heat: what baking and cooling have in common, and the rates of
// either. The formulas, their sources and what they are worth stand in docs/models/heat.md.
namespace loafwright::dough {

/// Water boils away along a plateau: below its enthalpy a cell is wet, above it dry.
struct BreadBody {
    double exponent = 0.0; ///< of the stand-in, see shape.hpp
    double half_m = 0.0;
    double density_kg_m3 = 0.0; ///< dough over the volume of the baked loaf
    double water = 0.45;        ///< share of the dough
    double boiling_c = 100.0;
    /// How much the vapour that crosses the crumb's cells adds to conduction, against the standard
    /// of 1 W/mK at full strength; this is what a kitchen's log may teach (0.6 to 2).
    double vapour_factor = 1.0;
};

inline constexpr double water_kept_by_crust = 0.03;
inline constexpr double latent_heat_j_kg = 2.257e6; // of water at 100 °C, steam tables
inline constexpr double water_specific_heat_j_kgk = 4180.0;
inline constexpr double crust_conductivity_w_mk = 0.05; // 0.04 to 0.055: Rask 1989, quoted
inline constexpr double dew_under_lid_c = 80.0;         // assumed: half of the pot's air is steam
inline constexpr double solids_specific_heat_j_kgk = 1500.0; // near Choi and Okos 1986

/// Specific heats and conductivity, of original dough by mass.
class BreadProperties {
public:
    explicit BreadProperties(const BreadBody& body)
        : wet_j_kgk_((1.0 - body.water) * solids_specific_heat_j_kgk +
                     body.water * water_specific_heat_j_kgk),
          dry_j_kgk_((1.0 - body.water) * solids_specific_heat_j_kgk +
                     water_kept_by_crust * water_specific_heat_j_kgk),
          boiling_c_(body.boiling_c), at_boiling_j_kg_(wet_j_kgk_ * body.boiling_c),
          plateau_j_kg_((body.water - water_kept_by_crust) * latent_heat_j_kg),
          per_wet_kgk_j_(1.0 / wet_j_kgk_), per_dry_kgk_j_(1.0 / dry_j_kgk_),
          per_plateau_kg_j_(1.0 / plateau_j_kg_) {
        // k = 0.20 + k_v / (1 + exp(-0.1 (T - 80))), after Purlis and Salvadori 2009 (k_v 0.9
        // there).
        for (std::size_t i = 0; i < table_.size(); ++i) {
            const double t = coldest_c + static_cast<double>(i) / per_kelvin;
            table_[i] = 0.2 + body.vapour_factor / (1.0 + std::exp(-0.1 * (t - 80.0)));
        }
    }

    [[nodiscard]] double dried(double enthalpy_j_kg) const {
        return std::clamp((enthalpy_j_kg - at_boiling_j_kg_) * per_plateau_kg_j_, 0.0, 1.0);
    }
    [[nodiscard]] double temperature_c(double enthalpy_j_kg) const {
        const double over = enthalpy_j_kg - at_boiling_j_kg_;
        return boiling_c_ + std::min(over, 0.0) * per_wet_kgk_j_ +
               std::max(over - plateau_j_kg_, 0.0) * per_dry_kgk_j_;
    }
    /// Of a cell below the boiling point.
    [[nodiscard]] double enthalpy_j_kg(double temperature_c) const {
        return wet_j_kgk_ * temperature_c;
    }
    [[nodiscard]] double conductivity_w_mk(double temperature_c, double dried) const {
        // OPTIMIZATION: a table of the curve, straight between its points; off by 2e-4 at most.
        const double place = std::clamp((temperature_c - coldest_c) * per_kelvin, 0.0, last_place);
        const auto index = static_cast<std::size_t>(place);
        const double wet = table_[index] + (place - static_cast<double>(index)) *
                                               (table_[index + 1] - table_[index]);
        return (1.0 - dried) * wet + dried * crust_conductivity_w_mk;
    }
    [[nodiscard]] double specific_heat_j_kgk(double dried) const {
        return (1.0 - dried) * wet_j_kgk_ + dried * dry_j_kgk_;
    }
    /// Of a wet cell; those that dried spread heat more slowly.
    [[nodiscard]] double diffusivity_m2_s(double temperature_c, double density_kg_m3) const {
        return conductivity_w_mk(temperature_c, 0.0) / (density_kg_m3 * wet_j_kgk_);
    }
    [[nodiscard]] double largest_diffusivity_m2_s(double density_kg_m3) const {
        return diffusivity_m2_s(boiling_c_, density_kg_m3);
    }

private:
    static constexpr double coldest_c = -30.0;
    static constexpr double per_kelvin = 1.0;
    static constexpr double last_place = 139.999;

    double wet_j_kgk_;
    double dry_j_kgk_;
    double boiling_c_;
    double at_boiling_j_kg_;
    double plateau_j_kg_;
    double per_wet_kgk_j_; // OPTIMIZATION: multiplying is quicker than dividing
    double per_dry_kgk_j_;
    double per_plateau_kg_j_;
    std::array<double, 141> table_{};
};

enum class Lid { off, on };

/// Rates of a baking loaf. State: enthalpy of each cell in J per kg of dough; last, the heat taken
/// through the surface in J/m^2.
template <std::size_t Cells>
class BakingRates {
public:
    using State = std::array<double, Cells + 1>;

    BakingRates(const BreadBody& body, double start_c)
        : properties_(body), mesh_(body.exponent, body.half_m), boiling_c_(body.boiling_c),
          surface_c_(start_c) {
        for (std::size_t i = 0; i < Cells; ++i) {
            per_capacity_[i] = 1.0 / (body.density_kg_m3 * body.half_m * mesh_.volume[i]);
            area_per_step_[i] = 2.0 * mesh_.inner_area[i] / mesh_.step_m;
        }
    }

    void surroundings(const Surroundings& around, Lid lid) {
        around_ = around;
        lid_ = lid;
        settle_ = 6; // Newton starts from the surface of the former surroundings
    }

    void operator()(const State& state, State& rate) {
        std::array<double, Cells> t;
        std::array<double, Cells> k;
        for (std::size_t i = 0; i < Cells; ++i) {
            t[i] = properties_.temperature_c(state[i]);
        }
        for (std::size_t i = 0; i < Cells; ++i) {
            k[i] = properties_.conductivity_w_mk(t[i], properties_.dried(state[i]));
        }
        double inflow = 0.0;
        for (std::size_t i = 0; i + 1 < Cells; ++i) {
            const double outer =
                area_per_step_[i + 1] * k[i] * k[i + 1] / (k[i] + k[i + 1]) * (t[i + 1] - t[i]);
            rate[i] = (outer - inflow) * per_capacity_[i];
            inflow = outer;
        }
        const double skin = 2.0 * k[Cells - 1] / mesh_.step_m;
        surface_c_ = surface_temperature(around_, skin, t[Cells - 1], surface_c_, settle_);
        settle_ = 2;
        if (lid_ == Lid::on) {
            // In its own steam the skin stays wet: dew falls on it while it is colder, and it dries
            // no sooner than the lid is off.
            surface_c_ = std::clamp(surface_c_, std::min(dew_under_lid_c, boiling_c_), boiling_c_);
        }
        const double taken = skin * (surface_c_ - t[Cells - 1]);
        rate[Cells - 1] = (taken - inflow) * per_capacity_[Cells - 1];
        rate[Cells] = taken;
    }

    [[nodiscard]] const BreadProperties& properties() const { return properties_; }
    [[nodiscard]] const Mesh<Cells>& mesh() const { return mesh_; }
    [[nodiscard]] double surface_c() const { return surface_c_; }

private:
    BreadProperties properties_;
    Mesh<Cells> mesh_;
    double boiling_c_;
    double surface_c_;
    Surroundings around_{};
    Lid lid_ = Lid::off;
    int settle_ = 6;
    std::array<double, Cells> per_capacity_{};
    std::array<double, Cells> area_per_step_{};
};

/// How a loaf stands while it cools.
struct CoolingPlace {
    double room_c = 20.0;
    double air_factor = 1.0;        ///< of the surface coefficient; half in a tin or a cloth
    double crust_kg_m2spa = 2.5e-9; ///< what the crust lets through; 0 in a tin
    double humidity = 0.5;
};

/// Rates of a cooling loaf. State: temperature of each cell in °C; then the heat given off through
/// the surface in J/m^2, and the vapour gone in kg/m^2. Dryness stays as the bake left it.
template <std::size_t Cells>
class CoolingRates {
public:
    using State = std::array<double, Cells + 2>;

    CoolingRates(const BreadBody& body,
                 const CoolingPlace& place,
                 const std::array<double, Cells>& dried,
                 double surface_c)
        : properties_(body), mesh_(body.exponent, body.half_m), place_(place), dried_(dried),
          surface_c_(surface_c) {
        for (std::size_t i = 0; i < Cells; ++i) {
            per_capacity_[i] = 1.0 / (body.density_kg_m3 * body.half_m * mesh_.volume[i] *
                                      properties_.specific_heat_j_kgk(dried[i]));
            area_per_step_[i] = 2.0 * mesh_.inner_area[i] / mesh_.step_m;
            if (dried[i] < 0.5) {
                wet_ = i;
            }
        }
        const double room_pa = saturation_pressure(Celsius(std::max(place.room_c, 0.0))).count();
        vapour_pa_ = place.humidity * room_pa;
    }

    void operator()(const State& state, State& rate) {
        std::array<double, Cells> k;
        for (std::size_t i = 0; i < Cells; ++i) {
            k[i] = properties_.conductivity_w_mk(state[i], dried_[i]);
        }
        double inflow = 0.0;
        for (std::size_t i = 0; i + 1 < Cells; ++i) {
            const double outer = area_per_step_[i + 1] * k[i] * k[i + 1] / (k[i] + k[i + 1]) *
                                 (state[i + 1] - state[i]);
            rate[i] = (outer - inflow) * per_capacity_[i];
            inflow = outer;
        }
        const double skin = 2.0 * k[Cells - 1] / mesh_.step_m;
        const double given = skin * (state[Cells - 1] - settled_surface(skin, state[Cells - 1]));
        rate[Cells - 1] = (-given - inflow) * per_capacity_[Cells - 1];
        const double wet_pa = saturation_pressure(Celsius(std::max(state[wet_], 0.0))).count();
        const double vapour = place_.crust_kg_m2spa * std::max(0.0, wet_pa - vapour_pa_);
        rate[wet_] -= vapour * latent_heat_j_kg * per_capacity_[wet_];
        rate[Cells] = given;
        rate[Cells + 1] = vapour;
    }

    [[nodiscard]] const BreadProperties& properties() const { return properties_; }
    [[nodiscard]] const Mesh<Cells>& mesh() const { return mesh_; }
    [[nodiscard]] double surface_c() const { return surface_c_; }

private:
    // h = 1.35 (dT / 2L)^(1/4) of still air, a handbook form from memory, and radiation.
    double settled_surface(double skin, double inside_c) {
        constexpr double kelvin = 273.15;
        constexpr double emissivity = 0.9;
        const double room_k = place_.room_c + kelvin;
        for (int i = 0; i < 3; ++i) {
            const double surface_k = surface_c_ + kelvin;
            const double still =
                1.35 *
                std::sqrt(std::sqrt(std::abs(surface_c_ - place_.room_c) / (2.0 * mesh_.half_m)));
            const double radiant = emissivity * stefan_boltzmann_w_m2k4 *
                                   (room_k * room_k + surface_k * surface_k) * (room_k + surface_k);
            const double transfer = place_.air_factor * (still + radiant);
            surface_c_ = (transfer * place_.room_c + skin * inside_c) / (transfer + skin);
        }
        return surface_c_;
    }

    BreadProperties properties_;
    Mesh<Cells> mesh_;
    CoolingPlace place_;
    std::array<double, Cells> dried_;
    double surface_c_;
    double vapour_pa_ = 0.0;
    std::size_t wet_ = 0;
    std::array<double, Cells> per_capacity_{};
    std::array<double, Cells> area_per_step_{};
};

} // namespace loafwright::dough
