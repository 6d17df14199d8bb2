// SPDX-License-Identifier: Apache-2.0
//
// Percentages against worked examples from outside: published formulas, a lecture's slides, trade
// schools, an army manual; each row of tests/published/formulas.tsv names its source. Water inside
// ingredients is by USDA's table.

#include "engine/formula/analyse.hpp"
#include "engine/formula/dough_parts.hpp"
#include "engine/formula/scale.hpp"
#include "tests/formula/recipes.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace loafwright::formula {
namespace {

Formula formula_of(const Recipe& recipe) {
    const auto formula = analyse(recipe, known());
    EXPECT_TRUE(formula.has_value());
    return formula.value_or(Formula{});
}

double percent_of(const Formula& formula, const std::string& item) {
    for (const FormulaItem& one : formula.items) {
        if (one.item == item) {
            return one.percent.count();
        }
    }
    ADD_FAILURE() << "no " << item;
    return 0.0;
}

bool says(const Formula& formula, const std::string& code) {
    return std::any_of(formula.remarks.begin(),
                       formula.remarks.end(),
                       [&code](const Diagnostic& remark) { return remark.code == code; });
}

// The parts of a line between marks.
std::vector<std::string> parted(const std::string& line, char mark) {
    std::vector<std::string> parts;
    std::istringstream in(line);
    std::string part;
    while (std::getline(in, part, mark)) {
        parts.push_back(part);
    }
    return parts;
}

// "500 strong white bread flour; 325 water"; "@" before an item puts it into the leaven.
Recipe recipe_in(const std::string& words) {
    Recipe recipe;
    for (std::string part : parted(words, ';')) {
        part.erase(0, part.find_first_not_of(' '));
        char* rest = nullptr;
        const double grams = std::strtod(part.c_str(), &rest);
        std::string item = rest;
        item.erase(0, item.find_first_not_of(' '));
        const bool leaven = item.front() == '@';
        Ingredient one = some(grams, leaven ? item.substr(1) : item);
        if (leaven) {
            one.part = "leaven";
        }
        recipe.ingredients.push_back(one);
    }
    return recipe;
}

double asked_of(const Formula& formula, const std::string& what) {
    if (what == "flour") {
        return formula.flour.count();
    }
    if (what == "dough") {
        return formula.dough.count();
    }
    if (what == "hydration") {
        return formula.hydration.count();
    }
    if (what == "total hydration") {
        return formula.total_hydration.count();
    }
    if (what == "prefermented") {
        return formula.prefermented.count();
    }
    return percent_of(formula, what);
}

TEST(analyse, agrees_with_every_published_example) {
    std::ifstream file(LOAFWRIGHT_ROOT "/tests/published/formulas.tsv");
    ASSERT_TRUE(file.is_open());
    std::string line;
    std::size_t rows = 0;
    while (std::getline(file, line)) {
        if (line.empty() || line.front() == '#') {
            continue;
        }
        const std::vector<std::string> columns = parted(line, '\t');
        ASSERT_EQ(columns.size(), 5U) << line;
        const Formula formula = formula_of(recipe_in(columns[0]));
        EXPECT_NEAR(asked_of(formula, columns[1]),
                    std::strtod(columns[2].c_str(), nullptr),
                    std::strtod(columns[3].c_str(), nullptr))
            << line;
        ++rows;
    }
    EXPECT_GE(rows, 15U);
}

// Hamelman 2004, read: one gram of fresh yeast is 0.40 g active dry and 0.33 g instant.
TEST(analyse, yeast_is_told_as_fresh) {
    const Formula instant =
        formula_of(recipe_of({some(500, "plain white flour"), some(3.3, "instant yeast")}));
    ASSERT_TRUE(instant.yeast_as_fresh);
    EXPECT_NEAR(instant.yeast_as_fresh->likely.count(), 10.0, 1e-9);
    EXPECT_LT(instant.yeast_as_fresh->low, instant.yeast_as_fresh->likely);
    const Formula dry =
        formula_of(recipe_of({some(500, "plain white flour"), some(4, "active dry yeast")}));
    EXPECT_NEAR(dry.yeast_as_fresh->likely.count(), 10.0, 1e-9);
    EXPECT_FALSE(formula_of(recipe_of({some(500, "plain white flour")})).yeast_as_fresh);
}

TEST(analyse, toppings_glazes_and_what_is_optional_stay_out_of_the_dough) {
    Ingredient glaze = some(51, "egg EU/UK medium");
    glaze.text = "1 medium egg, beaten, to glaze";
    Ingredient filling = some(200, "whole milk");
    filling.part = "filling";
    Ingredient maybe = some(30, "honey");
    maybe.optional = true;
    const Formula formula = formula_of(
        recipe_of({some(500, "plain white flour"), some(300, "water"), glaze, filling, maybe}));
    EXPECT_NEAR(formula.dough.count(), 800.0, 1e-9);
    EXPECT_NEAR(formula.total_hydration.count(), 60.0, 1e-9);
    EXPECT_EQ(formula.items.size(), 5U);
    EXPECT_FALSE(formula.items[2].in_dough);
}

TEST(analyse, flour_with_more_for_dusting_is_flour_of_the_dough) {
    Ingredient flour = some(500, "plain white flour");
    flour.text = "500 g plain flour, plus more for dusting";
    EXPECT_NEAR(formula_of(recipe_of({flour})).flour.count(), 500.0, 1e-9);
}

TEST(analyse, fruit_and_seeds_hold_their_water_and_mash_gives_it) {
    Ingredient mash = some(200, "boiled potato");
    mash.text = "200 g boiled potato, mashed";
    const Formula whole = formula_of(
        recipe_of({some(500, "plain white flour"), some(250, "water"), some(100, "raisins")}));
    EXPECT_NEAR(whole.total_hydration.count(), 50.0, 1e-9);
    EXPECT_NEAR(whole.dough.count(), 850.0, 1e-9);
    // USDA SR27 11367, read: boiled potato is 77.46 % water.
    const Formula mashed =
        formula_of(recipe_of({some(500, "plain white flour"), some(250, "water"), mash}));
    EXPECT_NEAR(mashed.total_hydration.count(), 50.0 + 100.0 * 0.7746 * 200.0 / 500.0, 0.05);
}

TEST(analyse, a_leaven_that_the_recipe_makes_counts_once) {
    Ingredient seed = some(20, "liquid sourdough starter");
    seed.part = "leaven";
    Ingredient fed = some(110, "plain white flour");
    fed.part = "leaven";
    Ingredient leaven = some(240, "liquid sourdough starter");
    leaven.text = "240 g leaven";
    const Formula formula = formula_of(
        recipe_of({seed, fed, some(800, "plain white flour"), some(560, "water"), leaven}));
    EXPECT_NEAR(formula.flour.count(), 920.0, 1e-6);
    EXPECT_NEAR(formula.dough.count(), 1600.0, 1e-9);
}

TEST(analyse, a_leaven_that_states_its_hydration_is_taken_at_its_word) {
    Ingredient leaven = some(180, "liquid sourdough starter");
    leaven.text = "180 g levain, 80% hyd.";
    const Formula formula = formula_of(recipe_of({some(400, "plain white flour"), leaven}));
    EXPECT_NEAR(formula.flour.count(), 500.0, 1e-9); // 180 / 1.8 = 100
    EXPECT_NEAR(formula.hydration.count(), 16.0, 1e-9);
}

TEST(analyse, without_the_weight_of_any_flour_there_are_no_percentages) {
    Ingredient flour = some(0, "plain white flour");
    flour.grams = std::nullopt;
    const auto formula = analyse(recipe_of({flour, some(300, "water")}), known());
    ASSERT_FALSE(formula.has_value());
    EXPECT_EQ(formula.error().front().code, "dough_unweighed");
}

TEST(remarks, an_ordinary_loaf_is_nothing_unusual) {
    EXPECT_TRUE(formula_of(recipe_of({some(500, "strong white bread flour"),
                                      some(325, "water"),
                                      some(10, "table salt"),
                                      some(7, "instant yeast")}))
                    .remarks.empty());
}

TEST(remarks, much_water_asks_for_wet_hands) {
    const Formula wet = formula_of(recipe_of({some(500, "strong white bread flour"),
                                              some(390, "water"),
                                              some(10, "table salt"),
                                              some(7, "instant yeast")}));
    ASSERT_EQ(wet.remarks.size(), 1U);
    EXPECT_EQ(wet.remarks[0].code, "water_unusual");
    EXPECT_EQ(wet.remarks[0].what, "78 % water: plain loaves and rolls have 54 to 70 %");
    EXPECT_NE(wet.remarks[0].do_this.find("wet your hands"), std::string::npos);
}

TEST(remarks, the_kind_of_bread_is_in_its_title) {
    Recipe recipe = recipe_of({some(500, "strong white bread flour"),
                               some(390, "water"),
                               some(10, "table salt"),
                               some(7, "instant yeast")});
    recipe.title = "Focaccia for the train";
    EXPECT_TRUE(formula_of(recipe).remarks.empty());
}

TEST(remarks, a_slip_of_the_pen_is_asked_about) {
    const auto loaf = [](double salt, double yeast) {
        return formula_of(recipe_of({some(500, "strong white bread flour"),
                                     some(325, "water"),
                                     some(salt, "table salt"),
                                     some(yeast, "instant yeast")}));
    };
    const Formula salty = loaf(15.5, 7);
    ASSERT_EQ(salty.remarks.size(), 1U);
    EXPECT_EQ(salty.remarks[0].severity, Severity::warning);
    EXPECT_EQ(salty.remarks[0].what, "3.1 % salt: plain loaves and rolls have 1.5 to 2.2 %");
    EXPECT_NE(salty.remarks[0].do_this.find("typing error"), std::string::npos);
    EXPECT_TRUE(says(loaf(1, 7), "salt_unusual"));
    EXPECT_TRUE(says(loaf(10, 70), "yeast_unusual"));
    EXPECT_TRUE(says(loaf(10, 0.3), "yeast_unusual"));
}

TEST(remarks, missing_salt_is_named_and_unweighed_salt_is_not) {
    const std::vector<Ingredient> rest{
        some(500, "strong white bread flour"), some(325, "water"), some(7, "instant yeast")};
    EXPECT_TRUE(says(formula_of(recipe_of(rest)), "salt_unusual"));
    std::vector<Ingredient> salted = rest;
    salted.push_back(some(0, "table salt"));
    salted.back().grams = std::nullopt;
    EXPECT_FALSE(says(formula_of(recipe_of(salted)), "salt_unusual"));
}

TEST(remarks, flour_by_the_cup_shows_what_that_does_to_the_water) {
    Ingredient cups = some(375, "plain white flour");
    cups.grams = Band<Grams>{Grams(339), Grams(375), Grams(426)};
    const Formula formula =
        formula_of(recipe_of({cups, some(240, "water"), some(7, "table salt")}));
    ASSERT_TRUE(says(formula, "flour_by_volume"));
    const auto remark =
        std::find_if(formula.remarks.begin(), formula.remarks.end(), [](const Diagnostic& one) {
            return one.code == "flour_by_volume";
        });
    // 240 / 426 and 240 / 339.
    EXPECT_NE(remark->what.find("56 to 71 % water"), std::string::npos) << remark->what;
}

TEST(remarks, use_codes_of_the_catalogue) {
    const Formula odd = formula_of(recipe_of({some(500, "strong white bread flour"),
                                              some(100, "water"),
                                              some(200, "granulated sugar"),
                                              some(300, "unsalted butter"),
                                              some(40, "table salt"),
                                              some(90, "instant yeast")}));
    EXPECT_GE(odd.remarks.size(), 4U);
    for (const Diagnostic& remark : odd.remarks) {
        EXPECT_TRUE(is_known_code(remark.code)) << remark.code;
        EXPECT_FALSE(remark.do_this.empty());
    }
}

Recipe any_recipe() {
    const std::vector<std::string> items{"strong white bread flour",
                                         "water",
                                         "whole milk",
                                         "table salt",
                                         "instant yeast",
                                         "unsalted butter",
                                         "liquid sourdough starter",
                                         "honey",
                                         "raisins",
                                         "egg"};
    std::vector<Ingredient> all{some(*rc::gen::inRange(50, 2000), "plain white flour")};
    for (const std::string& item : items) {
        if (*rc::gen::arbitrary<bool>()) {
            const double grams = *rc::gen::inRange(1, 900);
            all.push_back(some(grams, item));
            all.back().grams = Band<Grams>{Grams(grams * 0.9), Grams(grams), Grams(grams * 1.2)};
        }
    }
    return recipe_of(all);
}

RC_GTEST_PROP(analyse, percentages_stay_when_the_recipe_is_scaled, ()) {
    const Recipe recipe = any_recipe();
    const double factor = *rc::gen::inRange(1, 400) / 40.0;
    const auto grown = scale(recipe, FactorWanted{factor}, known());
    RC_ASSERT(grown.has_value());
    const Formula before = formula_of(recipe);
    const Formula after = formula_of(*grown);
    const auto near = [](double a, double b) {
        return std::abs(a - b) <= 1e-9 * std::max(1.0, std::abs(b));
    };
    RC_ASSERT(near(after.flour.count(), before.flour.count() * factor));
    RC_ASSERT(near(after.hydration.count(), before.hydration.count()));
    RC_ASSERT(near(after.total_hydration.count(), before.total_hydration.count()));
    RC_ASSERT(near(after.prefermented.count(), before.prefermented.count()));
    RC_ASSERT(after.items.size() == before.items.size());
    for (std::size_t i = 0; i < after.items.size(); ++i) {
        RC_ASSERT(near(after.items[i].percent.count(), before.items[i].percent.count()));
    }
    RC_ASSERT(after.remarks.size() == before.remarks.size());
}

RC_GTEST_PROP(analyse, the_whole_is_its_parts, ()) {
    const Recipe recipe = any_recipe();
    const Formula formula = formula_of(recipe);
    double flour = 0.0;
    double water = 0.0;
    double all = 0.0;
    for (const DoughPart& part : dough_parts(recipe, known())) {
        RC_ASSERT(part.flour.count() + part.water.count() <= part.grams.count() * (1.0 + 1e-12));
        RC_ASSERT(part.water_inside <= part.grams);
        flour += part.flour.count();
        water += part.water.count() + part.water_inside.count();
        all += part.grams.count();
    }
    RC_ASSERT(std::abs(formula.flour.count() - flour) < 1e-9);
    RC_ASSERT(std::abs(formula.dough.count() - all) < 1e-9);
    RC_ASSERT(std::abs(formula.total_hydration.count() * flour / 100.0 - water) < 1e-6);
    RC_ASSERT(formula.hydration <= formula.total_hydration);
}

} // namespace
} // namespace loafwright::formula
