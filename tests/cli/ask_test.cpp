// SPDX-License-Identifier: Apache-2.0
//
// `loafwright water` and `loafwright how-long` as a baker would run them. The figures behind the
// words are checked in tests/asking; here is what stands where, and with what exit status.
#include "tests/cli/program.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace loafwright {
namespace {

class ask : public program {
protected:
    /// Exit status as given, nothing on standard error, and every one of these words.
    void expect_said(const std::vector<std::string>& words,
                     int status,
                     const std::vector<std::string>& said) const {
        const Outcome outcome = run(words);
        EXPECT_EQ(outcome.status, status) << outcome.err;
        EXPECT_EQ(outcome.err, "");
        // Line ends stand where there was room for them.
        std::string out = outcome.out;
        std::replace(out.begin(), out.end(), '\n', ' ');
        for (const std::string& part : said) {
            EXPECT_NE(out.find(part), std::string::npos) << "not said: " << part << "\n"
                                                         << outcome.out;
        }
    }
};

// 29.64 °C and 65.2 g by the heat balance by hand (tests/asking/water_test.cpp); the trade's sum
// 75 - 20 - 20 - 4.4.
TEST_F(ask, the_water_for_a_dough_in_an_ordinary_kitchen) {
    expect_said({"water", "--dough-c", "25"},
                0,
                {"For a dough of 25 °C: water at 30 °C.",
                 "65 g just boiled and 260 g from the tap, stirred, before the yeast",
                 "between 26 and 33 °C",
                 "the American way",
                 "3 x 25 - 20 - 20 - 4.4 is about 31 °C"});
}

TEST_F(ask, the_water_is_for_the_kitchen_of_the_file_unless_the_call_says_otherwise) {
    write("home.toml", "room = \"jumper\"\ntap_c = 9\nyeast = \"instant\"\n");
    expect_said({"water", "--dough-c", "25", "--kitchen", "home.toml"},
                0,
                {"500 g of flour at 17 °C", "the tap at 9 °C", "dry yeast mixed into the flour"});
    expect_said({"water",
                 "--dough-c",
                 "25",
                 "--kitchen",
                 "home.toml",
                 "--room-c",
                 "21",
                 "--tap-c",
                 "14",
                 "--yeast",
                 "fresh"},
                0,
                {"500 g of flour at 21 °C", "the tap at 14 °C", "fresh yeast"});
}

TEST_F(ask, water_that_cannot_be_is_an_honest_no_with_a_way_out) {
    const std::vector<std::string> words = {
        "water", "--dough-c", "28", "--room-c", "17", "--flour-c", "5"};
    // 49.8 °C by hand, the flour 26.8 (tests/asking/water_test.cpp).
    expect_said(
        words, 1, {"would take 50 °C", "harms fresh yeast", "Warm the flour to about 27 °C"});
    std::vector<std::string> as_json = words;
    as_json.emplace_back("--json");
    const Outcome outcome = run(as_json);
    EXPECT_EQ(outcome.status, 1);
    const auto json = nlohmann::json::parse(outcome.out);
    EXPECT_EQ(json.at("water").at("advice"), "would_harm");
    EXPECT_FALSE(json.at("impossible").at("why").get<std::string>().empty());
}

// 60 x 0.6083 / 0.3773 by rows ctmi08 and ctmi06 of tests/published/fermentation.tsv.
TEST_F(ask, a_rise_in_another_room) {
    expect_said({"how-long", "60", "--at-c", "24", "--here-c", "18"},
                0,
                {"A rise of 1 h at 24 °C takes about 1 h 35 at 18 °C.", "From 1 h 20 to 1 h 50"});
    const Outcome outcome = run({"how-long", "60", "--at-c", "24", "--here-c", "18", "--json"});
    EXPECT_EQ(nlohmann::json::parse(outcome.out).at("how_long").at("minutes").at("likely"), 95);
}

TEST_F(ask, a_rise_in_the_fridge_names_the_lump_that_was_taken) {
    expect_said({"how-long", "150", "--at-c", "24", "--fridge-c", "5"},
                0,
                {"in a fridge of 5 °C, for 900 g of dough that goes in at 25 °C"});
}

TEST_F(ask, a_rise_that_never_comes_is_an_honest_no_on_standard_output) {
    expect_said({"how-long", "60", "--at-c", "24", "--here-c", "-2"},
                1,
                {"It never gets there", "Find it a warmer place."});
    expect_said({"how-long", "360", "--at-c", "24", "--fridge-c", "2"},
                1,
                {"It does not get there within four days", "take it out to finish"});
}

TEST_F(ask, wrong_values_are_told_together) {
    const Outcome outcome =
        run({"water", "--dough-c", "77", "--mixing", "foot", "--room-c", "chilly"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_EQ(lines_in(outcome.err), 3U) << outcome.err;
    expect_refused({"water", "--dough-c", "25", "--kitchen", "nowhere.toml"},
                   {"nowhere.toml", "no such file"});
    write("kitchen.toml", "room = \"mild\"\n");
    expect_refused({"water", "--dough-c", "25", "--kitchen", "kitchen.toml"},
                   {"kitchen.toml:1 room", "\"jumper\", \"shirtsleeves\" or \"hot\""});
    expect_refused({"how-long", "60", "--at-c", "24"}, {"--here-c", "--fridge-c"});
    const Outcome json = run({"how-long", "sixty", "--at-c", "24", "--here-c", "20", "--json"});
    EXPECT_EQ(json.status, 2);
    EXPECT_EQ(json.err, "");
    EXPECT_EQ(nlohmann::json::parse(json.out).at("error").at(0).at("code"), "usage");
}

TEST_F(ask, the_help_names_both_commands) {
    for (const char* command : {"water", "how-long"}) {
        expect_said({command, "--help"}, 0, {"--dough-c C", "--fridge-c C"});
    }
}

} // namespace
} // namespace loafwright
