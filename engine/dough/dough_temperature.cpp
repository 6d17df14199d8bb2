// SPDX-License-Identifier: Apache-2.0
//
// Heat balance of mixing, at constant specific heats: what warms gives up what cools takes, the
// heat of wetting flour and the work of mixing on top, and then the room has its share. Water holds
// about six tenths of the heat of a dough, flour the rest. Salt, yeast and the melting of fat are
// left out: together a few tenths of a degree for lean doughs, more for cold butter.
#include "engine/dough/dough_temperature.hpp"

#include "engine/dough/bands.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::dough {

namespace {

constexpr double half_a_degree = 0.5;

struct Sums {
    double capacity = 0.0; // kJ/K
    double heat = 0.0;     // kJ above 0 °C
};

Sums of_parts(const DoughMix& mix) {
    Sums sums;
    for (const DoughPart& part : mix.parts) {
        const double capacity = part.mass.count() / 1000.0 * part.heat.count();
        sums.capacity += capacity;
        sums.heat += capacity * part.temperature.degrees();
    }
    return sums;
}

double capacity_of_water(const DoughMix& mix) {
    return mix.water.mass.count() / 1000.0 * mix.water.heat.count();
}

Celsius towards(Celsius from, Celsius to, double share) {
    return from + (to - from) * share;
}

/// Ice at `temperature` for part of the water.
double ice_share(Celsius tap, Celsius wanted, Celsius temperature) {
    const double water = specific_heat::water.count();
    return water * (tap - wanted).count() /
           (melting_kj_kg - specific_heat::ice.count() * temperature.degrees() +
            water * tap.degrees());
}

} // namespace

Band<CelsiusDifference> mixing_offset(MixingMethod method) {
    const auto band = [](double low, double likely, double high) {
        return Band<CelsiusDifference>{
            CelsiusDifference(low), CelsiusDifference(likely), CelsiusDifference(high)};
    };
    switch (method) {
    case MixingMethod::stirred:
        return band(-2.0, -0.5, 1.0);
    case MixingMethod::by_hand:
        return band(-3.0, -1.6, 0.0);
    case MixingMethod::stand_mixer:
        return band(2.0, 3.1, 4.2);
    case MixingMethod::food_processor:
        return band(2.5, 4.0, 5.5);
    }
    return band(0.0, 0.0, 0.0);
}

Celsius dough_temperature(const DoughMix& mix) {
    Sums sums = of_parts(mix);
    const double water = capacity_of_water(mix);
    sums.capacity += water;
    sums.heat += water * mix.water.temperature.degrees();
    const double ice = mix.ice.count() / 1000.0;
    sums.heat -= ice * (melting_kj_kg - specific_heat::ice.count() * mix.ice_temperature.degrees());
    sums.capacity += ice * specific_heat::water.count();
    sums.heat += mix.flour.count() / 1000.0 * hydration_kj_kg;
    const Celsius inner = Celsius(sums.heat / sums.capacity) + mix.offset;
    return towards(inner, mix.room, mix.room_share);
}

std::optional<Celsius> water_temperature(const DoughMix& mix, Celsius wanted) {
    const double water = capacity_of_water(mix);
    if (!(water > 0.0) || !(mix.room_share < 1.0)) {
        return std::nullopt;
    }
    const Celsius inner = mix.room + (wanted - mix.room) / (1.0 - mix.room_share);
    const Sums parts = of_parts(mix);
    const double hydration = mix.flour.count() / 1000.0 * hydration_kj_kg;
    return Celsius(
        ((inner - mix.offset).degrees() * (parts.capacity + water) - hydration - parts.heat) /
        water);
}

std::optional<Band<Celsius>> water_temperature(const DoughMix& mix,
                                               Celsius wanted,
                                               const Band<double>& room_share,
                                               const Band<CelsiusDifference>& offset) {
    const auto with = [&](double share, CelsiusDifference by_mixing) {
        DoughMix other = mix;
        other.room_share = share;
        other.offset = by_mixing;
        return water_temperature(other, wanted);
    };
    const auto likely = with(room_share.likely, offset.likely);
    if (!likely) {
        return std::nullopt;
    }
    const auto spread = [&](const std::optional<Celsius>& one, const std::optional<Celsius>& two) {
        const double a = one ? (*one - *likely).count() : 0.0;
        const double b = two ? (*two - *likely).count() : 0.0;
        return Band<double>{std::min({a, b, 0.0}), 0.0, std::max({a, b, 0.0})};
    };
    const Band<double> around =
        sum_of({spread(with(room_share.low, offset.likely), with(room_share.high, offset.likely)),
                spread(with(room_share.likely, offset.low), with(room_share.likely, offset.high))});
    return Band<Celsius>{*likely + CelsiusDifference(std::min(0.0, around.low)),
                         *likely,
                         *likely + CelsiusDifference(std::max(0.0, around.high))};
}

std::optional<Grams> ice_replacing(Grams water, Celsius tap, Celsius wanted) {
    const double share = ice_share(tap, wanted, Celsius(0.0));
    return share <= 1.0 ? std::optional(water * std::max(0.0, share)) : std::nullopt;
}

std::optional<Grams> ice_on_top(Grams water, Celsius tap, Celsius wanted) {
    if (wanted <= Celsius(0.0)) {
        return std::nullopt;
    }
    const double c = specific_heat::water.count();
    return water *
           std::max(0.0, c * (tap - wanted).count() / (melting_kj_kg + c * wanted.degrees()));
}

std::optional<BoiledAndTap>
boiled_and_tap(Grams water, Celsius wanted, Celsius tap, Celsius boiling_point) {
    if (wanted > boiling_point) {
        return std::nullopt;
    }
    const Grams boiled = water * std::max(0.0, (wanted - tap) / (boiling_point - tap));
    return BoiledAndTap{boiled, water - boiled};
}

Celsius hottest_water(YeastMeetsWater meeting) {
    switch (meeting) {
    case YeastMeetsWater::fresh_in_water:
        return Celsius(35.0);
    case YeastMeetsWater::dry_in_water:
        return Celsius(46.0);
    case YeastMeetsWater::dry_in_flour:
        return Celsius(54.0);
    case YeastMeetsWater::none:
        return Celsius(100.0);
    }
    return Celsius(100.0);
}

WaterPlan plan_water(const DoughMix& mix,
                     Celsius wanted,
                     Celsius tap,
                     Celsius boiling_point,
                     YeastMeetsWater meeting) {
    WaterPlan plan;
    plan.limit = std::min(hottest_water(meeting), boiling_point);
    DoughMix made = mix;
    made.ice = Grams(0.0);
    const auto asked = water_temperature(made, wanted);
    if (!asked) {
        made.water.mass = Grams(0.0);
        plan.dough = dough_temperature(made);
        return plan;
    }
    plan.wanted_water = *asked;
    plan.water = *asked;
    plan.tap = mix.water.mass;
    if (*asked > plan.limit) {
        plan.advice =
            plan.limit == boiling_point ? WaterAdvice::beyond_boiling : WaterAdvice::would_harm;
        plan.water = plan.limit;
    } else if (std::abs((*asked - tap).count()) <= half_a_degree) {
        plan.advice = WaterAdvice::tap_as_it_is;
        plan.water = tap;
    } else if (*asked > tap) {
        plan.advice = WaterAdvice::tap_and_boiled;
    } else {
        const double share = ice_share(tap, *asked, mix.ice_temperature);
        plan.advice = share <= 1.0 ? WaterAdvice::tap_and_ice : WaterAdvice::beyond_ice;
        plan.ice = mix.water.mass * std::min(1.0, share);
        plan.tap = mix.water.mass - plan.ice;
        made.ice = plan.ice;
        made.water.mass = plan.tap;
        made.water.temperature = tap;
        plan.dough = dough_temperature(made);
        plan.water = water_temperature(mix, plan.dough).value_or(*asked);
        return plan;
    }
    if (const auto poured = boiled_and_tap(mix.water.mass, plan.water, tap, boiling_point);
        poured && plan.advice != WaterAdvice::tap_as_it_is) {
        plan.boiled = poured->boiled;
        plan.tap = poured->tap;
    }
    made.water.temperature = plan.water;
    plan.dough = dough_temperature(made);
    return plan;
}

} // namespace loafwright::dough
