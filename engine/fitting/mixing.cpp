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

bool goes_into_the_dough(const Ingredient& ingredient) {
    return !ingredient.optional && (!ingredient.part || *ingredient.part == "leaven") &&
           ingredient.grams;
}

bool is_flour(const IngredientRow* row, std::string_view item) {
    return row != nullptr ? row->role == "flour" : has_any_word(item, {"flour", "meal"});
}

dough::MixingMethod method_of(const Kitchen& kitchen) {
    return kitchen.mixing == MixingMethod::mixer ? dough::MixingMethod::stand_mixer
                                                 : dough::MixingMethod::by_hand;
}

// "instant", "fast-action dried yeast", "active dry", "fresh": by the words on the packet.
dough::YeastForm form_named(std::string_view words) {
    const std::string item = lower_case(words);
    if (has_any_word(item, {"instant", "fast-action", "easy-blend", "easy-bake", "rapid"})) {
        return dough::YeastForm::instant;
    }
    return has_any_word(item, {"dry", "dried"}) ? dough::YeastForm::active_dry
                                                : dough::YeastForm::fresh;
}

std::string_view name_of(dough::YeastForm form) {
    switch (form) {
    case dough::YeastForm::fresh:
        return "fresh";
    case dough::YeastForm::active_dry:
        return "active dry";
    case dough::YeastForm::instant:
        return "instant";
    }
    return "fresh";
}

dough::YeastMeetsWater meeting_of(const Recipe& recipe) {
    for (const Ingredient& ingredient : recipe.ingredients) {
        const std::string item = lower_case(ingredient.item);
        if (!has_word(item, "yeast")) {
            continue;
        }
        switch (form_named(item)) {
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
    for (const Ingredient& ingredient : recipe.ingredients) {
        if (!goes_into_the_dough(ingredient)) {
            continue;
        }
        const IngredientRow* row = row_of(knowledge, ingredient);
        const std::string_view role = row != nullptr ? row->role : std::string_view{};
        const std::string item = lower_case(ingredient.item);
        const Grams grams = ingredient.grams->likely;
        mixed.mass += grams;
        if (has_word(item, "water")) {
            water += grams;
            if (ingredient.temperature) {
                stated_water = middle_of(*ingredient.temperature);
            }
            continue;
        }
        if (is_flour(row, item)) {
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
    return goes_into_the_dough(ingredient) && has_word(lower_case(ingredient.item), "yeast");
}

std::optional<YeastInDough> yeast_in(const Recipe& recipe, const Knowledge& knowledge) {
    YeastInDough yeast;
    for (const Ingredient& ingredient : recipe.ingredients) {
        if (!goes_into_the_dough(ingredient)) {
            continue;
        }
        const IngredientRow* row = row_of(knowledge, ingredient);
        const std::string item = lower_case(ingredient.item);
        if (is_flour(row, item)) {
            yeast.flour += ingredient.grams->likely;
        } else if (is_yeast_of_the_dough(ingredient)) {
            yeast.grams += ingredient.grams->likely;
            yeast.form = form_named(item);
        }
    }
    const bool told = yeast.grams > Grams(0.0) && yeast.flour > Grams(0.0);
    return told ? std::optional<YeastInDough>(yeast) : std::nullopt;
}

std::optional<Phrase> yeast_swap_words(const YeastInDough& yeast, const Kitchen& kitchen) {
    if (!kitchen.yeast) {
        return std::nullopt;
    }
    const dough::YeastForm here = form_named(*kitchen.yeast);
    if (here == yeast.form) {
        return std::nullopt;
    }
    const Grams instead = as_weighed(dough::converted(yeast.grams, yeast.form, here).likely);
    return phrase("You have {} yeast: {} does the work of {} {}.",
                  {std::string(name_of(here)),
                   instead,
                   as_weighed(yeast.grams),
                   std::string(name_of(yeast.form))});
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
