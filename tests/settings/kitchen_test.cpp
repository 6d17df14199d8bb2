// SPDX-License-Identifier: Apache-2.0
//
// Kitchen files: what they say, what is taken when they are silent, and how their mistakes are
// told.
#include "shell/settings/settings.hpp"
#include "tests/settings/complaints.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace loafwright::settings {
namespace {

using Lines = std::vector<std::string>;

Kitchen good(std::string_view text) {
    const auto kitchen = kitchen_from_toml(text, "kitchen.toml");
    EXPECT_TRUE(kitchen.has_value()) << (kitchen ? "" : one_line(kitchen.error().front()));
    return kitchen.value_or(Kitchen{});
}

Diagnostics faults(std::string_view text) {
    const auto kitchen = kitchen_from_toml(text, "kitchen.toml");
    EXPECT_FALSE(kitchen.has_value());
    return kitchen ? Diagnostics{} : kitchen.error();
}

TEST(kitchen_file, every_key_arrives_in_its_place) {
    const Kitchen kitchen = good(R"(
room_c = 18.5
flour_c = 15
tap_c = 9
fridge_c = 4
altitude_m = 320
warm_spot_c = 27
warm_spot_is_oven = true
mixing = "mixer"
yeast = "fresh yeast"

[oven]
max_c = 275
heat_up_minutes = 25
fan = true
shelves = 3
offset_c = -8.5

[[tin]]
name = "2 lb tin"
length_mm = 210
width_mm = 110
height_mm = 70

[[tin]]
name = "small"
length_mm = 160
width_mm = 90
height_mm = 65
)");
    ASSERT_EQ(kitchen.room.size(), 1u);
    EXPECT_EQ(kitchen.room[0].from, (ClockTime{0, 0}));
    EXPECT_EQ(kitchen.room[0].temperature, Celsius(18.5));
    EXPECT_EQ(kitchen.flour.value(), Celsius(15.0));
    EXPECT_EQ(kitchen.tap, Celsius(9.0));
    EXPECT_EQ(kitchen.fridge, Celsius(4.0));
    EXPECT_EQ(kitchen.altitude, Metres(320.0));
    EXPECT_EQ(kitchen.warm_spot.value(), Celsius(27.0));
    EXPECT_TRUE(kitchen.warm_spot_is_oven);
    EXPECT_EQ(kitchen.mixing, MixingMethod::mixer);
    EXPECT_EQ(kitchen.yeast.value(), "fresh yeast");
    EXPECT_EQ(kitchen.oven.max, Celsius(275.0));
    EXPECT_EQ(kitchen.oven.heat_up, Minutes(25.0));
    EXPECT_TRUE(kitchen.oven.fan);
    EXPECT_EQ(kitchen.oven.shelves, 3);
    EXPECT_EQ(kitchen.oven.offset, CelsiusDifference(-8.5));
    ASSERT_EQ(kitchen.tins.size(), 2u);
    EXPECT_EQ(kitchen.tins[0].name, "2 lb tin");
    EXPECT_EQ(kitchen.tins[1].length, Millimetres(160.0));
    EXPECT_EQ(kitchen.tins[1].width, Millimetres(90.0));
    EXPECT_EQ(kitchen.tins[1].height, Millimetres(65.0));
}

TEST(kitchen_file, an_empty_file_leaves_every_default) {
    const Kitchen kitchen = good("");
    EXPECT_TRUE(kitchen.room.empty());
    EXPECT_FALSE(kitchen.flour.has_value());
    EXPECT_FALSE(kitchen.warm_spot.has_value());
    EXPECT_FALSE(kitchen.warm_spot_is_oven);
    EXPECT_FALSE(kitchen.yeast.has_value());
    EXPECT_EQ(kitchen.tap, Celsius(12.0));
    EXPECT_EQ(kitchen.fridge, Celsius(5.0));
    EXPECT_EQ(kitchen.altitude, Metres(0.0));
    EXPECT_EQ(kitchen.mixing, MixingMethod::hand);
    EXPECT_EQ(kitchen.oven.max, Celsius(250.0));
    EXPECT_EQ(kitchen.oven.heat_up, Minutes(20.0));
    EXPECT_FALSE(kitchen.oven.fan);
    EXPECT_TRUE(kitchen.tins.empty());
}

TEST(kitchen_file, a_room_through_the_day_is_sorted_by_time) {
    const Kitchen kitchen = good(R"(
room_c = [{from = "23:00", c = 15}, {from = "7:00", c = 19.5}, {from = 00:30:00, c = 14}]
)");
    ASSERT_EQ(kitchen.room.size(), 3u);
    EXPECT_EQ(kitchen.room[0].from, (ClockTime{0, 30}));
    EXPECT_EQ(kitchen.room[1].from, (ClockTime{7, 0}));
    EXPECT_EQ(kitchen.room[1].temperature, Celsius(19.5));
    EXPECT_EQ(kitchen.room[2].from, (ClockTime{23, 0}));
}

TEST(kitchen_file, a_room_through_the_day_may_stand_below_headings) {
    const Kitchen kitchen = good("[[room_c]]\nfrom = \"07:00\"\nc = 19\n");
    ASSERT_EQ(kitchen.room.size(), 1u);
    EXPECT_EQ(kitchen.room[0].temperature, Celsius(19.0));
}

// 17, 21 and 27 °C are common practice: a jumper on, sleeves rolled up, too hot to sit still.
TEST(kitchen_file, a_kitchen_without_a_thermometer_is_said_in_a_word) {
    const auto only_room = [](std::string_view text) {
        const Kitchen kitchen = good(text);
        EXPECT_EQ(kitchen.room.size(), 1u) << text;
        return kitchen.room.empty() ? Celsius(-273.15) : kitchen.room[0].temperature;
    };
    EXPECT_EQ(only_room("room = \"jumper\""), Celsius(17.0));
    EXPECT_EQ(only_room("room = \"shirtsleeves\""), Celsius(21.0));
    EXPECT_EQ(only_room("room = \"hot\""), Celsius(27.0));
}

TEST(kitchen_file, words_and_degrees_may_take_turns_through_the_day) {
    const Kitchen kitchen = good(R"(
room_c = [{from = "14:00", feels = "hot"}, {from = "07:00", feels = "jumper"}, {from = "22:00", c = 18.5}]
)");
    ASSERT_EQ(kitchen.room.size(), 3u);
    EXPECT_EQ(kitchen.room[0].from, (ClockTime{7, 0}));
    EXPECT_EQ(kitchen.room[0].temperature, Celsius(17.0));
    EXPECT_EQ(kitchen.room[1].temperature, Celsius(27.0));
    EXPECT_EQ(kitchen.room[2].temperature, Celsius(18.5));
}

TEST(kitchen_file, a_room_in_two_ways_or_in_an_unknown_word_is_told) {
    EXPECT_EQ(lines(faults("room = \"hot\"\nroom_c = 19\n")),
              (Lines{"kitchen.toml:2 room_c: room_c stands beside room in line 1, expected one of "
                     "the two. Leave one of the two out."}));
    EXPECT_EQ(lines(faults("room_c = [{from = \"07:00\", c = 19, feels = \"hot\"}]")),
              (Lines{"kitchen.toml:1 room_c.c: room_c.c stands beside room_c.feels, expected one "
                     "of the two. Leave one of the two out."}));
    EXPECT_EQ(lines(faults("room = \"chilly\"")),
              (Lines{"kitchen.toml:1 room: room is \"chilly\", expected \"jumper\", "
                     "\"shirtsleeves\" or \"hot\". Use one of those words."}));
    EXPECT_EQ(lines(faults("room = \"shirtsleeve\"")),
              (Lines{"kitchen.toml:1 room: room is \"shirtsleeve\", expected \"jumper\", "
                     "\"shirtsleeves\" or \"hot\". Did you mean \"shirtsleeves\"?"}));
    EXPECT_EQ(lines(faults("room_c = [{from = \"07:00\", feels = \"mild\"}]")),
              (Lines{"kitchen.toml:1 room_c.feels: room_c.feels is \"mild\", expected \"jumper\", "
                     "\"shirtsleeves\" or \"hot\". Use one of those words."}));
}

TEST(kitchen_file, degrees_where_a_word_belongs_and_a_word_for_degrees_are_put_right) {
    EXPECT_EQ(lines(faults("room = 19")),
              (Lines{"kitchen.toml:1 room: room is 19, expected a word in quotation marks: jumper, "
                     "shirtsleeves, hot. For degrees write room_c = 19."}));
    EXPECT_EQ(faults("room_c = \"jumper\"").front().do_this,
              "Without a thermometer write room = \"jumper\".");
    EXPECT_EQ(faults("room_c = [{from = \"07:00\", feels = 19}]").front().do_this,
              "For degrees write c = 19.");
    EXPECT_EQ(codes_and_places(faults("room = true")),
              (Lines{"value_wrong_kind kitchen.toml:1 room"}));
}

TEST(kitchen_file, the_usual_short_names_of_yeast_become_those_of_the_ingredient_table) {
    EXPECT_EQ(good("yeast = \"instant\"").yeast, "instant yeast");
    EXPECT_EQ(good("yeast = \"active dry\"").yeast, "active dry yeast");
    EXPECT_EQ(good("yeast = \" fresh \"").yeast, "fresh yeast");
    EXPECT_EQ(good("yeast = \"from the baker\"").yeast, "from the baker");
}

TEST(kitchen_file, a_slip_of_the_point_is_answered_with_the_number_that_was_meant) {
    const Diagnostics found = faults("room_c = 19\n\n\n\n\n[oven]\nmax_c = 2300\n");
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].code, "value_out_of_range");
    EXPECT_EQ(found[0].severity, Severity::error);
    EXPECT_EQ(found[0].where, "kitchen.toml:7 oven.max_c");
    EXPECT_EQ(found[0].what, "oven.max_c is 2300, expected 100 to 350");
    EXPECT_EQ(found[0].do_this, "Did you mean 230?");
}

TEST(kitchen_file, all_mistakes_are_told_in_one_go_in_the_order_of_the_lines) {
    const Diagnostics found = faults(R"(room_c = 70
flour_c = "19"
fridge = 5
tap_c = nan
mixing = "mixr"
yeast = ""
altitude_m = 99999
[oven]
max_c = 500
fan = "yes"
shelves = 1.5
offset_c = -100
heat_up_mins = 20
[[tin]]
length_mm = 23
width_mm = "wide"
colour = "black"
)");
    EXPECT_EQ(
        lines(found),
        (Lines{
            "kitchen.toml:1 room_c: room_c is 70, expected 0 to 45. If that is Fahrenheit, "
            "write 21.",
            "kitchen.toml:2 flour_c: flour_c is \"19\", expected a number. Write 19 without "
            "the quotation marks.",
            "kitchen.toml:3 fridge: fridge is not a key here. Did you mean fridge_c?",
            "kitchen.toml:4 tap_c: tap_c is nan, expected 0 to 40. Give it in degrees Celsius.",
            "kitchen.toml:5 mixing: mixing is \"mixr\", expected \"hand\" or \"mixer\". Did "
            "you mean \"mixer\"?",
            "kitchen.toml:6 yeast: yeast is empty, expected a word or two. Write something "
            "between the quotation marks, or leave the line out.",
            "kitchen.toml:7 altitude_m: altitude_m is 99999, expected -430 to 5500. Give it "
            "in metres above the sea.",
            "kitchen.toml:9 oven.max_c: oven.max_c is 500, expected 100 to 350. If that is "
            "Fahrenheit, write 260.",
            "kitchen.toml:10 oven.fan: oven.fan is \"yes\", expected true or false. Write "
            "true without quotation marks.",
            "kitchen.toml:11 oven.shelves: oven.shelves is 1.5, expected 1 to 10. Give a "
            "whole number from 1 to 10.",
            "kitchen.toml:12 oven.offset_c: oven.offset_c is -100, expected -60 to 60. Did "
            "you mean -10?",
            "kitchen.toml:13 oven.heat_up_mins: oven.heat_up_mins is not a key here. Did you "
            "mean oven.heat_up_minutes?",
            "kitchen.toml:14 tin.name: tin.name is missing. Add a line such as: name = \"2 lb "
            "tin\"",
            "kitchen.toml:14 tin.height_mm: tin.height_mm is missing. Add a line such as: "
            "height_mm = 70",
            "kitchen.toml:15 tin.length_mm: tin.length_mm is 23, expected 50 to 600. If that "
            "is centimetres, write 230.",
            "kitchen.toml:16 tin.width_mm: tin.width_mm is \"wide\", expected a number. Write "
            "a number.",
            "kitchen.toml:17 tin.colour: tin.colour is not a key here. Known here: "
            "height_mm, length_mm, name, width_mm.",
        }));
}

TEST(kitchen_file, a_key_that_slid_below_a_heading_is_told_where_it_belongs) {
    const Diagnostics found = faults("[oven]\nmax_c = 240\nroom_c = 19\n");
    EXPECT_EQ(
        lines(found),
        (Lines{"kitchen.toml:3 oven.room_c: oven.room_c is not a key here. Move the line above "
               "the first heading in square brackets: below [oven] it belongs to that."}));
}

TEST(kitchen_file, mistakes_in_the_room_through_the_day_are_told) {
    const Diagnostics found = faults(R"(room_c = [
  {from = "25:00", c = 19},
  {from = "18.30", c = 19},
  {from = "sat 10:00", c = 19},
  {c = 19},
  {from = "07:00"},
  {from = "08:00", c = 190},
  {from = "09:00", c = 19, d = 1},
  {from = "09:00", c = 20},
  19,
  {from = 7, c = 20}]
)");
    EXPECT_EQ(codes_and_places(found),
              (Lines{"time_unreadable kitchen.toml:2 room_c.from",
                     "time_unreadable kitchen.toml:3 room_c.from",
                     "time_unreadable kitchen.toml:4 room_c.from",
                     "key_missing kitchen.toml:5 room_c.from",
                     "key_missing kitchen.toml:6 room_c.c",
                     "value_out_of_range kitchen.toml:7 room_c.c",
                     "key_unknown kitchen.toml:8 room_c.d",
                     "value_out_of_range kitchen.toml:9 room_c.from",
                     "value_wrong_kind kitchen.toml:10 room_c",
                     "value_wrong_kind kitchen.toml:11 room_c.from"}));
}

TEST(kitchen_file, values_of_another_kind_are_told_with_what_was_expected) {
    const Diagnostics found = faults("room_c = true\nmixing = 1\noven = 250\ntin = 3\n"
                                     "warm_spot_c = [1, 2]\nyeast = 1979-05-27\n");
    EXPECT_EQ(codes_and_places(found),
              (Lines{"value_wrong_kind kitchen.toml:1 room_c",
                     "value_wrong_kind kitchen.toml:2 mixing",
                     "value_wrong_kind kitchen.toml:3 oven",
                     "value_wrong_kind kitchen.toml:4 tin",
                     "value_wrong_kind kitchen.toml:5 warm_spot_c",
                     "value_wrong_kind kitchen.toml:6 yeast"}));
    EXPECT_EQ(found[4].what, "warm_spot_c is a list, expected a number");
    EXPECT_EQ(codes_and_places(faults("room_c = []")),
              (Lines{"value_out_of_range kitchen.toml:1 room_c"}));
}

TEST(kitchen_file, text_that_is_no_toml_is_told_with_its_line) {
    const Diagnostics found = faults("room_c = 19\ntap c = 9\n");
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].code, "settings_unreadable");
    EXPECT_EQ(found[0].where, "kitchen.toml:2");
    EXPECT_EQ(found[0].what.find("Error"), std::string::npos) << found[0].what;
    EXPECT_EQ(faults("room_c = 19\nroom_c = 20\n").front().where, "kitchen.toml:2");
    EXPECT_EQ(faults(std::string(2 * 1024 * 1024, ' ')).front().code, "settings_unreadable");
}

TEST(kitchen_file, every_code_stands_in_the_catalogue) {
    for (const char* text : {"a = 1",
                             "room_c = \"x\"",
                             "room_c = 99",
                             "mixing = \"foot\"",
                             "=",
                             "[[tin]]",
                             "room = \"hot\"\nroom_c = 27",
                             "room_c = [{from = \"x\", c = 1}]"}) {
        for (const Diagnostic& diagnostic : faults(text)) {
            EXPECT_TRUE(is_known_code(diagnostic.code)) << diagnostic.code;
            EXPECT_FALSE(diagnostic.do_this.empty()) << diagnostic.what;
        }
    }
}

} // namespace
} // namespace loafwright::settings
