// SPDX-License-Identifier: Apache-2.0
//
// Yeast for yeast, against published pairs.

#include "engine/formula/analyse.hpp"
#include "engine/formula/swap.hpp"
#include "tests/formula/recipes.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <string>

namespace loafwright::formula {
namespace {

using dough::YeastForm;

Recipe with(const std::string& yeast, double grams) {
    return recipe_of({some(500, "plain white flour"), some(grams, yeast), some(325, "water")});
}

double weight_after(const Recipe& recipe, YeastForm form) {
    return swap(recipe, form, known()).ingredients[1].grams->likely.count();
}

// Hamelman 2004, read: 1 fresh is 0.40 active dry and 0.33 instant. A household quarter ounce of
// dry is two thirds of an ounce of compressed, 0.375, and a published formula takes 1.5 oz of
// instant or 4.5 oz of fresh, 0.333 (both read): within a tenth.
TEST(swap, yeast_goes_by_published_pairs) {
    EXPECT_NEAR(weight_after(with("fresh yeast", 20), YeastForm::active_dry), 8.0, 1e-9);
    EXPECT_NEAR(weight_after(with("fresh yeast", 20), YeastForm::instant), 6.6, 1e-9);
    EXPECT_NEAR(weight_after(with("active dry yeast", 0.25), YeastForm::fresh), 2.0 / 3.0, 0.07);
    EXPECT_NEAR(weight_after(with("instant yeast", 1.5), YeastForm::fresh), 4.5, 0.1);
}

TEST(swap, takes_the_new_name_and_nothing_else) {
    const Recipe swapped = swap(with("instant yeast", 7), YeastForm::fresh, known());
    EXPECT_EQ(swapped.ingredients[1].item, "fresh yeast");
    ASSERT_NE(ingredient_named(known(), swapped.ingredients[1].known_as), nullptr);
    EXPECT_EQ(*swapped.ingredients[0].grams, exactly(Grams(500)));
    EXPECT_EQ(swap(with("instant yeast", 7), YeastForm::instant, known()).ingredients[1].grams,
              exactly(Grams(7)));
}

RC_GTEST_PROP(swap, there_and_back_gives_the_weight_and_the_work_stays, ()) {
    const auto name = [](YeastForm form) {
        return form == YeastForm::fresh        ? std::string("fresh yeast")
               : form == YeastForm::active_dry ? std::string("active dry yeast")
                                               : std::string("instant yeast");
    };
    const auto from =
        *rc::gen::element(YeastForm::fresh, YeastForm::active_dry, YeastForm::instant);
    const auto to = *rc::gen::element(YeastForm::fresh, YeastForm::active_dry, YeastForm::instant);
    const double grams = *rc::gen::inRange(1, 5000) / 16.0;
    const Recipe recipe = with(name(from), grams);
    const Recipe there = swap(recipe, to, known());
    const Recipe back = swap(there, from, known());
    RC_ASSERT(back.ingredients[1].known_as == name(from));
    RC_ASSERT(std::abs(back.ingredients[1].grams->likely.count() / grams - 1.0) < 1e-12);
    const auto before = analyse(recipe, known());
    const auto after = analyse(there, known());
    RC_ASSERT(std::abs(after->yeast_as_fresh->likely / before->yeast_as_fresh->likely - 1.0) <
              1e-12);
}

} // namespace
} // namespace loafwright::formula
