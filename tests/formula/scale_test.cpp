// SPDX-License-Identifier: Apache-2.0
//
// Other sizes: there and back, published sums of dough, and tins against solid geometry.

#include "engine/formula/amount_words.hpp"
#include "engine/formula/scale.hpp"
#include "engine/formula/tin.hpp"
#include "tests/formula/recipes.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <string>

namespace loafwright::formula {
namespace {

Recipe scaled(const Recipe& recipe, const Target& target) {
    auto out = scale(recipe, target, known());
    EXPECT_TRUE(out.has_value());
    return out.value_or(Recipe{});
}

Recipe plain_loaf() {
    return recipe_of({some(500, "strong white bread flour"),
                      some(325, "water"),
                      some(10, "table salt"),
                      some(7, "instant yeast")});
}

Recipe rolls() {
    Recipe recipe = plain_loaf();
    recipe.title = "Rolls";
    recipe.pieces = 12.0;
    return recipe;
}

// Gisslen's worked example, read: percentages come to 377.5, wanted 3000 g: flour 794.7 g.
TEST(scale, a_dough_weight_gives_the_published_flour) {
    const Recipe recipe = recipe_of({some(100, "plain white flour"), some(277.5, "water")});
    EXPECT_NEAR(
        scaled(recipe, DoughWanted{Grams(3000)}).ingredients[0].grams->likely.count(), 794.7, 0.05);
    EXPECT_NEAR(
        scaled(recipe, DoughWanted{Grams(96)}).ingredients[0].grams->likely.count(), 25.43, 0.005);
}

// 62 % of 25,000 g of flour is 15,500 g of water.
TEST(scale, a_factor_multiplies_every_amount) {
    const Recipe recipe = recipe_of({some(1000, "plain white flour"), some(620, "water")});
    EXPECT_NEAR(
        scaled(recipe, FactorWanted{25.0}).ingredients[1].grams->likely.count(), 15500.0, 1e-9);
}

TEST(scale, a_loaf_grows_and_rolls_become_more) {
    const Recipe loaf = scaled(plain_loaf(), FactorWanted{2.0});
    EXPECT_FALSE(loaf.pieces);
    ASSERT_TRUE(loaf.written_for);
    EXPECT_NEAR(loaf.written_for->factor, 2.0, 1e-12);
    const Recipe more = scaled(rolls(), FactorWanted{2.0});
    EXPECT_NEAR(*more.pieces, 24.0, 1e-12);
    EXPECT_NEAR(*more.written_for->pieces, 12.0, 1e-12);
}

TEST(scale, pieces_keep_their_weight) {
    const Recipe few = scaled(rolls(), PiecesWanted{8.0});
    EXPECT_NEAR(dough_mass(few, known()) / dough_mass(rolls(), known()), 8.0 / 12.0, 1e-12);
    const Recipe two = scaled(plain_loaf(), PiecesWanted{2.0});
    EXPECT_NEAR(dough_mass(two, known()).count(), 1684.0, 1e-9);
    EXPECT_EQ(two.pieces, 2.0);
    EXPECT_FALSE(scaled(two, PiecesWanted{1.0}).pieces);
    EXPECT_FALSE(scaled(two, PiecesWanted{1.0}).written_for);
}

TEST(scale, substitutes_go_along_and_words_stay) {
    Recipe recipe = plain_loaf();
    recipe.ingredients[3].substitutes.push_back({"fresh yeast", "fresh yeast", exactly(Grams(15))});
    const Recipe half = scaled(recipe, FactorWanted{0.5});
    EXPECT_NEAR(half.ingredients[3].substitutes[0].grams->likely.count(), 7.5, 1e-12);
    EXPECT_EQ(half.ingredients[3].text, recipe.ingredients[3].text);
}

TEST(scale, without_weights_only_a_share_of_the_recipe_can_be_asked_for) {
    Recipe recipe = recipe_of({some(0, "plain white flour")});
    recipe.ingredients[0].grams = std::nullopt;
    const auto refused = scale(recipe, DoughWanted{Grams(500)}, known());
    ASSERT_FALSE(refused.has_value());
    EXPECT_EQ(refused.error().front().code, "dough_unweighed");
    EXPECT_TRUE(scale(recipe, FactorWanted{2.0}, known()).has_value());
}

RC_GTEST_PROP(scale, there_and_back_gives_the_recipe, ()) {
    Recipe recipe = plain_loaf();
    if (*rc::gen::arbitrary<bool>()) {
        recipe.pieces = *rc::gen::inRange(1, 30);
    }
    const double factor = *rc::gen::inRange(1, 1000) / 64.0;
    const Recipe back = scaled(scaled(recipe, FactorWanted{factor}), FactorWanted{1.0 / factor});
    for (std::size_t i = 0; i < recipe.ingredients.size(); ++i) {
        const Band<Grams>& was = *recipe.ingredients[i].grams;
        const Band<Grams>& is = *back.ingredients[i].grams;
        RC_ASSERT(std::abs(is.likely / was.likely - 1.0) < 1e-12);
        RC_ASSERT(std::abs(is.low / was.low - 1.0) < 1e-12);
        RC_ASSERT(std::abs(is.high / was.high - 1.0) < 1e-12);
    }
    RC_ASSERT(back.pieces == recipe.pieces);
    RC_ASSERT(!back.written_for.has_value());
}

RC_GTEST_PROP(scale, every_way_of_asking_for_a_size_agrees, ()) {
    const double factor = *rc::gen::inRange(1, 1000) / 64.0;
    const Recipe by_factor = scaled(rolls(), FactorWanted{factor});
    const Recipe by_pieces = scaled(rolls(), PiecesWanted{12.0 * factor});
    const Recipe by_dough = scaled(rolls(), DoughWanted{dough_mass(rolls(), known()) * factor});
    for (const Recipe* other : {&by_pieces, &by_dough}) {
        RC_ASSERT(std::abs(*other->pieces / *by_factor.pieces - 1.0) < 1e-12);
        RC_ASSERT(std::abs(dough_mass(*other, known()) / dough_mass(by_factor, known()) - 1.0) <
                  1e-12);
    }
}

TEST(tin, holds_its_box) {
    EXPECT_NEAR(
        volume({Millimetres(230), Millimetres(130), Millimetres(70)}).count(), 2093.0, 1e-9);
}

// Against slices of a hundredth of a millimetre; a square base that shrinks to a point is a
// pyramid, a third of its box (Euclid XII.7).
TEST(tin, with_sloping_sides_holds_what_its_slices_hold) {
    const TinSize rim{Millimetres(230), Millimetres(130), Millimetres(70)};
    const int slices = 7000;
    double sum = 0.0;
    for (int i = 0; i < slices; ++i) {
        const double up = (i + 0.5) / slices;
        sum += (205.0 + 25.0 * up) * (112.0 + 18.0 * up) * 70.0 / slices;
    }
    EXPECT_NEAR(volume(rim, Millimetres(205), Millimetres(112)).count(), sum / 1000.0, 1e-3);
    EXPECT_NEAR(volume({Millimetres(100), Millimetres(100), Millimetres(90)},
                       Millimetres(0),
                       Millimetres(0))
                    .count(),
                300.0,
                1e-9);
    EXPECT_NEAR(volume(rim, Millimetres(230), Millimetres(130)).count(), volume(rim).count(), 1e-9);
}

// Common practice, from memory: the "2 lb" tin, 23 x 13 x 7 cm, takes about 900 g of white dough.
TEST(tin, of_two_pounds_takes_two_pounds_of_dough) {
    const Recipe recipe =
        scaled(plain_loaf(), TinWanted{{Millimetres(230), Millimetres(130), Millimetres(70)}});
    EXPECT_NEAR(dough_mass(recipe, known()).count(), 900.0, 45.0);
    ASSERT_TRUE(recipe.tin);
    EXPECT_EQ(recipe.tin->length, Millimetres(230));
}

TEST(tin, one_loaf_comes_of_rolls_and_two_of_two) {
    const TinWanted tin{{Millimetres(230), Millimetres(130), Millimetres(70)}};
    EXPECT_EQ(scaled(rolls(), tin).pieces, 1.0);
    Recipe two = plain_loaf();
    two.title = "Two white loaves";
    two.pieces = 2.0;
    EXPECT_NEAR(dough_mass(scaled(two, tin), known()).count(),
                2.0 * dough_mass(scaled(plain_loaf(), tin), known()).count(),
                1e-9);
}

TEST(tin, every_family_has_a_fill_in_order) {
    for (const DoughFamily family : {DoughFamily::lean,
                                     DoughFamily::enriched,
                                     DoughFamily::wholegrain,
                                     DoughFamily::sourdough,
                                     DoughFamily::flatbread,
                                     DoughFamily::quick}) {
        const TinFillRow* row = tin_fill_for(known(), family);
        ASSERT_NE(row, nullptr);
        EXPECT_FALSE(row->source.empty());
        // Raw dough weighs about 1.1 kg a litre: no tin is filled to the rim.
        EXPECT_LT(row->per_litre.high, Grams(1100));
    }
}

TEST(measured, whole_grams_and_spoons_below_three) {
    const IngredientRow* yeast = ingredient_named(known(), "instant yeast");
    EXPECT_EQ(measured(Grams(500.4), nullptr).weight, "500 g");
    EXPECT_EQ(measured(Grams(7.0), yeast).weight, "7 g");
    EXPECT_EQ(measured(Grams(7.0), yeast).also, "");
    // 3.1 g a teaspoon: 1.55 g is half of one.
    EXPECT_EQ(measured(Grams(1.55), yeast).also, "about ½ tsp");
    EXPECT_EQ(measured(Grams(0.1), yeast).also, "a pinch");
}

TEST(measured, eggs_are_whole_where_they_nearly_are) {
    const IngredientRow* egg = ingredient_named(known(), "egg EU/UK medium");
    EXPECT_EQ(measured(Grams(102.0), egg).also, "2 eggs");
    EXPECT_EQ(measured(Grams(51.0), egg).also, "1 egg");
    EXPECT_EQ(measured(Grams(76.5), egg).also, "about 1.5 eggs");
}

} // namespace
} // namespace loafwright::formula
