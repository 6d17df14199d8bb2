// SPDX-License-Identifier: Apache-2.0
//
// Every row of tests/published/fermentation.tsv, one test each: what the row asks, answered by the
// engine, must reach the published value within the row's tolerance.
#include "engine/dough/composition.hpp"
#include "engine/dough/curve.hpp"
#include "engine/dough/dough_temperature.hpp"
#include "engine/dough/factor_rule.hpp"
#include "engine/dough/fermentation.hpp"
#include "engine/dough/lump.hpp"
#include "engine/dough/sourdough.hpp"
#include "engine/dough/yeast.hpp"
#include "engine/quantity/conversion.hpp"
#include "tests/dough/published_rows.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace loafwright::dough {

namespace {

using Answer = std::function<Band<double>(const PublishedRow&)>;
using Answers = std::map<std::string, Answer>;

Band<double> end_of(const Band<double>& band, const PublishedRow& row) {
    const std::string end = row.word("end");
    return exactly(end == "low" ? band.low : end == "high" ? band.high : band.likely);
}

Band<double> hours(const Band<Minutes>& band) {
    return {band.low.count() / 60.0, band.likely.count() / 60.0, band.high.count() / 60.0};
}

Minutes minutes_of_hours(double hours) {
    return Minutes(60.0 * hours);
}

// Gause's points: series, temperature, hours.
struct Point {
    int series = 0;
    double t = 0.0;
    double hours = 0.0;
};

std::vector<Point> gause_points() {
    std::vector<Point> points;
    for (const PublishedRow& row : published_rows()) {
        if (row.what == "gause_hours") {
            points.push_back({static_cast<int>(row.number("series")), row.number("t"), row.value});
        }
    }
    return points;
}

// Root mean square of the logarithm of time times rate, each series on its own scale.
double gause_error(const std::vector<Point>& points, const CardinalTemperatures& set) {
    double squares = 0.0;
    for (const int series : {1, 2, 3}) {
        std::vector<double> logarithms;
        double sum = 0.0;
        for (const Point& point : points) {
            if (point.series == series) {
                const double rate = relative_rate(set, Celsius(point.t));
                if (rate <= 0.0) {
                    return std::numeric_limits<double>::infinity();
                }
                logarithms.push_back(std::log(point.hours * rate));
                sum += logarithms.back();
            }
        }
        for (const double logarithm : logarithms) {
            squares += std::pow(logarithm - sum / static_cast<double>(logarithms.size()), 2);
        }
    }
    return std::sqrt(squares / static_cast<double>(points.size()));
}

double gause_best_fit() {
    const std::vector<Point> points = gause_points();
    double best = std::numeric_limits<double>::infinity();
    double optimum = 0.0;
    for (double coldest = -3.0; coldest <= 3.0; coldest += 0.25) {
        for (double hottest = 40.0; hottest <= 50.0; hottest += 0.25) {
            for (double middle = 30.0; middle < hottest; middle += 0.25) {
                const double error =
                    gause_error(points, {Celsius(coldest), Celsius(middle), Celsius(hottest)});
                if (error < best) {
                    best = error;
                    optimum = middle;
                }
            }
        }
    }
    return optimum;
}

// Where the gas rate passes nine tenths, below or above the optimum.
double nine_tenths(double outside) {
    double inside = gas_in_dough.best.degrees();
    for (int halving = 0; halving < 60; ++halving) {
        const double middle = (inside + outside) / 2.0;
        (relative_rate(Celsius(middle)) >= 0.9 ? inside : outside) = middle;
    }
    return inside;
}

const LeavenOrganism& organism_of(const PublishedRow& row) {
    return row.word("organism") == "yeast" ? yeast_of_leaven : bacteria_of_leaven;
}

YeastForm form_of(const PublishedRow& row) {
    return row.word("form") == "instant" ? YeastForm::instant : YeastForm::active_dry;
}

double hours_with_dose(const PublishedRow& row) {
    const auto time = rise_with_dose(minutes_of_hours(row.number("stated_hours")),
                                     BakersPercent(row.number("stated")),
                                     BakersPercent(row.number("dose")),
                                     Celsius(27.0));
    return time.value().likely.count() / 60.0;
}

Celsius celsius_of(const PublishedRow& row, double value) {
    return row.word("unit") == "F" ? celsius_from_fahrenheit(value) : Celsius(value);
}

CelsiusDifference difference_of(const PublishedRow& row, double value) {
    return CelsiusDifference(row.word("unit") == "F" ? value / 1.8 : value);
}

double in_unit_of(const PublishedRow& row, Celsius value) {
    return row.word("unit") == "F" ? fahrenheit_from_celsius(value) : value.degrees();
}

std::vector<Celsius> others_of(const PublishedRow& row) {
    std::vector<Celsius> others;
    for (const double value : row.numbers("others")) {
        others.push_back(celsius_of(row, value));
    }
    return others;
}

// A kilogram of flour and its water, all as warm as the room.
DoughMix lean_dough(double hydration_percent, Celsius everything) {
    DoughMix mix;
    mix.parts = {{Grams(1000.0), everything, specific_heat::flour}};
    mix.flour = Grams(1000.0);
    mix.water = {Grams(10.0 * hydration_percent), everything, specific_heat::water};
    mix.room = everything;
    mix.room_share = 0.0;
    return mix;
}

Answers yeast_answers() {
    return {
        {"gas_rate",
         [](const auto& row) { return exactly(relative_rate(Celsius(row.number("t")))); }},
        {"gas_rate_ratio",
         [](const auto& row) {
             return exactly(relative_rate(Celsius(row.number("second"))) /
                            relative_rate(Celsius(row.number("first"))));
         }},
        // Data for the next two, and sure to be among them.
        {"gause_hours",
         [](const auto& row) {
             for (const Point& point : gause_points()) {
                 if (point.t == row.number("t") && point.series == row.number("series")) {
                     return exactly(point.hours);
                 }
             }
             return exactly(0.0);
         }},
        {"gause_rms",
         [](const auto&) { return exactly(gause_error(gause_points(), gas_in_dough)); }},
        {"gause_best_fit", [](const auto&) { return exactly(gause_best_fit()); }},
        {"gas_best", [](const auto&) { return exactly(gas_in_dough.best.degrees()); }},
        {"gas_hottest", [](const auto&) { return exactly(gas_in_dough.hottest.degrees()); }},
        {"gas_nine_tenths",
         [](const auto& row) {
             return exactly(nine_tenths(row.word("end") == "low" ? 0.0 : 48.0));
         }},
        {"growth_best", [](const auto&) { return exactly(yeast_growth.best.degrees()); }},
        {"growth_hottest", [](const auto&) { return exactly(yeast_growth.hottest.degrees()); }},
        {"yeast_dies",
         [](const auto& row) {
             return end_of(
                 {yeast_dies.low.degrees(), yeast_dies.likely.degrees(), yeast_dies.high.degrees()},
                 row);
         }},
        {"dry_for_fresh",
         [](const auto& row) { return end_of(grams_for_one_fresh(form_of(row)), row); }},
        {"hours_with_dose", [](const auto& row) { return exactly(hours_with_dose(row)); }},
        {"dose_exponent",
         [](const auto& row) {
             return exactly(std::log(hours_with_dose(row) / row.number("stated_hours")) /
                            std::log(row.number("stated") / row.number("dose")));
         }},
        {"hours_with_dose_and_gain",
         [](const auto& row) {
             const PerHour gained(row.number("gained"));
             const PercentHours gas = gas_made(BakersPercent(row.number("stated")),
                                               minutes_of_hours(row.number("stated_hours")),
                                               gained);
             return exactly(time_at_27(BakersPercent(row.number("dose")), gas, gained).count() /
                            60.0);
         }},
        {"cells_gained_percent",
         [](const auto& row) {
             const double scale = 100.0 * row.number("hours") / row.number("dose");
             return Band<double>{yeast_gained.low.count() * scale,
                                 yeast_gained.likely.count() * scale,
                                 yeast_gained.high.count() * scale};
         }},
        {"gas_needed",
         [](const auto& row) { return end_of(gas_needed(row.number("pressure_ratio")), row); }},
        {"yeast_cut_percent",
         [](const auto& row) {
             const Band<double> gas = gas_needed(row.number("pressure_ratio"));
             return Band<double>{
                 100.0 * (1.0 - gas.high), 100.0 * (1.0 - gas.likely), 100.0 * (1.0 - gas.low)};
         }},
    };
}

Answers leaven_and_composition_answers() {
    return {
        {"leaven_growth",
         [](const auto& row) {
             return exactly(growth_rate(organism_of(row), Celsius(row.number("t"))).count());
         }},
        {"leaven_relative",
         [](const auto& row) {
             return exactly(rate_of(row.word("organism") == "yeast" ? Curve::leaven_yeast
                                                                    : Curve::leaven_bacteria,
                                    Celsius(row.number("t"))));
         }},
        {"leaven_best",
         [](const auto& row) { return exactly(best_temperature(organism_of(row)).degrees()); }},
        {"growth_hours",
         [](const auto& row) {
             return exactly(growth_time(row.number("inoculum"), PerHour(row.number("mu"))).count() /
                            60.0);
         }},
        {"salt_stops_souring",
         [](const auto&) {
             double salt = 0.0;
             while (salt_on_souring(BakersPercent(salt)).likely > 0.0) {
                 salt += 0.01;
             }
             return exactly(salt);
         }},
        {"sugar_factor",
         [](const auto& row) {
             return end_of(sugar_factor(BakersPercent(row.number("sugar")),
                                        BakersPercent(0.0),
                                        YeastStrain::ordinary),
                           row);
         }},
        {"sugar_without_loss",
         [](const auto&) {
             double sugar = 0.0;
             while (sugar_factor(BakersPercent(sugar), BakersPercent(0.0), YeastStrain::ordinary)
                        .likely >= 1.0) {
                 sugar += 0.01;
             }
             return exactly(sugar);
         }},
        {"salt_loss_percent",
         [](const auto& row) {
             return exactly(100.0 * (1.0 - salt_factor(BakersPercent(row.number("salt"))).likely));
         }},
    };
}

Answers water_answers() {
    return {
        {"water_by_factor",
         [](const auto& row) {
             return exactly(
                 in_unit_of(row,
                            water_by_friction_factor(celsius_of(row, row.number("dough")),
                                                     difference_of(row, row.number("factor")),
                                                     others_of(row))));
         }},
        {"water_by_rise",
         [](const auto& row) {
             return exactly(in_unit_of(row,
                                       water_by_rise_first(celsius_of(row, row.number("dough")),
                                                           difference_of(row, row.number("rise")),
                                                           others_of(row))));
         }},
        {"water_by_base",
         [](const auto& row) {
             return exactly(water_by_base(row.number("base"),
                                          Celsius(row.number("room")),
                                          Celsius(row.number("flour")))
                                .degrees());
         }},
        {"dough_change",
         [](const auto& row) {
             DoughMix mix = lean_dough(row.number("hydration"), Celsius(21.0));
             mix.room_share = usual_room_share.likely;
             const Celsius before = dough_temperature(mix);
             mix.water.temperature =
                 mix.water.temperature + CelsiusDifference(row.number("water_change"));
             return exactly(1.8 * (dough_temperature(mix) - before).count());
         }},
        {"ice_share",
         [](const auto& row) {
             return exactly(ice_replacing(Grams(1.0),
                                          celsius_of(row, row.number("tap")),
                                          celsius_of(row, row.number("wanted")))
                                .value()
                                .count());
         }},
        {"ice_replacing_kg",
         [](const auto& row) {
             return exactly(ice_replacing(Grams(row.number("water")),
                                          Celsius(row.number("tap")),
                                          Celsius(row.number("wanted")))
                                .value()
                                .count());
         }},
        {"ice_on_top_kg",
         [](const auto& row) {
             return exactly(ice_on_top(Grams(row.number("water")),
                                       Celsius(row.number("tap")),
                                       Celsius(row.number("wanted")))
                                .value()
                                .count());
         }},
        {"specific_heat",
         [](const auto& row) {
             const std::map<std::string, KilojoulesPerKilogramKelvin> heats{
                 {"flour", specific_heat::flour},
                 {"water", specific_heat::water},
                 {"ice", specific_heat::ice},
                 {"milk", specific_heat::milk},
                 {"butter", specific_heat::butter},
                 {"oil", specific_heat::oil},
                 {"egg", specific_heat::egg}};
             return exactly(heats.at(row.word("of")).count());
         }},
        // The heat that warms a dough by a degree, found from what a warmer part does to it.
        {"dough_heat",
         [](const auto& row) {
             DoughMix mix = lean_dough(row.number("hydration"), Celsius(20.0));
             mix.flour = Grams(0.0);
             mix.parts.push_back({Grams(1000.0), Celsius(30.0), specific_heat::water});
             const double rise = (dough_temperature(mix) - Celsius(20.0)).count();
             const double capacity = specific_heat::water.count() * (10.0 - rise) / rise;
             return exactly(capacity / (1.0 + row.number("hydration") / 100.0));
         }},
        {"hydration_heat", [](const auto&) { return exactly(hydration_kj_kg); }},
        {"hydration_rise",
         [](const auto& row) {
             const DoughMix mix = lean_dough(row.number("hydration"), Celsius(20.0));
             return exactly((dough_temperature(mix) - Celsius(20.0)).count());
         }},
        // The water alone takes up the heat; flour that gives another heat stands for more or less.
        {"water_against_hydration",
         [](const auto& row) {
             DoughMix mix;
             mix.flour = Grams(1000.0 * row.number("flour") * row.number("heat") / hydration_kj_kg);
             mix.water.mass = Grams(1000.0 * row.number("water"));
             mix.room_share = 0.0;
             return exactly(water_temperature(mix, Celsius(row.number("dough"))).value().degrees());
         }},
        {"mixer_rise",
         [](const auto& row) {
             DoughMix mix = lean_dough(row.number("hydration"), Celsius(21.0));
             mix.room_share = usual_room_share.likely;
             mix.offset = mixing_offset(MixingMethod::stand_mixer).likely;
             return exactly((dough_temperature(mix) - Celsius(21.0)).count());
         }},
    };
}

Answers fridge_answers() {
    return {
        {"unmeasured_fridge",
         [](const auto&) {
             return Band<double>{unmeasured_fridge.low.degrees(),
                                 unmeasured_fridge.likely.degrees(),
                                 unmeasured_fridge.high.degrees()};
         }},
        {"ball_hours",
         [](const auto& row) {
             return exactly(ball_time_constant(Grams(1000.0 * row.number("mass")),
                                               row.number("density"),
                                               row.number("conductivity"),
                                               KilojoulesPerKilogramKelvin(row.number("heat")),
                                               WattsPerSquareMetreKelvin(row.number("surface")))
                                .count() /
                            60.0);
         }},
        {"worth_hours",
         [](const auto& row) {
             const Chilling chilling{Celsius(row.number("dough")),
                                     exactly(Celsius(row.number("fridge"))),
                                     exactly(minutes_of_hours(row.number("tau")))};
             const auto worth = worth_of_chilling(chilling,
                                                  minutes_of_hours(row.number("hours")),
                                                  Celsius(row.number("warm")),
                                                  Curve::gas);
             return exactly(hours(worth.value()).likely);
         }},
        {"cooling_hours",
         [](const auto& row) {
             const Lump lump{Grams(1000.0 * row.number("mass")), row.number("risen"), still_air};
             const auto time = time_to_reach(Celsius(row.number("wanted")),
                                             Celsius(row.number("dough")),
                                             Celsius(row.number("fridge")),
                                             time_constant(lump));
             return exactly(hours(time.value()).likely);
         }},
        {"surface_stretch",
         [](const auto& row) {
             const Grams mass(1000.0 * row.number("mass"));
             const Lump lump{mass, 0.0, WattsPerSquareMetreKelvin(row.number("surface"))};
             return exactly(time_constant(lump).likely /
                            time_constant({mass, 0.0, still_air}).likely);
         }},
        {"longest_retarding_hours",
         [](const auto&) { return exactly(longest_retarding.count() / 60.0); }},
        {"warm_enough", [](const auto&) { return exactly(warm_enough_to_bake.degrees()); }},
    };
}

Answers all_answers() {
    Answers answers = yeast_answers();
    answers.merge(leaven_and_composition_answers());
    answers.merge(water_answers());
    answers.merge(fridge_answers());
    return answers;
}

class Published : public testing::TestWithParam<PublishedRow> {};

TEST_P(Published, is_met_within_its_tolerance) {
    const PublishedRow& row = GetParam();
    const Answers answers = all_answers();
    const auto answer = answers.find(row.what);
    ASSERT_NE(answer, answers.end()) << "nothing answers '" << row.what << "'";
    const Band<double> ours = answer->second(row);
    const double slack = row.tolerance + 1e-12;
    EXPECT_LE(ours.low - slack, row.value) << row.name << ": " << row.source;
    EXPECT_GE(ours.high + slack, row.value) << row.name << ": " << row.source;
}

INSTANTIATE_TEST_SUITE_P(rows, Published, testing::ValuesIn(published_rows()), [](const auto& of) {
    return of.param.name;
});

TEST(Published, the_table_is_whole_and_every_row_says_where_it_comes_from) {
    const std::vector<PublishedRow> rows = published_rows();
    EXPECT_GE(rows.size(), 150U);
    std::set<std::string> names;
    for (const PublishedRow& row : rows) {
        EXPECT_TRUE(names.insert(row.name).second) << row.name << " stands twice";
        EXPECT_TRUE(row.trust == "read" || row.trust == "computed" || row.trust == "memory")
            << row.name;
        EXPECT_GE(row.source.size(), 5U) << row.name;
    }
}

} // namespace
} // namespace loafwright::dough
