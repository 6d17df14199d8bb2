// SPDX-License-Identifier: Apache-2.0
//
// "By" holds in about four bakes out of five: bakes are drawn from the bands and counted. A step is
// drawn by the rule that the bands stand for: likely in the middle, low and high the tenth and the
// ninetieth percentile.
#include "engine/planning/margin.hpp"
#include "tests/planning/breads.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loafwright::planning {

namespace {

// A small generator of our own, so that the counts are the same on every machine.
class Dice {
public:
    double normal() {
        const double u = unit();
        const double v = unit();
        return std::sqrt(-2.0 * std::log(u)) * std::cos(6.283185307179586 * v);
    }

private:
    double unit() {
        state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
        return (static_cast<double>(state_ >> 11U) + 0.5) / 9007199254740992.0;
    }

    std::uint64_t state_ = 20261128;
};

double drawn(Dice& dice, const Band<std::int64_t>& band) {
    const double z = dice.normal();
    const double side =
        static_cast<double>(z < 0.0 ? band.likely - band.low : band.high - band.likely) /
        1.2815515655;
    return static_cast<double>(band.likely) + z * side;
}

double share_in_time(const FittedRecipe& recipe, const Plan& plan) {
    Dice dice;
    const int bakes = 20000;
    int in_time = 0;
    for (int n = 0; n < bakes; ++n) {
        double minutes = 0.0;
        for (const FittedStep& step : recipe.steps) {
            const bool counts = step.kind != StepKind::preheat && step.kind != StepKind::cool &&
                                step.kind != StepKind::serve;
            minutes += counts ? drawn(dice, step.minutes) : 0.0;
        }
        minutes += static_cast<double>(recipe.cut_after_minutes.likely);
        in_time +=
            minutes <= static_cast<double>(minutes_between(plan.start, plan.eat.likely)) ? 1 : 0;
    }
    return static_cast<double>(in_time) / bakes;
}

} // namespace

TEST(margin, eat_by_holds_in_four_bakes_out_of_five_when_time_is_short) {
    FittedRecipe recipe = tin_loaf();
    Day day = day_at("2026-11-28T10:00:00Z");
    // The earliest meal that is granted is where the margin is all there is.
    day.eat_by = at("2026-11-28T14:30:00Z");
    PlanOutcome outcome = plan(recipe, Kitchen{}, day);
    while (!std::holds_alternative<Plan>(outcome)) {
        day.eat_by = later_by_minutes(*day.eat_by, 5);
        outcome = plan(recipe, Kitchen{}, day);
    }
    const double share = share_in_time(recipe, plan_in(outcome));
    EXPECT_GE(share, 0.78);
    EXPECT_LE(share, 0.92); // and not by waiting for hours
}

TEST(margin, wide_and_lopsided_bands_keep_the_promise) {
    for (const Band<std::int64_t>& rise : {Band<std::int64_t>{80, 80, 200},
                                           {20, 80, 80},
                                           {60, 80, 100},
                                           {40, 80, 160},
                                           {80, 80, 80}}) {
        FittedRecipe recipe = tin_loaf();
        recipe.steps[3].minutes = rise;
        recipe.best_after_minutes = recipe.cut_after_minutes;
        Day day = day_at("2026-11-28T06:00:00Z");
        day.eat_by = at("2026-11-28T18:00:00Z");
        const double share = share_in_time(recipe, plan_in(plan(recipe, Kitchen{}, day)));
        EXPECT_GE(share, 0.78) << rise.low << " " << rise.high;
    }
}

TEST(margin, steps_without_doubt_need_no_margin) {
    const Spread none = spread_of(
        std::vector<Band<std::int64_t>>{exactly<std::int64_t>(60), exactly<std::int64_t>(5)});
    EXPECT_EQ(none.margin, 0);
    EXPECT_EQ(none.early, 0);
    EXPECT_EQ(none.late, 0);
}

// One step alone: the eightieth percentile of a normal curve lies 0.8416 deviations out, the
// ninetieth 1.2816 (standard tables). 0.8416 / 1.2816 of 60 minutes is 39.4.
TEST(margin, one_even_band_gives_its_own_percentiles) {
    const Spread one = spread_of(std::vector<Band<std::int64_t>>{{60, 120, 180}});
    EXPECT_EQ(one.margin, 40);
    EXPECT_EQ(one.late, 60);
    EXPECT_EQ(one.early, -60);
}

RC_GTEST_PROP(margin, a_wider_step_never_needs_less_and_the_sum_never_more_than_all_highs, ()) {
    std::vector<Band<std::int64_t>> bands;
    std::int64_t all_high = 0;
    for (int n = *rc::gen::inRange(1, 8); n > 0; --n) {
        const std::int64_t likely = *rc::gen::inRange(10, 300);
        const Band<std::int64_t> band{likely - *rc::gen::inRange<std::int64_t>(0, likely),
                                      likely,
                                      likely + *rc::gen::inRange<std::int64_t>(0, 200)};
        bands.push_back(band);
        all_high += std::max(band.high - band.likely, band.likely - band.low);
    }
    const Spread before = spread_of(bands);
    RC_ASSERT(before.early <= 0 && 0 <= before.margin && before.margin <= before.late);
    RC_ASSERT(before.late <= all_high + 1);
    bands.front().high += 30;
    RC_ASSERT(spread_of(bands).margin >= before.margin);
}

} // namespace loafwright::planning
