// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>

namespace loafwright::dough {

/// A bake in constant surroundings, for the general solver below.
struct CvodeBake {
    std::size_t cells = 24;
    double exponent = 0.0;
    double half_m = 0.0;
    double density_kg_m3 = 0.0;
    double water = 0.45;
    double boiling_c = 100.0;
    double vapour_factor = 1.0;
    double start_c = 25.0;
    double oven_c = 220.0;
    double transfer_w_m2k = 8.0;
    double emissivity = 0.9;
};

struct CvodeCourse {
    double core_minutes = 0.0; ///< until the core is at the target; 0 when it never is
    double dried = 0.0;        ///< share of the water gone, by mass, at the end
    double core_c = 0.0;       ///< at the end
    long steps = 0;
    long rate_calls = 0;
};

/// The equations of docs/models/heat.md, written down a second time from there, and integrated by
/// CVODE of SUNDIALS (backward differentiation, banded Newton) to relative tolerance `tolerance`.
/// Shares no code with engine/dough. With `minutes` of 0 it ends when the core is at the target.
///
/// Throws when the solver gives up.
CvodeCourse bake_by_cvode(const CvodeBake& bake, double minutes, double target_c, double tolerance);

} // namespace loafwright::dough
