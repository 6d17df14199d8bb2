// SPDX-License-Identifier: Apache-2.0
//
// What the words on the command line ask for, and what is said when they ask for nothing that there
// is.
#include "engine/breads/known_breads.hpp"
#include "shell/cli/arguments.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace loafwright::cli {
namespace {

using Words = std::vector<std::string>;

tl::expected<Arguments, Diagnostics> parse(const Words& words) {
    return arguments_from(words, "1.2.3");
}

Diagnostic only_fault(const Words& words) {
    const auto call = parse(words);
    if (call || call.error().size() != 1) {
        ADD_FAILURE() << "expected exactly one fault";
        return {};
    }
    return call.error().front();
}

bool has_code(const Diagnostics& diagnostics, const std::string& code) {
    return std::any_of(diagnostics.begin(), diagnostics.end(), [&code](const Diagnostic& d) {
        return d.code == code;
    });
}

TEST(arguments, a_plan_with_everything) {
    const auto call = parse({"plan",      "loaf.txt",
                             "--eat-by",  "sat 13:00",
                             "--kitchen", "home.toml",
                             "--day",     "sat.toml",
                             "--room-c",  "18.5",
                             "--zone",    "Europe/Paris",
                             "--now",     "2026-11-28T09:00:00Z",
                             "--answer",  "oven-c=220",
                             "--answer",  "salt=10 g",
                             "--out",     "a.txt",
                             "--out",     "b.json",
                             "--json"});
    ASSERT_TRUE(call);
    const auto& plan = std::get<PlanArguments>(*call);
    EXPECT_EQ(plan.files, std::vector<std::string>{"loaf.txt"});
    EXPECT_FALSE(plan.start);
    EXPECT_EQ(plan.eat_by, "sat 13:00");
    EXPECT_EQ(plan.kitchen, "home.toml");
    EXPECT_EQ(plan.day, "sat.toml");
    EXPECT_EQ(plan.room_c, 18.5);
    EXPECT_EQ(plan.zone, "Europe/Paris");
    EXPECT_EQ(plan.now, "2026-11-28T09:00:00Z");
    ASSERT_EQ(plan.answers.size(), 2U);
    EXPECT_EQ(plan.answers[1].key, "salt");
    EXPECT_EQ(plan.answers[1].value, "10 g");
    EXPECT_EQ(plan.out, (Words{"a.txt", "b.json"}));
    EXPECT_TRUE(plan.json);
}

TEST(arguments, options_may_stand_before_the_file_and_swallow_nothing) {
    const auto call = parse({"read", "--answer", "oven-c=220", "--why", "-"});
    ASSERT_TRUE(call);
    const auto& read = std::get<ReadArguments>(*call);
    EXPECT_EQ(read.file, "-");
    EXPECT_TRUE(read.why);
    EXPECT_FALSE(read.json);
    ASSERT_EQ(read.answers.size(), 1U);
}

TEST(arguments, version_and_help_are_texts) {
    EXPECT_EQ(std::get<ShowText>(*parse({"--version"})).text, "loafwright 1.2.3\n");
    for (const Words& words : {Words{"--help"}, Words{"plan", "--help"}, Words{"read", "-h"}}) {
        const auto call = parse(words);
        ASSERT_TRUE(call);
        EXPECT_NE(std::get<ShowText>(*call).text.find("--eat-by TIME"), std::string::npos);
    }
}

TEST(arguments, start_and_eat_by_exclude_each_other) {
    EXPECT_EQ(only_fault({"plan", "loaf.txt", "--start", "13:00", "--eat-by", "19:00"}).code,
              "both_start_and_eat_by");
}

TEST(arguments, a_time_without_its_quotes_is_recognised) {
    const Diagnostic fault = only_fault({"plan", "loaf.txt", "--eat-by", "tomorrow", "07:30"});
    EXPECT_EQ(fault.code, "usage");
    EXPECT_NE(fault.what.find("07:30"), std::string::npos);
    EXPECT_NE(fault.do_this.find("Quote it"), std::string::npos);
    EXPECT_NE(only_fault({"plan", "13:00"}).do_this.find("Quote it"), std::string::npos);
}

TEST(arguments, one_bread_at_a_time_is_read_and_a_dozen_planned) {
    EXPECT_EQ(only_fault({"read", "a.txt", "b.txt"}).code, "one_bread_at_a_time");
    std::vector<std::string> words{"plan"};
    words.resize(1 + breads::most_breads, "a.txt");
    const auto call = arguments_from(words, "1");
    ASSERT_TRUE(call);
    EXPECT_EQ(std::get<PlanArguments>(*call).files.size(), breads::most_breads);
    words.emplace_back("b.txt");
    EXPECT_EQ(only_fault(words).code, "too_many_breads");
}

TEST(arguments, an_ending_that_cannot_be_written_names_those_that_can) {
    const Diagnostic fault = only_fault({"plan", "a.txt", "--out", "a.docx"});
    EXPECT_EQ(fault.code, "usage");
    EXPECT_NE(fault.what.find("a.docx"), std::string::npos);
    EXPECT_NE(fault.do_this.find(".txt, .pdf, .svg, .png, .ics or .json"), std::string::npos);
}

TEST(arguments, a_room_in_fahrenheit_is_recognised) {
    const Diagnostic fault = only_fault({"plan", "a.txt", "--room-c", "68"});
    EXPECT_EQ(fault.code, "value_out_of_range");
    EXPECT_NE(fault.do_this.find("20 °C"), std::string::npos) << fault.do_this;
    EXPECT_EQ(only_fault({"plan", "a.txt", "--room-c", "warm"}).code, "usage");
    EXPECT_EQ(only_fault({"plan", "a.txt", "--room-c", "-10"}).code, "value_out_of_range");
    EXPECT_EQ(only_fault({"plan", "a.txt", "--room-c", "nan"}).code, "value_out_of_range");
}

TEST(arguments, a_room_may_be_a_word) {
    const auto call = parse({"plan", "a.txt", "--room-c", "shirtsleeves"});
    ASSERT_TRUE(call);
    EXPECT_EQ(std::get<PlanArguments>(*call).room_c, 21.0);
    const Diagnostic fault = only_fault({"plan", "a.txt", "--room-c", "chilly"});
    EXPECT_EQ(fault.code, "usage");
    EXPECT_NE(fault.what.find("jumper, shirtsleeves or hot"), std::string::npos) << fault.what;
}

TEST(arguments, everything_about_the_water) {
    const auto call =
        parse({"water", "--dough-c",    "24.5",      "--flour",   "800",       "--water",
               "520",   "--room-c",     "jumper",    "--flour-c", "15",        "--tap-c",
               "9",     "--altitude-m", "300",       "--mixing",  "processor", "--yeast",
               "dry",   "--kitchen",    "home.toml", "--json"});
    ASSERT_TRUE(call);
    const auto& water = std::get<WaterArguments>(*call);
    EXPECT_EQ(water.question.dough, Celsius(24.5));
    EXPECT_EQ(water.question.flour, Grams(800.0));
    EXPECT_EQ(water.question.water, Grams(520.0));
    EXPECT_EQ(water.question.room, Celsius(17.0));
    EXPECT_EQ(water.question.flour_temperature, Celsius(15.0));
    EXPECT_EQ(water.question.tap, Celsius(9.0));
    EXPECT_EQ(water.question.altitude, Metres(300.0));
    EXPECT_EQ(water.question.mixing, dough::MixingMethod::food_processor);
    EXPECT_EQ(water.question.yeast, dough::YeastMeetsWater::dry_in_water);
    EXPECT_EQ(water.kitchen, "home.toml");
    EXPECT_TRUE(water.json);
    const auto bare = parse({"water", "--dough-c", "25"});
    ASSERT_TRUE(bare);
    EXPECT_FALSE(std::get<WaterArguments>(*bare).question.room);
    EXPECT_FALSE(std::get<WaterArguments>(*bare).kitchen);
}

TEST(arguments, everything_about_a_rise_elsewhere) {
    const auto call = parse({"how-long",
                             "90",
                             "--at-c",
                             "24",
                             "--fridge-c",
                             "5",
                             "--grams",
                             "1200",
                             "--dough-c",
                             "23",
                             "--leaven"});
    ASSERT_TRUE(call);
    const auto& how_long = std::get<HowLongArguments>(*call);
    EXPECT_EQ(how_long.question.stated, Minutes(90.0));
    EXPECT_EQ(how_long.question.at, Celsius(24.0));
    EXPECT_EQ(how_long.question.curve, dough::Curve::leaven_yeast);
    const auto& fridge = std::get<asking::InFridge>(how_long.question.here);
    EXPECT_EQ(fridge.fridge, Celsius(5.0));
    EXPECT_EQ(fridge.lump, Grams(1200.0));
    EXPECT_EQ(fridge.dough, Celsius(23.0));
    const auto room = parse({"how-long", "90", "--at-c", "24", "--here-c", "-2"});
    ASSERT_TRUE(room);
    EXPECT_EQ(std::get<asking::InRoom>(std::get<HowLongArguments>(*room).question.here).temperature,
              Celsius(-2.0));
}

TEST(arguments, what_the_two_questions_lack_or_say_twice_is_told) {
    EXPECT_EQ(only_fault({"water"}).what, "--dough-c is missing");
    EXPECT_EQ(only_fault({"water", "--dough-c", "warm"}).code, "usage");
    EXPECT_EQ(only_fault({"water", "--dough-c", "nan"}).code, "value_out_of_range");
    EXPECT_NE(only_fault({"water", "--dough-c", "77"}).do_this.find("25 °C"), std::string::npos);
    EXPECT_EQ(only_fault({"water", "--dough-c", "25", "--flour", "0"}).code, "value_out_of_range");
    const Diagnostic mixing = only_fault({"water", "--dough-c", "25", "--mixing", "foot"});
    EXPECT_EQ(mixing.code, "value_unknown");
    EXPECT_EQ(mixing.what, "--mixing is 'foot', expected hand, mixer, stirred or processor");
    EXPECT_EQ(only_fault({"water", "--dough-c", "25", "--yeast", "wet"}).what,
              "--yeast is 'wet', expected fresh, dry or dry-in-flour");

    EXPECT_EQ(only_fault({"how-long", "60", "--at-c", "24"}).code, "usage");
    EXPECT_EQ(only_fault({"how-long", "60", "--here-c", "24"}).what, "--at-c is missing");
    EXPECT_EQ(only_fault({"how-long", "--at-c", "24", "--here-c", "20"}).code, "usage");
    EXPECT_EQ(only_fault({"how-long", "60", "90", "--at-c", "24", "--here-c", "20"}).what,
              "found 2 lengths of a rise, expected one");
    EXPECT_EQ(only_fault({"how-long", "6e9", "--at-c", "24", "--here-c", "20"}).code,
              "value_out_of_range");
    EXPECT_EQ(
        only_fault({"how-long", "60", "--at-c", "24", "--here-c", "20", "--fridge-c", "5"}).code,
        "said_twice");
    EXPECT_EQ(
        only_fault({"how-long", "60", "--at-c", "24", "--fridge-c", "5", "--grams", "9"}).code,
        "value_out_of_range");
    EXPECT_EQ(
        only_fault({"how-long", "60", "--at-c", "24", "--here-c", "20", "--grams", "900"}).what,
        "--grams changes nothing beside --here-c");
}

TEST(arguments, every_fault_is_found_in_one_go) {
    const auto call = parse({"plan",
                             "a.txt",
                             "b.txt",
                             "--answer",
                             "nonsense",
                             "--room-c",
                             "400",
                             "--out",
                             "x.doc",
                             "--start",
                             "13:00",
                             "--eat-by",
                             "14:00"});
    ASSERT_FALSE(call);
    EXPECT_EQ(call.error().size(), 4U);
    EXPECT_TRUE(has_code(call.error(), "value_out_of_range"));
    EXPECT_TRUE(has_code(call.error(), "both_start_and_eat_by"));
}

TEST(arguments, words_that_mean_nothing_are_named) {
    EXPECT_NE(only_fault({"bake", "a.txt"}).what.find("'bake'"), std::string::npos);
    EXPECT_NE(only_fault({"plan", "a.txt", "--frob"}).what.find("--frob"), std::string::npos);
    EXPECT_NE(only_fault({"plan", "a.txt", "--start"}).what.find("--start needs a value"),
              std::string::npos);
    EXPECT_EQ(only_fault({}).code, "usage");
    EXPECT_EQ(only_fault({"plan"}).code, "usage");
}

} // namespace
} // namespace loafwright::cli
