// SPDX-License-Identifier: Apache-2.0
//
// Which kind of dough and which form of bread a recipe is about. Both are judged by what a baker
// would look at: what raises it, how rich it is, what flour it is made of, and what it is called.
// Common practice draws the lines: a dough is rich from about a tenth of its flour in fat, sugar
// and egg; coarse when more than half is wholemeal or more than two fifths rye.
#include "engine/knowledge/family.hpp"

#include "engine/recipe/words.hpp"

#include <string>
#include <string_view>

namespace loafwright {

namespace {

constexpr double rich_from = 0.10;
constexpr double milk_solids = 0.125; // whole milk is 88 % water (USDA table, read second-hand)

bool raised_by_powder(std::string_view item) {
    return has_any_word(item,
                        {"baking powder",
                         "baking soda",
                         "bicarbonate",
                         "bicarbonate of soda",
                         "bicarb",
                         "saleratus",
                         "self-raising flour",
                         "self raising flour",
                         "self-rising flour",
                         "self rising flour"});
}

bool is_leaven(std::string_view item) {
    return has_any_word(item, {"starter", "leaven", "sourdough", "levain", "sourdough starter"});
}

bool says_flat(std::string_view text) {
    return has_any_word(text, {"flatbread", "flatbreads", "flat bread",   "flat breads", "pizza",
                               "pizzas",    "naan",       "naans",        "pitta",       "pittas",
                               "pita",      "pitas",      "arepa",        "arepas",      "tortilla",
                               "tortillas", "chapati",    "chapatis",     "roti",        "rotis",
                               "lavash",    "piadina",    "crispbread",   "crispbreads", "bannock",
                               "bannocks",  "oatcakes",   "griddle cakes"});
}

bool says_rolls(std::string_view text) {
    return has_any_word(text, {"rolls",    "bun",      "buns",      "bap",         "baps",
                               "biscuit",  "biscuits", "scone",     "scones",      "muffin",
                               "muffins",  "bagel",    "bagels",    "breadsticks", "pretzel",
                               "pretzels", "crumpets", "doughnuts", "knots",       "gems"});
}

} // namespace

Makeup makeup_of(const Recipe& recipe, const Knowledge& knowledge) {
    Makeup makeup;
    double rye = 0.0;
    double wholegrain = 0.0;
    double rich = 0.0;
    for (const Ingredient& ingredient : recipe.ingredients) {
        const std::string item = lower_case(ingredient.item);
        const std::string text = lower_case(ingredient.text);
        const IngredientRow* row = row_of(knowledge, ingredient);
        const std::string_view role = row != nullptr ? row->role : std::string_view{};
        const double grams = ingredient.grams ? ingredient.grams->likely.count() : 0.0;

        if (raised_by_powder(item) || raised_by_powder(text)) {
            makeup.has_baking_powder = true;
        }
        // "Yeast" is a word of its own in its items; the leaven's own name never holds it.
        if (role == "yeast" || (role.empty() && has_word(item, "yeast"))) {
            makeup.has_yeast = true;
        }
        if (is_leaven(item) || (role == "preferment" && is_leaven(text))) {
            makeup.has_leaven = true;
        }
        const bool flour =
            role == "flour" || (role.empty() && has_any_word(item, {"flour", "meal"}));
        if (flour) {
            makeup.flour_grams += grams;
            if (has_word(item, "rye")) {
                rye += grams;
            }
            if (has_any_word(item,
                             {"rye",
                              "wholemeal",
                              "wholegrain",
                              "whole grain",
                              "whole wheat",
                              "wholewheat",
                              "whole-wheat",
                              "whole-wheat flour",
                              "whole",
                              "graham"})) {
                wholegrain += grams;
            }
        } else if (has_any_word(item, {"milk", "buttermilk", "cream", "yogurt", "yoghurt"})) {
            rich += grams * milk_solids;
        } else if (role == "fat" || role == "sugar" || role == "egg" ||
                   (role.empty() &&
                    has_any_word(item,
                                 {"butter", "lard", "oil", "sugar", "honey", "egg", "eggs"}))) {
            rich += grams;
        }
    }
    if (makeup.flour_grams > 0.0) {
        makeup.rye_share = rye / makeup.flour_grams;
        makeup.wholegrain_share = wholegrain / makeup.flour_grams;
        makeup.enrichment_share = rich / makeup.flour_grams;
    }
    return makeup;
}

DoughFamily family_of(const Recipe& recipe, const Knowledge& knowledge) {
    const Makeup makeup = makeup_of(recipe, knowledge);
    if (makeup.has_leaven && !makeup.has_yeast) {
        return DoughFamily::sourdough;
    }
    if (says_flat(lower_case(recipe.title))) {
        return DoughFamily::flatbread;
    }
    if (makeup.has_baking_powder && !makeup.has_yeast) {
        return DoughFamily::quick;
    }
    if (form_of(recipe) == Form::flat) {
        return DoughFamily::flatbread;
    }
    if (makeup.enrichment_share > rich_from) {
        return DoughFamily::enriched;
    }
    if (makeup.rye_share > 0.4 || makeup.wholegrain_share > 0.5) {
        return DoughFamily::wholegrain;
    }
    return DoughFamily::lean;
}

Form form_of(const Recipe& recipe) {
    if (recipe.tin) {
        return Form::loaf;
    }
    const std::string title = lower_case(recipe.title);
    if (says_flat(title)) {
        return Form::flat;
    }
    if (says_rolls(title)) {
        return Form::rolls;
    }
    if (has_any_word(title,
                     {"loaf", "loaves", "tin", "boule", "bloomer", "baguette", "baguettes"})) {
        return Form::loaf;
    }
    bool baked = false;
    bool griddled = false;
    for (const Step& step : recipe.steps) {
        const std::string text = lower_case(step.text);
        baked = baked || step.kind == StepKind::bake;
        griddled = griddled ||
                   (step.kind == StepKind::cook &&
                    has_any_word(text, {"griddle", "skillet", "frying pan", "dry pan", "hot pan"}));
        if (step.kind != StepKind::divide && step.kind != StepKind::shape &&
            step.kind != StepKind::bake) {
            continue;
        }
        if (says_flat(text)) {
            return Form::flat;
        }
        if (says_rolls(text)) {
            return Form::rolls;
        }
        if (has_any_word(text, {"loaf", "loaves", "tin", "loaf pan", "bread pan"})) {
            return Form::loaf;
        }
    }
    if (griddled && !baked) {
        return Form::flat;
    }
    // A home oven takes four loaves at the very most: five pieces and more are rolls.
    const auto pieces = recipe.written_for ? recipe.written_for->pieces : recipe.pieces;
    return pieces && *pieces >= 5.0 ? Form::rolls : Form::loaf;
}

std::string leaven_of(const Recipe& recipe, const Knowledge& knowledge) {
    const Makeup makeup = makeup_of(recipe, knowledge);
    if (makeup.has_leaven) {
        for (const Ingredient& ingredient : recipe.ingredients) {
            const IngredientRow* row = ingredient.known_as.empty()
                                           ? nullptr
                                           : ingredient_named(knowledge, ingredient.known_as);
            if (row != nullptr && row->role == "preferment") {
                return std::string(row->item);
            }
        }
        return "leaven";
    }
    return makeup.has_yeast ? "yeast" : "";
}

} // namespace loafwright
