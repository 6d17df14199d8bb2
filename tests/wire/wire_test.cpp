// SPDX-License-Identifier: Apache-2.0
//
// What is written is read back by a parser and looked at field by field.
#include "engine/wire/wire.hpp"
#include "tests/sheet/tin_loaf_plan.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <limits>
#include <set>
#include <string>

namespace loafwright::wire {
namespace {

using Json = nlohmann::ordered_json;

Reading reading() {
    Reading out;
    out.recipe.title = "Plain “tin” loaf";
    out.recipe.pieces = 2.0;
    Ingredient flour;
    flour.text = "500g flour";
    flour.item = "strong white flour";
    flour.grams = exactly(Grams(500.0));
    flour.span = Span{0, 10};
    Ingredient salt;
    salt.text = "salt";
    salt.item = "salt";
    salt.optional = true;
    salt.part = "brine";
    out.recipe.ingredients = {flour, salt};

    Step rise;
    rise.kind = StepKind::rise;
    rise.place = Place::warm;
    rise.text = "leave for 1½ hours";
    rise.minutes = TimedBand{{Minutes(60.0), Minutes(67.5), Minutes(90.0)}, Basis::assumed};
    rise.temperature = TemperatureRange{Celsius(24.0), Celsius(26.0)};
    rise.after = {0};
    rise.cue = Cue{"doubled", Span{20, 27}};
    rise.reminders = {Reminder{"cover it", std::nullopt, 50}};
    rise.uses = {Use{"water", 0.5}, Use{"salt", std::nullopt}};
    Alternative fridge;
    fridge.place = Place::fridge;
    rise.alternatives = {fridge};
    rise.clock = ClockTime{8, 5};
    rise.span = Span{11, 40};
    Step fold;
    fold.kind = StepKind::knock_back;
    fold.during = 0;
    fold.repeat = Minutes(30.0);
    out.recipe.steps = {rise, fold};
    out.unread = {Unread{"In July", Span{50, 57}, "not a step", "50"}};
    out.questions = {Question{"oven-c", "oven", "How hot?", "220"}};
    out.remarks = {Diagnostic{"units_disagree", Severity::note, "two weights", "1-2", "check"}};
    return out;
}

// New fields may be added, those that are promised stay.
void expect_promised(const Json& found, const Json& promised) {
    for (const auto& [key, value] : promised.items()) {
        ASSERT_TRUE(found.contains(key)) << key;
        EXPECT_EQ(found.at(key), value) << key;
    }
}

TEST(wire, a_reading_reads_back_field_by_field) {
    const std::string text = reading_json(reading());
    EXPECT_EQ(text.back(), '\n');
    const Json json = Json::parse(text);
    EXPECT_EQ(json.at("version"), 1);
    const Json& recipe = json.at("recipe");
    EXPECT_EQ(recipe.at("title"), "Plain “tin” loaf");
    EXPECT_EQ(recipe.at("pieces"), 2);
    expect_promised(recipe.at("ingredients").at(0),
                    Json::parse(R"json({"text": "500g flour", "item": "strong white flour",
                  "grams": {"low": 500, "likely": 500, "high": 500}, "optional": false, "part": null, "span": [0, 10]})json"));
    expect_promised(
        recipe.at("ingredients").at(1),
        Json::parse(R"json({"text": "salt", "item": "salt", "grams": null, "optional": true,
                  "part": "brine", "span": null})json"));
    expect_promised(recipe.at("steps").at(0), Json::parse(R"json({"kind": "rise", "place": "warm",
        "text": "leave for 1½ hours", "part": null,
        "minutes": {"low": 60, "likely": 67.5, "high": 90, "basis": "assumed"},
        "temperature_c": {"low": 24, "high": 26}, "optional": false, "after": [0], "during": null,
        "repeat_minutes": null, "clock": "08:05",
        "uses": [{"item": "water", "share": 0.5}, {"item": "salt", "share": null}],
        "alternatives": [{"kind": "rise", "place": "fridge", "minutes": null, "temperature_c": null}],
        "cue": {"text": "doubled", "span": [20, 27]},
        "reminders": [{"text": "cover it", "span": null}], "span": [11, 40]})json"));
    EXPECT_EQ(recipe.at("steps").at(1).at("kind"), "knock_back");
    EXPECT_EQ(recipe.at("steps").at(1).at("during"), 0);
    EXPECT_EQ(recipe.at("steps").at(1).at("repeat_minutes"), 30);
    EXPECT_TRUE(recipe.at("steps").at(1).at("minutes").is_null());
    EXPECT_EQ(
        json.at("unread"),
        Json::parse(
            R"json([{"text": "In July", "span": [50, 57], "why": "not a step", "at": "50"}])json"));
    EXPECT_EQ(
        json.at("questions"),
        Json::parse(
            R"json([{"key": "oven-c", "about": "oven", "ask": "How hot?", "default": "220", "span": null}])json"));
    EXPECT_EQ(json.at("remarks"), Json::parse(R"json([{"code": "units_disagree", "severity": "note",
        "what": "two weights", "where": "1-2", "do_this": "check"}])json"));
}

TEST(wire, whole_numbers_have_no_point_and_others_no_dust) {
    Reading out = reading();
    out.recipe.ingredients.front().grams =
        Band<Grams>{Grams(0.1 + 0.2), Grams(340.194277), Grams(500.0)};
    const std::string text = reading_json(out);
    EXPECT_EQ(text.find("500.0"), std::string::npos);
    EXPECT_NE(text.find("340.194,"), std::string::npos);
    EXPECT_NE(text.find("0.3,"), std::string::npos);
}

TEST(wire, what_is_no_number_is_null) {
    Reading out = reading();
    out.recipe.pieces = std::numeric_limits<double>::quiet_NaN();
    EXPECT_TRUE(Json::parse(reading_json(out)).at("recipe").at("pieces").is_null());
}

TEST(wire, an_empty_reading_has_empty_lists) {
    const Json json = Json::parse(reading_json(Reading{}));
    EXPECT_TRUE(json.at("recipe").at("steps").is_array());
    EXPECT_TRUE(json.at("recipe").at("steps").empty());
    EXPECT_TRUE(json.at("unread").is_array());
    EXPECT_TRUE(json.at("questions").is_array());
}

TEST(wire, a_plan_reads_back_field_by_field) {
    BakeDay bake = tin_loaf_day();
    bake.plan.stages.at(3).basis = Basis::computed;
    bake.plan.stages.at(3).reason = "10 min longer: your kitchen is 19 °C";
    Zone zone;
    zone.first_offset_seconds = 3600;
    const Json json =
        Json::parse(plan_json(bake.plan, bake.provisions, bake.recipe.questions, zone));
    EXPECT_EQ(json.at("version"), 1);
    const Json& plan = json.at("plan");
    EXPECT_EQ(plan.at("proven"), true);
    EXPECT_EQ(plan.at("start"), "2026-11-28T14:00:00+01:00");
    EXPECT_EQ(plan.at("out_of_oven"), "2026-11-28T17:25:00+01:00");
    EXPECT_EQ(plan.at("cut_from"), "2026-11-28T18:25:00+01:00");
    EXPECT_EQ(plan.at("best_from"), "2026-11-28T19:15:00+01:00");
    EXPECT_EQ(plan.at("eat").at("likely"), "2026-11-28T19:30:00+01:00");
    EXPECT_EQ(plan.at("total_minutes"), 265);
    EXPECT_EQ(plan.at("hands_on_minutes"), 42);
    ASSERT_EQ(plan.at("stages").size(), 7U);
    EXPECT_EQ(plan.at("stages").at(3), Json::parse(R"json({"number": 4, "bread": "Plain tin loaf",
        "title": "prove, covered", "who": null, "attention": "wait", "start": "2026-11-28T16:00:00+01:00",
        "end": {"low": "2026-11-28T16:40:00+01:00", "likely": "2026-11-28T16:50:00+01:00",
                "high": "2026-11-28T17:10:00+01:00"},
        "look_from": "2026-11-28T16:40:00+01:00",
        "basis": "computed",
        "reason": "10 min longer: your kitchen is 19 °C",
        "cue": {"text": "it domes 2.5 cm above the rim", "span": [40, 60]},
        "acts": [{"at": "2026-11-28T16:20:00+01:00", "text": "oven on, 230 °C (fan 210, gas 8)", "step": null
}],
        "reminders": [], "steps": [4]
})json"));
    EXPECT_EQ(plan.at("stages").at(0).at("reminders").at(0).at("text"),
              "keep back a splash of water");
    EXPECT_TRUE(plan.at("stages").at(0).at("look_from").is_null());
    EXPECT_EQ(
        plan.at("free").at(0),
        Json::parse(
            R"json({"from": "2026-11-28T14:30:00+01:00", "to": "2026-11-28T15:35:00+01:00"})json"));
    EXPECT_EQ(plan.at("warnings"), Json::array());
    EXPECT_EQ(plan.at("cautions").size(), 4U) << "all of them, not only those on the page";
    EXPECT_EQ(plan.at("cautions").at(0), Json::parse(R"json({"code": "raw-flour",
        "text": "Flour is raw until it is baked.", "source": "a food agency"})json"));
    EXPECT_EQ(json.at("questions").at(0).at("default"), "220");
}

TEST(wire, keys_keep_their_order) {
    const BakeDay bake = tin_loaf_day();
    const std::string text = plan_json(bake.plan, bake.provisions, {}, Zone{});
    EXPECT_LT(text.find("\"version\""), text.find("\"plan\""));
    EXPECT_LT(text.find("\"start\""), text.find("\"out_of_oven\""));
    EXPECT_LT(text.find("\"stages\""), text.find("\"free\""));
    EXPECT_LT(text.find("\"plan\""), text.rfind("\"questions\""));
}

TEST(wire, an_honest_no_reads_back) {
    Impossible no;
    no.why = "It takes 4 h 25.";
    no.reasons = {"you are out until 12:00"};
    no.ways_out = {WayOut{"begin at 13:10", at(17, 35), {{1, {"make-it", "rolls"}}}}};
    const Json json = Json::parse(impossible_json(no, {}, Zone{}));
    EXPECT_EQ(json, Json::parse(R"json({"version": 1, "impossible": {"why": "It takes 4 h 25.",
        "reasons": ["you are out until 12:00"],
        "ways_out": [{"change": "begin at 13:10", "eat": "2026-11-28T17:35:00+00:00",
                      "taken_by": [{"bread": 1, "key": "make-it", "value": "rolls"}]}]}, "questions": []})json"));
}

TEST(wire, errors_read_back_as_strings) {
    const Json json =
        Json::parse(error_json({Diagnostic{"usage", Severity::error, "what", "where", "do"}}));
    EXPECT_EQ(json,
              Json::parse(R"json({"version": 1, "error": [{"code": "usage", "severity": "error",
        "what": "what", "where": "where", "do_this": "do"}]})json"));
}

TEST(wire, a_broken_letter_breaks_no_answer) {
    const Json json = Json::parse(error_json({Diagnostic{"usage",
                                                         Severity::error,
                                                         "a\xFF"
                                                         "b",
                                                         "",
                                                         ""}}));
    EXPECT_EQ(json.at("error").at(0).at("what"), "a\uFFFDb");
}

// Figures by hand as in tests/asking/water_test.cpp.
TEST(wire, the_water_has_its_figures_its_grounds_and_its_words) {
    asking::WaterQuestion question;
    question.dough = Celsius(25.0);
    const Json json = Json::parse(water_json(asking::water_for(question, Kitchen{})));
    EXPECT_EQ(json.at("version"), 1);
    EXPECT_FALSE(json.contains("impossible"));
    const Json& water = json.at("water");
    expect_promised(water, Json::parse(R"json({"dough_c": 25, "advice": "tap_and_boiled",
        "boiled_grams": 65, "ice_grams": 0, "tap_grams": 260, "limit_c": 35, "dough_with_it_c": 25,
        "flour_needed_c": null})json"));
    expect_promised(water.at("worked_out_from"),
                    Json::parse(R"json({"flour_grams": 500, "water_grams": 325, "room_c": 20,
        "flour_c": 20, "tap_c": 12, "altitude_m": 0, "mixing": "hand", "yeast": "fresh"})json"));
    EXPECT_NEAR(water.at("water_c").at("likely").get<double>(), 29.642, 0.005);
    EXPECT_LT(water.at("water_c").at("low"), water.at("water_c").at("likely"));
    EXPECT_GT(water.at("water_c").at("high"), water.at("water_c").at("likely"));
    EXPECT_EQ(water.at("rule").at("convention"), "american_friction_factor");
    // 75 - 20 - 20 - 8 / 1.8.
    EXPECT_EQ(water.at("rule").at("water_c"), 30.556);
    EXPECT_GE(water.at("say").size(), 4U);
}

TEST(wire, water_that_would_harm_is_an_honest_no_with_its_figures) {
    asking::WaterQuestion question;
    question.dough = Celsius(28.0);
    question.room = Celsius(17.0);
    question.flour_temperature = Celsius(5.0);
    const Json json = Json::parse(water_json(asking::water_for(question, Kitchen{})));
    EXPECT_EQ(json.at("water").at("advice"), "would_harm");
    EXPECT_EQ(json.at("water").at("boiled_grams"), 85);
    EXPECT_NEAR(json.at("water").at("flour_needed_c").get<double>(), 26.84, 0.01);
    EXPECT_EQ(json.at("impossible").at("why"), json.at("water").at("say").at(0));
    EXPECT_FALSE(json.at("impossible").at("reasons").empty());
    EXPECT_TRUE(json.at("impossible").at("ways_out").empty());
}

TEST(wire, a_rise_elsewhere_has_whole_fives_or_none) {
    asking::RiseQuestion question{
        Minutes(60.0), Celsius(24.0), asking::InRoom{Celsius(18.0)}, dough::Curve::gas};
    const Json room = Json::parse(how_long_json(asking::rise_elsewhere(question)));
    EXPECT_FALSE(room.contains("impossible"));
    // 60 x 0.6083 / 0.3773 = 96.7, 15 % to each side.
    expect_promised(room.at("how_long"), Json::parse(R"json({"stated_minutes": 60, "at_c": 24,
        "here_c": 18, "fridge_c": null, "grams": null, "dough_c": null, "leaven": false,
        "minutes": {"low": 80, "likely": 95, "high": 110}})json"));
    question.here = asking::InFridge{Celsius(5.0)};
    question.curve = dough::Curve::leaven_yeast;
    const Json fridge = Json::parse(how_long_json(asking::rise_elsewhere(question)));
    expect_promised(fridge.at("how_long"), Json::parse(R"json({"here_c": null, "fridge_c": 5,
        "grams": 900, "dough_c": 25, "leaven": true})json"));
    question.here = asking::InRoom{Celsius(-3.0)};
    question.curve = dough::Curve::gas;
    const Json never = Json::parse(how_long_json(asking::rise_elsewhere(question)));
    EXPECT_TRUE(never.at("how_long").at("minutes").is_null());
    EXPECT_FALSE(never.at("impossible").at("why").get<std::string>().empty());
}

TEST(wire, every_advice_about_water_has_a_name_of_its_own) {
    asking::WaterAnswer answer;
    std::set<std::string> names;
    for (const auto advice : {dough::WaterAdvice::tap_as_it_is,
                              dough::WaterAdvice::tap_and_boiled,
                              dough::WaterAdvice::tap_and_ice,
                              dough::WaterAdvice::would_harm,
                              dough::WaterAdvice::beyond_ice,
                              dough::WaterAdvice::beyond_boiling,
                              dough::WaterAdvice::no_water_to_set}) {
        answer.plan.advice = advice;
        names.insert(Json::parse(water_json(answer)).at("water").at("advice").get<std::string>());
    }
    EXPECT_EQ(names.size(), 7U);
    EXPECT_EQ(names.count(""), 0U);
}

} // namespace
} // namespace loafwright::wire
