// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace loafwright::dough {

/// A lump of dough in a bowl, by conduction: a cylinder whose height is its radius, the same
/// coefficient on every face. It is the product of a long cylinder and a slab, either on a fine
/// one-dimensional grid, so it holds for constant properties and a place of even temperature.
struct DoughLump {
    double mass_kg = 1.0;
    double density_kg_m3 = 1100.0;
    double conductivity_w_mk = 0.45;
    double specific_heat_j_kgk = 2800.0;
    double transfer_w_m2k = 8.0;
};

/// Hours until the core, or the mean by mass, has only `share` of its first difference left.
/// Needs: 0 < share < 1.
double hours_until_core(const DoughLump& lump, double share);
double hours_until_mean(const DoughLump& lump, double share);

/// The time constant with which the difference dies out at last, in hours.
double last_time_constant_hours(const DoughLump& lump);

} // namespace loafwright::dough
