// SPDX-License-Identifier: Apache-2.0
//
// Draws the heat models beside the figures they are held against: plot_heat FOLDER writes
// bake.svg, transfer.svg, cool.svg, oven.svg and altitude.svg there. What the points are and where
// they come from stands in docs/models/heat.md.
#include "bench/plot.hpp"
#include "engine/dough/altitude.hpp"
#include "engine/dough/bake.hpp"
#include "engine/dough/bake_transfer.hpp"
#include "engine/dough/cool.hpp"
#include "engine/dough/oven.hpp"

#include <fstream>
#include <iostream>
#include <string>
#include <tuple>
#include <utility>

namespace loafwright::bench {
namespace {

using namespace loafwright::dough;

Bake bake_of(const Loaf& loaf, double oven_c, double minutes) {
    Bake bake;
    bake.loaf = loaf;
    bake.settings = {{Celsius(oven_c), Minutes(minutes)}};
    return bake;
}

Trace core_of(std::string name, const CoreCourse& course) {
    Trace trace{std::move(name), {}, false, false};
    for (double minute = 0.0; minute <= course.back().at.count(); minute += 1.0) {
        trace.points.emplace_back(minute, core_at(course, Minutes(minute)).degrees());
    }
    return trace;
}

Plot bake_plot() {
    Plot plot{"Core while baking; circles: a published hearth loaf",
              "minutes in the oven",
              "core, °C",
              0,
              60,
              10,
              20,
              100,
              10,
              {}};
    for (const auto& [grams, wide, high] :
         {std::tuple{1000.0, 220.0, 100.0}, std::tuple{1250.0, 240.0, 105.0}}) {
        Bake bake = bake_of(
            {Form::round_loaf, Grams(grams), cylinder(Millimetres(wide), Millimetres(high))},
            230.0,
            15.0);
        bake.settings.push_back({Celsius(205.0), Minutes(45.0)});
        plot.traces.push_back(core_of("hearth " + std::to_string(static_cast<int>(grams)) + " g",
                                      simulate_bake(bake).core));
    }
    plot.traces.push_back(core_of(
        "tin 900 g, 220 °C",
        simulate_bake(bake_of(usual_loaf(Form::tin_loaf, Grams(900.0)), 220.0, 60.0)).core));
    plot.traces.push_back(
        core_of("roll 70 g, 220 °C",
                simulate_bake(bake_of(usual_loaf(Form::roll, Grams(70.0)), 220.0, 20.0)).core));
    plot.traces.push_back({"93.3 by 30, 98.9 at 45", {{30.0, 93.3}, {45.0, 98.9}}, true, false});
    return plot;
}

Plot transfer_plot() {
    Plot plot{"A tin loaf of 900 g, 35 minutes, in other sizes",
              "dough, g",
              "minutes",
              300,
              1800,
              300,
              10,
              70,
              10,
              {}};
    const Bake stated = bake_of(usual_loaf(Form::tin_loaf, Grams(900.0)), 220.0, 35.0);
    Trace likely{"likely", {}, false, false};
    Trace low{"low", {}, false, true};
    Trace high{"high", {}, false, true};
    for (double grams = 300.0; grams <= 1800.0; grams += 50.0) {
        const auto made = transferred_bake(
            stated, bake_of(usual_loaf(Form::tin_loaf, Grams(grams)), 220.0, 35.0));
        if (made) {
            likely.points.emplace_back(grams, made->time.likely.count());
            low.points.emplace_back(grams, made->time.low.count());
            high.points.emplace_back(grams, made->time.high.count());
        }
    }
    plot.traces = {likely,
                   low,
                   high,
                   {"by hand", {{450.0, 25.0}, {900.0, 35.0}, {1800.0, 51.0}}, true, false}};
    return plot;
}

Plot cool_plot() {
    Plot plot{"Core while cooling on a rack in a room of 20 °C",
              "minutes out of the oven",
              "core, °C",
              0,
              240,
              30,
              20,
              100,
              10,
              {}};
    for (const auto& [name, form, grams, oven_c, minutes] :
         {std::tuple{"tin 900 g", Form::tin_loaf, 900.0, 220.0, 35.0},
          std::tuple{"round 1000 g", Form::round_loaf, 1000.0, 230.0, 40.0},
          std::tuple{"baguette 330 g", Form::baguette, 330.0, 240.0, 22.0}}) {
        const BakedLoaf baked =
            simulate_bake(bake_of(usual_loaf(form, Grams(grams)), oven_c, minutes)).end;
        plot.traces.push_back(core_of(
            name, simulate_cooling(baked, Celsius(20.0), Standing::rack, Minutes(240.0)).core));
        if (form == Form::tin_loaf) {
            plot.traces.push_back(core_of(
                "the same in its tin",
                simulate_cooling(baked, Celsius(20.0), Standing::in_its_tin, Minutes(240.0)).core));
            plot.traces.back().dashed = true;
        }
    }
    plot.traces.push_back({"35 °C in up to 2 h", {{120.0, 35.0}}, true, false});
    return plot;
}

Plot oven_plot() {
    Plot plot{"An oven of 2.5 kW heats up; circles: household reports",
              "minutes",
              "°C",
              0,
              50,
              10,
              0,
              250,
              50,
              {}};
    Trace air{"oven", {}, false, false};
    Trace stone{"stone of 15 mm", {}, false, true};
    for (double c = 20.0; c <= 230.0; c += 5.0) {
        air.points.emplace_back(
            heating_up(OvenModel{}, Celsius(20.0), Celsius(c)).value_or(Minutes(0.0)).count(), c);
    }
    air.points.emplace_back(50.0, 230.0);
    const Minutes climb(air.points[air.points.size() - 2].first);
    for (double share = 0.75; share < 0.99; share += 0.01) {
        stone.points.emplace_back(
            hot_through(climb, usual_lag(Heavy::stone, OvenAir::still), share).count(),
            20.0 + 210.0 * share);
    }
    plot.traces = {air,
                   stone,
                   {"10-15 to 175, 15-20 to 230",
                    {{10.0, 175.0}, {15.0, 175.0}, {15.0, 230.0}, {20.0, 230.0}},
                    true,
                    false}};
    return plot;
}

Plot altitude_plot() {
    Plot plot{"Boiling point by height; circles: published table, rounded",
              "metres above the sea",
              "°C",
              0,
              4000,
              500,
              86,
              101,
              1,
              {}};
    Trace line{"model", {}, false, false};
    for (double height = 0.0; height <= 4000.0; height += 50.0) {
        line.points.emplace_back(height, boiling_point_at(Metres(height)).degrees());
    }
    plot.traces = {line,
                   {"NOAA / NASA",
                    {{305.0, 99.0}, {610.0, 98.0}, {1524.0, 95.0}, {2438.0, 91.9}, {3048.0, 89.8}},
                    true,
                    false}};
    return plot;
}

} // namespace
} // namespace loafwright::bench

int main(int count, char** arguments) {
    using namespace loafwright::bench;
    if (count != 2) {
        std::cerr << "usage: plot_heat FOLDER\n";
        return 2;
    }
    const std::string folder = arguments[1];
    for (const auto& [name, plot] : {std::pair{"bake", bake_plot()},
                                     std::pair{"transfer", transfer_plot()},
                                     std::pair{"cool", cool_plot()},
                                     std::pair{"oven", oven_plot()},
                                     std::pair{"altitude", altitude_plot()}}) {
        std::ofstream file(folder + '/' + name + ".svg");
        file << svg(plot);
        if (!file) {
            std::cerr << "cannot write " << folder << '/' << name << ".svg\n";
            return 1;
        }
    }
    return 0;
}
