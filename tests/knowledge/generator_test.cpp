// SPDX-License-Identifier: Apache-2.0
//
// The generator is run as the build runs it, on files that are wrong in one way each. What is
// checked is the line that names the fault: file, line and words.

#include "tests/knowledge/generator.hpp"

#include <chrono>
#include <string>

namespace loafwright::generator {
namespace {

TEST_F(Generator, writes_a_row_that_keeps_to_the_rules) {
    EXPECT_EQ(said_of("cues", ours + "[[row]]\nkind = \"rise\"\ntext = \"say \\\"done\\\"\"\n", 0),
              "");
    EXPECT_NE(written("cues").find("StepKind::rise"), std::string::npos);
    EXPECT_NE(written("cues").find(R"("say \"done\"")"), std::string::npos);
    EXPECT_NE(written("cues").find("\"assumed: a test\""), std::string::npos);
    EXPECT_NE(written("cues").find("Trust::assumed"), std::string::npos);
}

TEST_F(Generator, writes_nothing_when_a_row_is_at_fault) {
    said_of("cues", "[[row]]\nkind = \"rise\"\ntext = \"doubled\"\n");
    EXPECT_FALSE(fs::exists(folder_ / "out"));
}

TEST_F(Generator, refuses_a_row_without_a_source) {
    EXPECT_EQ(said_of("cues", "\n[[row]]\nkind = \"rise\"\ntext = \"doubled\"\n"),
              "cues.toml:2: this row has no source: name a [source.key] of this file, or write "
              "source = \"assumed\" with a because\n");
}

TEST_F(Generator, refuses_a_source_that_the_file_does_not_have) {
    EXPECT_EQ(said_of("cues", "[[row]]\nkind = \"rise\"\ntext = \"doubled\"\nsource = \"book\"\n"),
              "cues.toml:4: the source \"book\" is not in this file\n");
}

TEST_F(Generator, refuses_an_assumption_without_a_reason) {
    EXPECT_EQ(
        said_of("cues", "[[row]]\nkind = \"rise\"\ntext = \"doubled\"\nsource = \"assumed\"\n"),
        "cues.toml:4: the source is assumed and there is no because\n");
}

TEST_F(Generator, refuses_a_source_that_no_row_uses) {
    EXPECT_EQ(said_of("cues",
                      "[source.a]\ncite = \"a book\"\n[source.b]\ncite = \"another\"\n"
                      "[[row]]\nkind = \"rise\"\ntext = \"doubled\"\nsource = \"b\"\n"),
              "cues.toml:1: source.a is used by no row\n");
}

TEST_F(Generator, refuses_a_band_that_is_out_of_order) {
    EXPECT_EQ(
        said_of("stage_defaults", ours + "[[row]]\nkind = \"rise\"\nminutes = [60, 50, 90]\n"),
        "stage_defaults.toml:5: minutes is [60, 50, 90], expected low <= likely <= high\n");
    EXPECT_EQ(said_of("stage_defaults", ours + "[[row]]\nkind = \"rise\"\nminutes = [60, 90]\n"),
              "stage_defaults.toml:5: minutes is not a band, expected [low, likely, high]\n");
    EXPECT_EQ(
        said_of("oven_words", ours + "[[row]]\nwords = [\"hot oven\"]\noven_c = [230, 200]\n"),
        "oven_words.toml:5: oven_c is [230, 200], expected low <= high\n");
}

TEST_F(Generator, refuses_a_number_without_a_unit_in_its_key) {
    const std::string said = said_of(
        "stage_defaults", ours + "[[row]]\nkind = \"rise\"\nminutes = 90\nholds = [1, 2, 3]\n");
    EXPECT_EQ(said.find("stage_defaults.toml:6: holds has no unit in its name"), 0U) << said;
}

TEST_F(Generator, refuses_a_key_that_means_nothing) {
    const std::string said =
        said_of("cues", ours + "[[row]]\nkind = \"rise\"\ntext = \"doubled\"\ncolour = \"red\"\n");
    EXPECT_EQ(said.find("cues.toml:6: colour means nothing here"), 0U) << said;
    EXPECT_EQ(said_of("cues", ours + "colour = \"red\"\n[[row]]\nkind = \"rise\"\ntext = \"a\"\n"),
              "cues.toml:3: colour means nothing above the rows\n");
}

TEST_F(Generator, refuses_the_same_row_twice) {
    EXPECT_EQ(said_of("stage_defaults",
                      ours + "[[row]]\nkind = \"rise\"\nminutes = 90\n"
                             "[[row]]\nkind = \"rise\"\nminutes = 60\n"),
              "stage_defaults.toml:6: the default of \"rise\" is there already, in the row of line "
              "3\n");
    EXPECT_EQ(
        said_of("ingredients",
                ours + "[[row]]\nitem = \"water\"\naliases = [\"Tap water\"]\nrole = \"liquid\"\n"
                       "[[row]]\nitem = \"tap water\"\nrole = \"liquid\"\n"),
        "ingredients.toml:7: the name \"tap water\" is there already, in the row of line 3\n");
}

TEST_F(Generator, refuses_a_word_that_is_no_kind_of_step) {
    const std::string said = said_of("cues", ours + "[[row]]\nkind = \"proof\"\ntext = \"done\"\n");
    EXPECT_EQ(said.find("cues.toml:4: kind is \"proof\", expected one of prepare, weigh, mix"), 0U)
        << said;
}

TEST_F(Generator, refuses_a_cue_of_more_than_nine_words) {
    EXPECT_EQ(said_of("cues", ours + "[[row]]\nkind = \"rise\"\ntext = \"a b c d e f g h i j\"\n"),
              "cues.toml:5: \"a b c d e f g h i j\" has 10 words, expected nine at most\n");
}

TEST_F(Generator, refuses_a_size_that_does_not_go_with_the_dimension) {
    EXPECT_EQ(said_of("units",
                      ours + "[[row]]\nunit = \"gram\"\nwritten = [\"g\"]\ndimension = \"mass\"\n"
                             "size_ml = 1\n"),
              "units.toml:7: size_ml does not go with mass\n");
}

TEST_F(Generator, refuses_parts_of_an_ingredient_above_the_whole) {
    EXPECT_EQ(said_of("ingredients",
                      ours + "[[row]]\nitem = \"a\"\nwater_percent = 60\nfat_percent = 50\n"
                             "role = \"fat\"\n"),
              "ingredients.toml:3: the parts of a come to 110 percent\n");
}

TEST_F(Generator, makes_one_lexicon_row_of_each_way_of_saying) {
    const std::string text = "role = \"action\"\n" + ours +
                             "[[row]]\nsay = [\"knead\", \"work ~ dough\"]\nmeans = \"knead\"\n"
                             "weight = 3.0\n"
                             "[[row]]\nrole = \"cue\"\nsay = [\"smooth\"]\nmeans = \"smooth\"\n";
    EXPECT_EQ(said_of("lexicon", text, 0), "");
    const std::string code = written("lexicon");
    EXPECT_NE(code.find(R"({"action", "knead", "knead", 3.0, )"), std::string::npos) << code;
    EXPECT_NE(code.find(R"({"action", "work ~ dough", "knead", 3.0, )"), std::string::npos);
    EXPECT_NE(code.find(R"({"cue", "smooth", "smooth", 1.0, )"), std::string::npos);
}

TEST_F(Generator, joins_several_files_of_one_table_and_sees_what_they_share) {
    const fs::path one =
        file("one.toml",
             "role = \"action\"\n" + ours + "[[row]]\nsay = [\"knead\"]\nmeans = \"knead\"\n");
    const fs::path two = file(
        "two.toml", "role = \"action\"\n" + ours + "[[row]]\nsay = [\"fold\"]\nmeans = \"fold\"\n");
    const std::string both = "lexicon=\"" + one.string() + "\" lexicon=\"" + two.string() + "\"";
    EXPECT_EQ(run(both).status, 0);
    EXPECT_NE(written("lexicon").find("\"fold\""), std::string::npos);
    file("two.toml",
         "role = \"action\"\n" + ours + "[[row]]\nsay = [\"knead\"]\nmeans = \"knead\"\n");
    const Outcome outcome = run(both);
    EXPECT_EQ(outcome.status, 1);
    EXPECT_NE(
        outcome.said.find("two.toml:4: the phrase \"action: knead = knead\" is there already"),
        std::string::npos)
        << outcome.said;
}

TEST_F(Generator, refuses_phrases_that_no_text_can_match) {
    EXPECT_EQ(
        said_of("lexicon",
                "role = \"action\"\n" + ours + "[[row]]\nsay = [\"Knead\"]\nmeans = \"knead\"\n"),
        "lexicon.toml:5: say has \"Knead\", expected lower-case words one blank apart\n");
    EXPECT_EQ(
        said_of("lexicon",
                "role = \"action\"\n" + ours + "[[row]]\nsay = [\"a~b\"]\nmeans = \"knead\"\n"),
        "lexicon.toml:5: say has \"a~b\", expected ~ as a word of its own\n");
}

TEST_F(Generator, names_every_fault_of_a_file_in_one_go) {
    EXPECT_EQ(said_of("process",
                      ours + "[[row]]\nfrom = \"start\"\nkind = \"mix\"\nto = \"mixed\"\n"
                             "[[row]]\nkind = \"knead\"\nto = \"kneaded\"\ncost = 1.0\n"),
              "process.toml:3: this row has no cost\n"
              "process.toml:7: this row has no from\n");
}

TEST_F(Generator, says_where_a_file_is_not_toml) {
    const std::string said = said_of("cues", "a = 1\nb = = 2\n");
    EXPECT_EQ(said.find("cues.toml:2: "), 0U) << said;
}

TEST_F(Generator, says_that_a_file_is_missing) {
    const Outcome outcome = run("cues=\"" + (folder_ / "none.toml").string() + "\"");
    EXPECT_EQ(outcome.status, 1);
    EXPECT_NE(outcome.said.find("none.toml:0: the file cannot be read"), std::string::npos);
}

TEST_F(Generator, refuses_a_table_that_it_does_not_know) {
    const Outcome outcome = run("recipes=x.toml");
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.said.find("\"recipes=x.toml\" names no table"), std::string::npos);
}

TEST_F(Generator, leaves_a_file_alone_that_would_not_change) {
    const std::string text = ours + "[[row]]\nkind = \"rise\"\ntext = \"doubled\"\n";
    said_of("cues", text, 0);
    const fs::path made = folder_ / "out" / "knowledge_cues.cpp";
    const auto long_ago = fs::file_time_type::clock::now() - std::chrono::hours(24);
    fs::last_write_time(made, long_ago);
    const auto before = fs::last_write_time(made);
    said_of("cues", text, 0);
    EXPECT_EQ(fs::last_write_time(made), before);
    said_of("cues", ours + "[[row]]\nkind = \"rise\"\ntext = \"tripled\"\n", 0);
    EXPECT_NE(fs::last_write_time(made), before);
}

} // namespace
} // namespace loafwright::generator
