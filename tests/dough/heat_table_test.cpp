// SPDX-License-Identifier: Apache-2.0
//
// Every row of tests/published/heat.tsv against the function it is about. Sources stand there.
#include "engine/dough/altitude.hpp"
#include "engine/dough/bake.hpp"
#include "engine/dough/cool.hpp"
#include "engine/dough/oven.hpp"
#include "engine/dough/series.hpp"
#include "engine/dough/shape.hpp"
#include "engine/dough/steam.hpp"
#include "tests/dough/heat_table.hpp"
#include "tests/dough/lump.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <map>
#include <stdexcept>
#include <string>

namespace loafwright::dough {
namespace {

using Row = HeatRow;

Shape shape_of(const Row& row) {
    if (row.inputs.at(0) == "brick") {
        return brick(
            Millimetres(row.number(1)), Millimetres(row.number(2)), Millimetres(row.number(3)));
    }
    return cylinder(Millimetres(row.number(1)), Millimetres(row.number(2)));
}

StandIn baking_stand_in(const Row& row) {
    return stand_in(shape_of(row), std::numeric_limits<double>::infinity(), 0.1);
}

// The product of series, for a body of h 8 W/m2K, k 0.45 W/mK and alpha 1.3e-7 m2/s.
double direction_left(double exponent, double half_m, double seconds) {
    return share_left_at_centre(modes(exponent, 8.0 * half_m / 0.45),
                                1.3e-7 * seconds / (half_m * half_m));
}

Loaf loaf_of(const std::string& form, Grams dough) {
    static const std::map<std::string, Form> forms{{"tin_loaf", Form::tin_loaf},
                                                   {"round_loaf", Form::round_loaf},
                                                   {"long_loaf", Form::long_loaf},
                                                   {"roll", Form::roll},
                                                   {"baguette", Form::baguette}};
    if (form == "tin_500") {
        return {
            Form::tin_loaf, dough, brick(Millimetres(190.0), Millimetres(90.0), Millimetres(90.0))};
    }
    if (form == "round_500") {
        return {Form::round_loaf, dough, cylinder(Millimetres(170.0), Millimetres(80.0))};
    }
    return usual_loaf(forms.at(form), dough);
}

Bake bake_of(const Row& row) {
    Bake bake;
    bake.loaf = loaf_of(row.inputs.at(0), Grams(row.number(1)));
    bake.settings = {{Celsius(row.number(2)), Minutes(row.number(5))}};
    bake.air = row.inputs.at(3) == "fan" ? OvenAir::fan : OvenAir::still;
    bake.dough = Celsius(row.number(4));
    return bake;
}

double core_minutes(const Row& row, const std::function<void(Bake&)>& change = {}) {
    Bake bake = bake_of(row);
    if (change) {
        change(bake);
    }
    bake.settings[0].lasts = Minutes(1.0);
    const auto minutes = time_to_core(bake, Celsius(row.number(5)));
    return minutes ? minutes->count() : 0.0;
}

double true_surface_factor(const Row& row) {
    const Shape shape = bake_of(row).loaf.baked;
    const double exponent = stand_in(shape, std::numeric_limits<double>::infinity(), 0.1).exponent;
    return surface_per_volume_per_m(shape) * smallest_half(shape).count() / (exponent + 1.0);
}

double loss_percent(const Row& row) {
    return 100.0 * simulate_bake(bake_of(row)).loss;
}

double to_35(const Row& row) {
    const Cooling made =
        cooling(simulate_bake(bake_of(row)).end, Celsius(row.number(6)), Standing::rack);
    return made.to_35 ? made.to_35->likely.count() : 0.0;
}

double core_after_60(const Row& row) {
    return simulate_cooling(simulate_bake(bake_of(row)).end,
                            Celsius(row.number(6)),
                            Standing::rack,
                            Minutes(60.0))
        .core.back()
        .core.degrees();
}

DoughLump lump_of(const Row& row) {
    DoughLump lump;
    lump.mass_kg = row.number(0);
    if (row.inputs.at(1) == "doubled") {
        lump.density_kg_m3 = 550.0;
        lump.conductivity_w_mk = 0.30;
    }
    return lump;
}

Mode first_mode(const Row& row) {
    return modes(row.number(0), row.number(1)).mode[0];
}

const std::map<std::string, std::function<double(const Row&)>>& ways() {
    static const std::map<std::string, std::function<double(const Row&)>> all{
        {"zeta", [](const Row& row) { return first_mode(row).zeta; }},
        {"first_centre", [](const Row& row) { return first_mode(row).centre; }},
        {"centre",
         [](const Row& row) {
             return share_left_at_centre(modes(row.number(0), row.number(1)), row.number(2));
         }},
        {"mean",
         [](const Row& row) {
             return share_left_in_mean(modes(row.number(0), row.number(1)), row.number(2));
         }},
        {"short_cylinder",
         [](const Row& row) {
             return direction_left(1.0, row.number(0), row.number(1)) *
                    direction_left(0.0, row.number(0) / 2.0, row.number(1));
         }},
        {"brick",
         [](const Row& row) {
             return direction_left(0.0, row.number(0) / 2.0, row.number(3)) *
                    direction_left(0.0, row.number(1) / 2.0, row.number(3)) *
                    direction_left(0.0, row.number(2) / 2.0, row.number(3));
         }},
        {"stand_in", [](const Row& row) { return baking_stand_in(row).exponent; }},
        {"stand_in_fourier", [](const Row& row) { return baking_stand_in(row).fourier; }},
        {"boiling_kelvin",
         [](const Row& row) {
             return boiling_point(Pascals(row.number(0))).degrees() + kelvin_at_zero_celsius;
         }},
        {"pressure", [](const Row& row) { return air_pressure(Metres(row.number(0))).count(); }},
        {"boiling_at",
         [](const Row& row) { return boiling_point_at(Metres(row.number(0))).degrees(); }},
        {"core_minutes", [](const Row& row) { return core_minutes(row); }},
        {"core_minutes_in_shiny_tin",
         [](const Row& row) {
             return core_minutes(row, [](Bake& bake) { bake.vessel = Vessel::shiny_tin; });
         }},
        {"core_minutes_with_vapour",
         [](const Row& row) {
             return core_minutes(row, [&](Bake& bake) { bake.vapour_factor = row.number(6); });
         }},
        {"core_minutes_at_height",
         [](const Row& row) {
             return core_minutes(
                 row, [&](Bake& bake) { bake.boiling = boiling_point_at(Metres(row.number(6))); });
         }},
        {"loss", loss_percent},
        {"loss_before_area",
         [](const Row& row) { return loss_percent(row) / true_surface_factor(row); }},
        {"cool_35", to_35},
        {"cool_60", core_after_60},
        {"lump_time_constant",
         [](const Row& row) { return last_time_constant_hours(lump_of(row)); }},
        {"lump_mean", [](const Row& row) { return hours_until_mean(lump_of(row), 6.0 / 21.0); }},
        {"lump_core_cooling",
         [](const Row& row) { return hours_until_core(lump_of(row), 6.0 / 21.0); }},
        {"lump_core_warming",
         [](const Row& row) { return hours_until_core(lump_of(row), 2.0 / 16.0); }},
        {"lag",
         [](const Row& row) {
             return lag(Grams(row.number(0)), row.number(1), row.number(2), OvenAir::still).count();
         }},
        {"heating_up",
         [](const Row& row) {
             OvenModel oven;
             oven.power = Watts(row.number(0));
             const auto minutes = heating_up(oven, Celsius(row.number(1)), Celsius(row.number(2)));
             return minutes ? minutes->count() : 0.0;
         }},
        {"hot_through",
         [](const Row& row) {
             return hot_through(Minutes(row.number(0)), Minutes(row.number(1))).count();
         }},
    };
    return all;
}

TEST(heat_table, every_published_and_computed_figure_comes_out_again) {
    int rows = 0;
    for (const HeatRow& row : heat_rows()) {
        const auto way = ways().find(row.what);
        ASSERT_NE(way, ways().end()) << row.name << ": nothing known as " << row.what;
        EXPECT_NEAR(way->second(row), row.value, row.tolerance) << row.name << ' ' << row.what;
        ++rows;
    }
    EXPECT_GE(rows, 250);
}

} // namespace
} // namespace loafwright::dough
