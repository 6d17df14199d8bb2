// SPDX-License-Identifier: Apache-2.0
//
// Rows that are wrong in one way each, of the tables about amounts, about what is asked of a baker,
// and about what bakes teach.
#include "tests/knowledge/generator.hpp"

#include <string>

namespace loafwright::generator {
namespace {

TEST_F(Generator, a_tin_is_filled_with_so_many_grams_a_litre) {
    EXPECT_EQ(said_of("tin_fill", ours + "[[row]]\nfamily = \"lean\"\n"),
              "tin_fill.toml:3: this row has no litre_grams\n");
    EXPECT_EQ(
        said_of("tin_fill", ours + "[[row]]\nfamily = \"lean\"\nlitre_grams = [380, 430, 1500]\n"),
        "tin_fill.toml:5: litre_grams is outside 50 to 1100\n");
    EXPECT_EQ(said_of("tin_fill",
                      ours + "[[row]]\nfamily = \"lean\"\nlitre_grams = 430\n"
                             "[[row]]\nfamily = \"lean\"\nlitre_grams = 400\n"),
              "tin_fill.toml:6: the family \"lean\" is there already, in the row of line 3\n");
}

TEST_F(Generator, a_range_is_for_a_bread_that_can_be_told_from_the_others) {
    EXPECT_EQ(
        said_of("formula_ranges", ours + "[[row]]\nbread = \"rolls\"\nwater_percent = [50, 60]\n"),
        "formula_ranges.toml:3: rolls needs any_word or a family, and not both\n");
    EXPECT_EQ(said_of("formula_ranges",
                      ours + "[[row]]\nbread = \"rolls\"\nfamily = \"lean\"\n"
                             "any_word = [\"rolls\"]\n"),
              "formula_ranges.toml:3: rolls needs any_word or a family, and not both\n");
    EXPECT_EQ(said_of("formula_ranges",
                      ours + "[[row]]\nbread = \"rolls\"\nfamily = \"lean\"\n"
                             "water_percent = [50, 160]\n"),
              "formula_ranges.toml:6: water_percent is outside 0 to 150\n");
    EXPECT_EQ(said_of("formula_ranges",
                      ours + "[[row]]\nbread = \"rolls\"\nany_word = [\"Rolls\"]\n"
                             "salt_percent = [2, 1]\n"),
              "formula_ranges.toml:5: any_word has \"Rolls\", expected lower-case words one blank "
              "apart\n"
              "formula_ranges.toml:6: salt_percent is [2, 1], expected low <= high\n");
}

TEST_F(Generator, a_skill_is_called_for_and_weighs_something) {
    const std::string says = "says = \"It is plaited.\"\n";
    EXPECT_EQ(said_of("skills", ours + "[[row]]\nskill = \"plait\"\ndemand = 2\n" + says),
              "skills.toml:3: nothing calls for plait: give it words, a kind or a family\n");
    EXPECT_EQ(
        said_of("skills",
                ours + "[[row]]\nskill = \"plait\"\nany_word = [\"plait\"]\ndemand = 7\n" + says),
        "skills.toml:6: demand is missing or not 1, 2 or 3\n");
}

TEST_F(Generator, a_spread_between_kitchens_is_a_spread) {
    EXPECT_EQ(said_of("learning",
                      ours + "[[row]]\nkind = \"rise\"\ngroup = \"dough\"\n"
                             "group_deviation = 0.2\nkind_deviation = 0\nwithin_deviation = 3\n"),
              "learning.toml:7: kind_deviation is missing or not above 0 and up to 2\n"
              "learning.toml:8: within_deviation is missing or not above 0 and up to 2\n");
    EXPECT_EQ(said_of("learning",
                      ours + "[[row]]\nkind = \"rise\"\ngroup = \"cat\"\ngroup_deviation = 0.2\n"
                             "kind_deviation = 0.1\nwithin_deviation = 0.1\n"),
              "learning.toml:5: group is \"cat\", expected one of dough, hands, oven, "
              "thermostat\n");
}

TEST_F(Generator, nothing_in_baking_always_happens_and_nothing_never) {
    const std::string said =
        said_of("fault_causes",
                ours + "[[row]]\nkey = \"a\"\ncause = \"b\"\nstage = \"proof\"\n"
                       "usual_share = 1.2\nchange = \"c\"\ntells = \"d\"\n");
    EXPECT_EQ(said.find("fault_causes.toml:6: stage is \"proof\", expected one of prepare"), 0U)
        << said;
    EXPECT_NE(said.find("fault_causes.toml:7: usual_share is missing or not between 0 and 1\n"),
              std::string::npos)
        << said;
    EXPECT_EQ(said_of("fault_symptoms",
                      ours + "[[row]]\nkey = \"a\"\ntells = \"b\"\nsays = []\n"
                             "unexplained_share = 0\nproved = \"never\"\n"),
              "fault_symptoms.toml:3: no words tell of a, expected says = [\"…\"]\n"
              "fault_symptoms.toml:7: unexplained_share is missing or not between 0 and 1\n"
              "fault_symptoms.toml:8: proved is \"never\", expected one of too_short, too_long\n");
}

TEST_F(Generator, a_cause_shows_in_a_sign_once_and_a_fact_tells_something) {
    EXPECT_EQ(said_of("fault_links",
                      ours + "[[row]]\ncause = \"a\"\nsymptom = \"b\"\nshows_share = 0.5\n"
                             "[[row]]\ncause = \"a\"\nsymptom = \"b\"\nshows_share = 1\n"),
              "fault_links.toml:7: the pair \"a b\" is there already, in the row of line 3\n"
              "fault_links.toml:10: shows_share is missing or not between 0 and 1\n");
    EXPECT_EQ(said_of("fault_evidence",
                      ours + "[[row]]\nfact = \"a\"\ncause = \"b\"\nodds_factor = 1\n"
                             "says = \"c\"\n"),
              "fault_evidence.toml:3: odds_factor is missing, 1, or not from 0.01 to 100\n");
}

} // namespace
} // namespace loafwright::generator
