// SPDX-License-Identifier: Apache-2.0
//
// `loafwright formula`, `scale` and `gather` as a baker would run them. The figures behind the
// words are checked in tests/formula and tests/provisions; here is what stands where.
#include "shell/output/text_lines.hpp"
#include "tests/cli/program.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <sstream>
#include <string>
#include <vector>

namespace loafwright {
namespace {

using nlohmann::json;

class before : public program {
protected:
    [[nodiscard]] Outcome done(const std::vector<std::string>& words) const {
        const Outcome outcome = run(words);
        EXPECT_EQ(outcome.status, 0) << outcome.err;
        if (words.back() == "--json") {
            return outcome;
        }
        std::istringstream lines(outcome.out);
        std::string line;
        while (std::getline(lines, line)) {
            EXPECT_LE(output::columns_of(line), 80U) << line;
            EXPECT_TRUE(line.empty() || line.back() != ' ') << line;
        }
        return outcome;
    }
    void expect_lines(const Outcome& outcome, const std::vector<std::string>& lines) const {
        for (const std::string& line : lines) {
            EXPECT_NE(outcome.out.find(line + "\n"), std::string::npos)
                << "no line: " << line << "\n"
                << outcome.out;
        }
    }
    static std::string example(const std::string& name) {
        return std::string(LOAFWRIGHT_ROOT) + "/examples/" + name;
    }
};

// 330 / 500; 7 g of instant yeast over 0.33 (Hamelman 2004).
TEST_F(before, the_formula_of_a_loaf) {
    expect_lines(done({"formula", "loaf.txt"}),
                 {"Plain tin loaf",
                  "All in percent of the flour, 500 g.",
                  "    500 g    100 %   strong white flour",
                  "     10 g      2 %   salt",
                  "Dough        847 g",
                  "Water        66 %",
                  "Yeast        does the work of 21 g of fresh yeast, 4.2 %"});
}

TEST_F(before, the_formula_names_what_is_unusual) {
    write("salty.txt",
          "Loaf\n\n500 g strong white flour\n16 g salt\n7 g instant yeast\n330 g water\n\n"
          "Mix, knead, leave to rise for 1 hour, shape and bake for 35 minutes at 220°C.\n");
    expect_lines(done({"formula", "salty.txt"}), {"Unusual about it"});
    const auto body = json::parse(done({"formula", "salty.txt", "--json"}).out);
    ASSERT_EQ(body.at("formula").at("remarks").size(), 1U);
    EXPECT_EQ(body.at("formula").at("remarks")[0].at("code"), "salt_unusual");
}

TEST_F(before, the_formula_as_json_has_the_fields_that_were_agreed) {
    const auto body = json::parse(done({"formula", "loaf.txt", "--json"}).out);
    EXPECT_EQ(body.at("version"), 1);
    const json& formula = body.at("formula");
    EXPECT_EQ(formula.at("flour_grams"), 500);
    EXPECT_EQ(formula.at("hydration_percent"), 66);
    // Dried yeast is a twentieth water (USDA SR27): 0.36 g here.
    EXPECT_NEAR(formula.at("total_hydration_percent").get<double>(), 66.07, 0.01);
    EXPECT_EQ(formula.at("prefermented_percent"), 0);
    EXPECT_NEAR(formula.at("dough_grams").get<double>(), 847.0, 0.5);
    ASSERT_EQ(formula.at("items").size(), 4U);
    EXPECT_EQ(formula.at("items")[1].at("item"), "salt");
    EXPECT_EQ(formula.at("items")[1].at("grams").at("likely"), 10);
    EXPECT_EQ(formula.at("items")[1].at("percent"), 2);
    EXPECT_TRUE(formula.at("remarks").empty());
}

TEST_F(before, a_recipe_without_the_weight_of_its_flour_is_refused) {
    write("vague.txt", "Bread\n\nflour\nwater\nsalt\n\nMix, knead and bake for 30 minutes.\n");
    expect_refused({"formula", "vague.txt"}, {"no flour", "500 g flour"});
    const Outcome outcome = run({"formula", "vague.txt", "--json"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(json::parse(outcome.out).at("error")[0].at("code"), "dough_unweighed");
    expect_refused({"formula", "nowhere.txt"}, {"nowhere.txt", "no such file"});
    expect_refused({"formula", "loaf.txt", "loaf.txt"}, {"expected one recipe"});
    expect_refused({"formula"}, {"no recipe was named"});
}

TEST_F(before, a_larger_loaf_weighs_more_and_bakes_longer) {
    const Outcome outcome = done({"scale", "loaf.txt", "--factor", "1.5"});
    expect_lines(outcome, {"1.5 times the recipe.", "    750 g   strong white flour"});
    EXPECT_NE(outcome.out.find("in the recipe 35 min"), std::string::npos) << outcome.out;
    expect_lines(done({"scale", "loaf.txt", "--pieces", "2"}),
                 {"For 2: 2 times the recipe.",
                  "Dough        1694 g, 847 g a piece",
                  "Bake         as long as in the recipe"});
}

TEST_F(before, a_loaf_for_a_tin) {
    const Outcome outcome = done({"scale", "loaf.txt", "--tin", "230x130x70"});
    // 2.093 L, 430 g to the litre.
    expect_lines(outcome, {"Dough        900 g"});
    EXPECT_NE(outcome.out.find("For a tin of 230 x 130 x 70 mm"), std::string::npos);
}

TEST_F(before, scaled_json_is_that_of_read) {
    const auto told = json::parse(done({"read", "loaf.txt", "--json"}).out);
    auto scaled = json::parse(done({"scale", "loaf.txt", "--dough", "1694", "--json"}).out);
    EXPECT_EQ(scaled.at("recipe").at("ingredients")[0].at("grams").at("likely"), 1000);
    EXPECT_EQ(scaled.at("recipe").at("written_for").at("factor"), 2);
    const auto bare = [](json steps) {
        for (json& step : steps) {
            step.erase("reminders"); // those of the old weights are gone
        }
        return steps;
    };
    EXPECT_EQ(bare(scaled.at("recipe").at("steps")), bare(told.at("recipe").at("steps")));
    EXPECT_EQ(scaled.at("questions"), told.at("questions"));
    const auto same = json::parse(done({"scale", "loaf.txt", "--factor", "1", "--json"}).out);
    EXPECT_EQ(same, told);
}

TEST_F(before, a_size_is_asked_for_in_one_way) {
    expect_refused({"scale", "loaf.txt"}, {"no size was given", "--pieces"});
    expect_refused({"scale", "loaf.txt", "--pieces", "2", "--factor", "3"},
                   {"--pieces and --factor", "one of them"});
    expect_refused({"scale", "loaf.txt", "--tin", "230x130"}, {"LENGTHxWIDTHxHEIGHT"});
    expect_refused({"scale", "loaf.txt", "--tin", "230x130x7"}, {"7", "20 to 2000"});
    expect_refused({"scale", "loaf.txt", "--factor", "-1"}, {"--factor", "0.01 to 1000"});
    expect_refused({"scale", "loaf.txt", "--dough", "much"}, {"--dough"});
    const Outcome outcome = run({"scale", "loaf.txt", "--json"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(json::parse(outcome.out).at("error")[0].at("code"), "usage");
}

TEST_F(before, one_list_for_two_breads_whatever_their_order) {
    const std::string loaf_file = example("first-loaf.md");
    const std::string rolls_file = example("rolls.md");
    const auto one = json::parse(done({"gather", loaf_file, rolls_file, "--json"}).out);
    const auto other = json::parse(done({"gather", rolls_file, loaf_file, "--json"}).out);
    EXPECT_EQ(one, other);
    const json& buy = one.at("provisions").at("buy");
    EXPECT_EQ(buy[0].at("item"), "strong white flour");
    EXPECT_EQ(buy[0].at("grams").at("likely"), 950);
    for (const char* key : {"kit", "ahead", "allergens", "cautions"}) {
        EXPECT_FALSE(one.at("provisions").at(key).empty()) << key;
    }
    expect_lines(done({"gather", loaf_file, rolls_file}),
                 {"The hall loaf; Soft rolls for the soup lunch",
                  "        950 g   strong white flour",
                  "Ahead        1 h before: butter out of the fridge, to soften"});
}

TEST_F(before, every_file_of_a_list_is_looked_at) {
    const Outcome outcome = run({"gather", "a.txt", "b.txt", "--kitchen", "c.toml"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(lines_in(outcome.err), 3U) << outcome.err;
}

TEST_F(before, the_help_names_the_commands) {
    const Outcome outcome = run({"--help"});
    for (const char* command : {"formula FILE", "scale FILE", "gather FILE", "--tin"}) {
        EXPECT_NE(outcome.out.find(command), std::string::npos) << command;
    }
}

} // namespace
} // namespace loafwright
