// SPDX-License-Identifier: Apache-2.0
//
// What a kitchen's bakes taught, in the lengths that fit gives.
#include "engine/fitting/learned.hpp"
#include "engine/knowledge/family.hpp"
#include "tests/fitting/recipes.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

namespace loafwright {
namespace {

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

KindFactor
factor(StepKind kind, const std::string& leaven, double log_mean, std::size_t bakes = 5) {
    KindFactor made;
    made.kind = kind;
    made.leaven = leaven;
    made.log_mean = log_mean;
    made.factor_deviation = 0.035;
    made.within_deviation = 0.08;
    made.prior_deviation = 0.2625;
    made.bakes = bakes;
    made.group_bakes = bakes;
    return made;
}

const FittedStep& first(const FittedRecipe& recipe, StepKind kind) {
    return *std::find_if(recipe.steps.begin(), recipe.steps.end(), [kind](const FittedStep& step) {
        return step.kind == kind;
    });
}

Kitchen taught(std::vector<KindFactor> factors) {
    Kitchen kitchen = kitchen_at(21.0);
    kitchen.factors.kinds = std::move(factors);
    return kitchen;
}

bool alike(const FittedRecipe& a, const FittedRecipe& b) {
    return a.notes == b.notes && std::equal(a.steps.begin(),
                                            a.steps.end(),
                                            b.steps.begin(),
                                            b.steps.end(),
                                            [](const FittedStep& x, const FittedStep& y) {
                                                return x.kind == y.kind && x.minutes == y.minutes &&
                                                       x.basis == y.basis && x.reason == y.reason &&
                                                       x.usual_minutes == y.usual_minutes;
                                            });
}

TEST(learned, a_slow_kitchen_gets_longer_waits_that_say_where_they_come_from) {
    const Reading loaf = tin_loaf();
    const std::string leaven = leaven_of(loaf.recipe, known());
    ASSERT_EQ(leaven, "yeast");
    const FittedRecipe usual = fit(loaf, kitchen_at(21.0), known());
    const FittedRecipe here =
        fit(loaf, taught({factor(StepKind::prove, leaven, std::log(1.5))}), known());
    const FittedStep& before = first(usual, StepKind::prove);
    const FittedStep& after = first(here, StepKind::prove);
    EXPECT_EQ(before.minutes, exactly<std::int64_t>(45));
    // 45 x 1.5 = 67.5; with sqrt(0.035² + 0.08²) = 0.0873 of the logarithm: 60.4 to 75.5.
    EXPECT_EQ(after.minutes, (Band<std::int64_t>{60, 70, 75}));
    EXPECT_EQ(after.basis, Basis::learned);
    EXPECT_EQ(after.usual_minutes, before.minutes);
    EXPECT_EQ(after.reason.find("from your bakes: 25 min longer than we would have said"), 0U)
        << after.reason;
    EXPECT_TRUE(std::any_of(here.notes.begin(), here.notes.end(), [](const Phrase& note) {
        return note == phrase("From your bakes: the prove takes 25 min longer than we would have "
                              "said.");
    }));
    EXPECT_EQ(first(here, StepKind::rise).basis, first(usual, StepKind::rise).basis);
}

TEST(learned, what_no_bake_told_of_changes_nothing) {
    const Reading loaf = tin_loaf();
    const FittedRecipe usual = fit(loaf, kitchen_at(21.0), known());
    EXPECT_TRUE(
        alike(usual, fit(loaf, taught({factor(StepKind::prove, "yeast", 0.4, 0)}), known())));
    EXPECT_TRUE(
        alike(usual, fit(loaf, taught({factor(StepKind::prove, "rye starter", 0.4)}), known())));
}

TEST(learned, hands_take_whole_minutes_and_the_weighing_that_we_put_in_too) {
    const Reading loaf = tin_loaf();
    const FittedRecipe here = fit(loaf,
                                  taught({factor(StepKind::knead, "", std::log(1.3)),
                                          factor(StepKind::weigh, "", std::log(0.5))}),
                                  known());
    EXPECT_EQ(first(here, StepKind::knead).minutes.likely, 13);
    EXPECT_EQ(first(here, StepKind::weigh).basis, Basis::learned);
    EXPECT_LE(first(here, StepKind::weigh).minutes.likely, 6);
}

TEST(learned, the_ovens_offset_goes_into_its_setting_unless_the_kitchen_states_one) {
    Kitchen kitchen = kitchen_at(21.0);
    kitchen.factors.oven = {CelsiusDifference(-17.3), CelsiusDifference(4.0), 3};
    const FittedRecipe here = fit(tin_loaf(), kitchen, known());
    EXPECT_EQ(first(here, StepKind::bake).oven, Celsius(235.0)); // 220 and 15 more
    EXPECT_TRUE(std::any_of(here.notes.begin(), here.notes.end(), [](const Phrase& note) {
        return note == phrase("Your oven runs {} cooler than it is set, by your thermometer; the "
                              "settings here allow for it.",
                              {CelsiusDifference(15.0)});
    }));
    kitchen.oven.offset = CelsiusDifference(10.0);
    EXPECT_EQ(first(fit(tin_loaf(), kitchen, known()), StepKind::bake).oven, Celsius(210.0));
}

TEST(learned, what_the_text_leaves_open_beyond_kitchens_stays_open) {
    // Ends a factor of nine apart: a deviation of 0.857, far beyond the 0.2625 of kitchens.
    const Band<double> wide = fitting::with_factor({60, 180, 540}, factor(StepKind::rise, "", 0.0));
    EXPECT_GT(wide.high / wide.low, 7.0);
    const Band<double> narrow =
        fitting::with_factor({80, 90, 100}, factor(StepKind::rise, "", 0.0));
    EXPECT_NEAR(narrow.high / narrow.low, std::exp(2 * 1.28155 * std::hypot(0.035, 0.08)), 1e-6);
}

RC_GTEST_PROP(learned, bands_stay_in_order_and_move_with_the_factor, ()) {
    const double low = *rc::gen::inRange(0, 100);
    const double likely = low + *rc::gen::inRange(0, 100);
    const double high = likely + *rc::gen::inRange(0, 300);
    const double mean = *rc::gen::inRange(-100, 101) / 100.0;
    const Band<double> band =
        fitting::with_factor({low, likely, high}, factor(StepKind::rise, "", mean));
    RC_ASSERT(band.low <= band.likely && band.likely <= band.high);
    RC_ASSERT(std::fabs(band.likely - likely * std::exp(mean)) < 1e-9 * (1.0 + likely));
    const Band<double> more =
        fitting::with_factor({low, likely, high}, factor(StepKind::rise, "", mean + 0.1));
    RC_ASSERT(more.low >= band.low && more.likely >= band.likely && more.high >= band.high);
}

} // namespace
} // namespace loafwright
