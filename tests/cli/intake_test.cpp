// SPDX-License-Identifier: Apache-2.0
//
// Files of every kind through the built programs, as a baker would name them.
#include "tests/cli/program.hpp"
#include "tests/paper/camera.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>

namespace loafwright {
namespace {

using nlohmann::json;

TEST_F(program, a_recipe_is_read_from_a_pdf_whatever_it_is_called) {
    write("loaf.md", press::printed_pdf(loaf, {}));
    const Outcome outcome = run({"read", "loaf.md", "--json"});
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    const json from_paper = json::parse(outcome.out);
    const json from_text = json::parse(run({"read", "loaf.txt", "--json"}).out);
    ASSERT_EQ(from_paper.at("recipe").at("steps").size(),
              from_text.at("recipe").at("steps").size());
    for (std::size_t i = 0; i < from_text.at("recipe").at("steps").size(); ++i) {
        const json& paper = from_paper.at("recipe").at("steps").at(i);
        const json& text = from_text.at("recipe").at("steps").at(i);
        EXPECT_EQ(paper.at("kind"), text.at("kind"));
        EXPECT_EQ(paper.at("minutes"), text.at("minutes"));
    }
}

TEST_F(program, photos_in_a_folder_are_one_recipe_in_the_order_of_their_names) {
    fs::create_directory(folder_ / "photos");
    const auto photo = [](const std::string& words) {
        return press::png_of(press::printed_pages(words, {}).front());
    };
    write("photos/page-10.png", photo("Bake for 35 minutes at 220 °C until it is golden.\n"));
    write("photos/page-2.png", photo("Knead for 10 minutes and leave to rise for 60 minutes.\n"));
    write("photos/notes.txt", "Not a page.");
    const Outcome outcome = run({"intake", "photos", "--text"});
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_LT(outcome.out.find("Knead"), outcome.out.find("Bake")) << outcome.out;
    EXPECT_EQ(outcome.out.find("Not a page"), std::string::npos);
    EXPECT_EQ(run({"read", "photos"}).status, 0);
    EXPECT_EQ(outcome.err.find('\r'), std::string::npos) << "progress is for terminals";
}

TEST_F(program, an_unsure_number_is_said_and_the_page_is_planned_all_the_same) {
    const std::string halves =
        "Plain loaf\n\n500 g strong white flour\n\n1½ tsp salt\n\nMix and knead for 10 minutes. "
        "Leave to "
        "rise for 1½ hours. Shape it, prove for 45 minutes and bake for 35 minutes at 220 °C.\n";
    write("loaf.png", press::png_of(press::printed_pages(halves, {}).front()));
    const Outcome outcome = run(
        {"plan", "loaf.png", "--start", "10:00", "--now", "2026-11-28T09:00:00Z", "--zone", "UTC"});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    const json found = json::parse(run({"intake", "loaf.png", "--json"}).out);
    EXPECT_EQ(found.at("kind"), "picture");
    EXPECT_FALSE(found.at("unsure").empty());
    EXPECT_NE(run({"intake", "loaf.png"}).err.find("may have been read wrongly"),
              std::string::npos);
}

TEST_F(program, text_is_taken_in_byte_for_byte) {
    EXPECT_EQ(run({"intake", "loaf.txt", "--text"}).out, loaf);
    EXPECT_EQ(run({"intake", "-", "--text"}, "Knead.\n").out, "Knead.\n");
    EXPECT_EQ(run({"intake", "loaf.txt"}).out.rfind("text, ", 0), 0U);
}

TEST_F(program, what_cannot_be_taken_in_is_said) {
    write("moving.gif", "GIF89a\x01\x01");
    fs::create_directory(folder_ / "empty");
    expect_refused({"read", "moving.gif"}, {"moving.gif", "a GIF picture", "Save it as JPEG"});
    expect_refused({"intake", "empty"}, {"folder without photos"});
    expect_refused({"intake", "loaf.txt", "loaf.txt"}, {"Name it alone"});
    expect_refused({"intake"}, {"no recipe was named"});
}

} // namespace
} // namespace loafwright
