// SPDX-License-Identifier: Apache-2.0
//
// The temperature a dough starts from. A recipe that names its water's warmth is taken at its word,
// and a cold kitchen then makes a colder dough; one that does not is met half way: the water here
// is chosen so that the dough comes out as warm as its own.
#include "engine/fitting/mixing.hpp"

#include "engine/dough/altitude.hpp"
#include "engine/dough/dough_temperature.hpp"
#include "engine/fitting/room.hpp"
#include "engine/fitting/words.hpp"
#include "engine/formula/dough_parts.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

namespace loafwright::fitting {

namespace {

constexpr double hottest_tap_c = 60.0;

Celsius middle_of(const TemperatureRange& range) {
    return range.low + (range.high - range.low) / 2.0;
}

dough::KilojoulesPerKilogramKelvin heat_of(std::string_view role, std::string_view item) {
    if (has_any_word(item, {"oil"})) {
        return dough::specific_heat::oil;
    }
    if (role == "fat") {
        return dough::specific_heat::butter;
    }
    if (role == "egg") {
        return dough::specific_heat::egg;
    }
    if (role == "dairy" || role == "liquid") {
        return dough::specific_heat::milk;
    }
    return dough::specific_heat::flour;
}

dough::MixingMethod method_of(const Kitchen& kitchen) {
    return kitchen.mixing == MixingMethod::mixer ? dough::MixingMethod::stand_mixer
                                                 : dough::MixingMethod::by_hand;
}

dough::YeastMeetsWater meeting_of(const Recipe& recipe) {
    for (const Ingredient& ingredient : recipe.ingredients) {
        const std::string item = lower_case(ingredient.item);
        if (!has_word(item, "yeast")) {
            continue;
        }
        switch (formula::yeast_form_named(item)) {
        case dough::YeastForm::instant:
            return dough::YeastMeetsWater::dry_in_flour;
        case dough::YeastForm::active_dry:
            return dough::YeastMeetsWater::dry_in_water;
        case dough::YeastForm::fresh:
            return dough::YeastMeetsWater::fresh_in_water;
        }
    }
    return dough::YeastMeetsWater::fresh_in_water; // a leaven is no hardier than fresh yeast
}

Grams whole(Grams grams) {
    return Grams(std::round(grams.count()));
}

// Fives are near enough for a jug, and add up.
Grams to_five(Grams grams) {
    return Grams(5.0 * std::round(grams.count() / 5.0));
}

} // namespace

MixedDough mixed_dough(const Recipe& recipe, const Kitchen& kitchen, const Knowledge& knowledge) {
    MixedDough mixed;
    dough::DoughMix mix;
    std::optional<Celsius> stated_water;
    Grams water(0.0);
    Grams other_liquid(0.0);
    const std::vector<formula::DoughPart> parts = formula::dough_parts(recipe, knowledge);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (!parts[i].in_dough) {
            continue;
        }
        const Ingredient& ingredient = recipe.ingredients[i];
        const std::string_view role = parts[i].role;
        const std::string item = lower_case(ingredient.item);
        const Grams grams = parts[i].grams;
        mixed.mass += grams;
        if (has_word(item, "water")) {
            water += grams;
            if (ingredient.temperature) {
                stated_water = middle_of(*ingredient.temperature);
            }
            continue;
        }
        if (role == "flour") {
            mix.flour += grams;
        } else if (role == "dairy" || role == "liquid" || has_word(item, "milk")) {
            other_liquid += grams;
        }
        mix.parts.push_back({grams, Celsius(0.0), heat_of(role, item)});
    }
    const auto room = room_here(kitchen);
    if (!room || !(mix.flour > Grams(0.0)) || !(water > Grams(0.0))) {
        return mixed;
    }
    // Milk is warmed or comes from the fridge; water alone must not make up for it.
    constexpr double hardly_any = 0.25;
    if (other_liquid > water * hardly_any) {
        return mixed;
    }
    mix.water.mass = water;
    mix.offset = dough::mixing_offset(method_of(kitchen)).likely;
    const auto stand_in = [&mix](Celsius flour, Celsius around) {
        for (dough::DoughPart& part : mix.parts) {
            part.temperature = flour;
        }
        mix.room = around;
    };
    if (stated_water) {
        mix.water.temperature = *stated_water;
        stand_in(usual_room, usual_room);
        mixed.there = dough::dough_temperature(mix);
        stand_in(kitchen.flour.value_or(room->likely), room->likely);
        mixed.here = dough::dough_temperature(mix);
        return mixed;
    }
    stand_in(kitchen.flour.value_or(room->likely), room->likely);
    const Celsius boiling = dough::boiling_point_at(kitchen.altitude);
    const dough::WaterPlan plan =
        dough::plan_water(mix, mixed.there, kitchen.tap, boiling, meeting_of(recipe));
    mixed.here = plan.dough;
    WaterHere here;
    here.grams = whole(water);
    here.temperature = Celsius(std::round(plan.water.degrees()));
    here.boiled = to_five(plan.boiled);
    here.ice = to_five(plan.ice);
    here.tap = here.grams - here.boiled - here.ice;
    if (plan.advice == dough::WaterAdvice::would_harm) {
        here.warning = phrase("warmer than {} would harm the yeast",
                              {Celsius(std::round(plan.limit.degrees()))});
    }
    if (here.temperature.degrees() >= 0.0 && here.temperature.degrees() <= hottest_tap_c) {
        mixed.water = here;
    }
    return mixed;
}

bool is_yeast_of_the_dough(const Ingredient& ingredient) {
    return ingredient.grams && !ingredient.optional &&
           (!ingredient.part || *ingredient.part == "leaven") &&
           has_word(lower_case(ingredient.item), "yeast");
}

std::optional<YeastInDough> yeast_in(const Recipe& recipe, const Knowledge& knowledge) {
    YeastInDough yeast;
    const std::vector<formula::DoughPart> parts = formula::dough_parts(recipe, knowledge);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const Ingredient& ingredient = recipe.ingredients[i];
        if (parts[i].role == "flour") {
            yeast.flour += parts[i].flour;
        } else if (is_yeast_of_the_dough(ingredient)) {
            yeast.grams += ingredient.grams->likely;
            yeast.form = formula::yeast_form_named(ingredient.item);
        }
    }
    const bool told = yeast.grams > Grams(0.0) && yeast.flour > Grams(0.0);
    return told ? std::optional<YeastInDough>(yeast) : std::nullopt;
}

std::optional<Phrase> yeast_swap_words(const YeastInDough& yeast, const Kitchen& kitchen) {
    if (!kitchen.yeast) {
        return std::nullopt;
    }
    const dough::YeastForm here = formula::yeast_form_named(*kitchen.yeast);
    if (here == yeast.form) {
        return std::nullopt;
    }
    const Grams instead = as_weighed(dough::converted(yeast.grams, yeast.form, here).likely);
    return phrase("You have {} yeast: {} does the work of {} {}.",
                  {std::string(formula::name_of(here)),
                   instead,
                   as_weighed(yeast.grams),
                   std::string(formula::name_of(yeast.form))});
}

Phrase water_words(const WaterHere& water) {
    Phrase words = phrase("Water at {}", {water.temperature});
    if (water.ice > Grams(0.0)) {
        words += phrase(": {} ice and {} from the tap", {water.ice, water.tap});
    } else if (water.boiled > Grams(0.0)) {
        words += phrase("; without a thermometer {} just boiled and {} cold from the tap, stirred, "
                        "before the yeast",
                        {water.boiled, water.tap});
    } else {
        words += phrase(", as it comes from the tap");
    }
    if (!water.warning.parts.empty()) {
        words += phrase("; ");
        words += water.warning;
    }
    words += phrase(".");
    return words;
}

} // namespace loafwright::fitting
