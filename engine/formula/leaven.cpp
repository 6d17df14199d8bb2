// SPDX-License-Identifier: Apache-2.0
//
// Leaven for yeast and back. The flour and water of a leaven are flour and water of the dough, so
// they only change their place; what changes is time.
#include "engine/formula/leaven.hpp"

#include "engine/dough/sourdough.hpp"
#include "engine/formula/amount_words.hpp"
#include "engine/formula/dough_parts.hpp"
#include "engine/formula/leaven_steps.hpp"
#include "engine/formula/leaven_waits.hpp"
#include "engine/formula/step_edits.hpp"
#include "engine/knowledge/family.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace loafwright::formula {

namespace {

constexpr std::string_view starter_row = "liquid sourdough starter"; // half flour, half water
constexpr Celsius usual_room{21.0};
constexpr double most_of_one = 0.9; // some flour and water is left to mix the dough with

void set_grams(Ingredient& ingredient, Band<Grams> grams) {
    const auto at_least_none = [](Grams one) { return std::max(one, Grams(0.0)); };
    ingredient.grams = Band<Grams>{
        at_least_none(grams.low), at_least_none(grams.likely), at_least_none(grams.high)};
    ingredient.text = weight_words(ingredient.grams->likely) + " " + ingredient.item;
    ingredient.substitutes.clear();
}

void add_to(Ingredient& ingredient, Grams more) {
    const Band<Grams> grams = ingredient.grams.value_or(exactly(Grams(0.0)));
    set_grams(ingredient, {grams.low + more, grams.likely + more, grams.high + more});
}

Ingredient made(Grams grams, const std::string& item, std::string_view known_as) {
    Ingredient ingredient;
    ingredient.item = item;
    ingredient.known_as = std::string(known_as);
    set_grams(ingredient, exactly(grams));
    return ingredient;
}

Diagnostics does_not_fit(const Recipe& recipe, const std::string& why, std::string do_this) {
    return {{"leaven_does_not_fit",
             Severity::error,
             (recipe.title.empty() ? std::string("this bread") : recipe.title) + " " + why,
             "",
             std::move(do_this)}};
}

using Share = Grams DoughPart::*;

// The ingredient of the dough itself that brings most of it.
std::optional<std::size_t>
most_of(const Recipe& recipe, const std::vector<DoughPart>& parts, Share share) {
    std::optional<std::size_t> most;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const bool own = !recipe.ingredients[i].part && parts[i].role != "preferment";
        if (own && parts[i].*share > Grams(0.0) &&
            (!most || parts[i].*share > parts[*most].*share)) {
            most = i;
        }
    }
    return most;
}

Grams sum_of(const std::vector<DoughPart>& parts, Share share) {
    Grams sum(0.0);
    for (const DoughPart& part : parts) {
        sum += part.*share;
    }
    return sum;
}

bool is_of_the_leaven(const Ingredient& ingredient) {
    return ingredient.part && *ingredient.part == leaven_part;
}

// The dough's flour that is most like the preferment's own.
std::optional<std::size_t> flour_like(const Recipe& recipe,
                                      const std::vector<DoughPart>& parts,
                                      const Ingredient& preferment) {
    const std::string words = lower_case(preferment.text + " " + preferment.known_as);
    for (const std::string_view kind : {"rye", "wholemeal", "spelt"}) {
        for (std::size_t i = 0; has_word(words, kind) && i < parts.size(); ++i) {
            const Ingredient& flour = recipe.ingredients[i];
            if (!flour.part && parts[i].flour > Grams(0.0) && parts[i].role == "flour" &&
                has_word(lower_case(flour.item), kind)) {
                return i;
            }
        }
    }
    return most_of(recipe, parts, &DoughPart::flour);
}

} // namespace

bool has_bakers_yeast(const Recipe& recipe, const Knowledge& knowledge) {
    return std::any_of(
        recipe.ingredients.begin(), recipe.ingredients.end(), [&](const Ingredient& ingredient) {
            return is_bakers_yeast(knowledge, ingredient);
        });
}

bool has_leaven(const Recipe& recipe, const Knowledge& knowledge) {
    return std::any_of(
        recipe.ingredients.begin(), recipe.ingredients.end(), [&](const Ingredient& ingredient) {
            const IngredientRow* row = row_of(knowledge, ingredient);
            // A piece of old dough is yeast, and brings salt.
            return row != nullptr && row->role == "preferment" &&
                   row->salt_percent.value_or(0.0) == 0.0;
        });
}

tl::expected<Recipe, Diagnostics> with_leaven(const Recipe& recipe, const Knowledge& knowledge) {
    const std::vector<DoughPart> parts = dough_parts(recipe, knowledge);
    const bool begun =
        has_leaven(recipe, knowledge) ||
        std::any_of(recipe.ingredients.begin(), recipe.ingredients.end(), is_of_the_leaven);
    if (begun) {
        return tl::make_unexpected(
            does_not_fit(recipe,
                         "has a sponge or a leaven already, beside its yeast",
                         "Leave it as it is, or ask for another form of yeast."));
    }
    const Grams all_flour = sum_of(parts, &DoughPart::flour);
    const auto flour_at = most_of(recipe, parts, &DoughPart::flour);
    const auto water_at = most_of(recipe, parts, &DoughPart::water);
    if (!flour_at) {
        return tl::make_unexpected(
            does_not_fit(recipe,
                         "tells no weight of flour, and nobody can say how much leaven it takes",
                         "Write the weights into the recipe, or keep the yeast."));
    }
    const Grams flour = std::min({all_flour * leaven_share,
                                  parts[*flour_at].flour * most_of_one,
                                  water_at ? parts[*water_at].water * most_of_one : Grams(0.0)});
    if (flour < all_flour * least_leaven_share) {
        return tl::make_unexpected(
            does_not_fit(recipe,
                         "has too little flour or water of its own for a leaven",
                         "Keep the yeast; where its water has no weight, write it in."));
    }
    // The starter is half flour and half water itself, so all of the leaven is.
    const Grams seed = flour * 2.0 / (1.0 + 2.0 * build_parts);
    const Grams each = flour - seed / 2.0;
    const auto ripens =
        dough::ripening_time(1.0 / (1.0 + 2.0 * build_parts), usual_room, dough::LeavenState::ripe);

    Recipe out = recipe;
    std::vector<std::string> yeasts;
    Ingredient& of_dough_flour = out.ingredients[*flour_at];
    Ingredient& of_dough_water = out.ingredients[*water_at];
    Ingredient starter = made(seed, "ripe starter", starter_row);
    starter.text += ", 100 % hydration";
    Ingredient leaven_flour = made(each, of_dough_flour.item, of_dough_flour.known_as);
    Ingredient leaven_water = made(each, "water", "water");
    add_to(of_dough_flour, flour * -1.0);
    add_to(of_dough_water, flour * -1.0);
    const Grams flour_left = of_dough_flour.grams->likely;
    const Grams water_left = of_dough_water.grams->likely;
    bool named = false;
    std::vector<Ingredient> ingredients;
    for (Ingredient* one : {&starter, &leaven_flour, &leaven_water}) {
        one->part = std::string(leaven_part);
        ingredients.push_back(std::move(*one));
    }
    for (Ingredient& ingredient : out.ingredients) {
        if (!is_bakers_yeast(knowledge, ingredient)) {
            ingredients.push_back(std::move(ingredient));
            continue;
        }
        yeasts.push_back(ingredient.item);
        if (!named) {
            Ingredient all;
            all.text = "all of the leaven";
            all.item = std::string(leaven_part);
            all.known_as = std::string(starter_row);
            ingredients.push_back(std::move(all));
            named = true;
        }
    }
    out.ingredients = std::move(ingredients);

    std::vector<bool> waking;
    for (const Step& step : out.steps) {
        waking.push_back(step.kind == StepKind::activate);
    }
    take_out(out.steps, waking);
    rename_use(out.steps, yeasts, std::string(leaven_part));
    forget_words(out.steps, {"yeast"});
    forget_amounts(out, {"flour", "flours", "water"});
    // After the amounts of the text are forgotten: these are ours.
    say_what_is_left(out, flour_left, water_left);
    const WaitsChanged waits =
        give_leaven_waits(out, flour / all_flour, family_of(recipe, knowledge), knowledge);
    put_first(out.steps, building(knowledge, seed, each, *ripens));

    Phrase words =
        phrase("With leaven instead of yeast: the evening before, about {} ahead, mix {} "
               "ripe starter with {} of the flour and {} of the water",
               {rough_time(ripens->likely), seed, each, each});
    const Minutes longer = waits.after - waits.before;
    constexpr Minutes matters{15.0};
    if (longer >= matters) {
        words += phrase("; the dough itself takes about {} longer", {rough_time(longer)});
    } else if (longer * -1.0 >= matters) {
        words += phrase("; the dough itself takes about {} less", {rough_time(longer * -1.0)});
    }
    words += phrase(".");
    out.changes.push_back(std::move(words));
    return out;
}

tl::expected<Recipe, Diagnostics>
with_yeast(const Recipe& recipe, dough::YeastForm form, const Knowledge& knowledge) {
    const std::vector<DoughPart> parts = dough_parts(recipe, knowledge);
    const Grams all_flour = sum_of(parts, &DoughPart::flour);
    if (!(all_flour > Grams(0.0))) {
        return tl::make_unexpected(
            does_not_fit(recipe,
                         "tells no weight of flour, so nobody knows how much yeast it takes",
                         "Write the weights into the recipe, or keep the leaven."));
    }
    const auto water_at = most_of(recipe, parts, &DoughPart::water);
    Recipe out = recipe;
    std::vector<std::string> leavens{std::string(leaven_part)};
    std::vector<Ingredient> ingredients;
    std::vector<Grams> more(recipe.ingredients.size(), Grams(0.0));
    Grams loose_flour(0.0);
    Grams loose_water(0.0);
    std::vector<bool> gone(recipe.ingredients.size(), false);
    for (std::size_t i = 0; i < recipe.ingredients.size(); ++i) {
        const Ingredient& ingredient = recipe.ingredients[i];
        const DoughPart& part = parts[i];
        const bool preferment = part.role == "preferment";
        const bool of_leaven = is_of_the_leaven(ingredient);
        const bool plain =
            part.role == "flour" || part.water > Grams(0.0) || ingredient.known_as == "water";
        if (!preferment && !(of_leaven && plain)) {
            continue;
        }
        gone[i] = true;
        if (preferment) {
            leavens.push_back(ingredient.item);
        }
        const auto flour_at = flour_like(recipe, parts, ingredient);
        (flour_at ? more[*flour_at] : loose_flour) += part.flour;
        (water_at ? more[*water_at] : loose_water) += part.water;
    }
    const double grams_a_fresh = dough::grams_for_one_fresh(form).likely /
                                 dough::grams_for_one_fresh(dough::YeastForm::instant).likely;
    Ingredient yeast = made(all_flour * (instant_share * grams_a_fresh),
                            std::string(name_of(form)) + " yeast",
                            std::string(name_of(form)) + " yeast");
    const Grams weighed = yeast.grams->likely;
    const std::string yeast_item = yeast.item;
    bool named = false;
    for (std::size_t i = 0; i < out.ingredients.size(); ++i) {
        Ingredient& ingredient = out.ingredients[i];
        if (gone[i]) {
            if (!named) {
                ingredients.push_back(yeast);
                named = true;
            }
            continue;
        }
        if (more[i] > Grams(0.0)) {
            add_to(ingredient, more[i]);
        }
        if (is_of_the_leaven(ingredient)) {
            ingredient.part.reset();
        }
        ingredients.push_back(std::move(ingredient));
    }
    if (loose_flour > Grams(0.0)) {
        ingredients.push_back(made(loose_flour, "strong white flour", "strong white bread flour"));
    }
    if (loose_water > Grams(0.0)) {
        ingredients.push_back(made(loose_water, "water", "water"));
    }
    out.ingredients = std::move(ingredients);

    const std::size_t steps_before = out.steps.size();
    take_leaven_steps_out(out);
    const bool was_built = out.steps.size() < steps_before;
    rename_use(out.steps, leavens, yeast_item);
    forget_words(out.steps, {"leaven", "levain", "starter", "sourdough"});
    forget_amounts(out, {"flour", "flours", "water"});
    const WaitsChanged waits = give_yeast_waits(out, knowledge);

    Phrase words = phrase("With {} instead of leaven: {}, and the leaven's flour and water go into "
                          "the dough",
                          {yeast_item, weighed});
    if (was_built) {
        words += phrase("; no leaven to build beforehand");
    }
    const Minutes less = waits.before - waits.after;
    constexpr Minutes matters{15.0};
    if (less >= matters) {
        words += phrase("; the dough itself takes about {} less", {rough_time(less)});
    }
    words += phrase(".");
    out.changes.push_back(std::move(words));
    return out;
}

} // namespace loafwright::formula
