// SPDX-License-Identifier: Apache-2.0
//
// The question for the water, filled in from the kitchen and handed to the heat balance of mixing.
// Nothing is worked out here but what lies between the two: whole grams, what one degree of dough
// costs in water, and how warm the flour would have to be where water alone will not do.
#include "engine/asking/water.hpp"

#include "engine/dough/altitude.hpp"
#include "engine/dough/factor_rule.hpp"
#include "engine/fitting/room.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

namespace loafwright::asking {

namespace {

using dough::DoughMix;
using dough::WaterAdvice;
using dough::YeastMeetsWater;

// Common practice: a loaf for one tin, and a dough that is neither stiff nor slack.
constexpr Grams usual_flour{500.0};
constexpr double usual_hydration = 0.65;
constexpr Celsius unsaid_room{20.0};
// A freezer, and flour from a barely warm oven. Common practice.
constexpr Celsius coldest_flour{-18.0};
constexpr Celsius warmest_flour{40.0};
constexpr double fahrenheit_a_degree = 1.8;

dough::MixingMethod mixing_in(const Kitchen& kitchen) {
    return kitchen.mixing == MixingMethod::mixer ? dough::MixingMethod::stand_mixer
                                                 : dough::MixingMethod::by_hand;
}

// Names as kitchen files have them; yeast that is unknown is taken for the tenderest.
YeastMeetsWater yeast_in(const Kitchen& kitchen) {
    const std::string_view yeast = kitchen.yeast ? std::string_view(*kitchen.yeast) : "";
    if (yeast == "instant yeast") {
        return YeastMeetsWater::dry_in_flour;
    }
    return yeast == "active dry yeast" ? YeastMeetsWater::dry_in_water
                                       : YeastMeetsWater::fresh_in_water;
}

WaterGrounds grounds_of(const WaterQuestion& question, const Kitchen& kitchen) {
    WaterGrounds grounds;
    grounds.flour = question.flour.value_or(usual_flour);
    grounds.water = question.water.value_or(grounds.flour * usual_hydration);
    const auto room = fitting::room_here(kitchen);
    grounds.room = question.room.value_or(room ? room->likely : unsaid_room);
    if (!question.room && kitchen.room.size() > 1) {
        grounds.room_through_the_day = room;
    }
    grounds.flour_temperature =
        question.flour_temperature.value_or(kitchen.flour.value_or(grounds.room));
    grounds.tap = question.tap.value_or(kitchen.tap);
    grounds.altitude = question.altitude.value_or(kitchen.altitude);
    grounds.boiling = dough::boiling_point_at(grounds.altitude);
    grounds.mixing = question.mixing.value_or(mixing_in(kitchen));
    grounds.yeast = question.yeast.value_or(yeast_in(kitchen));
    return grounds;
}

DoughMix mix_of(const WaterGrounds& grounds) {
    DoughMix mix;
    mix.parts = {{grounds.flour, grounds.flour_temperature, dough::specific_heat::flour}};
    mix.flour = grounds.flour;
    mix.water.mass = grounds.water;
    mix.room = grounds.room;
    mix.offset = dough::mixing_offset(grounds.mixing).likely;
    return mix;
}

TradeRule rule_of(const WaterGrounds& grounds, Celsius wanted) {
    double fahrenheit = 0.0;
    switch (grounds.mixing) {
    case dough::MixingMethod::stirred:
        break;
    case dough::MixingMethod::by_hand:
        fahrenheit = 8.0;
        break;
    case dough::MixingMethod::stand_mixer:
        fahrenheit = 22.0;
        break;
    case dough::MixingMethod::food_processor:
        fahrenheit = 25.0;
        break;
    }
    const CelsiusDifference factor(fahrenheit / fahrenheit_a_degree);
    return {
        dough::water_by_friction_factor(wanted, factor, {grounds.room, grounds.flour_temperature}),
        factor};
}

// The dough is as linear in the flour's temperature as in the water's.
std::optional<Celsius> flour_for(DoughMix mix, const WaterAnswer& answer) {
    mix.water = {answer.plan.tap + answer.plan.boiled,
                 answer.plan.ice > Grams(0.0) ? answer.grounds.tap : answer.plan.water,
                 dough::specific_heat::water};
    mix.ice = answer.plan.ice;
    const Celsius now = dough::dough_temperature(mix);
    mix.parts.front().temperature = answer.grounds.flour_temperature + CelsiusDifference(1.0);
    const CelsiusDifference by_one = dough::dough_temperature(mix) - now;
    const Celsius needed =
        answer.grounds.flour_temperature + CelsiusDifference((answer.wanted - now) / by_one);
    const bool can_be_had = needed >= coldest_flour && needed <= warmest_flour;
    return can_be_had ? std::optional(needed) : std::nullopt;
}

// Scales show grams; the tap makes up the weight.
void in_whole_grams(dough::WaterPlan& plan, Grams water) {
    plan.boiled = Grams(std::floor(plan.boiled.count() + 0.5));
    plan.ice = Grams(std::floor(plan.ice.count() + 0.5));
    plan.tap = std::max(Grams(0.0), water - plan.boiled - plan.ice);
}

} // namespace

WaterAnswer water_for(const WaterQuestion& question, const Kitchen& kitchen) {
    WaterAnswer answer;
    answer.wanted = question.dough;
    answer.grounds = grounds_of(question, kitchen);
    const WaterGrounds& grounds = answer.grounds;
    const DoughMix mix = mix_of(grounds);
    answer.plan =
        dough::plan_water(mix, question.dough, grounds.tap, grounds.boiling, grounds.yeast);
    answer.rule = rule_of(grounds, question.dough);
    const auto temperature = dough::water_temperature(
        mix, question.dough, dough::usual_room_share, dough::mixing_offset(grounds.mixing));
    const auto warmer = dough::water_temperature(mix, question.dough + CelsiusDifference(1.0));
    if (!temperature || !warmer) {
        return answer;
    }
    answer.temperature = *temperature;
    answer.for_one_degree = *warmer - temperature->likely;
    if (!can_be(answer)) {
        answer.flour_needed = flour_for(mix, answer);
    }
    in_whole_grams(answer.plan, grounds.water);
    return answer;
}

bool can_be(const WaterAnswer& answer) {
    switch (answer.plan.advice) {
    case WaterAdvice::tap_as_it_is:
    case WaterAdvice::tap_and_boiled:
    case WaterAdvice::tap_and_ice:
        return true;
    case WaterAdvice::would_harm:
    case WaterAdvice::beyond_ice:
    case WaterAdvice::beyond_boiling:
    case WaterAdvice::no_water_to_set:
        return false;
    }
    return false;
}

} // namespace loafwright::asking
