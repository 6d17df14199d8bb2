// SPDX-License-Identifier: Apache-2.0
//
// The answer about the water, said as one baker says it to another: the figure first, then the way
// without a thermometer, then how sure it is and what a miss teaches, and last what it rests on.
#include "engine/asking/water.hpp"
#include "engine/fitting/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

namespace loafwright::asking {

namespace {

using dough::WaterAdvice;
using dough::YeastMeetsWater;
using fitting::degrees_text;

// Whole degrees: no kitchen thermometer and no balance of heat is worth more.
int whole(Celsius temperature) {
    return static_cast<int>(std::floor(temperature.degrees() + 0.5));
}

double tenths(double value) {
    return std::floor(value * 10.0 + 0.5) / 10.0;
}

std::string grams(Grams amount) {
    return fmt::format("{:.0f} g", amount.count());
}

std::string_view mixing_words(dough::MixingMethod method) {
    switch (method) {
    case dough::MixingMethod::stirred:
        return "a dough that is only stirred";
    case dough::MixingMethod::by_hand:
        return "kneading by hand";
    case dough::MixingMethod::stand_mixer:
        return "kneading in a mixer";
    case dough::MixingMethod::food_processor:
        return "mixing in a food processor";
    }
    return "";
}

std::string_view yeast_words(YeastMeetsWater yeast) {
    switch (yeast) {
    case YeastMeetsWater::fresh_in_water:
        return "fresh yeast crumbled into the water";
    case YeastMeetsWater::dry_in_water:
        return "dry yeast woken in the water";
    case YeastMeetsWater::dry_in_flour:
        return "dry yeast mixed into the flour";
    case YeastMeetsWater::none:
        return "no yeast";
    }
    return "";
}

// "98 g just boiled and 227 g from the tap".
std::string poured(const WaterAnswer& answer) {
    return fmt::format(
        "{} just boiled and {} from the tap", grams(answer.plan.boiled), grams(answer.plan.tap));
}

std::string warm_the_flour(const WaterAnswer& answer) {
    return answer.flour_needed
               ? fmt::format("Warm the flour to about {} °C and it will do.",
                             whole(*answer.flour_needed))
               : "Warm the flour and the room as well, or let a cooler dough rise longer.";
}

std::string too_warm(const WaterAnswer& answer) {
    const dough::WaterPlan& plan = answer.plan;
    if (plan.advice == WaterAdvice::beyond_boiling) {
        return fmt::format("A dough of {} cannot be had this way: not even boiling water is warm "
                           "enough.",
                           degrees_text(answer.wanted));
    }
    const bool by_a_hair = whole(plan.wanted_water) == whole(plan.limit);
    return fmt::format("A dough of {} cannot be had by warm water alone: it would take {}, and "
                       "water above {} °C harms {}.",
                       degrees_text(answer.wanted),
                       by_a_hair ? degrees_text(plan.wanted_water)
                                 : fmt::format("{} °C", whole(plan.wanted_water)),
                       whole(plan.limit),
                       yeast_words(answer.grounds.yeast));
}

std::string at_the_limit(const WaterAnswer& answer) {
    const dough::WaterPlan& plan = answer.plan;
    // A hot summer's tap may be as warm as yeast likes, or warmer.
    const std::string water =
        plan.boiled < Grams(1.0)
            ? fmt::format("Take water from the tap, no warmer than {} °C", whole(plan.limit))
            : fmt::format("Stay at {} °C, which is {}, stirred, before the yeast",
                          whole(plan.limit),
                          poured(answer));
    return fmt::format(
        "{}: the dough comes to about {} °C. {}", water, whole(plan.dough), warm_the_flour(answer));
}

std::string too_cold(const WaterAnswer& answer) {
    return fmt::format("A dough of {} cannot be had by cold water: not even ice in place of all {} "
                       "is cold enough, with it the dough comes to about {} °C. {}",
                       degrees_text(answer.wanted),
                       grams(answer.grounds.water),
                       whole(answer.plan.dough),
                       answer.flour_needed
                           ? fmt::format("Cool the flour to about {} °C and it will do.",
                                         whole(*answer.flour_needed))
                           : "Cool the flour and work in a cooler room.");
}

bool is_below_ice(const WaterAnswer& answer) {
    return answer.plan.advice == WaterAdvice::tap_and_ice &&
           answer.plan.wanted_water < Celsius(0.0);
}

std::string without_thermometer(const WaterAnswer& answer) {
    const dough::WaterPlan& plan = answer.plan;
    if (is_below_ice(answer)) {
        return fmt::format("{} of crushed ice and {} from the tap; what has not melted goes into "
                           "the dough with the water.",
                           grams(plan.ice),
                           grams(plan.tap));
    }
    if (plan.boiled >= Grams(1.0)) {
        return fmt::format("Without a thermometer: {}, stirred, before the yeast.", poured(answer));
    }
    if (plan.ice >= Grams(1.0)) {
        return fmt::format("Without a thermometer: {} of ice and {} from the tap, stirred until "
                           "the ice has melted, before the yeast.",
                           grams(plan.ice),
                           grams(plan.tap));
    }
    return "So little water may come from the tap as it is.";
}

std::vector<std::string> what_to_do(const WaterAnswer& answer) {
    const std::string dough = fmt::format("For a dough of {}", degrees_text(answer.wanted));
    const dough::WaterPlan& plan = answer.plan;
    const int water = whole(plan.wanted_water);
    switch (plan.advice) {
    case WaterAdvice::tap_as_it_is:
        return {fmt::format(
            "{}: water from the tap as it is, at {}.", dough, degrees_text(answer.grounds.tap))};
    case WaterAdvice::tap_and_boiled:
    case WaterAdvice::tap_and_ice:
        return {is_below_ice(answer)
                    ? fmt::format("{}: colder than water can be, so part of it is ice.", dough)
                    : fmt::format("{}: water at {} °C.", dough, water),
                without_thermometer(answer)};
    case WaterAdvice::would_harm:
    case WaterAdvice::beyond_boiling: {
        std::vector<std::string> say{too_warm(answer), at_the_limit(answer)};
        const Celsius most = dough::hottest_water(YeastMeetsWater::dry_in_flour);
        if (plan.limit < most && plan.wanted_water <= most) {
            say.push_back(fmt::format("Or take {}, which stands water up to {} °C.",
                                      yeast_words(YeastMeetsWater::dry_in_flour),
                                      whole(most)));
        }
        return say;
    }
    case WaterAdvice::beyond_ice:
        return {too_cold(answer)};
    case WaterAdvice::no_water_to_set:
        return {"There is no water in this dough to warm or cool."};
    }
    return {};
}

// How sure the figure is, and what the first dough teaches about the second.
std::string how_sure(const WaterAnswer& answer) {
    if (is_below_ice(answer)) {
        const auto ice = [&answer](Celsius water) {
            return dough::ice_replacing(answer.grounds.water, answer.grounds.tap, water)
                .value_or(answer.grounds.water);
        };
        const Celsius likely = answer.temperature.likely;
        return fmt::format("Kitchens differ: in most the right amount of ice lies between {} and "
                           "{}. Measure the dough once it is mixed; for each degree that it is too "
                           "warm take {} more next time.",
                           grams(ice(std::min(answer.temperature.high, answer.grounds.tap))),
                           grams(ice(answer.temperature.low)),
                           grams(ice(likely - answer.for_one_degree) - ice(likely)));
    }
    std::string words = fmt::format(
        "Kitchens differ: in most the right water lies between {} and {} °C. Measure the dough "
        "once it is mixed; for each degree that it is too cold take the water {:g} °C warmer next "
        "time, and colder for each degree too warm.",
        whole(answer.temperature.low),
        whole(answer.temperature.high),
        tenths(answer.for_one_degree.count()));
    if (answer.temperature.high > answer.plan.limit) {
        words += fmt::format(" Above {} °C it harms {}.",
                             whole(answer.plan.limit),
                             yeast_words(answer.grounds.yeast));
    }
    return words;
}

std::string worked_out_from(const WaterGrounds& grounds) {
    std::string room = fmt::format("a room of {}", degrees_text(grounds.room));
    if (grounds.room_through_the_day) {
        room += fmt::format(" (the mean of your day, {} to {}; say how warm it is now)",
                            degrees_text(grounds.room_through_the_day->low),
                            degrees_text(grounds.room_through_the_day->high));
    }
    std::string words = fmt::format("Worked out for {} of flour at {}, {} of water, the tap at {}, "
                                    "{}, {}, {}.",
                                    grams(grounds.flour),
                                    degrees_text(grounds.flour_temperature),
                                    grams(grounds.water),
                                    degrees_text(grounds.tap),
                                    room,
                                    mixing_words(grounds.mixing),
                                    yeast_words(grounds.yeast));
    if (grounds.altitude != Metres(0.0)) {
        words += fmt::format(
            " Water boils at {} °C at {:.0f} m.", whole(grounds.boiling), grounds.altitude.count());
    }
    return words;
}

std::string trade_rule(const WaterAnswer& answer) {
    std::string sum = fmt::format("3 x {:g} - {:g} - {:g}",
                                  tenths(answer.wanted.degrees()),
                                  tenths(answer.grounds.room.degrees()),
                                  tenths(answer.grounds.flour_temperature.degrees()));
    std::string_view how = "without a friction factor, as none is printed for stirring";
    if (answer.rule.factor > CelsiusDifference(0.0)) {
        sum += fmt::format(" - {:g}", tenths(answer.rule.factor.count()));
        how = "with a friction factor";
    }
    return fmt::format("The trade's sum, the American way, 3 x dough less room less flour, {}: {} "
                       "is about {} °C. It counts flour as much as water, so the two agree best in "
                       "a room of 21 °C.",
                       how,
                       sum,
                       whole(answer.rule.water));
}

} // namespace

std::vector<std::string> words_of(const WaterAnswer& answer) {
    std::vector<std::string> say = what_to_do(answer);
    if (can_be(answer)) {
        say.push_back(how_sure(answer));
    }
    say.push_back(worked_out_from(answer.grounds));
    say.push_back(trade_rule(answer));
    return say;
}

} // namespace loafwright::asking
