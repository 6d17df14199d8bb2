// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/dough_temperature.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/quantity/tagged.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loafwright::asking {

/// "How warm must the water be for a dough of so many degrees?" What is left out comes from the
/// kitchen, and where that is silent too from what is usual.
///
/// Invariants: weights above zero; temperatures and altitude as in kitchen files.
struct WaterQuestion {
    Celsius dough;
    std::optional<Grams> flour;               // 500 g
    std::optional<Grams> water;               // 65 % of the flour
    std::optional<Celsius> room;              // the kitchen's, at its mean over the day; 20 °C
    std::optional<Celsius> flour_temperature; // the kitchen's; as warm as the room
    std::optional<Celsius> tap;               // the kitchen's, which is 12 °C when nobody says
    std::optional<Metres> altitude;           // the kitchen's
    std::optional<dough::MixingMethod> mixing;
    /// The kitchen's yeast; fresh, which stands the least, where that is unknown.
    std::optional<dough::YeastMeetsWater> yeast;
};

/// Everything the answer was worked out from.
struct WaterGrounds {
    Grams flour;
    Grams water;
    Celsius room;
    std::optional<Band<Celsius>> room_through_the_day; // when its mean was taken
    Celsius flour_temperature;
    Celsius tap;
    Metres altitude;
    Celsius boiling;
    dough::MixingMethod mixing = dough::MixingMethod::by_hand;
    dough::YeastMeetsWater yeast = dough::YeastMeetsWater::fresh_in_water;
};

/// The trade's own sum beside the heat balance, by the American convention of factor_rule.hpp:
/// water = 3 dough - room - flour - factor.
///
/// `factor` by mixing method: 8, 22 and 25 °F for hand, stand mixer and food processor (inside 5 to
/// 12, inside 20 to 24, and 25, read; the first two middles computed); none is printed for a dough
/// that is only stirred.
struct TradeRule {
    Celsius water;
    CelsiusDifference factor;
};

struct WaterAnswer {
    Celsius wanted;
    WaterGrounds grounds;
    /// What the heat balance asks for; may lie where no water is.
    Band<Celsius> temperature;
    /// What to do; `boiled` and `ice` in whole grams, `tap` the rest.
    dough::WaterPlan plan;
    /// By how much the water changes for one degree of dough: what a measured miss teaches.
    CelsiusDifference for_one_degree;
    /// Where water alone cannot do it: the flour's temperature with which the plan's water does,
    /// between a freezer's -18 °C and 40 °C; nothing when that is not enough either.
    std::optional<Celsius> flour_needed;
    TradeRule rule;
};

/// Needs:    a question and a kitchen within the ranges of kitchen files.
/// Promises: `plan` and `temperature` are those of dough_temperature.hpp with its usual room share
///           and the offset of the mixing method.
WaterAnswer water_for(const WaterQuestion& question, const Kitchen& kitchen);

/// False when this water does not give the wanted dough: too hot for the yeast, or beyond ice.
bool can_be(const WaterAnswer& answer);

/// The answer in plain words, a paragraph each: the temperature, what to weigh without a
/// thermometer, what to learn from a miss, what it was worked out from, and the trade's rule.
std::vector<std::string> words_of(const WaterAnswer& answer);

} // namespace loafwright::asking
