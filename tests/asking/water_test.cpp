// SPDX-License-Identifier: Apache-2.0
//
// The question for the water. Figures are worked out by hand from the heat balance written in
// dough_temperature.hpp, or are rows of tests/published/fermentation.tsv, named beside the check.
#include "engine/asking/water.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace loafwright::asking {
namespace {

using dough::WaterAdvice;
using dough::YeastMeetsWater;

WaterQuestion dough_of(double degrees) {
    WaterQuestion question;
    question.dough = Celsius(degrees);
    return question;
}

bool says(const WaterAnswer& answer, const std::string& words) {
    const auto say = words_of(answer);
    return std::any_of(say.begin(), say.end(), [&](const std::string& paragraph) {
        return paragraph.find(words) != std::string::npos;
    });
}

std::string all_words(const WaterAnswer& answer) {
    std::string all;
    for (const std::string& paragraph : words_of(answer)) {
        all += paragraph + "\n";
    }
    return all;
}

// Room and flour 20, 500 g and 325 g, by hand (offset -1.6, room share 0.33):
//   inner 20 + 5 / 0.67 = 27.4627, without the offset 29.0627
//   heat  29.0627 x (0.5 x 1.84 + 0.325 x 4.186) - 0.5 x 15.1 - 0.92 x 20 = 40.3262 kJ
//   water 40.3262 / 1.36045 = 29.64 °C
//   boiled 325 (29.642 - 12) / (99.974 - 12) = 65.2 g
TEST(water, is_what_the_heat_balance_by_hand_gives) {
    const WaterAnswer answer = water_for(dough_of(25.0), Kitchen{});
    EXPECT_NEAR(answer.temperature.likely.degrees(), 29.642, 0.005);
    EXPECT_EQ(answer.plan.advice, WaterAdvice::tap_and_boiled);
    EXPECT_EQ(answer.plan.boiled, Grams(65.0));
    EXPECT_EQ(answer.plan.tap, Grams(260.0));
    EXPECT_NEAR(answer.plan.dough.degrees(), 25.0, 1e-9);
    // One degree of dough is 2.28045 / 0.67 kJ, shared out over 1.36045 kJ/K of water.
    EXPECT_NEAR(answer.for_one_degree.count(), 2.502, 0.001);
    EXPECT_TRUE(can_be(answer));
    EXPECT_TRUE(says(answer, "For a dough of 25 °C: water at 30 °C.")) << all_words(answer);
    EXPECT_TRUE(says(answer, "65 g just boiled and 260 g from the tap, stirred, before the yeast"))
        << all_words(answer);
    EXPECT_TRUE(says(answer, "between 26 and 33 °C")) << all_words(answer);
}

TEST(water, what_is_not_said_comes_from_the_kitchen_and_what_is_said_outranks_it) {
    Kitchen kitchen;
    kitchen.room = {{ClockTime{}, Celsius(17.0)}};
    kitchen.tap = Celsius(9.0);
    kitchen.mixing = MixingMethod::mixer;
    kitchen.yeast = "instant yeast";
    kitchen.altitude = Metres(500.0);
    WaterQuestion question = dough_of(25.0);
    const WaterGrounds silent = water_for(question, kitchen).grounds;
    EXPECT_EQ(silent.room, Celsius(17.0));
    EXPECT_EQ(silent.flour_temperature, Celsius(17.0)) << "flour follows the room";
    EXPECT_EQ(silent.tap, Celsius(9.0));
    EXPECT_EQ(silent.mixing, dough::MixingMethod::stand_mixer);
    EXPECT_EQ(silent.yeast, YeastMeetsWater::dry_in_flour);
    // heat.tsv boil-004: 98.312 °C at 500 m.
    EXPECT_NEAR(silent.boiling.degrees(), 98.312, 0.005);
    EXPECT_EQ(silent.flour, Grams(500.0));
    EXPECT_NEAR(silent.water.count(), 325.0, 1e-9);

    kitchen.flour = Celsius(15.0);
    question.room = Celsius(24.0);
    question.tap = Celsius(14.0);
    question.mixing = dough::MixingMethod::stirred;
    question.yeast = YeastMeetsWater::dry_in_water;
    question.flour = Grams(1000.0);
    const WaterGrounds said = water_for(question, kitchen).grounds;
    EXPECT_EQ(said.room, Celsius(24.0));
    EXPECT_EQ(said.flour_temperature, Celsius(15.0)) << "the kitchen's own flour bin";
    EXPECT_EQ(said.tap, Celsius(14.0));
    EXPECT_EQ(said.mixing, dough::MixingMethod::stirred);
    EXPECT_EQ(said.yeast, YeastMeetsWater::dry_in_water);
    EXPECT_NEAR(said.water.count(), 650.0, 1e-9);
}

TEST(water, a_room_through_the_day_is_taken_at_its_mean_and_said_so) {
    Kitchen kitchen;
    kitchen.room = {{ClockTime{0, 0}, Celsius(14.0)}, {ClockTime{12, 0}, Celsius(20.0)}};
    const WaterAnswer answer = water_for(dough_of(25.0), kitchen);
    EXPECT_EQ(answer.grounds.room, Celsius(17.0));
    EXPECT_TRUE(says(answer, "the mean of your day, 14 °C to 20 °C")) << all_words(answer);
}

// fermentation.tsv water03: dough 75, room and flour 65, factor 8 °F: 87 °F. San Francisco Baking
// Institute, course notes 2009, for a dough kneaded by hand.
TEST(water, the_trades_rule_gives_its_own_printed_example) {
    const auto celsius = [](double fahrenheit) { return Celsius((fahrenheit - 32.0) / 1.8); };
    WaterQuestion question;
    question.dough = celsius(75.0);
    question.room = celsius(65.0);
    question.mixing = dough::MixingMethod::by_hand;
    const WaterAnswer answer = water_for(question, Kitchen{});
    EXPECT_NEAR(answer.rule.water.degrees(), celsius(87.0).degrees(), 0.01);
    EXPECT_TRUE(says(answer, "the American way")) << all_words(answer);
    EXPECT_TRUE(says(answer, "with a friction factor")) << all_words(answer);
    // water06: dough 78, room and flour 72, no factor: 90 °F. Answer of a physicist.
    question.dough = celsius(78.0);
    question.room = celsius(72.0);
    question.mixing = dough::MixingMethod::stirred;
    const WaterAnswer stirred = water_for(question, Kitchen{});
    EXPECT_NEAR(stirred.rule.water.degrees(), celsius(90.0).degrees(), 0.01);
    EXPECT_TRUE(says(stirred, "without a friction factor")) << all_words(stirred);
}

// Room 32, flour 32, stand mixer (offset 3.1), tap 24, dough 25:
//   inner 32 - 7 / 0.67 = 21.5522, less the offset 18.4522
//   water (18.4522 x 2.28045 - 7.55 - 0.92 x 32) / 1.36045 = 3.741 °C
//   ice   325 (24 - 3.741) / (24 + 79.79) = 63.4 g, by the trade's rule with 80: 63.3
TEST(water, a_hot_kitchen_gets_ice) {
    WaterQuestion question = dough_of(25.0);
    question.room = Celsius(32.0);
    question.tap = Celsius(24.0);
    question.mixing = dough::MixingMethod::stand_mixer;
    const WaterAnswer answer = water_for(question, Kitchen{});
    EXPECT_NEAR(answer.temperature.likely.degrees(), 3.741, 0.005);
    EXPECT_EQ(answer.plan.ice, Grams(63.0));
    EXPECT_EQ(answer.plan.tap, Grams(262.0));
    EXPECT_TRUE(says(answer, "63 g of ice and 262 g from the tap")) << all_words(answer);
    question.dough = Celsius(22.0);
    const WaterAnswer colder = water_for(question, Kitchen{});
    EXPECT_LT(colder.temperature.likely, Celsius(0.0));
    EXPECT_TRUE(says(colder, "colder than water can be")) << all_words(colder);
    EXPECT_TRUE(says(colder, "the right amount of ice lies between")) << all_words(colder);
}

// Room 17, flour 5, by hand, dough 28: inner 17 + 11 / 0.67 = 33.4179, without the offset 35.0179;
// water (35.0179 x 2.28045 - 7.55 - 0.92 x 5) / 1.36045 = 49.768 °C, above fresh yeast's 35 °C and
// below the 54 °C of dry yeast in the flour (Gisslen 2014, read).
// With water at 35 the flour must make up 14.768 x 1.36045 / 0.92 = 21.84 degrees: 26.84 °C.
TEST(water, water_that_would_harm_the_yeast_is_refused_with_what_to_do_instead) {
    WaterQuestion question = dough_of(28.0);
    question.room = Celsius(17.0);
    question.flour_temperature = Celsius(5.0);
    const WaterAnswer answer = water_for(question, Kitchen{});
    EXPECT_EQ(answer.plan.advice, WaterAdvice::would_harm);
    EXPECT_FALSE(can_be(answer));
    EXPECT_NEAR(answer.temperature.likely.degrees(), 49.768, 0.005);
    ASSERT_TRUE(answer.flour_needed);
    EXPECT_NEAR(answer.flour_needed->degrees(), 26.84, 0.01);
    for (const char* words : {"it would take 50 °C",
                              "above 35 °C harms fresh yeast",
                              "85 g just boiled and 240 g from the tap",
                              "Warm the flour to about 27 °C",
                              "up to 54 °C"}) {
        EXPECT_TRUE(says(answer, words)) << words << "\n" << all_words(answer);
    }
    question.yeast = YeastMeetsWater::dry_in_flour;
    EXPECT_TRUE(can_be(water_for(question, Kitchen{})));
    // The flour that was asked for does what was promised.
    question.yeast = YeastMeetsWater::fresh_in_water;
    question.flour_temperature = *answer.flour_needed - CelsiusDifference(0.01);
    EXPECT_FALSE(can_be(water_for(question, Kitchen{})));
    question.flour_temperature = *answer.flour_needed + CelsiusDifference(0.01);
    EXPECT_TRUE(can_be(water_for(question, Kitchen{})));
}

TEST(water, a_tap_warmer_than_the_yeast_likes_is_not_warmed_further) {
    WaterQuestion question = dough_of(28.0);
    question.room = Celsius(15.0);
    question.tap = Celsius(38.0);
    const WaterAnswer answer = water_for(question, Kitchen{});
    EXPECT_EQ(answer.plan.advice, WaterAdvice::would_harm);
    EXPECT_TRUE(says(answer, "water from the tap, no warmer than 35 °C")) << all_words(answer);
}

TEST(water, what_not_even_ice_can_do_is_said) {
    WaterQuestion question = dough_of(10.0);
    question.room = Celsius(40.0);
    question.water = Grams(150.0);
    question.mixing = dough::MixingMethod::food_processor;
    const WaterAnswer answer = water_for(question, Kitchen{});
    EXPECT_EQ(answer.plan.advice, WaterAdvice::beyond_ice);
    EXPECT_FALSE(can_be(answer));
    EXPECT_EQ(answer.plan.ice, Grams(150.0));
    EXPECT_TRUE(says(answer, "not even ice")) << all_words(answer);
    EXPECT_TRUE(says(answer, "Cool the flour")) << all_words(answer);
}

TEST(water, the_tap_will_do_within_half_a_degree) {
    WaterQuestion question = dough_of(25.0);
    question.tap = Celsius(30.0); // 29.64 is asked for
    const WaterAnswer answer = water_for(question, Kitchen{});
    EXPECT_EQ(answer.plan.advice, WaterAdvice::tap_as_it_is);
    EXPECT_TRUE(says(answer, "water from the tap as it is, at 30 °C")) << all_words(answer);
}

// heat.tsv boil-008: water at 2000 m boils at 93.315 °C, so (99.974 - 12) / (93.315 - 12) as much.
TEST(water, in_the_mountains_more_just_boiled_water_is_needed) {
    WaterQuestion question = dough_of(25.0);
    question.altitude = Metres(2000.0);
    question.flour = Grams(10000.0); // whole grams matter less
    const WaterAnswer high = water_for(question, Kitchen{});
    question.altitude = Metres(0.0);
    const WaterAnswer low = water_for(question, Kitchen{});
    EXPECT_NEAR(high.plan.boiled / low.plan.boiled, 87.974 / 81.315, 0.002);
    EXPECT_TRUE(says(high, "Water boils at 93 °C at 2000 m")) << all_words(high);
}

TEST(water, the_words_keep_to_the_pages_voice) {
    for (const double degrees : {0.0, 10.0, 22.0, 25.0, 30.0, 45.0}) {
        const std::string words = all_words(water_for(dough_of(degrees), Kitchen{}));
        for (const char* never : {"solver", "optimal", "simply", "please", "!", "nan", "-0"}) {
            EXPECT_EQ(words.find(never), std::string::npos) << never << "\n" << words;
        }
    }
}

} // namespace
} // namespace loafwright::asking
