// SPDX-License-Identifier: Apache-2.0
//
// Cooling runs on from the end of the bake on the same cells, with the stand-in that fits the
// weaker surroundings of a room. Vapour leaves through the crust from the outermost cell that is
// still wet and takes its heat along; the crust's permeance, 2.5e-9 kg/(m2 s Pa) with a range
// of 1.5 to 6, was set so that a loaf loses 2 to 4 % of its dough while it cools (trade figure 1.5
// to 3 %, from memory).
#include "engine/dough/cool.hpp"

#include "engine/dough/bread_heat.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::dough {

namespace {

using Rates = CoolingRates<production_cells>;
using Steps = StabilisedSteps<11>;
using State = Rates::State;

constexpr double likely_crust_kg_m2spa = 2.5e-9;
constexpr double open_crust_kg_m2spa = 6.0e-9;
constexpr double dense_crust_kg_m2spa = 1.5e-9;
constexpr double tin_uncertainty = 0.15;
constexpr double share_left_when_cool = 0.2;
constexpr double usual_transfer_w_m2k = 8.0;
constexpr double usual_crumb_w_mk = 0.35;
constexpr double longest_cooling_step_s = 300.0; // between two readings of the core
constexpr Minutes a_day{24.0 * 60.0};
constexpr Celsius cool_core{35.0};

BreadBody body_of(const BakedLoaf& baked) {
    BreadBody body;
    body.half_m = smallest_half(baked.loaf.baked).count();
    const double biot = usual_transfer_w_m2k * body.half_m / usual_crumb_w_mk;
    body.exponent = stand_in(baked.loaf.baked, biot, share_left_when_cool).exponent;
    body.density_kg_m3 = risen_density(baked.loaf).count();
    body.water = baked.water;
    body.boiling_c = baked.boiling.degrees();
    body.vapour_factor = baked.vapour_factor;
    return body;
}

CoolingPlace place_of(Celsius room, Standing standing, double crust_kg_m2spa) {
    CoolingPlace place;
    place.room_c = room.degrees();
    place.air_factor = standing == Standing::rack ? 1.0 : 0.5;
    place.crust_kg_m2spa = standing == Standing::rack ? crust_kg_m2spa : 0.0;
    return place;
}

// Heat spreads the faster the warmer a cell is, so steps grow as the loaf cools; one step later the
// warmest cell is no warmer.
double longest_step_s(const Rates& rates, const State& state, double density_kg_m3) {
    const double warmest_c = *std::max_element(state.begin(), state.begin() + production_cells);
    const double fastest =
        rates.mesh().fastest_rate(rates.properties().diffusivity_m2_s(warmest_c, density_kg_m3));
    return std::min(longest_cooling_step_s, Steps::reach * 2.0 / fastest);
}

// Until `lasts` is over, or the core is at `target` where one is given.
CoolingCourse run(const BakedLoaf& baked,
                  const BreadBody& body,
                  const CoolingPlace& place,
                  Minutes lasts,
                  std::optional<Celsius> target) {
    Rates rates(body, place, baked.dried, baked.surface.degrees());
    State state{};
    std::copy(baked.temperature_c.begin(), baked.temperature_c.end(), state.begin());
    const double end_s = 60.0 * lasts.count();
    CoolingCourse made;
    State first{};
    for (double at_s = 0.0;;) {
        rates(state, first);
        made.core.push_back({Minutes(at_s / 60.0),
                             Celsius(at_centre(state[0], state[1])),
                             60.0 * at_centre(first[0], first[1]),
                             Celsius(rates.surface_c())});
        if (at_s >= end_s || (target && made.core.back().core <= *target)) {
            break;
        }
        const double step_s =
            std::min(longest_step_s(rates, state, body.density_kg_m3), end_s - at_s);
        Steps::advance(state, first, step_s, rates);
        at_s = end_s - at_s - step_s < 1e-6 * step_s ? end_s : at_s + step_s;
    }
    const double dough_kg_m2 = body.density_kg_m3 * body.half_m / (body.exponent + 1.0);
    const double true_surface =
        surface_per_volume_per_m(baked.loaf.baked) * body.half_m / (body.exponent + 1.0);
    made.loss = true_surface * state[production_cells + 1] / dough_kg_m2;
    return made;
}

Minutes cut_after(Form form) {
    switch (form) {
    case Form::flatbread:
        return Minutes(0.0);
    case Form::roll:
    case Form::baguette:
        return Minutes(20.0);
    case Form::tin_loaf:
    case Form::round_loaf:
    case Form::long_loaf:
        break;
    }
    return Minutes(60.0);
}

} // namespace

BakedLoaf plainly_baked(const Loaf& loaf, Celsius boiling) {
    BakedLoaf baked;
    baked.loaf = loaf;
    baked.boiling = boiling;
    baked.surface = Celsius(190.0);
    baked.temperature_c.fill(boiling.degrees() - 2.0);
    // A crust of 4 mm, as the simulated loaves have.
    const double half_mm = 1000.0 * smallest_half(loaf.baked).count();
    for (std::size_t i = 0; i < production_cells; ++i) {
        const double depth_mm = half_mm * (1.0 - (static_cast<double>(i) + 0.5) / production_cells);
        if (depth_mm < 4.0) {
            baked.dried[i] = 1.0;
            baked.temperature_c[i] = boiling.degrees() + 90.0 * (1.0 - depth_mm / 4.0);
        }
    }
    return baked;
}

CoolingCourse
simulate_cooling(const BakedLoaf& baked, Celsius room, Standing standing, Minutes lasts) {
    return run(baked,
               body_of(baked),
               place_of(room, standing, likely_crust_kg_m2spa),
               lasts,
               std::nullopt);
}

Cooling cooling(const BakedLoaf& baked, Celsius room, Standing standing) {
    const BreadBody body = body_of(baked);
    const auto course = [&](double crust_kg_m2spa, Minutes lasts, std::optional<Celsius> target) {
        return run(baked, body, place_of(room, standing, crust_kg_m2spa), lasts, target).core;
    };
    const auto to_35 = [&](double crust_kg_m2spa) {
        return room < cool_core
                   ? first_at_or_below(course(crust_kg_m2spa, a_day, cool_core), cool_core)
                   : std::nullopt;
    };
    Cooling made;
    made.can_be_cut = cut_after(baked.loaf.form);
    const CoreCourse cooled = course(likely_crust_kg_m2spa, a_day, cool_core);
    made.core_when_cut =
        made.can_be_cut <= cooled.back().at
            ? core_at(cooled, made.can_be_cut)
            : course(likely_crust_kg_m2spa, made.can_be_cut, std::nullopt).back().core;
    const auto likely =
        room < cool_core ? first_at_or_below(cooled, cool_core) : std::optional<Minutes>{};
    if (!likely) {
        return made;
    }
    if (standing == Standing::in_its_tin) {
        made.to_35 = Band<Minutes>{
            *likely * (1.0 - tin_uncertainty), *likely, *likely * (1.0 + tin_uncertainty)};
        return made;
    }
    const auto low = to_35(open_crust_kg_m2spa);
    const auto high = to_35(dense_crust_kg_m2spa);
    made.to_35 = Band<Minutes>{low.value_or(*likely), *likely, high.value_or(a_day)};
    return made;
}

} // namespace loafwright::dough
