// SPDX-License-Identifier: Apache-2.0
//
// A bread made otherwise, as a whole. The judge is a plain account of the gas, minute by minute,
// with yeast that grows; it shares only the rates and the figure for growth with the room.
#include "engine/dough/curve.hpp"
#include "engine/dough/lump.hpp"
#include "engine/fitting/night.hpp"
#include "engine/fitting/otherwise.hpp"
#include "engine/fitting/rolls.hpp"
#include "engine/fitting/words.hpp"
#include "tests/fitting/recipes.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace loafwright::fitting {
namespace {

const Knowledge& knowledge() {
    static const Knowledge built = built_in_knowledge();
    return built;
}

FittedRecipe loaf_at(double room_c) {
    return fit(tin_loaf(), kitchen_at(room_c), knowledge());
}

const FittedStep& step_of_kind(const FittedRecipe& recipe, StepKind kind) {
    return *std::find_if(recipe.steps.begin(), recipe.steps.end(), [kind](const auto& step) {
        return step.kind == kind;
    });
}

Grams yeast_weighed(const FittedRecipe& recipe) {
    const auto yeast = std::find_if(recipe.recipe.ingredients.begin(),
                                    recipe.recipe.ingredients.end(),
                                    [](const auto& one) { return one.item == "instant yeast"; });
    return yeast->grams->likely;
}

/// Gas of each wait in turn, in per cent of fresh yeast times hours at 27 °C: half-minute steps,
/// the dough carried from wait to wait, its yeast growing by 0.08 per cent an hour at 27 °C.
std::vector<double> gas_of(const FittedRecipe& told, const FittedRecipe& made, Celsius fridge) {
    std::vector<double> gas;
    const double grams = yeast_weighed(made).count();
    double yeast = 100.0 * 3.0 * grams / 500.0; // instant is a third of fresh (common practice)
    double t = -1.0;
    for (std::size_t f = 0; f < made.steps.size(); ++f) {
        const auto& rising = told.steps[f].rising;
        if (!rising) {
            continue;
        }
        t = t < 0.0 ? rising->dough.degrees() : t;
        const bool cold = made.steps[f].place == Place::fridge;
        const double place = cold ? fridge.degrees() : rising->stands.degrees();
        const double tau =
            cold ? dough::time_constant({rising->mass, 0.0, dough::still_air}).likely.count()
                 : rising->time_constant.count();
        double made_here = 0.0;
        for (std::int64_t half = 0; half < 2 * made.steps[f].minutes.likely; ++half) {
            const double hours = dough::rate_of(dough::Curve::gas, Celsius(t)) /
                                 dough::rate_of(dough::Curve::gas, Celsius(27.0)) / 120.0;
            made_here += yeast * hours;
            yeast += 0.08 * hours;
            t += (place - t) * 0.5 / tau;
        }
        gas.push_back(made_here);
    }
    return gas;
}

TEST(otherwise, names_are_read_back) {
    for (const Otherwise how : all_otherwise) {
        EXPECT_EQ(otherwise_named(name_of(how)), how);
    }
    EXPECT_FALSE(otherwise_named("toast"));
}

TEST(otherwise, another_dose_makes_the_same_gas_in_every_wait) {
    for (const double room : {18.0, 21.0, 25.0}) {
        const FittedRecipe told = loaf_at(room);
        const std::vector<double> wanted = gas_of(told, told, Celsius(5.0));
        for (const Otherwise how : {Otherwise::more_yeast, Otherwise::less_yeast}) {
            const auto made = made_otherwise(told, kitchen_at(room), how);
            ASSERT_TRUE(made) << room;
            const std::vector<double> gas = gas_of(told, made->recipe, Celsius(5.0));
            ASSERT_EQ(gas.size(), 2U);
            for (std::size_t k = 0; k < gas.size(); ++k) {
                // A wait is told in fives, so a short one is off by up to a tenth.
                EXPECT_NEAR(gas[k] / wanted[k], 1.0, 0.1) << name_of(how) << " at " << room;
            }
        }
    }
}

TEST(otherwise, a_night_makes_the_same_gas_and_weighs_what_it_needs) {
    for (const double room : {19.0, 22.0}) {
        const FittedRecipe told = loaf_at(room);
        const std::vector<double> wanted = gas_of(told, told, Celsius(5.0));
        for (const Otherwise how : {Otherwise::fridge_prove, Otherwise::slow_rise}) {
            const auto made = made_otherwise(told, kitchen_at(room), how);
            ASSERT_TRUE(made) << name_of(how);
            EXPECT_LT(yeast_weighed(made->recipe), Grams(7.0));
            EXPECT_EQ(yeast_weighed(made->recipe), made->recipe.yeast->grams);
            const std::vector<double> gas = gas_of(told, made->recipe, Celsius(5.0));
            for (std::size_t k = 0; k < gas.size(); ++k) {
                // A night is as long as people sleep: from nearly risen to the knock-back's limit.
                EXPECT_GT(gas[k] / wanted[k], nearly_risen - 0.05) << name_of(how) << room << k;
                EXPECT_LT(gas[k] / wanted[k], over_proved + 0.05) << name_of(how) << room << k;
            }
        }
    }
}

TEST(otherwise, the_words_say_the_wait_and_the_dose) {
    const FittedRecipe told = loaf_at(21.0);
    const auto half = made_otherwise(told, kitchen_at(21.0), Otherwise::less_yeast);
    ASSERT_TRUE(half);
    EXPECT_EQ(half->change, "half the yeast, 3.5 g instead of 7 g");
    EXPECT_EQ(plain_text(half->recipe.notes.front())
                  .find("Half the yeast, 3.5 g instead of 7 g; "
                        "the first rise takes "),
              0U);
    const auto night = made_otherwise(told, kitchen_at(21.0), Otherwise::fridge_prove);
    ASSERT_TRUE(night);
    EXPECT_EQ(night->change.find("a night in the fridge for the prove with "), 0U) << night->change;
    const FittedStep& prove = step_of_kind(night->recipe, StepKind::prove);
    EXPECT_TRUE(prove.stretch);
    EXPECT_EQ(prove.place, Place::fridge);
    EXPECT_GT(step_of_kind(night->recipe, StepKind::rise).minutes.likely,
              step_of_kind(told, StepKind::rise).minutes.likely);
    for (const Otherwise how : all_otherwise) {
        EXPECT_FALSE(made_otherwise(half->recipe, kitchen_at(21.0), how)) << "one change at a time";
    }
}

TEST(otherwise, nothing_that_does_not_suit_is_made) {
    Reading sponge = tin_loaf();
    Step ferment = timed(step_of(StepKind::ferment, "Leave the sponge overnight."), 480, 600);
    sponge.recipe.steps.insert(sponge.recipe.steps.begin() + 1, ferment);
    const FittedRecipe with_sponge = fit(sponge, kitchen_at(21.0), knowledge());
    EXPECT_FALSE(made_otherwise(with_sponge, kitchen_at(21.0), Otherwise::less_yeast));
    EXPECT_FALSE(made_otherwise(with_sponge, kitchen_at(21.0), Otherwise::slow_rise));
    Reading folded = tin_loaf();
    Step fold = step_of(StepKind::fold, "Fold twice.");
    fold.during = 2;
    folded.recipe.steps.push_back(fold);
    const FittedRecipe with_folds = fit(folded, kitchen_at(21.0), knowledge());
    EXPECT_FALSE(made_otherwise(with_folds, kitchen_at(21.0), Otherwise::fridge_rise));
    EXPECT_FALSE(made_otherwise(with_folds, kitchen_at(21.0), Otherwise::slow_rise));
    const FittedRecipe plain = loaf_at(21.0);
    EXPECT_FALSE(made_otherwise(plain, kitchen_at(21.0), Otherwise::warm_rises)) << "no warm spot";
    Kitchen oven_spot = kitchen_at(21.0);
    oven_spot.warm_spot = Celsius(28.0);
    oven_spot.warm_spot_is_oven = true;
    EXPECT_FALSE(made_otherwise(plain, oven_spot, Otherwise::warm_prove)) << "the bake wants it";
    EXPECT_TRUE(made_otherwise(plain, oven_spot, Otherwise::warm_rise));
}

TEST(otherwise, the_kitchen_nobody_described_still_has_other_ways) {
    const FittedRecipe told = fit(tin_loaf(), Kitchen{}, knowledge());
    for (const Otherwise how : {Otherwise::rolls, Otherwise::more_yeast, Otherwise::fridge_prove}) {
        EXPECT_TRUE(made_otherwise(told, Kitchen{}, how)) << name_of(how);
    }
}

TEST(otherwise, rolls_are_done_in_less_and_nothing_speaks_of_a_tin) {
    const FittedRecipe told = loaf_at(21.0);
    const auto made = made_otherwise(told, kitchen_at(21.0), Otherwise::rolls);
    ASSERT_TRUE(made);
    const FittedRecipe& rolls = made->recipe;
    EXPECT_EQ(made->change, "the same dough as rolls");
    EXPECT_EQ(rolls.recipe.pieces, 10.0); // 847 g, 85 g each
    const auto& bake = step_of_kind(rolls, StepKind::bake).minutes;
    // Common practice: rolls of this size bake in 12 to 20 minutes at 220 °C.
    EXPECT_GE(bake.likely, 12);
    EXPECT_LE(bake.likely, 20);
    EXPECT_EQ(rolls.cut_after_minutes.likely, 20);
    EXPECT_LE(rolls.cut_after_minutes.likely, rolls.best_after_minutes.low);
    EXPECT_EQ(step_of_kind(rolls, StepKind::rise).minutes,
              step_of_kind(told, StepKind::rise).minutes);
    for (const FittedStep& step : rolls.steps) {
        if (step.step) {
            EXPECT_EQ(rolls.recipe.steps[*step.step].text.find("tin"), std::string::npos);
        }
    }
    EXPECT_FALSE(made_otherwise(rolls, kitchen_at(21.0), Otherwise::rolls));
}

RC_GTEST_PROP(otherwise, every_way_is_a_bread_that_can_be_planned, ()) {
    const double room = *rc::gen::inRange(15, 30);
    Reading reading = tin_loaf();
    reading.recipe.ingredients[3].grams = exactly(Grams(*rc::gen::inRange(1, 20)));
    Kitchen kitchen = kitchen_at(room);
    kitchen.warm_spot = Celsius(*rc::gen::inRange(20, 45));
    kitchen.fridge = Celsius(*rc::gen::inRange(1, 9));
    const FittedRecipe told = fit(reading, kitchen, knowledge());
    for (const Otherwise how : all_otherwise) {
        const auto made = made_otherwise(told, kitchen, how);
        if (!made) {
            continue;
        }
        RC_ASSERT(!made->change.empty());
        RC_ASSERT(made->recipe.notes.size() >= 1U);
        for (const FittedStep& step : made->recipe.steps) {
            RC_ASSERT(0 <= step.minutes.low);
            RC_ASSERT(step.minutes.low <= step.minutes.likely);
            RC_ASSERT(step.minutes.likely <= step.minutes.high);
            RC_ASSERT(!step.reason.empty());
        }
        for (const Ingredient& ingredient : made->recipe.recipe.ingredients) {
            RC_ASSERT(!ingredient.grams || ingredient.grams->likely >= least_weighed);
        }
    }
}

} // namespace
} // namespace loafwright::fitting
