// SPDX-License-Identifier: Apache-2.0
//
// Which ingredients make the dough, and how much flour and water each brings. The trade's rule is
// the starting point: percentages are on all flour, that of the preferments included, and water is
// what was poured. What milk, egg, butter and the like hold is kept apart, for the hydration that
// the hands feel.

#include "engine/formula/dough_parts.hpp"

#include "engine/recipe/part_word.hpp"
#include "engine/recipe/words.hpp"

#include <algorithm>
#include <cstdlib>

namespace loafwright::formula {
namespace {

// The water in flour: 11.92 plain, 13.36 bread, 10.75 dark rye (USDA SR27, read); the rows of the
// preferments were reckoned with this.
constexpr double water_in_flour = 0.12;
constexpr double most_stated_hydration = 300.0;

std::string all_words(const Ingredient& ingredient) {
    return lower_case(ingredient.text + "; " + ingredient.item);
}

// "500 g flour, plus more for dusting" goes in all the same.
bool says_not_in_the_dough(const std::string& words) {
    return !has_any_word(words, {"plus", "extra", "more"}) &&
           has_any_word(words,
                        {"to glaze",       "for glazing",   "egg wash",      "for brushing",
                         "to brush",       "for dusting",   "to dust",       "for sprinkling",
                         "to sprinkle",    "for the top",   "for topping",   "to grease",
                         "for greasing",   "for the tin",   "for the bowl",  "for the pan",
                         "for the board",  "for shaping",   "for the glaze", "for rolling",
                         "to finish",      "for finishing", "to decorate",   "to serve",
                         "for the worktop"});
}

bool says_broken_up(const std::string& words) {
    return has_any_word(words,
                        {"mash", "mashed", "puree", "purée", "pureed", "puréed", "riced", "pulp"});
}

bool is_of_the_dough(const std::optional<std::string>& part) {
    return !part || *part == "leaven" || *part == "soaker";
}

// Its words come up where the bread is finished, and nowhere before. Milk and flour are not judged
// so: too many sentences speak of them.
bool is_only_for_the_finish(const Recipe& recipe,
                            const Ingredient& ingredient,
                            std::string_view role) {
    if (role != "egg" && role != "sugar" && role != "fat" && role != "inclusion" &&
        role != "spice") {
        return false;
    }
    bool finishes = false;
    for (const Step& step : recipe.steps) {
        const bool uses = std::any_of(step.uses.begin(), step.uses.end(), [&](const Use& use) {
            return use.item == ingredient.item;
        });
        if (uses && step.kind != StepKind::finish && step.kind != StepKind::bake &&
            step.kind != StepKind::serve) {
            return false;
        }
        finishes = finishes || (uses && step.kind == StepKind::finish);
    }
    return finishes;
}

bool goes_in(const Recipe& recipe, const Ingredient& ingredient, std::string_view role) {
    return ingredient.grams && !ingredient.optional && is_of_the_dough(ingredient.part) &&
           role != "topping" && !says_not_in_the_dough(all_words(ingredient)) &&
           !is_only_for_the_finish(recipe, ingredient, role);
}

// The parts whose whole yield the dough's list names with a weight.
std::vector<std::string> parts_weighed_as_one(const Recipe& recipe) {
    std::vector<std::string> parts;
    for (const Ingredient& whole : recipe.ingredients) {
        if (!whole.grams) {
            continue;
        }
        const std::string words = all_words(whole);
        for (const Ingredient& other : recipe.ingredients) {
            if (other.part && other.part != whole.part && has_word(words, *other.part)) {
                parts.push_back(*other.part);
            }
        }
    }
    return parts;
}

// The number before "% hyd": "levain, 100% hyd." gives 100.
std::optional<double> stated_hydration(const std::string& words) {
    const std::size_t hydration = words.find("hyd");
    const std::size_t percent =
        hydration == std::string::npos ? hydration : words.rfind('%', hydration);
    if (percent == std::string::npos || words.find_first_not_of(" \t", percent + 1) != hydration) {
        return std::nullopt;
    }
    const std::size_t last = words.find_last_not_of(" \t", percent == 0 ? 0 : percent - 1);
    std::size_t begin = last == std::string::npos ? 0 : last + 1;
    while (begin > 0 && words[begin - 1] >= '0' && words[begin - 1] <= '9') {
        --begin;
    }
    const double value = std::strtod(words.c_str() + begin, nullptr);
    return value > 0.0 && value <= most_stated_hydration ? std::optional(value) : std::nullopt;
}

bool holds_water(std::string_view role, const std::string& words) {
    for (const std::string_view wet : {"liquid", "dairy", "egg", "sugar", "fat", "yeast", "acid"}) {
        if (role == wet) {
            return true;
        }
    }
    return role == "inclusion" && says_broken_up(words);
}

void count_in(DoughPart& part, const Ingredient& ingredient, const IngredientRow* row) {
    const double water = row != nullptr ? row->water_percent.value_or(0.0) / 100.0 : 0.0;
    if (part.role == "flour") {
        part.flour = part.grams;
        part.prefermented = ingredient.part == "leaven";
    } else if (part.role == "preferment") {
        part.flour = part.grams * flour_share(ingredient, *row);
        part.water = part.grams - part.flour;
        part.prefermented = true;
    } else if (row != nullptr ? row->item == "water" : has_word(ingredient.item, "water")) {
        part.water = part.grams;
    } else if (holds_water(part.role, all_words(ingredient))) {
        part.water_inside = part.grams * water;
    }
}

} // namespace

bool is_flour(const Knowledge& knowledge, const Ingredient& ingredient) {
    const IngredientRow* row = row_of(knowledge, ingredient);
    return row != nullptr ? row->role == "flour"
                          : has_any_word(lower_case(ingredient.item), {"flour", "meal"});
}

bool is_bakers_yeast(const Knowledge& knowledge, const Ingredient& ingredient) {
    const IngredientRow* row = row_of(knowledge, ingredient);
    return has_word(lower_case(ingredient.item), "yeast") ||
           (row != nullptr && row->role == "yeast" && has_word(row->item, "yeast"));
}

bool is_made_here(const Ingredient& ingredient, const Recipe& recipe) {
    const std::string words = lower_case(ingredient.text);
    return std::any_of(
        recipe.ingredients.begin(), recipe.ingredients.end(), [&](const Ingredient& other) {
            // A leaven goes by the name of its kind.
            const bool by_kind = other.part == "leaven" && names_a_leaven(words);
            return other.part && other.part != ingredient.part &&
                   (by_kind || has_word(words, *other.part) || has_word(words, *other.part + "s"));
        });
}

dough::YeastForm yeast_form_named(std::string_view words) {
    const std::string item = lower_case(words);
    if (has_any_word(item,
                     {"instant", "inst", "fast-action", "easy-blend", "easy-bake", "rapid"})) {
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

double flour_share(const Ingredient& preferment, const IngredientRow& row) {
    if (const auto stated = stated_hydration(lower_case(preferment.text))) {
        return 100.0 / (100.0 + *stated);
    }
    const double water = row.water_percent.value_or(56.0) / 100.0;
    const double salt = row.salt_percent.value_or(0.0) / 100.0;
    return std::clamp((1.0 - water - salt) / (1.0 - water_in_flour), 0.0, 1.0);
}

std::vector<DoughPart> dough_parts(const Recipe& recipe, const Knowledge& knowledge) {
    const std::vector<std::string> as_one = parts_weighed_as_one(recipe);
    std::vector<DoughPart> parts;
    parts.reserve(recipe.ingredients.size());
    for (const Ingredient& ingredient : recipe.ingredients) {
        const IngredientRow* row = row_of(knowledge, ingredient);
        DoughPart part;
        part.role = row != nullptr                    ? row->role
                    : is_flour(knowledge, ingredient) ? std::string_view("flour")
                                                      : std::string_view();
        const bool again =
            ingredient.part &&
            std::find(as_one.begin(), as_one.end(), *ingredient.part) != as_one.end();
        part.in_dough = !again && goes_in(recipe, ingredient, part.role);
        if (part.in_dough) {
            part.grams = ingredient.grams->likely;
            count_in(part, ingredient, row);
        }
        parts.push_back(part);
    }
    return parts;
}

} // namespace loafwright::formula
