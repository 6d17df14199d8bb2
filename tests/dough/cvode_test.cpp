// SPDX-License-Identifier: Apache-2.0
//
// The bake against an independent solver of the same equations on the same cells: CVODE of
// SUNDIALS, at a tolerance where its own error is nothing. What is left is our error in time.
#include "engine/dough/bake.hpp"
#include "engine/dough/bread_heat.hpp"
#include "tests/dough/cvode_bake.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <string>
#include <vector>

namespace loafwright::dough {
namespace {

struct Case {
    std::string name;
    Form form;
    double grams;
    double oven_c;
    OvenAir air;
    double minutes;
};

std::vector<Case> cases() {
    return {{"roll", Form::roll, 70.0, 220.0, OvenAir::still, 15.0},
            {"baguette", Form::baguette, 330.0, 240.0, OvenAir::still, 22.0},
            {"long_loaf", Form::long_loaf, 800.0, 220.0, OvenAir::still, 35.0},
            {"tin_loaf", Form::tin_loaf, 900.0, 220.0, OvenAir::still, 35.0},
            {"fan", Form::tin_loaf, 900.0, 200.0, OvenAir::fan, 35.0},
            {"round_loaf", Form::round_loaf, 1000.0, 230.0, OvenAir::still, 40.0},
            {"large", Form::tin_loaf, 2000.0, 190.0, OvenAir::still, 70.0}};
}

Bake bake_of(const Case& from) {
    Bake bake;
    bake.loaf = usual_loaf(from.form, Grams(from.grams));
    bake.settings = {{Celsius(from.oven_c), Minutes(from.minutes)}};
    bake.air = from.air;
    return bake;
}

CvodeBake cvode_bake_of(const Case& from) {
    const Bake bake = bake_of(from);
    CvodeBake made;
    made.cells = production_cells;
    made.exponent =
        stand_in(bake.loaf.baked, std::numeric_limits<double>::infinity(), 0.1).exponent;
    made.half_m = smallest_half(bake.loaf.baked).count();
    made.density_kg_m3 = risen_density(bake.loaf).count();
    made.oven_c = from.oven_c;
    made.transfer_w_m2k = from.air == OvenAir::fan ? 20.0 : 8.0;
    return made;
}

TEST(cvode, core_times_agree_within_two_tenths_of_a_percent) {
    for (const Case& each : cases()) {
        for (const double target_c : {60.0, 93.0, 95.0, 98.0}) {
            const CvodeCourse exact = bake_by_cvode(cvode_bake_of(each), 0.0, target_c, 1e-9);
            const auto ours = time_to_core(bake_of(each), Celsius(target_c));
            ASSERT_TRUE(ours) << each.name;
            EXPECT_NEAR(ours->count() / exact.core_minutes, 1.0, 0.002) << each.name << target_c;
        }
    }
}

TEST(cvode, core_and_weight_at_the_end_agree) {
    for (const Case& each : cases()) {
        const CvodeBake same = cvode_bake_of(each);
        const CvodeCourse exact = bake_by_cvode(same, each.minutes, 1000.0, 1e-9);
        const BakeCourse ours = simulate_bake(bake_of(each));
        const double true_surface =
            surface_per_volume_per_m(ours.end.loaf.baked) * same.half_m / (same.exponent + 1.0);
        EXPECT_NEAR(ours.core_at_end.degrees(), exact.core_c, 0.05) << each.name;
        EXPECT_NEAR(ours.loss / (0.42 * true_surface * exact.dried), 1.0, 0.002) << each.name;
    }
}

} // namespace
} // namespace loafwright::dough
