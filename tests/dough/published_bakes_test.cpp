// SPDX-License-Identifier: Apache-2.0
//
// The bake against what others measured or modelled, within the error that docs/models/heat.md
// states for each. Only figures quoted in abstracts and books were at hand, so sizes are ours
// where the source names none, and part of each error with them. The hearth and sandwich loaves and
// the range of weight loss were in view when the conductivities were chosen: those are fits. The
// muffin and the pot were not.
#include "engine/dough/bake.hpp"
#include "engine/dough/bread_heat.hpp"
#include "engine/dough/cool.hpp"
#include "tests/dough/bakes.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string>
#include <utility>

namespace loafwright::dough {
namespace {

// A rustic hearth loaf baked for 60 minutes: core above 93.3 °C by half time, 98.9 at 45 minutes
// (The Science of Good Cooking, 2012, as quoted). Ours: 1.0 and 1.25 kg, 230 °C and then 205.
TEST(published_bakes, a_hearth_loaf) {
    for (const double grams : {1000.0, 1250.0}) {
        Bake bake;
        bake.loaf = usual_loaf(Form::round_loaf, Grams(grams));
        bake.loaf.baked = grams < 1100.0 ? cylinder(Millimetres(220.0), Millimetres(100.0))
                                         : cylinder(Millimetres(240.0), Millimetres(105.0));
        bake.settings = {{Celsius(230.0), Minutes(15.0)}, {Celsius(205.0), Minutes(45.0)}};
        const auto past = time_to_core(bake, Celsius(93.3));
        const auto nearly = time_to_core(bake, Celsius(98.9));
        ASSERT_TRUE(past && nearly);
        RecordProperty("past_" + std::to_string(grams), std::to_string(past->count()));
        RecordProperty("nearly_" + std::to_string(grams), std::to_string(nearly->count()));
        EXPECT_NEAR(past->count(), 32.5, 3.0) << grams;
        EXPECT_NEAR(nearly->count(), 45.0, 5.2) << grams;
    }
}

// A sandwich loaf whose tin was at 115, 130, 156 and 176 °C for a quarter of 27.4 minutes each:
// crumb at 99 °C (Therdthai, Zhou and Adamczak 2002, J Food Eng 55:41-48, abstract; their fitted
// model).
TEST(published_bakes, a_sandwich_loaf_with_its_tin_imposed) {
    for (const double grams : {450.0, 680.0}) {
        const Loaf loaf = usual_loaf(Form::tin_loaf, Grams(grams));
        BreadBody body;
        body.exponent = stand_in(loaf.baked, std::numeric_limits<double>::infinity(), 0.1).exponent;
        body.half_m = smallest_half(loaf.baked).count();
        body.density_kg_m3 = risen_density(loaf).count();
        BakingRates<production_cells> rates(body, 35.0);
        BakingRates<production_cells>::State state{};
        std::fill_n(state.begin(), production_cells, rates.properties().enthalpy_j_kg(35.0));
        BakingRates<production_cells>::State first{};
        for (const double tin_c : {115.0, 130.0, 156.0, 176.0}) {
            rates.surroundings({tin_c, 1e6, 0.0}, Lid::on);
            for (int i = 0; i < 100; ++i) {
                rates(state, first);
                StabilisedSteps<7>::advance(state, first, 60.0 * 27.4 / 400.0, rates);
            }
        }
        const double core_c = at_centre(rates.properties().temperature_c(state[0]),
                                        rates.properties().temperature_c(state[1]));
        RecordProperty("core_" + std::to_string(grams), std::to_string(core_c));
        EXPECT_NEAR(core_c, 99.0, 3.6) << grams;
    }
}

// English muffins, 18 minutes at 204.4 °C: largest mean core 99 °C (a study of baking as a kill
// step, abstract). Ours: 65 and 100 g, 2.5 and 3.5 cm thick.
TEST(published_bakes, an_english_muffin_is_done_in_its_time) {
    for (const double grams : {65.0, 100.0}) {
        Bake bake = usual_bake(Form::roll, grams, 204.4, 18.0);
        bake.loaf.baked = grams < 80.0 ? cylinder(Millimetres(90.0), Millimetres(25.0))
                                       : cylinder(Millimetres(95.0), Millimetres(35.0));
        EXPECT_NEAR(simulate_bake(bake).core_at_end.degrees(), 99.0, 1.5) << grams;
    }
}

// 10 to 20 % of the dough, most from rolls and least from large loaves (McGee 2004, On Food and
// Cooking); a baguette of 335 g at most 80 g (bakers in a news report).
TEST(published_bakes, the_loss_of_weight_is_in_the_range_of_books) {
    const double roll = simulate_bake(usual_bake(Form::roll, 70.0, 220.0, 15.0)).loss;
    const double tin = simulate_bake(usual_bake(Form::tin_loaf, 900.0, 220.0, 35.0)).loss;
    const double round = simulate_bake(usual_bake(Form::round_loaf, 1000.0, 230.0, 40.0)).loss;
    const double baguette = simulate_bake(usual_bake(Form::baguette, 335.0, 240.0, 22.0)).loss;
    for (const double loss : {roll, tin, round}) {
        EXPECT_GT(loss, 0.10);
        EXPECT_LT(loss, 0.20);
    }
    EXPECT_GT(roll, tin);
    EXPECT_LT(baguette, 80.0 / 335.0);
}

// Known not to hold, and kept in sight: a hobby logger in a lidded pot at 260 °C saw the core level
// off by about 20 minutes (mass not told). Ours, 850 g of 20 x 9.5 cm, is far slower.
TEST(published_bakes, a_loaf_in_a_pot_is_slower_here_than_a_hobby_logger_saw) {
    Bake bake = usual_bake(Form::round_loaf, 850.0, 260.0, 40.0);
    bake.loaf.baked = cylinder(Millimetres(200.0), Millimetres(95.0));
    bake.vessel = Vessel::lidded_pot;
    bake.lid_off_after = Minutes(20.0);
    const BakeCourse course = simulate_bake(bake);
    RecordProperty("core_at_20", std::to_string(core_at(course.core, Minutes(20.0)).degrees()));
    RecordProperty("core_at_40", std::to_string(course.core_at_end.degrees()));
    EXPECT_NEAR(core_at(course.core, Minutes(20.0)).degrees(), 71.0, 4.0);
    EXPECT_NEAR(course.core_at_end.degrees(), 98.0, 1.0);
}

// Known not to hold: a loaf of about 450 g taken out at 79 °C rose to 96 on the rack (hobby
// report); ours evens out to some 89.
TEST(published_bakes, an_early_loaf_evens_out_on_the_rack_but_not_as_far_as_reported) {
    Bake bake = usual_bake(Form::long_loaf, 450.0, 230.0, 30.0);
    const auto early = time_to_core(bake, Celsius(79.0));
    ASSERT_TRUE(early);
    bake.settings[0].lasts = *early;
    const CoolingCourse rack =
        simulate_cooling(simulate_bake(bake).end, Celsius(20.0), Standing::rack, Minutes(30.0));
    double highest = 0.0;
    for (const CorePoint& point : rack.core) {
        highest = std::max(highest, point.core.degrees());
    }
    RecordProperty("highest", std::to_string(highest));
    EXPECT_NEAR(highest, 89.0, 1.0);
}

// Zanoni, Peri and Gianotti (1995, J Food Eng 26:497-510, abstract) give crumb one diffusivity,
// exp(0.01 eps - 15.25) m2/s at a porosity of eps %. By it a cylinder of 10 cm from 20 °C with its
// wall at 100 has 92 °C after 44, 40 and 36 minutes at 65, 75 and 85 % (computed elsewhere).
TEST(published_bakes, crumb_of_zanonis_constant_diffusivity_takes_its_time) {
    for (const auto& [porosity, minutes] :
         {std::pair{65.0, 44.0}, std::pair{75.0, 40.0}, std::pair{85.0, 36.0}}) {
        const double diffusivity = std::exp(0.01 * porosity - 15.25);
        PlainConduction<production_cells> body(
            {1.0, 0.05, diffusivity * 1e6, 1000.0, 1000.0}, {100.0, 1e6, 0.0}, 20.0);
        double passed = 0.0;
        while (body.centre_c() < 92.0) {
            body.advance(6.0);
            passed += 0.1;
        }
        EXPECT_NEAR(passed, minutes, 0.6) << porosity;
    }
}

// Known not to hold: our bread, whose conduction grows with its warmth, is there after about half
// of that and less. One of the two is wrong for bread in air of 100 °C, where evaporation cools the
// surface; theirs was measured there, ours is meant for an oven.
TEST(published_bakes, our_crumb_is_much_quicker_than_zanonis) {
    for (const auto& [porosity, minutes] :
         {std::pair{65.0, 24.0}, std::pair{75.0, 17.0}, std::pair{85.0, 10.0}}) {
        BreadBody body;
        body.exponent = 1.0;
        body.half_m = 0.05;
        body.density_kg_m3 = 979.0 - 9.90 * porosity; // of crumb, the same abstract
        BakingRates<production_cells> rates(body, 25.0);
        BakingRates<production_cells>::State state{};
        std::fill_n(state.begin(), production_cells, rates.properties().enthalpy_j_kg(25.0));
        BakingRates<production_cells>::State first{};
        rates.surroundings({100.0, 1e6, 0.0}, Lid::off);
        double passed = 0.0;
        double core_c = 25.0;
        while (core_c < 92.0 && passed < 100.0) {
            rates(state, first);
            StabilisedSteps<7>::advance(state, first, 2.0, rates);
            passed += 2.0 / 60.0;
            core_c = at_centre(rates.properties().temperature_c(state[0]),
                               rates.properties().temperature_c(state[1]));
        }
        EXPECT_NEAR(passed, minutes, 1.0) << porosity;
    }
}

} // namespace
} // namespace loafwright::dough
