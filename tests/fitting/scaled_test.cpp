// SPDX-License-Identifier: Apache-2.0
//
// Times of a recipe in another size: the bake against figures worked out for the same loaf in
// another model run, the prove against the physics' own direction.
#include "engine/fitting/fit.hpp"
#include "engine/formula/scale.hpp"
#include "tests/fitting/recipes.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loafwright {
namespace {

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

Reading scaled(const Reading& reading, const Target& target) {
    Reading out = reading;
    const auto recipe = scale(reading.recipe, target, known());
    EXPECT_TRUE(recipe.has_value());
    out.recipe = recipe.value_or(Recipe{});
    return out;
}

// So that the dough weighs what the published figures are for.
Reading loaf_of_900() {
    Reading reading = scaled(tin_loaf(), DoughWanted{Grams(900)});
    reading.recipe.written_for = std::nullopt;
    return reading;
}

const FittedStep& step_of_kind(const FittedRecipe& fitted, StepKind kind) {
    for (const FittedStep& step : fitted.steps) {
        if (step.kind == kind) {
            return step;
        }
    }
    ADD_FAILURE() << "no such step";
    return fitted.steps.front();
}

FittedStep baked(const Reading& reading, const Kitchen& kitchen = {}) {
    return step_of_kind(fit(reading, kitchen, known()), StepKind::bake);
}

// Reference on heat, computed: 35 min for 900 g become 25 min for 450 g in its own tin.
TEST(fit_scaled, a_bake_follows_the_weight_of_the_loaf) {
    const Reading loaf = loaf_of_900();
    EXPECT_EQ(baked(loaf).minutes.likely, 35);
    EXPECT_NEAR(static_cast<double>(baked(scaled(loaf, FactorWanted{0.5})).minutes.likely), 25, 1);
}

TEST(fit_scaled, it_says_why_the_bake_is_another) {
    const FittedStep bake = baked(scaled(loaf_of_900(), FactorWanted{1.5}));
    EXPECT_EQ(bake.basis, Basis::computed);
    EXPECT_NE(bake.reason.find("1350 g of dough instead of 900"), std::string::npos) << bake.reason;
}

// The heat models were looked at up to 130 mm; beyond, no figure is made up.
TEST(fit_scaled, a_loaf_beyond_what_is_known_keeps_the_time_of_the_recipe) {
    const FittedStep bake = baked(scaled(loaf_of_900(), FactorWanted{2.0}));
    EXPECT_EQ(bake.minutes.likely, 35);
    EXPECT_EQ(bake.basis, Basis::stated);
}

TEST(fit_scaled, more_loaves_of_the_same_weight_bake_as_long) {
    EXPECT_EQ(baked(scaled(loaf_of_900(), PiecesWanted{3.0})).minutes.likely, 35);
}

TEST(fit_scaled, back_in_its_own_size_the_recipe_has_its_own_times) {
    const Reading back = scaled(scaled(loaf_of_900(), FactorWanted{3.0}), FactorWanted{1.0 / 3.0});
    const FittedRecipe before = fit(loaf_of_900(), kitchen_at(18), known());
    const FittedRecipe after = fit(back, kitchen_at(18), known());
    ASSERT_EQ(before.steps.size(), after.steps.size());
    for (std::size_t i = 0; i < before.steps.size(); ++i) {
        EXPECT_EQ(before.steps[i].minutes.likely, after.steps[i].minutes.likely) << i;
    }
}

// A broad flat loaf is through sooner than a narrow deep one of the same dough.
TEST(fit_scaled, the_tin_it_is_for_is_the_tin_it_bakes_in) {
    const auto in_tin = [](double length, double width, double height) {
        return scaled(loaf_of_900(),
                      TinWanted{{Millimetres(length), Millimetres(width), Millimetres(height)}});
    };
    const Reading deep = in_tin(230, 130, 70);
    const Reading flat = in_tin(299, 200, 35);
    EXPECT_GT(baked(deep).minutes.likely, baked(flat).minutes.likely + 5);
    // The tins in the cupboard are not asked.
    Kitchen kitchen;
    kitchen.tins = {Tin{"small", Millimetres(150), Millimetres(80), Millimetres(60)}};
    EXPECT_EQ(baked(deep, kitchen).minutes.likely, baked(deep).minutes.likely);
}

RC_GTEST_PROP(fit_scaled, a_heavier_loaf_never_bakes_shorter, ()) {
    const double factor = *rc::gen::inRange(40, 130) / 100.0;
    const double more = factor * *rc::gen::inRange(101, 120) / 100.0;
    const auto lighter = baked(scaled(loaf_of_900(), FactorWanted{factor}));
    const auto heavier = baked(scaled(loaf_of_900(), FactorWanted{more}));
    RC_ASSERT(heavier.minutes.likely >= lighter.minutes.likely);
    RC_ASSERT(heavier.minutes.low <= heavier.minutes.likely);
    RC_ASSERT(heavier.minutes.likely <= heavier.minutes.high);
}

// The dough comes warmer from mixing than the cold kitchen: a large lump keeps that for longer.
TEST(fit_scaled, a_large_lump_cools_slower_and_rises_sooner_in_the_cold) {
    const auto rise = [](const Reading& reading) {
        return step_of_kind(fit(reading, kitchen_at(14), known()), StepKind::rise).minutes.likely;
    };
    const Reading loaf = loaf_of_900();
    EXPECT_LT(rise(scaled(loaf, FactorWanted{4.0})), rise(loaf));
}

} // namespace
} // namespace loafwright
