// SPDX-License-Identifier: Apache-2.0
//
// Leaven for yeast and back. The formula is the judge of weights, since it counts a leaven as the
// flour and water it is made of; the times are held against common practice.
#include "engine/dough/sourdough.hpp"
#include "engine/formula/analyse.hpp"
#include "engine/formula/leaven.hpp"
#include "engine/formula/raised_by.hpp"
#include "engine/formula/step_edits.hpp"
#include "engine/knowledge/family.hpp"
#include "tests/formula/recipes.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace loafwright::formula {
namespace {

Step step_of(StepKind kind, std::optional<double> minutes = std::nullopt) {
    Step step;
    step.kind = kind;
    if (minutes) {
        step.minutes = TimedBand{exactly(Minutes(*minutes)), Basis::stated};
    }
    return step;
}

Recipe yeasted(double flour, double water, double salt) {
    Recipe recipe = recipe_of({some(flour, "strong white bread flour"),
                               some(flour / 4.0, "wholemeal flour"),
                               some(water, "water"),
                               some(salt, "table salt"),
                               some(7.0, "instant yeast")});
    recipe.title = "Tin loaf";
    recipe.steps = {step_of(StepKind::mix),
                    step_of(StepKind::knead, 10),
                    step_of(StepKind::rise, 75),
                    step_of(StepKind::shape),
                    step_of(StepKind::prove, 50),
                    step_of(StepKind::preheat),
                    step_of(StepKind::bake, 35)};
    recipe.steps[5].during = 4;
    return recipe;
}

Recipe raised(const Recipe& recipe, RaisedBy by) {
    const auto out = raised_by(recipe, by, known());
    EXPECT_TRUE(out) << (out ? "" : out.error().front().what);
    return out ? *out : Recipe{};
}

const Step& first_of(const Recipe& recipe, StepKind kind) {
    return *std::find_if(recipe.steps.begin(), recipe.steps.end(), [kind](const Step& step) {
        return step.kind == kind;
    });
}

std::string said(const Recipe& recipe) {
    std::string all;
    for (const Phrase& change : recipe.changes) {
        for (const Phrase::Part& part : change.parts) {
            if (const auto* words = std::get_if<std::string>(&part)) {
                all += *words;
            }
        }
    }
    return all;
}

double salt_in(const Recipe& recipe) {
    double sum = 0.0;
    for (const Ingredient& one : recipe.ingredients) {
        sum += one.known_as == "table salt" ? one.grams->likely.count() : 0.0;
    }
    return sum;
}

// A fifth of the flour in the leaven, at 100 % hydration: within the trade's 15 to 25 % (common
// practice).
TEST(leaven, takes_its_flour_and_water_out_of_the_dough) {
    const Recipe recipe = yeasted(400, 330, 10);
    const Recipe out = raised(recipe, RaisedBy::leaven);
    const auto before = analyse(recipe, known());
    const auto after = analyse(out, known());
    EXPECT_NEAR(after->flour.count(), 500.0, 1e-9);
    EXPECT_NEAR(after->hydration.count(), before->hydration.count(), 1e-9);
    EXPECT_NEAR(after->prefermented.count(), 20.0, 1e-9);
    EXPECT_FALSE(after->yeast_as_fresh);
    EXPECT_EQ(family_of(out, known()), DoughFamily::sourdough);
    EXPECT_NE(said(out).find("With leaven instead of yeast: the evening before"),
              std::string::npos);
}

// 1 : 5 : 5 at 21 °C ripens overnight and a dough with a fifth of leaven takes a working day
// (common practice: 8 to 14 hours; 4 to 7 for the first rise and 1.5 to 4 for the prove).
TEST(leaven, brings_the_steps_that_cost_time) {
    const Recipe out = raised(yeasted(400, 330, 10), RaisedBy::leaven);
    ASSERT_EQ(out.steps.size(), 9U);
    EXPECT_EQ(out.steps[0].kind, StepKind::mix);
    EXPECT_EQ(out.steps[0].part, "leaven");
    const Step& ripens = out.steps[1];
    EXPECT_EQ(ripens.kind, StepKind::ferment);
    EXPECT_EQ(ripens.minutes->basis, Basis::computed);
    EXPECT_GE(ripens.minutes->minutes.likely, Minutes(8 * 60));
    EXPECT_LE(ripens.minutes->minutes.likely, Minutes(14 * 60));
    const Band<Minutes>& rise = first_of(out, StepKind::rise).minutes->minutes;
    const Band<Minutes>& prove = first_of(out, StepKind::prove).minutes->minutes;
    EXPECT_GE(rise.likely, Minutes(4 * 60));
    EXPECT_LE(rise.likely, Minutes(7 * 60));
    EXPECT_GE(prove.likely, Minutes(90));
    EXPECT_LE(prove.likely, Minutes(4 * 60));
    EXPECT_LT(rise.low, rise.likely);
    EXPECT_LT(rise.likely, rise.high);
    // Both together are what the growth of a fifth of leaven takes; a fifth of the flour is
    // wholemeal, which feeds it.
    const auto all = dough::ripening_time(0.2, Celsius(21), dough::LeavenState::ripe);
    EXPECT_NEAR((rise.likely + prove.likely).count(), all->likely.count() / 1.04, 5.0);
    // What ran inside the prove still does.
    EXPECT_EQ(out.steps[7].during, 6U);
}

TEST(leaven, a_night_in_the_fridge_stays_a_night) {
    Recipe recipe = yeasted(400, 330, 10);
    recipe.steps[4].place = Place::fridge;
    recipe.steps[4].minutes = TimedBand{exactly(Minutes(720)), Basis::stated};
    const Recipe out = raised(recipe, RaisedBy::leaven);
    EXPECT_EQ(first_of(out, StepKind::prove).minutes->minutes.likely, Minutes(720));
    EXPECT_EQ(first_of(out, StepKind::prove).minutes->basis, Basis::stated);
    EXPECT_GT(first_of(out, StepKind::rise).minutes->minutes.likely, Minutes(180));
}

TEST(leaven, folds_keep_their_share_of_a_longer_rise) {
    Recipe recipe = yeasted(400, 330, 10);
    Step fold = step_of(StepKind::fold, 1);
    fold.during = 2;
    fold.repeat = Minutes(25);
    recipe.steps.push_back(fold);
    const Recipe out = raised(recipe, RaisedBy::leaven);
    const Step& rise = first_of(out, StepKind::rise);
    const Step& folded = out.steps.back();
    EXPECT_NEAR(rise.minutes->minutes.likely / *folded.repeat, 3.0, 0.1);
}

TEST(leaven, waking_the_yeast_is_gone) {
    Recipe recipe = yeasted(400, 330, 10);
    recipe.steps.insert(recipe.steps.begin(), step_of(StepKind::activate, 10));
    recipe.steps[6].during = 5;
    const Recipe out = raised(recipe, RaisedBy::leaven);
    EXPECT_EQ(std::count_if(out.steps.begin(),
                            out.steps.end(),
                            [](const Step& step) { return step.kind == StepKind::activate; }),
              0);
    EXPECT_EQ(out.steps[7].during, 6U);
}

// A rich dough goes by bands, not by promises.
TEST(leaven, a_rich_dough_may_take_longer_still) {
    Recipe rich = yeasted(400, 330, 10);
    rich.ingredients.push_back(some(90, "butter"));
    const auto high = [](const Recipe& recipe) {
        return first_of(raised(recipe, RaisedBy::leaven), StepKind::rise).minutes->minutes.high;
    };
    EXPECT_GT(high(rich), high(yeasted(400, 330, 10)) * 1.4);
}

// 1.1 to 1.3 times as quick for wholemeal and rye alone (from memory, as dough::wholegrain_factor
// has it).
TEST(leaven, rye_and_wholemeal_feed_it) {
    const auto rise = [](const char* first, const char* second) {
        Recipe recipe = yeasted(400, 330, 10);
        recipe.ingredients[0] = some(400, first);
        recipe.ingredients[1] = some(100, second);
        return first_of(raised(recipe, RaisedBy::leaven), StepKind::rise)
            .minutes->minutes.likely.count();
    };
    const double white = rise("strong white bread flour", "strong white bread flour");
    EXPECT_NEAR(rise("wholemeal rye flour", "wholemeal flour"), white / 1.2, 2.6); // told in fives
    EXPECT_LT(rise("strong white bread flour", "wholemeal flour"), white);
}

TEST(leaven, no_leaven_without_water_or_beside_a_sponge) {
    const auto code = [](const Recipe& recipe) {
        const auto out = raised_by(recipe, RaisedBy::leaven, known());
        return out ? std::string("none") : out.error().front().code;
    };
    EXPECT_EQ(code(yeasted(400, 60, 10)), "leaven_does_not_fit");
    Recipe sponge = yeasted(400, 330, 10);
    sponge.ingredients[1].part = "leaven";
    EXPECT_EQ(code(sponge), "leaven_does_not_fit");
    Recipe vague = yeasted(400, 330, 10);
    vague.ingredients[0].grams.reset();
    vague.ingredients[1].grams.reset();
    EXPECT_EQ(code(vague), "leaven_does_not_fit");
    EXPECT_EQ(code(recipe_of({some(500, "plain white flour"), some(300, "water")})),
              "raised_otherwise");
}

// Common practice: 1 % of instant yeast, and times of an afternoon.
TEST(leaven, yeast_instead_takes_the_leaven_apart_and_an_afternoon) {
    Recipe recipe = recipe_of({some(450, "strong white bread flour"),
                               some(280, "water"),
                               some(100, "liquid sourdough starter"),
                               some(10, "table salt")});
    recipe.steps = {step_of(StepKind::mix),
                    step_of(StepKind::ferment, 600),
                    step_of(StepKind::mix),
                    step_of(StepKind::rise, 300),
                    step_of(StepKind::prove, 150),
                    step_of(StepKind::bake, 40)};
    recipe.steps[2].after_night = true;
    const auto before = analyse(recipe, known());
    const Recipe out = raised(recipe, RaisedBy::instant);
    const auto after = analyse(out, known());
    EXPECT_NEAR(after->flour.count(), before->flour.count(), 1e-9);
    EXPECT_NEAR(after->hydration.count(), before->hydration.count(), 1e-9);
    EXPECT_EQ(after->prefermented.count(), 0.0);
    const auto yeast =
        std::find_if(out.ingredients.begin(), out.ingredients.end(), [](const Ingredient& one) {
            return one.item == "instant yeast";
        });
    ASSERT_NE(yeast, out.ingredients.end());
    EXPECT_NEAR(yeast->grams->likely.count(), 0.01 * before->flour.count(), 1e-9);
    ASSERT_EQ(out.steps.size(), 4U);
    EXPECT_FALSE(out.steps[0].after_night);
    EXPECT_EQ(out.steps[1].minutes->basis, Basis::assumed);
    // 60 to 120 minutes for 1 % of instant yeast at 24 to 27 °C (TM 10-412 and others, read).
    EXPECT_EQ(out.steps[1].minutes->minutes.likely, Minutes(90));
    EXPECT_NE(said(out).find("less"), std::string::npos);
    EXPECT_EQ(raised(recipe, RaisedBy::leaven).changes.size(), 0U);
}

TEST(leaven, a_dough_that_is_mixed_once_and_left_keeps_its_mixing) {
    Recipe recipe = recipe_of({some(450, "strong white bread flour"),
                               some(320, "water"),
                               some(60, "liquid sourdough starter")});
    recipe.steps = {step_of(StepKind::mix),
                    step_of(StepKind::ferment, 720),
                    step_of(StepKind::shape),
                    step_of(StepKind::bake, 40)};
    const Recipe out = raised(recipe, RaisedBy::fresh);
    ASSERT_EQ(out.steps.size(), 4U);
    EXPECT_EQ(out.steps[1].kind, StepKind::rise);
    EXPECT_LT(out.steps[1].minutes->minutes.likely, Minutes(180));
}

RC_GTEST_PROP(leaven, there_and_back_keeps_flour_water_and_salt, ()) {
    const double flour = *rc::gen::inRange(200, 3000) / 2.0;
    const double water = flour * 1.25 * *rc::gen::inRange(50, 90) / 100.0;
    const double salt = *rc::gen::inRange(1, 60) / 2.0;
    const Recipe recipe = yeasted(flour, water, salt);
    const auto by = *rc::gen::element(RaisedBy::fresh, RaisedBy::active_dry, RaisedBy::instant);
    const auto there = raised_by(recipe, RaisedBy::leaven, known());
    RC_ASSERT(there.has_value());
    const auto back = raised_by(*there, by, known());
    RC_ASSERT(back.has_value());
    const auto first = analyse(recipe, known());
    for (const Recipe* one : {&*there, &*back}) {
        const auto now = analyse(*one, known());
        RC_ASSERT(std::abs(now->flour / first->flour - 1.0) < 1e-12);
        RC_ASSERT(std::abs(now->hydration.count() / first->hydration.count() - 1.0) < 1e-12);
        RC_ASSERT(std::abs(salt_in(*one) - salt) < 1e-12);
    }
    RC_ASSERT(back->steps.size() == recipe.steps.size());
    for (std::size_t i = 0; i < recipe.steps.size(); ++i) {
        RC_ASSERT(back->steps[i].kind == recipe.steps[i].kind);
        RC_ASSERT(back->steps[i].during == recipe.steps[i].during);
    }
}

RC_GTEST_PROP(step_edits, taking_out_what_was_put_first_gives_the_steps_back, ()) {
    const std::size_t count = *rc::gen::inRange<std::size_t>(1, 9);
    std::vector<Step> steps;
    for (std::size_t i = 0; i < count; ++i) {
        Step step = step_of(StepKind::mix, static_cast<double>(i));
        if (*rc::gen::arbitrary<bool>()) {
            step.during = *rc::gen::inRange<std::size_t>(0, count);
        }
        if (*rc::gen::arbitrary<bool>()) {
            step.after = {*rc::gen::inRange<std::size_t>(0, count)};
        }
        steps.push_back(step);
    }
    std::vector<Step> now = steps;
    put_first(now, {step_of(StepKind::mix), step_of(StepKind::ferment)});
    std::vector<bool> out(now.size(), false);
    out[0] = out[1] = true;
    take_out(now, out);
    RC_ASSERT(now.size() == count);
    for (std::size_t i = 0; i < count; ++i) {
        RC_ASSERT(now[i].during == steps[i].during);
        RC_ASSERT(now[i].after == steps[i].after);
        RC_ASSERT(now[i].minutes->minutes.likely == steps[i].minutes->minutes.likely);
    }
}

} // namespace
} // namespace loafwright::formula
