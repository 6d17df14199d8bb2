// SPDX-License-Identifier: Apache-2.0
//
// One list for several breads.

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

Provisions loaf() {
    Recipe recipe;
    recipe.ingredients = {ingredient("500 g strong flour", "strong white bread flour", 500),
                          ingredient("330 g lukewarm water", "lukewarm water", 330),
                          ingredient("2 tsp salt", "table salt", 12)};
    recipe.ingredients[1].known_as = "water";
    recipe.steps = {step(StepKind::mix, "Mix in a large bowl."),
                    step(StepKind::bake, "Bake in a loaf tin.")};
    return gather(recipe, Kitchen{}, known());
}

Provisions rolls() {
    Recipe recipe;
    recipe.ingredients = {ingredient("450 g strong flour", "strong white bread flour", 450),
                          ingredient("110 ml water", "water", 110),
                          ingredient("40 g soft butter", "soft butter", 40),
                          ingredient("8 g salt", "table salt", 8),
                          ingredient("sesame seeds", "sesame seeds")};
    recipe.ingredients[2].known_as = "unsalted butter";
    recipe.steps = {step(StepKind::mix, "Mix in a large bowl."),
                    step(StepKind::bake, "Bake on a baking tray.")};
    return gather(recipe, Kitchen{}, known());
}

const ToBuy* bought(const Provisions& all, const std::string& item) {
    const auto found = std::find_if(
        all.buy.begin(), all.buy.end(), [&item](const ToBuy& one) { return one.item == item; });
    return found == all.buy.end() ? nullptr : &*found;
}

bool is_same(const Provisions& a, const Provisions& b) {
    const auto buys_alike = [](const ToBuy& x, const ToBuy& y) {
        return x.item == y.item && x.known_as == y.known_as && x.grams == y.grams &&
               x.as_written == y.as_written && x.optional == y.optional;
    };
    return a.kit == b.kit &&
           std::equal(a.buy.begin(), a.buy.end(), b.buy.begin(), b.buy.end(), buys_alike) &&
           std::equal(a.ahead.begin(),
                      a.ahead.end(),
                      b.ahead.begin(),
                      b.ahead.end(),
                      [](const Ahead& x, const Ahead& y) {
                          return x.what == y.what && x.hours_before == y.hours_before;
                      }) &&
           std::equal(a.allergens.begin(),
                      a.allergens.end(),
                      b.allergens.begin(),
                      b.allergens.end(),
                      [](const AllergenNote& x, const AllergenNote& y) {
                          return x.allergen == y.allergen && x.because == y.because;
                      }) &&
           std::equal(a.cautions.begin(),
                      a.cautions.end(),
                      b.cautions.begin(),
                      b.cautions.end(),
                      [](const Caution& x, const Caution& y) { return x.code == y.code; });
}

TEST(together, the_same_thing_is_bought_once) {
    const Provisions all = together({loaf(), rolls()});
    ASSERT_NE(bought(all, "strong white bread flour"), nullptr);
    EXPECT_EQ(bought(all, "strong white bread flour")->grams->likely, Grams(950));
    // "lukewarm water" and "water" come from one tap.
    ASSERT_NE(bought(all, "water"), nullptr);
    EXPECT_EQ(bought(all, "water")->grams->likely, Grams(440));
    EXPECT_EQ(bought(all, "lukewarm water"), nullptr);
    // Two teaspoons are not what both breads take.
    EXPECT_EQ(bought(all, "table salt")->grams->likely, Grams(20));
    EXPECT_EQ(bought(all, "table salt")->as_written, "");
}

TEST(together, kit_ahead_allergens_and_cautions_stand_once) {
    const Provisions all = together({loaf(), rolls()});
    for (const char* kit : {"large bowl", "loaf tin", "baking tray"}) {
        EXPECT_EQ(std::count(all.kit.begin(), all.kit.end(), kit), 1) << kit;
    }
    EXPECT_EQ(all.ahead.size(), 1U);
    EXPECT_EQ(
        std::count_if(all.allergens.begin(),
                      all.allergens.end(),
                      [](const AllergenNote& note) { return note.allergen == "wheat (gluten)"; }),
        1);
    std::vector<std::string> codes;
    for (const Caution& caution : all.cautions) {
        codes.push_back(caution.code);
    }
    std::sort(codes.begin(), codes.end());
    EXPECT_EQ(std::adjacent_find(codes.begin(), codes.end()), codes.end());
    EXPECT_TRUE(std::is_sorted(
        all.cautions.begin(), all.cautions.end(), [](const Caution& a, const Caution& b) {
            return a.weight > b.weight;
        }));
}

TEST(together, one_bread_keeps_its_own_list) {
    const Provisions own = rolls();
    EXPECT_TRUE(is_same(together({own}), own));
    EXPECT_EQ(together({own}).normal, own.normal);
}

RC_GTEST_PROP(together, the_order_of_the_breads_changes_nothing, ()) {
    const std::vector<std::string> items{
        "water", "table salt", "honey", "egg", "plain white flour"};
    std::vector<Provisions> each;
    const int breads = *rc::gen::inRange(2, 6);
    for (int bread = 0; bread < breads; ++bread) {
        Recipe recipe;
        for (const std::string& item : items) {
            if (*rc::gen::arbitrary<bool>()) {
                const double grams = *rc::gen::inRange(1, 10000) / 7.0;
                recipe.ingredients.push_back(
                    ingredient(*rc::gen::element<std::string>("1 cup of it", "some"), item, grams));
                recipe.ingredients.back().optional = *rc::gen::arbitrary<bool>();
            }
        }
        recipe.steps = {step(
            StepKind::bake,
            *rc::gen::element<std::string>("Bake in a loaf tin.", "Bake on a tray, with steam."))};
        each.push_back(gather(recipe, Kitchen{}, known()));
    }
    const Provisions once = together(each);
    std::reverse(each.begin(), each.end());
    RC_ASSERT(is_same(together(each), once));
    std::rotate(each.begin(), each.begin() + 1, each.end());
    RC_ASSERT(is_same(together(each), once));
}

} // namespace
} // namespace loafwright
