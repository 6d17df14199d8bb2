// SPDX-License-Identifier: Apache-2.0
//
// What a wait could be instead: printed anchors, sums done by hand, and the promises under random
// doughs. A plain integration by minutes judges what a night makes; it shares only the rates.
#include "engine/dough/curve.hpp"
#include "engine/dough/lump.hpp"
#include "engine/fitting/night.hpp"
#include "engine/fitting/options.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace loafwright::fitting {
namespace {

using dough::YeastForm;

Minutes cooling_of_a_lump(double grams) {
    return dough::time_constant({Grams(grams), 0.0, dough::still_air}).likely;
}

/// A lean dough with baker's yeast at 24 °C in a room of 24 °C.
Rising at_24(StepKind kind, double minutes, double grams) {
    Rising rising;
    rising.kind = kind;
    rising.minutes = exactly(Minutes(minutes));
    rising.dough = Celsius(24.0);
    rising.stands = Celsius(24.0);
    rising.mass = Grams(grams);
    rising.time_constant = cooling_of_a_lump(grams);
    rising.yeast = YeastInDough{YeastForm::fresh, Grams(10.0), Grams(500.0)};
    return rising;
}

Rising with_leaven(Rising rising) {
    rising.leaven = true;
    rising.family = DoughFamily::sourdough;
    rising.yeast.reset();
    return rising;
}

Kitchen with_spot(double celsius) {
    Kitchen kitchen;
    kitchen.warm_spot = Celsius(celsius);
    return kitchen;
}

std::optional<WaitOption> find(const std::vector<WaitOption>& options, OptionKind kind) {
    const auto found = std::find_if(
        options.begin(), options.end(), [kind](const WaitOption& o) { return o.kind == kind; });
    return found == options.end() ? std::nullopt : std::optional(*found);
}

std::optional<WaitOption> option(OptionKind kind, const Rising& rising, const Kitchen& kitchen) {
    return find(options_for(rising, kitchen), kind);
}

/// What a dough has made, at the place's temperature, after `start` minutes there and then so many
/// in the cold: half-minute steps.
double worth_of(const Rising& rising, Celsius fridge, double start, double in_the_cold) {
    const auto curve = rising.leaven ? dough::Curve::leaven_yeast : dough::Curve::gas;
    const double cold_tau = cooling_of_a_lump(rising.mass.count()).count();
    const double step = 0.5;
    double t = rising.dough.degrees();
    double made = 0.0;
    for (double at = 0.0; at < start + in_the_cold; at += step) {
        const bool cold = at >= start;
        const double place = cold ? fridge.degrees() : rising.stands.degrees();
        const double tau = cold ? cold_tau : rising.time_constant.count();
        made += step * dough::rate_of(curve, Celsius(t));
        t = tau > 0.0 ? t + (place - t) * step / tau : place;
    }
    return made / dough::rate_of(curve, rising.stands);
}

// ---- as told

TEST(options, as_told_comes_first_and_gives_the_minutes_back) {
    Rising rising = at_24(StepKind::rise, 72.0, 850.0);
    rising.minutes = {Minutes(58.0), Minutes(72.0), Minutes(90.0)};
    const auto options = options_for(rising, with_spot(30.0));
    EXPECT_EQ(options.front().kind, OptionKind::as_told);
    EXPECT_EQ(options.front().minutes, (Band<std::int64_t>{58, 72, 90}));
    EXPECT_EQ(options.front().place, Place::counter);
    EXPECT_TRUE(options.front().change.empty());
    EXPECT_FALSE(options.front().yeast);
}

TEST(options, a_rest_or_a_chill_has_no_other_way) {
    for (const StepKind kind : {StepKind::rest, StepKind::chill, StepKind::soak}) {
        EXPECT_EQ(options_for(at_24(kind, 120.0, 850.0), with_spot(30.0)).size(), 1U);
    }
}

// ---- a warmer spot

TEST(options, two_hours_at_27_are_about_one_at_36_as_the_trade_counts) {
    // Trade rule (read): 2 h at 80 °F, 1 h at 97 °F. The dough is as warm as its place at once.
    Rising rising = at_24(StepKind::rise, 120.0, 850.0);
    rising.dough = Celsius(36.0);
    rising.stands = Celsius(26.667);
    rising.time_constant = Minutes(0.0);
    const auto spot = option(OptionKind::warm_spot, rising, with_spot(36.0));
    ASSERT_TRUE(spot);
    EXPECT_LE(spot->minutes.low, 60);
    EXPECT_GE(spot->minutes.high, 60);
    EXPECT_EQ(spot->place, Place::warm);
    EXPECT_EQ(spot->change, "stand it in your warm spot, 36 °C");
}

TEST(options, a_large_lump_gains_less_from_a_warm_spot_than_a_small_one) {
    const auto small =
        option(OptionKind::warm_spot, at_24(StepKind::rise, 120.0, 100.0), with_spot(32.0));
    const auto large =
        option(OptionKind::warm_spot, at_24(StepKind::rise, 120.0, 2000.0), with_spot(32.0));
    ASSERT_TRUE(small && large);
    EXPECT_LT(small->minutes.likely, large->minutes.likely);
}

TEST(options, no_warm_spot_without_one_nor_where_it_is_no_warmer_or_too_hot) {
    const Rising rising = at_24(StepKind::rise, 120.0, 850.0);
    EXPECT_FALSE(option(OptionKind::warm_spot, rising, Kitchen{}));
    EXPECT_FALSE(option(OptionKind::warm_spot, rising, with_spot(24.0)));
    EXPECT_FALSE(option(OptionKind::warm_spot, rising, with_spot(45.0)));
    EXPECT_TRUE(option(OptionKind::warm_spot, rising, with_spot(38.0)));
    // Leaven's yeast is slower at 38 °C than at 24.
    EXPECT_FALSE(option(OptionKind::warm_spot, with_leaven(rising), with_spot(38.0)));
    EXPECT_TRUE(option(OptionKind::warm_spot, with_leaven(rising), with_spot(27.0)));
}

TEST(options, butter_in_a_hot_spot_is_warned_of) {
    Rising rising = at_24(StepKind::rise, 120.0, 850.0);
    rising.family = DoughFamily::enriched;
    const auto hot = option(OptionKind::warm_spot, rising, with_spot(32.0));
    const auto mild = option(OptionKind::warm_spot, rising, with_spot(28.0));
    ASSERT_TRUE(hot && mild);
    EXPECT_NE(hot->effect.find("butter"), std::string::npos);
    EXPECT_EQ(mild->effect.find("butter"), std::string::npos);
}

// ---- a night

TEST(options, twelve_hours_in_the_fridge_make_a_rise_of_two_to_three_hours_with_all_the_yeast) {
    // Computed: 12 h from 24 °C at 5 °C are worth 2.57 h at 24 (tests/published, fridge11). At
    // 1.33 kg our lump has the time constant of 2.5 h that goes with it.
    ASSERT_NEAR(cooling_of_a_lump(1330.0).count() / 60.0, 2.5, 0.01);
    for (const double hours : {2.25, 2.57}) {
        const auto night =
            option(OptionKind::fridge, at_24(StepKind::rise, 60.0 * hours, 1330.0), Kitchen{});
        ASSERT_TRUE(night) << hours;
        EXPECT_EQ(night->place, Place::fridge);
        EXPECT_EQ(night->minutes.likely, 720) << hours;
        EXPECT_FALSE(night->yeast) << hours;
        EXPECT_TRUE(night->change.empty()) << hours;
    }
    const auto long_rise =
        option(OptionKind::fridge, at_24(StepKind::rise, 240.0, 1330.0), Kitchen{});
    ASSERT_TRUE(long_rise && long_rise->yeast);
    EXPECT_GT(long_rise->yeast->likely, Grams(10.0));
    const auto short_prove =
        option(OptionKind::fridge, at_24(StepKind::prove, 60.0, 1330.0), Kitchen{});
    ASSERT_TRUE(short_prove && short_prove->yeast);
    EXPECT_LT(short_prove->yeast->likely, Grams(10.0));
}

TEST(options, a_night_for_a_quick_prove_states_its_yeast_as_the_sum_by_hand_has_it) {
    // One hour at 24 °C is 0.6083 / 0.7273 = 0.836 h at 27, the night's 2.57 h are 2.15 h. With
    // G = N e + 0.08 e^2 / 2 (after Pyler) 2 % becomes 1.70 / 2.15 - 0.04 * 2.15 = 0.705 %, of
    // 500 g flour 3.5 g.
    const auto night = option(OptionKind::fridge, at_24(StepKind::prove, 60.0, 1330.0), Kitchen{});
    ASSERT_TRUE(night && night->yeast);
    EXPECT_EQ(night->yeast->likely, Grams(3.5));
    EXPECT_LT(night->yeast->low, Grams(3.5));
    EXPECT_GT(night->yeast->high, Grams(3.5));
    EXPECT_EQ(night->change,
              "a third of the yeast: 3.5 g instead of 10 g; the first rise takes longer too");
    EXPECT_NE(night->effect.find("keeps its shape"), std::string::npos);
}

TEST(options, a_dough_that_is_ready_while_still_warm_does_not_keep_a_night) {
    // Ready within the hour and a half at 15 °C or more, where the window of 30 minutes at 24 °C
    // (common practice) is a good hour: gone long before the morning.
    const auto quick = option(OptionKind::fridge, at_24(StepKind::rise, 45.0, 850.0), Kitchen{});
    ASSERT_TRUE(quick);
    EXPECT_TRUE(quick->yeast);
    // Between them: butter dough forgives most, wholemeal least (common practice).
    Rising rising = at_24(StepKind::rise, 70.0, 850.0);
    rising.yeast.reset();
    rising.family = DoughFamily::enriched;
    const auto butter = option(OptionKind::fridge, rising, Kitchen{});
    ASSERT_TRUE(butter);
    rising.family = DoughFamily::wholegrain;
    const auto bran = option(OptionKind::fridge, rising, Kitchen{});
    EXPECT_TRUE(!bran || bran->minutes.high < butter->minutes.high);
}

TEST(options, a_leaven_with_a_little_yeast_beside_it_has_no_dose_either) {
    Rising rising = with_leaven(at_24(StepKind::rise, 240.0, 900.0));
    rising.yeast = YeastInDough{YeastForm::fresh, Grams(5.0), Grams(500.0)};
    for (const WaitOption& way : options_for(rising, with_spot(27.0))) {
        EXPECT_FALSE(way.yeast);
    }
}

TEST(options, a_dose_is_stated_in_the_recipes_own_form) {
    Rising rising = at_24(StepKind::prove, 60.0, 1330.0);
    rising.yeast->form = YeastForm::instant;
    rising.yeast->grams = Grams(3.3); // as much as 10 g fresh (Hamelman 2004, read: 0.33)
    const auto night = option(OptionKind::fridge, rising, Kitchen{});
    ASSERT_TRUE(night && night->yeast);
    EXPECT_NEAR(night->yeast->likely.count(), 0.33 * 3.5, 0.1);
}

TEST(options, leaven_has_no_dose_but_a_start_where_it_stands) {
    const Rising rising = with_leaven(at_24(StepKind::rise, 240.0, 900.0));
    const auto options = options_for(rising, with_spot(27.0));
    EXPECT_FALSE(find(options, OptionKind::less_yeast));
    EXPECT_FALSE(find(options, OptionKind::more_yeast));
    const auto night = find(options, OptionKind::fridge);
    ASSERT_TRUE(night);
    EXPECT_FALSE(night->yeast);
    EXPECT_EQ(night->change, "2 h 40 where it stands first, then the fridge");
    EXPECT_EQ(night->minutes.likely, 160 + 720);
    EXPECT_NEAR(worth_of(rising, Celsius(5.0), 160.0, 720.0), 240.0, 3.0);
    // A short one needs no start.
    const auto prove =
        option(OptionKind::fridge, with_leaven(at_24(StepKind::prove, 75.0, 900.0)), Kitchen{});
    ASSERT_TRUE(prove);
    EXPECT_TRUE(prove->change.empty());
}

TEST(options, no_night_for_a_ferment_in_a_fridge_already_or_outside_the_sane_doses) {
    EXPECT_FALSE(option(OptionKind::fridge, at_24(StepKind::ferment, 150.0, 900.0), Kitchen{}));
    Rising cold = at_24(StepKind::rise, 720.0, 900.0);
    cold.place = Place::fridge;
    cold.stands = Celsius(6.0);
    EXPECT_FALSE(option(OptionKind::fridge, cold, Kitchen{}));
    EXPECT_FALSE(option(OptionKind::less_yeast, cold, Kitchen{}));
    // Most of a night's gas is the yeast's growth where a day made little: no dose is low enough.
    Rising little = at_24(StepKind::prove, 30.0, 900.0);
    little.yeast->grams = Grams(0.5);
    EXPECT_FALSE(option(OptionKind::fridge, little, Kitchen{}));
    // Twice the time of a dose of 6 % would want more than 8 %.
    Rising much = at_24(StepKind::prove, 300.0, 900.0);
    much.yeast->grams = Grams(30.0);
    EXPECT_FALSE(option(OptionKind::fridge, much, Kitchen{}));
    Kitchen cellar;
    cellar.fridge = Celsius(26.0);
    EXPECT_FALSE(option(OptionKind::fridge, at_24(StepKind::rise, 150.0, 900.0), cellar));
}

TEST(options, a_quick_dough_of_unknown_yeast_gets_no_night) {
    Rising rising = at_24(StepKind::prove, 45.0, 900.0);
    rising.yeast.reset();
    EXPECT_EQ(options_for(rising, Kitchen{}).size(), 1U);
}

// ---- another dose

TEST(options, half_the_yeast_of_the_army_sponge_takes_its_printed_eight_hours) {
    // Manual for Army Bakers 1916, pp. 49-50 (read): 10 oz fresh on 50 lb of flour 5 h, half 8 h.
    Rising sponge = at_24(StepKind::ferment, 300.0, 35000.0);
    sponge.dough = Celsius(27.0);
    sponge.stands = Celsius(27.0);
    sponge.yeast = YeastInDough{YeastForm::fresh, Grams(283.5), Grams(22680.0)};
    const auto half = option(OptionKind::less_yeast, sponge, Kitchen{});
    ASSERT_TRUE(half && half->yeast);
    EXPECT_LE(half->minutes.low, 480);
    EXPECT_GE(half->minutes.high, 480);
    EXPECT_NEAR(static_cast<double>(half->minutes.likely), 480.0, 30.0);
    EXPECT_EQ(half->yeast->likely, Grams(142.0));
    EXPECT_EQ(half->change.rfind("half the yeast: 142 g instead of 283.5 g", 0), 0U);
}

TEST(options, half_as_much_yeast_again_is_two_thirds_of_a_short_rise) {
    // Common practice within a factor of 1.5 and up to three hours: dose times time stays.
    const auto more = option(OptionKind::more_yeast, at_24(StepKind::rise, 90.0, 900.0), Kitchen{});
    ASSERT_TRUE(more && more->yeast);
    EXPECT_EQ(more->minutes.likely, 60);
    EXPECT_EQ(more->yeast->likely, Grams(15.0));
    EXPECT_EQ(more->change,
              "half as much yeast again: 15 g instead of 10 g; the prove takes less time too");
}

TEST(options, doses_stay_within_what_bread_knows) {
    Rising rising = at_24(StepKind::rise, 90.0, 900.0);
    rising.yeast->grams = Grams(30.0); // 6 %, half again is 9
    EXPECT_FALSE(option(OptionKind::more_yeast, rising, Kitchen{}));
    EXPECT_TRUE(option(OptionKind::less_yeast, rising, Kitchen{}));
    rising.yeast->grams = Grams(0.1); // no half of that on a kitchen's scale
    EXPECT_FALSE(option(OptionKind::less_yeast, rising, Kitchen{}));
    rising.yeast->flour = Grams(0.0);
    EXPECT_FALSE(option(OptionKind::more_yeast, rising, Kitchen{}));
}

TEST(doses, grams_are_weighed_in_steps_and_shares_have_plain_names) {
    EXPECT_EQ(as_weighed(Grams(23.4)), Grams(23.0));
    EXPECT_EQ(as_weighed(Grams(10.3)), Grams(10.0));
    EXPECT_NEAR(as_weighed(Grams(1.16)).count(), 1.2, 1e-12);
    EXPECT_EQ(as_weighed(Grams(0.01)), least_weighed);
    const YeastInDough packet{YeastForm::instant, Grams(7.0), Grams(500.0)};
    EXPECT_EQ(dose_text(packet, Grams(2.5)), "a third of the yeast: 2.5 g instead of 7 g");
    EXPECT_EQ(dose_text(packet, Grams(3.5)), "half the yeast: 3.5 g instead of 7 g");
    EXPECT_EQ(dose_text(packet, Grams(14.0)), "twice the yeast: 14 g instead of 7 g");
    EXPECT_EQ(dose_text(packet, Grams(0.2)), "far less yeast: 0.2 g instead of 7 g");
    // Hamelman 2004 (read): 0.33 g instant for 1 g fresh.
    EXPECT_NEAR(fresh_dose(packet, Grams(3.3)).count(), 2.0, 1e-9);
    EXPECT_NEAR(grams_of(packet, dough::BakersPercent(2.0)).count(), 3.3, 1e-9);
}

// ---- properties

rc::Gen<Rising> any_rising() {
    return rc::gen::exec([] {
        Rising rising;
        rising.kind =
            *rc::gen::element(StepKind::rise, StepKind::prove, StepKind::ferment, StepKind::rest);
        rising.place = *rc::gen::element(Place::counter, Place::warm, Place::fridge);
        const int likely = *rc::gen::inRange(1, 900);
        rising.minutes = {Minutes(likely * 0.01 * *rc::gen::inRange(30, 101)),
                          Minutes(likely),
                          Minutes(likely * 0.01 * *rc::gen::inRange(100, 250))};
        rising.dough = Celsius(0.5 * *rc::gen::inRange(20, 66));
        rising.stands = Celsius(0.5 * *rc::gen::inRange(6, 70));
        rising.time_constant = Minutes(*rc::gen::inRange(0, 240));
        rising.mass = Grams(*rc::gen::inRange(40, 2500));
        rising.family = *rc::gen::element(DoughFamily::lean,
                                          DoughFamily::enriched,
                                          DoughFamily::wholegrain,
                                          DoughFamily::sourdough);
        rising.leaven = *rc::gen::inRange(0, 3) == 0;
        if (*rc::gen::inRange(0, 4) != 0) {
            rising.yeast = YeastInDough{
                *rc::gen::element(YeastForm::fresh, YeastForm::active_dry, YeastForm::instant),
                Grams(0.1 * *rc::gen::inRange(1, 400)),
                Grams(*rc::gen::inRange(100, 1500))};
        }
        return rising;
    });
}

Kitchen any_kitchen() {
    Kitchen kitchen;
    kitchen.fridge = Celsius(0.5 * *rc::gen::inRange(0, 24));
    if (*rc::gen::inRange(0, 4) != 0) {
        kitchen.warm_spot = Celsius(0.5 * *rc::gen::inRange(40, 90));
    }
    return kitchen;
}

bool in_fives(const Band<std::int64_t>& minutes) {
    return minutes.low % 5 == 0 && minutes.likely % 5 == 0 && minutes.high % 5 == 0;
}

RC_GTEST_PROP(options, every_option_is_ordered_positive_and_in_words, ()) {
    const Rising rising = *any_rising();
    const auto options = options_for(rising, any_kitchen());
    RC_ASSERT(!options.empty() && options.front().kind == OptionKind::as_told);
    for (std::size_t i = 0; i < options.size(); ++i) {
        const WaitOption& option = options[i];
        RC_ASSERT(option.minutes.low > 0 && option.minutes.low <= option.minutes.likely);
        RC_ASSERT(option.minutes.likely <= option.minutes.high);
        RC_ASSERT(!option.effect.empty());
        if (i > 0) {
            RC_ASSERT(in_fives(option.minutes));
            RC_ASSERT(option.kind > options[i - 1].kind);
        }
        if (option.yeast) {
            RC_ASSERT(rising.yeast && !rising.leaven && !option.change.empty());
            RC_ASSERT(option.yeast->low <= option.yeast->likely);
            RC_ASSERT(option.yeast->likely <= option.yeast->high);
            RC_ASSERT(within_limits(fresh_dose(*rising.yeast, option.yeast->likely)));
        }
    }
}

RC_GTEST_PROP(options, a_warmer_spot_is_never_slower, ()) {
    Rising rising = *any_rising();
    const double best = rising.leaven ? 27.0 : 37.5;
    // A dough hotter than its best temperature would gain from cooling.
    rising.dough = std::min(rising.dough, Celsius(best));
    const double mild = 0.5 * *rc::gen::inRange(30, static_cast<int>(2.0 * best));
    const double warm = std::min(best, mild + 0.5 * *rc::gen::inRange(0, 30));
    const auto told = options_for(rising, Kitchen{}).front().minutes;
    const auto milder = option(OptionKind::warm_spot, rising, with_spot(mild));
    RC_PRE(milder.has_value());
    const auto warmer = option(OptionKind::warm_spot, rising, with_spot(warm));
    RC_ASSERT(warmer.has_value());
    RC_ASSERT(warmer->minutes.likely <= milder->minutes.likely);
    RC_ASSERT(milder->minutes.likely < told.likely && milder->minutes.high <= told.high);
}

RC_GTEST_PROP(options, less_yeast_is_never_quicker_and_more_never_slower, ()) {
    Rising rising = *any_rising();
    rising.kind = *rc::gen::element(StepKind::rise, StepKind::prove, StepKind::ferment);
    rising.leaven = false;
    rising.place = Place::counter;
    rising.yeast =
        YeastInDough{YeastForm::fresh, Grams(0.1 * *rc::gen::inRange(2, 200)), Grams(500.0)};
    const auto options = options_for(rising, Kitchen{});
    const auto told = options.front().minutes;
    const auto less = find(options, OptionKind::less_yeast);
    const auto more = find(options, OptionKind::more_yeast);
    RC_PRE(less.has_value() || more.has_value());
    if (less) {
        RC_ASSERT(less->minutes.low >= told.low && less->minutes.likely > told.likely);
        RC_ASSERT(less->minutes.high >= told.high);
        RC_ASSERT(less->yeast->likely < rising.yeast->grams);
    }
    if (more) {
        RC_ASSERT(more->minutes.likely < told.likely && more->minutes.high <= told.high);
        RC_ASSERT(more->yeast->likely > rising.yeast->grams);
    }
}

RC_GTEST_PROP(options, a_night_with_the_full_yeast_makes_the_rise_before_it_must_end, ()) {
    Rising rising = *any_rising();
    rising.kind = *rc::gen::element(StepKind::rise, StepKind::prove);
    rising.place = Place::counter;
    rising.stands = Celsius(0.5 * *rc::gen::inRange(36, 60));
    const Kitchen kitchen = any_kitchen();
    const auto night = option(OptionKind::fridge, rising, kitchen);
    RC_PRE(night.has_value());
    RC_ASSERT(night->minutes.high - night->minutes.low >= 60);
    const bool leaven_with_a_start = rising.leaven && !night->change.empty();
    if (!leaven_with_a_start) {
        RC_ASSERT(night->minutes.low >= 480 && night->minutes.high <= 960);
    }
    if (night->change.empty()) {
        const double wanted =
            worth_of(rising, kitchen.fridge, static_cast<double>(rising.minutes.likely.count()), 0);
        const double low =
            worth_of(rising, kitchen.fridge, 0, static_cast<double>(night->minutes.low));
        const double high =
            worth_of(rising, kitchen.fridge, 0, static_cast<double>(night->minutes.high));
        RC_ASSERT(low >= nearly_risen * wanted * 0.97 - 1.0);
        RC_ASSERT(high >= wanted * 0.97 - 1.0);
        RC_ASSERT(rising.kind == StepKind::rise || high <= over_proved * wanted * 1.03 + 1.0);
    }
}

} // namespace
} // namespace loafwright::fitting
