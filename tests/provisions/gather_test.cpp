// SPDX-License-Identifier: Apache-2.0
//
// What to buy, what to have ready, what needs lead time, and allergens.

#include "engine/provisions/gather.hpp"
#include "tests/provisions/kitchen_table.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace loafwright {
namespace {

using provisions::table::ingredient;
using provisions::table::known;
using provisions::table::step;

using Texts = std::vector<std::string>;

Provisions gathered(const Recipe& recipe) {
    return gather(recipe, Kitchen{}, known());
}

const AllergenNote* note_of(const Provisions& all, const std::string& allergen) {
    const auto found =
        std::find_if(all.allergens.begin(), all.allergens.end(), [&](const AllergenNote& note) {
            return note.allergen == allergen;
        });
    return found == all.allergens.end() ? nullptr : &*found;
}

Texts kit_of(const std::string& text) {
    Recipe recipe;
    recipe.steps = {step(StepKind::mix, text)};
    return gathered(recipe).kit;
}

bool has(const Texts& all, const std::string& one) {
    return std::find(all.begin(), all.end(), one) != all.end();
}

TEST(provisions, amounts_of_an_item_are_added_in_the_order_of_the_recipe) {
    Recipe recipe;
    recipe.ingredients = {ingredient("100 g strong flour", "strong white bread flour", 100),
                          ingredient("70 g water", "water", 70),
                          ingredient("400 g strong flour", "strong white bread flour", 400)};
    recipe.ingredients[2].grams = Band<Grams>{Grams{390}, Grams{400}, Grams{420}};
    const Provisions all = gathered(recipe);
    ASSERT_EQ(all.buy.size(), 2U);
    EXPECT_EQ(all.buy[0].item, "strong white bread flour");
    EXPECT_EQ(*all.buy[0].grams, (Band<Grams>{Grams{490}, Grams{500}, Grams{520}}));
    EXPECT_EQ(all.buy[1].item, "water");
}

TEST(provisions, an_amount_without_grams_is_kept_as_it_is_written) {
    Recipe recipe;
    recipe.ingredients = {ingredient("2 tsp instant yeast", "instant yeast", 6.2),
                          ingredient("1 tsp instant yeast", "instant yeast", 3.1),
                          ingredient("10 g salt", "table salt", 10)};
    const Provisions all = gathered(recipe);
    EXPECT_EQ(all.buy[0].as_written, "2 tsp + 1 tsp");
    EXPECT_EQ(all.buy[1].as_written, "");
}

TEST(provisions, flour_for_dusting_stays_on_the_list_without_grams) {
    Recipe recipe;
    recipe.ingredients = {ingredient("semolina for dusting", "semolina"),
                          ingredient("500 g flour", "plain white flour", 500),
                          ingredient("more flour for the worktop", "plain white flour")};
    const Provisions all = gathered(recipe);
    ASSERT_EQ(all.buy.size(), 2U);
    EXPECT_FALSE(all.buy[0].grams.has_value());
    EXPECT_EQ(all.buy[1].grams->likely.count(), 500.0);
}

TEST(provisions, an_item_is_optional_only_when_every_line_of_it_is) {
    Recipe recipe;
    recipe.ingredients = {ingredient("10 g honey", "honey", 10),
                          ingredient("5 g seeds", "linseed", 5),
                          ingredient("5 g honey", "honey", 5)};
    recipe.ingredients[0].optional = true;
    recipe.ingredients[1].optional = true;
    const Provisions all = gathered(recipe);
    EXPECT_FALSE(all.buy[0].optional);
    EXPECT_TRUE(all.buy[1].optional);
}

TEST(provisions, a_leaven_that_the_recipe_makes_is_not_bought) {
    Recipe recipe;
    recipe.ingredients = {ingredient("20 g ripe starter", "liquid sourdough starter", 20),
                          ingredient("80 g water", "water", 80),
                          ingredient("all of the leaven", "liquid sourdough starter")};
    recipe.ingredients[0].part = "leaven";
    recipe.ingredients[1].part = "leaven";
    const Provisions all = gathered(recipe);
    ASSERT_EQ(all.buy.size(), 2U);
    EXPECT_EQ(all.buy[0].grams->likely.count(), 20.0);
}

TEST(provisions, boiling_water_for_one_part_does_not_make_all_of_it_boil) {
    Recipe recipe;
    recipe.ingredients = {ingredient("120 g boiling water", "water", 120),
                          ingredient("260 g water", "water", 260)};
    recipe.ingredients[0].item = "boiling water";
    recipe.ingredients[0].part = "soaker";
    recipe.ingredients[1].item = "water";
    for (Ingredient& one : recipe.ingredients) {
        one.known_as = "water";
    }
    const Provisions all = gathered(recipe);
    ASSERT_EQ(all.buy.size(), 1U);
    EXPECT_EQ(all.buy[0].item, "water");
    ASSERT_EQ(all.buy[0].shares.size(), 2U);
    EXPECT_EQ(all.buy[0].shares[0].part, "soaker");
    EXPECT_EQ(all.buy[0].shares[0].item, "boiling water");
    EXPECT_EQ(all.buy[0].shares[1].grams->likely.count(), 260.0);
}

RC_GTEST_PROP(provisions, no_gram_is_lost_or_made, ()) {
    const Texts items{"water", "table salt", "honey", "something else"};
    const auto amounts = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 2000));
    Recipe recipe;
    double before = 0.0;
    for (const int amount : amounts) {
        const std::string item = items[static_cast<std::size_t>(amount) % items.size()];
        recipe.ingredients.push_back(
            ingredient(std::to_string(amount) + " g " + item, item, amount));
        before += amount;
    }
    double after = 0.0;
    for (const ToBuy& one : gathered(recipe).buy) {
        after += one.grams->likely.count();
    }
    RC_ASSERT(after == before);
}

TEST(provisions, kit_comes_from_the_words_of_the_steps_each_once) {
    const Texts kit =
        kit_of("Mix in a bowl, turn out, roll out with a rolling pin, brush with milk; "
               "into a greased loaf tin. Mix the glaze in another bowl.");
    EXPECT_EQ(std::count(kit.begin(), kit.end(), "large bowl"), 1);
    EXPECT_TRUE(has(kit, "dough scraper"));
    EXPECT_TRUE(has(kit, "rolling pin"));
    EXPECT_TRUE(has(kit, "pastry brush"));
    EXPECT_TRUE(has(kit, "loaf tin"));
}

TEST(provisions, kit_that_is_denied_or_a_second_choice_is_left_out) {
    EXPECT_FALSE(has(kit_of("Knead by hand, no mixer needed"), "stand mixer with its hook"));
    EXPECT_TRUE(has(kit_of("Knead in a mixer"), "stand mixer with its hook"));
    const Texts basket = kit_of("Lay it in a banneton or a bowl lined with a cloth");
    EXPECT_TRUE(has(basket, "proving basket"));
    EXPECT_FALSE(has(basket, "large bowl"));
}

TEST(provisions, the_longer_of_two_phrases_decides_about_the_kit) {
    const Texts kit = kit_of("Set a tray of water on the floor of the oven");
    EXPECT_TRUE(has(kit, "roasting tin for water"));
    EXPECT_FALSE(has(kit, "baking tray"));
    EXPECT_FALSE(has(kit_of("Butter a muffin tin"), "loaf tin"));
}

TEST(provisions, what_measures_comes_from_the_ingredient_lines) {
    Recipe grams;
    grams.ingredients = {ingredient("500 g flour", "plain white flour", 500)};
    EXPECT_EQ(gathered(grams).kit, Texts{"scales"});
    Recipe cups;
    cups.ingredients = {ingredient("3 cups flour", "plain white flour", 375),
                        ingredient("1 tsp salt", "table salt", 6),
                        ingredient("200 ml water", "water", 200)};
    EXPECT_EQ(gathered(cups).kit, (Texts{"measuring cups", "measuring spoons", "measuring jug"}));
}

TEST(provisions, kit_knows_this_kitchens_mixer_tin_and_the_rack) {
    Recipe recipe;
    recipe.steps = {step(StepKind::knead, "Work it until smooth"),
                    step(StepKind::shape, "Roll it up and lay it in the tin"),
                    step(StepKind::cool, "Leave it until cold")};
    Kitchen kitchen;
    kitchen.mixing = MixingMethod::mixer;
    kitchen.tins = {Tin{"long blue", Millimetres{300}, Millimetres{110}, Millimetres{70}}};
    const Texts kit = gather(recipe, kitchen, known()).kit;
    EXPECT_TRUE(has(kit, "stand mixer with its hook"));
    EXPECT_TRUE(has(kit, "loaf tin (long blue)"));
    EXPECT_TRUE(has(kit, "rack to cool on"));
}

TEST(provisions, allergens_name_the_items_that_bring_them) {
    Recipe recipe;
    recipe.ingredients = {ingredient("500 g flour", "plain white flour", 500),
                          ingredient("100 g wholemeal", "wholemeal flour", 100),
                          ingredient("1 egg", "egg", 50),
                          ingredient("50 g walnuts", "walnuts", 50),
                          ingredient("30 g butter", "unsalted butter", 30)};
    const Provisions all = gathered(recipe);
    ASSERT_NE(note_of(all, "wheat (gluten)"), nullptr);
    EXPECT_EQ(note_of(all, "wheat (gluten)")->because,
              (Texts{"plain white flour", "wholemeal flour"}));
    EXPECT_NE(note_of(all, "egg"), nullptr);
    EXPECT_NE(note_of(all, "walnut (nuts)"), nullptr);
    EXPECT_EQ(note_of(all, "milk")->because, Texts{"unsalted butter"});
}

TEST(provisions, what_depends_on_the_packet_or_is_unknown_says_check_the_label) {
    Recipe recipe;
    recipe.ingredients = {ingredient("80 g raisins", "raisins", 80),
                          ingredient("1 sachet of crumble topping", "crumble topping")};
    const Provisions all = gathered(recipe);
    ASSERT_EQ(all.allergens.size(), 2U);
    EXPECT_EQ(all.allergens[0].allergen, "sulphites (check the label)");
    EXPECT_EQ(all.allergens[1].allergen, "not known to us (check the label)");
    EXPECT_EQ(all.allergens[1].because, Texts{"crumble topping"});
}

TEST(provisions, nothing_is_called_free_from_anything) {
    Recipe recipe;
    recipe.ingredients = {ingredient("200 g rice flour, gluten free", "white rice flour", 200)};
    const Provisions all = gathered(recipe);
    for (const AllergenNote& note : all.allergens) {
        EXPECT_EQ(note.allergen.find("free"), std::string::npos);
    }
    EXPECT_TRUE(std::any_of(all.cautions.begin(), all.cautions.end(), [](const Caution& caution) {
        return caution.code == "gluten_free_cross";
    }));
}

TEST(provisions, lead_time_comes_longest_first) {
    Recipe recipe;
    recipe.ingredients = {ingredient("60 g soft butter", "unsalted butter", 60),
                          ingredient("1 egg, at room temperature", "egg", 50),
                          ingredient("100 g active starter", "liquid sourdough starter", 100)};
    const Provisions all = gathered(recipe);
    ASSERT_EQ(all.ahead.size(), 3U);
    EXPECT_EQ(all.ahead[0].hours_before, 8.0);
    EXPECT_NE(all.ahead[0].what.find("feed the leaven"), std::string::npos);
    EXPECT_EQ(all.ahead[1].hours_before, 1.0);
    EXPECT_EQ(all.ahead[2].hours_before, 1.0);
}

TEST(provisions, melted_butter_and_cold_eggs_need_no_lead_time) {
    Recipe recipe;
    recipe.ingredients = {ingredient("60 g butter, melted", "unsalted butter", 60),
                          ingredient("2 eggs", "egg", 100)};
    EXPECT_TRUE(gathered(recipe).ahead.empty());
}

TEST(provisions, an_empty_recipe_needs_nothing) {
    const Provisions all = gathered(Recipe{});
    EXPECT_TRUE(all.buy.empty());
    EXPECT_TRUE(all.kit.empty());
    EXPECT_TRUE(all.ahead.empty());
    EXPECT_TRUE(all.allergens.empty());
    EXPECT_TRUE(all.cautions.empty());
}

} // namespace
} // namespace loafwright
