// SPDX-License-Identifier: Apache-2.0
//
// The page in other units. Conversions are checked against their definitions (a pound is 453.59237
// g, °F = 9/5 °C + 32) and against temperatures that everybody knows.
#include "engine/knowledge/knowledge.hpp"
#include "engine/planning/words.hpp"
#include "engine/sheet/compose.hpp"
#include "engine/sheet/lines.hpp"
#include "engine/sheet/measures.hpp"
#include "tests/sheet/tin_loaf_plan.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <string>
#include <vector>

namespace loafwright::sheet {
namespace {

SheetOptions american() {
    SheetOptions options;
    options.clock = ClockForm::hours_12;
    options.temperature = TemperatureScale::fahrenheit;
    options.weight = WeightUnit::ounces;
    return options;
}

Sheet sheet_with(const BakeDay& bake, const SheetOptions& options) {
    return compose(bake.plan, bake.recipe, bake.provisions, bake.day, options);
}

TEST(clock, twelve_hours_name_noon_and_midnight) {
    const auto shown = [](int hour, int minute) {
        return clock(Zone{}, at(hour, minute), ClockForm::hours_12);
    };
    EXPECT_EQ(shown(0, 0), "12 midnight");
    EXPECT_EQ(shown(0, 5), "12:05 am");
    EXPECT_EQ(shown(9, 0), "9:00 am");
    EXPECT_EQ(shown(11, 59), "11:59 am");
    EXPECT_EQ(shown(12, 0), "12 noon");
    EXPECT_EQ(shown(12, 1), "12:01 pm");
    EXPECT_EQ(shown(18, 30), "6:30 pm");
    EXPECT_EQ(clock(Zone{}, at(9, 0), ClockForm::hours_24), "09:00");
}

TEST(clock, no_two_minutes_of_a_day_look_alike) {
    std::vector<std::string> seen;
    for (int minute = 0; minute < 1440; ++minute) {
        seen.push_back(clock(Zone{}, at(0, minute), ClockForm::hours_12));
    }
    std::sort(seen.begin(), seen.end());
    EXPECT_EQ(std::adjacent_find(seen.begin(), seen.end()), seen.end());
}

TEST(degrees, known_points_of_the_scale) {
    const auto shown = [](double c) { return degrees(Celsius(c), TemperatureScale::fahrenheit); };
    EXPECT_EQ(shown(0.0), "32 °F");
    EXPECT_EQ(shown(37.0), "99 °F"); // 98.6
    EXPECT_EQ(shown(-40.0), "-40 °F");
    EXPECT_EQ(shown(28.0), "82 °F");
    EXPECT_EQ(degrees(Celsius(28.5), TemperatureScale::celsius), "28.5 °C");
}

TEST(oven_setting, fahrenheit_goes_in_fives_as_dials_do) {
    const auto shown = [](double c) {
        return oven_setting(Celsius(c), TemperatureScale::fahrenheit);
    };
    EXPECT_EQ(shown(230.0), "445 °F (fan 410, gas 8)");
    EXPECT_EQ(shown(200.0), "390 °F (fan 355, gas 6)");
    // What a recipe says in °F comes back as it was.
    for (const int fahrenheit : {300, 325, 350, 375, 400, 425, 450, 475}) {
        EXPECT_EQ(shown((fahrenheit - 32) * 5.0 / 9.0).rfind(std::to_string(fahrenheit) + " °F", 0),
                  0U);
    }
    EXPECT_EQ(oven_setting(Celsius(230.0), TemperatureScale::celsius), "230 °C (fan 210, gas 8)");
}

TEST(weight, ounces_as_scales_of_that_measure_show_them) {
    const auto shown = [](double grams) { return weight(Grams(grams), false, WeightUnit::ounces); };
    EXPECT_EQ(shown(453.59237), "1 lb");
    EXPECT_EQ(shown(500.0), "1 lb 1¾ oz");  // 17.64 oz
    EXPECT_EQ(shown(1000.0), "2 lb 3¼ oz"); // 35.27 oz
    EXPECT_EQ(shown(320.0), "11¼ oz");      // 11.29 oz
    EXPECT_EQ(shown(28.349523125), "1 oz");
    EXPECT_EQ(shown(10.0), "0.35 oz");
    EXPECT_EQ(shown(7.0), "0.25 oz");
    EXPECT_EQ(shown(14.2), "0.5 oz");
    EXPECT_EQ(shown(0.1), "0.01 oz");
    EXPECT_EQ(shown(460.0), "1 lb ¼ oz");
    EXPECT_EQ(weight(Grams(6.0), true, WeightUnit::ounces), "0.2 oz") << "roughly is not finely";
    EXPECT_EQ(weight(Grams(500.0), false, WeightUnit::grams), "500 g");
}

// The text read back by the definitions of pound and ounce.
double grams_read(const std::string& text) {
    double ounces = 0.0;
    double number = 0.0;
    for (std::size_t at_byte = 0; at_byte < text.size();) {
        const auto begins = [&](const std::string& what) {
            return text.compare(at_byte, what.size(), what) == 0;
        };
        if (text[at_byte] >= '0' && text[at_byte] <= '9') {
            std::size_t used = 0;
            number += std::stod(text.substr(at_byte), &used);
            at_byte += used;
        } else if (begins("¼") || begins("½") || begins("¾")) {
            number += begins("¼") ? 0.25 : begins("½") ? 0.5 : 0.75;
            at_byte += 2;
        } else {
            if (begins("lb") || begins("oz")) {
                ounces += begins("lb") ? 16.0 * number : number;
                number = 0.0;
            }
            ++at_byte;
        }
    }
    return ounces * 28.349523125;
}

RC_GTEST_PROP(weight, ounces_are_never_further_off_than_they_say, ()) {
    const double grams = *rc::gen::inRange(2, 50000) / 10.0;
    const std::string text = weight(Grams(grams), false, WeightUnit::ounces);
    const double step = grams < 28.2 ? 0.01 : 0.25;
    RC_ASSERT(std::fabs(grams_read(text) - grams) <= 28.349523125 * step * 0.501);
}

TEST(our_sentence, speaks_of_times_and_heat_in_the_pages_units) {
    const SheetOptions options = american();
    const auto ours = [&options](const std::string& text) {
        return our_sentence(text, options, Quoted::ours);
    };
    EXPECT_EQ(ours("You can't eat this by 14:00. From 10:30 it takes 4 h 25: 14:55."),
              "You can't eat this by 2:00 pm. From 10:30 am it takes 4 h 25: 2:55 pm.");
    EXPECT_EQ(ours("\"By 12:00\" allows for a slow dough"),
              "\"By 12 noon\" allows for a slow dough");
    EXPECT_EQ(ours("usual is 180 to 190 °C."), "usual is 355 to 375 °F.");
    EXPECT_EQ(ours("See that the fridge is between 0 and 5 °C."),
              "See that the fridge is between 32 and 41 °F.");
    EXPECT_EQ(ours("keeps at -18 °C."), "keeps at 0 °F.");
    EXPECT_EQ(ours("a spot of 26 °C for both rises"), "a spot of 79 °F for both rises");
    EXPECT_EQ(ours("at 2026-11-28T18:30:00Z and 25:00 and 1:2"),
              "at 2026-11-28T18:30:00Z and 25:00 and 1:2");
    EXPECT_EQ(ours(" °C"), " °C");
    EXPECT_EQ(our_sentence("The text says \"20 °C at 18:00\"; 20 °C", options, Quoted::recipes),
              "The text says \"20 °C at 18:00\"; 68 °F");
    EXPECT_EQ(our_sentence("by 14:00 at 5 °C", SheetOptions{}, Quoted::ours), "by 14:00 at 5 °C");
}

TEST(our_sentence, leaves_no_celsius_in_any_caution) {
    for (const auto& row : built_in_knowledge().cautions) {
        const std::string text = our_sentence(row.text, american(), Quoted::ours);
        EXPECT_EQ(text.find("°C"), std::string::npos) << text;
    }
}

RC_GTEST_PROP(our_sentence, any_text_stays_text, ()) {
    const auto text = *rc::gen::container<std::string>(
        rc::gen::element('1', '9', '2', ':', '.', '-', ' ', '\xC2', '\xB0', 'C', '"', 'a'));
    const std::string shown = our_sentence(text, american(), Quoted::recipes);
    RC_ASSERT(our_sentence(text, SheetOptions{}, Quoted::recipes) == text);
    RC_ASSERT(text.empty() == shown.empty());
}

TEST(compose, a_page_in_other_units_holds_none_of_the_usual) {
    BakeDay bake = tin_loaf_day();
    bake.plan.warnings = {{"at_night", Severity::warning, "\"Bake\" falls at 23:10", "", ""}};
    bake.provisions.cautions.insert(
        bake.provisions.cautions.begin(),
        Caution{"fridge", "See that the fridge is at 5 °C or less.", "", std::nullopt});
    fitting::WaterHere water;
    water.temperature = Celsius(28.0);
    bake.recipe.water = water;
    bake.recipe.notes.push_back(phrase("Your oven runs {} hotter than it is set; {} of water.",
                                       {CelsiusDifference(10.0), Grams(65.0)}));
    const Sheet sheet = sheet_with(bake, american());
    EXPECT_EQ(said(sheet.eat), "eat at 6:30 pm");
    EXPECT_EQ(opening(sheet).substr(0, 14), "Begin 1:00 pm.");
    EXPECT_EQ(sheet.weigh[1], "11¾ oz water at 82 °F");
    EXPECT_EQ(sheet.weigh[3], "about 0.25 oz (2 tsp) instant yeast");
    EXPECT_EQ(sheet.stages[1].length, "look from 2:35 pm");
    EXPECT_EQ(sheet.stages[1].cue, "our sign: doubled, about 2:50 pm, by 3:15 pm at the latest");
    EXPECT_EQ(sheet.stages[3].acts[0].time, "3:20 pm");
    EXPECT_EQ(sheet.stages[3].acts[0].text, "oven on, 445 °F (fan 410, gas 8)");
    EXPECT_EQ(sheet.stages[4].acts[0].time, "+ 10") << "paper cannot move";
    EXPECT_EQ(sheet.warnings[0], "\"Bake\" falls at 11:10 pm.");
    EXPECT_EQ(sheet.cautions[0], "See that the fridge is at 41 °F or less.");
    EXPECT_EQ(sheet.questions[0], "How hot is a hot oven? Used: 430 °F.");
    EXPECT_EQ(sheet.notes.back(), "Your oven runs 18 °F hotter than it is set; 2¼ oz of water.");
    EXPECT_EQ(sheet.notes[1].rfind("Your kitchen is 66 °F; “not too cold”", 0), 0U);
}

TEST(compose, the_recipes_own_words_keep_their_units) {
    BakeDay bake = tin_loaf_day();
    bake.plan.stages[4].cue = Cue{"when the middle is at 96 °C", Span{70, 90}};
    bake.plan.stages[1].reminders = {reminder_of("keep it at 24 °C until 15:00")};
    bake.plan.stages[1].acts = {act_of(at(14, 0), 30, "stir in 20 g of seeds at 14:00")};
    const Sheet sheet = sheet_with(bake, american());
    EXPECT_EQ(sheet.stages[4].cue, "ready when the middle is at 96 °C");
    EXPECT_EQ(sheet.stages[1].reminders.front(), "keep it at 24 °C until 15:00");
    EXPECT_EQ(sheet.stages[1].acts.front().text, "stir in 20 g of seeds at 14:00");
}

TEST(compose, few_words_keep_times_titles_signs_and_the_oven) {
    SheetOptions options;
    options.wording = Wording::few;
    const BakeDay bake = tin_loaf_day();
    const Sheet few = sheet_with(bake, options);
    const Sheet full = sheet_with(bake, SheetOptions{});
    EXPECT_EQ(opening(few), "Begin 13:00.");
    EXPECT_EQ(few.weigh, full.weigh);
    EXPECT_TRUE(few.ready.empty());
    EXPECT_TRUE(few.questions.empty());
    EXPECT_EQ(few.cautions.size(), 1U) << "the gravest stays";
    ASSERT_EQ(few.stages.size(), full.stages.size());
    for (std::size_t i = 0; i < few.stages.size(); ++i) {
        EXPECT_EQ(few.stages[i].time, full.stages[i].time);
        EXPECT_EQ(few.stages[i].title, full.stages[i].title);
        EXPECT_EQ(few.stages[i].length, full.stages[i].length);
        EXPECT_EQ(few.stages[i].acts.size(), full.stages[i].acts.size());
        EXPECT_LE(few.stages[i].reminders.size(), 1U);
    }
    EXPECT_EQ(few.stages[1].cue, "our sign: doubled");
}

TEST(compose, a_first_bake_is_told_what_is_normal_once) {
    BakeDay bake = tin_loaf_day();
    for (Stage& stage : bake.plan.stages) {
        stage.steps.clear();
    }
    bake.plan.stages[0].steps = {0, 1};
    bake.plan.stages[1].steps = {2};
    bake.plan.stages[2].steps = {3};
    bake.provisions.normal = {"weigh well", "sticky is right", "sticky is right", "it goes flat"};
    SheetOptions options;
    EXPECT_EQ(sheet_with(bake, options).stages[0].normal, "") << "nobody asked";
    options.practice = Practice::first_bake;
    const Sheet sheet = sheet_with(bake, options);
    EXPECT_EQ(sheet.stages[0].normal, "sticky is right") << "the doing, not the weighing";
    EXPECT_EQ(sheet.stages[1].normal, "") << "said already";
    EXPECT_EQ(sheet.stages[2].normal, "it goes flat");
}

TEST(compose, a_refusal_speaks_as_the_page_would) {
    Impossible no;
    no.why = "You can't eat this by 14:00.";
    no.ways_out = {{"stand it in your warm spot, 26 °C", at(14, 25), {}},
                   {"eat at 15:40 today", {}, {}}};
    const Refusal refusal = compose_refusal(no, tin_loaf_day().day, american());
    EXPECT_EQ(refusal.why, "You can't eat this by 2:00 pm.");
    EXPECT_EQ(refusal.ways_out,
              (std::vector<std::string>{"stand it in your warm spot, 79 °F: eat at 2:25 pm",
                                        "eat at 3:40 pm today"}));
}

TEST(compose, what_comes_before_stage_one_says_when) {
    BakeDay bake = tin_loaf_day();
    bake.provisions.ahead = {{"butter out of the fridge", 1.0}};
    bake.day.now = at(9, 0);
    EXPECT_EQ(sheet_with(bake, SheetOptions{}).ahead.front(),
              "12:00, 1 h before you begin: butter out of the fridge.");
    bake.day.now = at(12, 40);
    EXPECT_EQ(sheet_with(bake, SheetOptions{}).ahead.front(),
              "Now: butter out of the fridge. 1 h before you begin is best.");
    bake.provisions.ahead = {{"feed the leaven", 8.0}};
    bake.day.now = at(-20, 0);
    EXPECT_EQ(sheet_with(bake, SheetOptions{}).ahead.front(),
              "The evening before: feed the leaven.")
        << "nobody gets up for it at five";
}

TEST(weigh_line, a_bare_count_stands_only_beside_what_is_counted) {
    const auto line = [](const std::string& item, const std::string& written) {
        return weigh_line(bought(item, Band<Grams>{Grams(90), Grams(100), Grams(110)}, written),
                          WeightUnit::grams);
    };
    EXPECT_EQ(line("medium eggs", "two"), "about 100 g medium eggs (two)");
    EXPECT_EQ(line("milk", "one"), "about 100 g milk");
    EXPECT_EQ(line("milk", "1 cup"), "about 100 g (1 cup) milk");
}

TEST(weigh_line, says_how_much_goes_into_which_part) {
    const auto grams = [](double one) { return exactly(Grams(one)); };
    ToBuy water = bought("water", grams(480), "");
    water.shares = {{"leaven", "water", grams(100)},
                    {"soaker", "boiling water", grams(120)},
                    {"", "water", grams(260)}};
    EXPECT_EQ(weigh_line(water, WeightUnit::grams, " at 24 °C"),
              "480 g water: 100 g for the leaven, 120 g boiling for the soaker, 260 g at 24 °C for "
              "the dough");
    ToBuy starter = bought("ripe starter", grams(20), "");
    starter.shares = {{"leaven", "ripe starter", grams(20)}};
    EXPECT_EQ(weigh_line(starter, WeightUnit::grams), "20 g ripe starter, for the leaven");
    ToBuy salt = bought("salt", grams(10), "");
    salt.shares = {{"", "salt", grams(10)}};
    EXPECT_EQ(weigh_line(salt, WeightUnit::grams), "10 g salt");
    ToBuy butter = bought("butter", std::nullopt, "some");
    butter.shares = {{"", "butter", grams(50)}, {"glaze", "butter", std::nullopt}};
    EXPECT_EQ(weigh_line(butter, WeightUnit::grams), "some butter")
        << "nobody knows how much of it goes where";
}

TEST(is_torn_off, knows_the_middle_of_a_sentence) {
    EXPECT_TRUE(is_torn_off("of warm water in a warm place"));
    EXPECT_TRUE(is_torn_off("Been dissolved in milk"));
    EXPECT_FALSE(is_torn_off("often a little sticky"));
    EXPECT_FALSE(is_torn_off("wrap in cloth"));
}

TEST(without_loose_end, leaves_no_word_waiting_for_the_next) {
    EXPECT_EQ(without_loose_end("half doubled its"), "half doubled");
    EXPECT_EQ(without_loose_end("it comes to the"), "it comes");
    EXPECT_EQ(without_loose_end("turn the oven on"), "turn the oven on");
    EXPECT_EQ(without_loose_end("the"), "the");
}

TEST(without_lone_bracket, drops_only_what_has_lost_its_other_half) {
    EXPECT_EQ(without_lone_bracket("43 degrees C)"), "43 degrees C");
    EXPECT_EQ(without_lone_bracket("a (b) c (d"), "a (b) c d");
    EXPECT_EQ(without_lone_bracket("plain (and whole)"), "plain (and whole)");
}

} // namespace
} // namespace loafwright::sheet
