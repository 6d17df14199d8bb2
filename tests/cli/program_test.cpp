// SPDX-License-Identifier: Apache-2.0
//
// The built program, run as a baker or a script would run it: what it prints where, and with what
// exit status.
#include "tests/cli/program.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <unistd.h>

#include <string>
#include <vector>

namespace loafwright {
namespace {

const std::vector<std::string> saturday = {"--now", "2026-11-28T09:00:00Z", "--zone", "UTC"};

std::vector<std::string> on_saturday(std::vector<std::string> words) {
    words.insert(words.end(), saturday.begin(), saturday.end());
    return words;
}

TEST_F(program, says_its_version) {
    const Outcome outcome = run({"--version"});
    EXPECT_EQ(outcome.status, 0);
    EXPECT_EQ(outcome.out.rfind("loafwright ", 0), 0U);
    EXPECT_EQ(outcome.err, "");
}

TEST_F(program, plans_a_loaf_on_one_page) {
    const Outcome outcome =
        run(on_saturday({"plan", "loaf.txt", "--start", "10:00", "--room-c", "21"}));
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_EQ(outcome.out.rfind("Plain tin loaf", 0), 0U) << outcome.out;
    EXPECT_NE(outcome.out.find("Begin 10:00."), std::string::npos) << outcome.out;
    EXPECT_NE(outcome.out.find("500 g strong white flour"), std::string::npos);
    EXPECT_NE(outcome.out.find("220 °C"), std::string::npos);
    EXPECT_EQ(outcome.out.find('\033'), std::string::npos) << "no weight outside a terminal";
    EXPECT_EQ(outcome.err, "");
}

TEST_F(program, reads_standard_input) {
    const Outcome outcome = run({"read", "-", "--json"}, loaf);
    EXPECT_EQ(outcome.status, 0);
    const auto json = nlohmann::json::parse(outcome.out);
    EXPECT_EQ(json.at("version"), 1);
    EXPECT_EQ(json.at("recipe").at("title"), "Plain tin loaf");
    EXPECT_GE(json.at("recipe").at("steps").size(), 6U);
}

TEST_F(program, the_plan_as_json_and_in_files_is_the_same) {
    const Outcome outcome = run(on_saturday({"plan",
                                             "loaf.txt",
                                             "--eat-by",
                                             "16:00",
                                             "--json",
                                             "--out",
                                             "plan.json",
                                             "--out",
                                             "page.txt"}));
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_EQ(bytes_of(folder_ / "plan.json"), outcome.out);
    EXPECT_EQ(bytes_of(folder_ / "page.txt").rfind("Plain tin loaf", 0), 0U);
    const auto json = nlohmann::json::parse(outcome.out);
    EXPECT_LE(json.at("plan").at("eat").at("likely").get<std::string>(),
              "2026-11-28T16:00:00+00:00");
}

TEST_F(program, the_same_call_gives_the_same_page) {
    const auto words = on_saturday({"plan", "loaf.txt", "--start", "10:00"});
    EXPECT_EQ(run(words).out, run(words).out);
}

TEST_F(program, a_room_asked_for_is_a_room_answered) {
    const auto told = run(on_saturday({"plan", "loaf.txt", "--start", "10:00", "--room-c", "18"}));
    const auto answered =
        run(on_saturday({"plan", "loaf.txt", "--start", "10:00", "--answer", "room-c=18"}));
    const auto unsaid = run(on_saturday({"plan", "loaf.txt", "--start", "10:00"}));
    EXPECT_EQ(told.out, answered.out);
    EXPECT_EQ(answered.err, "");
    EXPECT_NE(unsaid.out.find("How warm is your kitchen?"), std::string::npos);
    EXPECT_EQ(told.out.find("How warm is your kitchen?"), std::string::npos);
}

TEST_F(program, a_kitchen_without_a_thermometer_is_said_in_a_word) {
    const auto page = [this](const std::vector<std::string>& room) {
        std::vector<std::string> words = {"plan", "loaf.txt", "--start", "10:00"};
        words.insert(words.end(), room.begin(), room.end());
        const Outcome outcome = run(on_saturday(words));
        EXPECT_EQ(outcome.status, 0) << outcome.err;
        return outcome.out;
    };
    write("kitchen.toml", "room = \"jumper\"\n");
    // A jumper is worn at 17 °C (common practice).
    const std::string at_17 = page({"--room-c", "17"});
    EXPECT_EQ(page({"--room-c", "jumper"}), at_17);
    EXPECT_EQ(page({"--answer", "room-c=jumper"}), at_17);
    EXPECT_EQ(page({"--kitchen", "kitchen.toml"}), at_17);
    EXPECT_NE(page({"--room-c", "hot"}), at_17);
    expect_refused(on_saturday({"plan", "loaf.txt", "--room-c", "chilly"}),
                   {"'chilly'", "jumper, shirtsleeves or hot"});
    expect_refused(on_saturday({"plan", "loaf.txt", "--answer", "room-c=chilly"}),
                   {"'chilly'", "jumper, shirtsleeves or hot"});
}

TEST_F(program, the_room_said_outranks_the_kitchen_file) {
    write("kitchen.toml", "room_c = 25\n");
    const auto both = on_saturday(
        {"plan", "loaf.txt", "--start", "10:00", "--kitchen", "kitchen.toml", "--room-c", "18"});
    const auto one = on_saturday({"plan", "loaf.txt", "--start", "10:00", "--room-c", "18"});
    EXPECT_EQ(run(both).out, run(one).out);
}

TEST_F(program, what_cannot_be_is_an_honest_no_on_standard_output) {
    const Outcome outcome = run(on_saturday({"plan", "loaf.txt", "--eat-by", "09:30"}));
    EXPECT_EQ(outcome.status, 1) << outcome.err;
    EXPECT_NE(outcome.out.find("What would work:"), std::string::npos) << outcome.out;
    EXPECT_EQ(outcome.err, "");
    const Outcome json = run(on_saturday({"plan", "loaf.txt", "--eat-by", "09:30", "--json"}));
    EXPECT_EQ(json.status, 1);
    EXPECT_FALSE(nlohmann::json::parse(json.out).at("impossible").at("ways_out").empty());
}

TEST_F(program, a_file_that_is_not_there_is_named) {
    expect_refused({"read", "nowhere.txt"}, {"nowhere.txt: ", "no such file", "Check the name"});
    expect_refused({"plan", "nowhere.txt", "--kitchen", "neither.toml", "--day", "nor.toml"},
                   {"nowhere.txt", "neither.toml", "nor.toml"});
}

TEST_F(program, a_folder_is_no_recipe) {
    expect_refused({"read", "."}, {".: ", "folder"});
}

TEST_F(program, a_file_nobody_may_read_is_named) {
    if (::geteuid() == 0) {
        GTEST_SKIP() << "the superuser may read everything";
    }
    fs::permissions(folder_ / "loaf.txt", fs::perms::none);
    expect_refused({"read", "loaf.txt"}, {"loaf.txt: ", "cannot be read"});
}

TEST_F(program, an_empty_text_is_refused) {
    write("empty.txt", "");
    write("blank.txt", " \n\n\t\n");
    expect_refused({"read", "empty.txt"}, {"empty.txt"});
    expect_refused({"plan", "blank.txt"}, {"blank.txt"});
    expect_refused({"read", "-"}, {"standard input"});
}

TEST_F(program, bytes_that_are_no_text_are_refused_with_their_line) {
    write("binary.txt", std::string("Knead.\n\0\1\2", 10));
    expect_refused({"read", "binary.txt"}, {"binary.txt:2"});
    write("latin.txt", "Knead.\nCr\xE8me\n");
    expect_refused({"read", "latin.txt"}, {"latin.txt:2", "UTF-8"});
}

TEST_F(program, ten_megabytes_are_too_long) {
    write("long.txt", std::string(10'000'000, 'a'));
    expect_refused({"read", "long.txt"}, {"long.txt"});
}

TEST_F(program, three_mistakes_in_a_kitchen_are_three_lines) {
    write("kitchen.toml", "room_c = 190\nflor_c = 20\n[oven]\nmax_c = \"hot\"\n");
    const Outcome outcome = run({"plan", "loaf.txt", "--kitchen", "kitchen.toml"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(lines_in(outcome.err), 3U) << outcome.err;
    for (const std::string part : {"kitchen.toml:1", "kitchen.toml:2", "kitchen.toml:4"}) {
        EXPECT_NE(outcome.err.find(part), std::string::npos) << part << "\n" << outcome.err;
    }
}

TEST_F(program, a_zone_that_does_not_exist_is_named) {
    expect_refused({"plan", "loaf.txt", "--zone", "Europe/Lundon"},
                   {"Europe/Lundon", "Europe/London"});
}

TEST_F(program, a_time_that_is_none_is_named) {
    expect_refused(on_saturday({"plan", "loaf.txt", "--start", "teatime"}), {"teatime"});
    expect_refused({"plan", "loaf.txt", "--now", "later"}, {"later"});
}

TEST_F(program, a_time_that_has_passed_is_an_honest_no_with_ways_out) {
    const Outcome outcome = run(on_saturday({"plan", "loaf.txt", "--eat-by", "08:00"}));
    EXPECT_EQ(outcome.status, 1);
    EXPECT_NE(outcome.out.find("08:00 has passed"), std::string::npos) << outcome.out;
    EXPECT_NE(outcome.out.find("What would work"), std::string::npos) << outcome.out;
    EXPECT_TRUE(outcome.err.empty()) << outcome.err;
}

TEST_F(program, start_and_eat_by_together_are_refused) {
    expect_refused({"plan", "loaf.txt", "--start", "13:00", "--eat-by", "19:00"},
                   {"--start", "--eat-by"});
}

TEST_F(program, a_text_that_is_no_recipe_reads_but_does_not_plan) {
    write("letter.txt", "Dear aunt, thank you for the scarf.\n");
    const Outcome read = run({"read", "letter.txt", "--json"});
    EXPECT_EQ(read.status, 0);
    EXPECT_TRUE(nlohmann::json::parse(read.out).at("recipe").at("steps").empty());
    expect_refused({"plan", "letter.txt"}, {"letter.txt", "Check that"});
}

TEST_F(program, a_page_that_cannot_be_written_is_named) {
    expect_refused(
        on_saturday({"plan", "loaf.txt", "--start", "10:00", "--out", "nowhere/page.txt"}),
        {"nowhere/page.txt", "could not be written"});
}

TEST_F(program, with_json_errors_stand_on_standard_output) {
    for (const std::vector<std::string>& words :
         {std::vector<std::string>{"read", "nowhere.txt", "--json"},
          {"--json", "frob"},
          {"plan", "--json"},
          {"plan", "loaf.txt", "--json", "--start"}}) {
        const Outcome outcome = run(words);
        EXPECT_EQ(outcome.status, 2);
        EXPECT_EQ(outcome.err, "");
        const auto json = nlohmann::json::parse(outcome.out);
        EXPECT_EQ(json.at("version"), 1);
        ASSERT_FALSE(json.at("error").empty());
        for (const std::string key : {"code", "severity", "what", "where", "do_this"}) {
            EXPECT_TRUE(json.at("error").at(0).at(key).is_string()) << key;
        }
        EXPECT_EQ(json.at("error").at(0).at("severity"), "error");
    }
}

TEST_F(program, an_answer_nobody_asked_for_is_a_remark_and_no_refusal) {
    const Outcome outcome =
        run(on_saturday({"plan", "loaf.txt", "--start", "10:00", "--answer", "colour=blue"}));
    EXPECT_EQ(outcome.status, 0);
    EXPECT_NE(outcome.err.find("colour"), std::string::npos) << outcome.err;
    EXPECT_EQ(outcome.out.rfind("Plain tin loaf", 0), 0U);
}

TEST_F(program, takes_the_answers_kept_beside_the_recipe) {
    write("hot.txt",
          "Knead the dough. Let it rise for an hour. Bake in a hot oven for 30 minutes.");
    const auto oven_of = [](const Outcome& outcome) {
        const auto reading = nlohmann::json::parse(outcome.out);
        return reading["recipe"]["steps"].back()["temperature_c"];
    };
    EXPECT_TRUE(oven_of(run({"read", "hot.txt", "--json"})).is_null());
    write("hot.answers.toml", "oven-c = 235\n");
    EXPECT_EQ(oven_of(run({"read", "hot.txt", "--json"}))["low"], 235);
    // What the call says outranks it.
    EXPECT_EQ(oven_of(run({"read", "hot.txt", "--json", "--answer", "oven-c=210"}))["low"], 210);
    write("hot.answers.toml", "oven-c = [1]\n");
    expect_refused({"read", "hot.txt"}, {"hot.answers.toml:1 oven-c", "a list"});
    write("hot.answers.toml", "oven-c = = 2\n");
    expect_refused({"plan", "hot.txt"}, {"hot.answers.toml:1"});
}

} // namespace
} // namespace loafwright
