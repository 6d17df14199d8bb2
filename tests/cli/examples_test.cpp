// SPDX-License-Identifier: Apache-2.0
//
// The pages of the examples as they were looked at and approved, in every form that letters have.
// Golden pages are rewritten when LOAFWRIGHT_UPDATE_GOLDEN is 1, and then looked at.
#include "shell/output/text_lines.hpp"
#include "tests/cli/program.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cstdlib>
#include <sstream>
#include <string>
#include <vector>

namespace loafwright {
namespace {

struct Page {
    std::string name;
    std::string recipe;
    std::vector<std::string> more;
};

std::vector<std::string> call_for(const std::string& recipe, const std::vector<std::string>& more) {
    std::vector<std::string> words = {"plan",
                                      std::string(LOAFWRIGHT_ROOT) + "/examples/" + recipe,
                                      "--now",
                                      "2026-11-28T08:00:00Z",
                                      "--zone",
                                      "Europe/London"};
    words.insert(words.end(), more.begin(), more.end());
    return words;
}

const std::string kitchen = std::string(LOAFWRIGHT_ROOT) + "/examples/home.toml";

const std::vector<Page>& pages() {
    static const std::vector<Page> all = {
        {"first_loaf_page", "first-loaf.md", {"--start", "10:00", "--kitchen", kitchen}},
        {"first_loaf_heard",
         "first-loaf.md",
         {"--start", "10:00", "--kitchen", kitchen, "--linear"}},
        {"first_loaf_ounces",
         "first-loaf.md",
         {"--start",
          "10:00",
          "--kitchen",
          kitchen,
          "--clock",
          "12",
          "--temperature",
          "f",
          "--weight",
          "oz"}},
        {"rolls_page", "rolls.md", {"--eat-by", "13:00", "--room-c", "jumper"}},
        {"rolls_heard", "rolls.md", {"--eat-by", "13:00", "--room-c", "jumper", "--linear"}},
        {"rye_page", "rye-card.txt", {"--eat-by", "tomorrow 12:00"}},
        {"rye_heard", "rye-card.txt", {"--eat-by", "tomorrow 12:00", "--linear"}},
        {"rye_one_hand", "rye-card.txt", {"--eat-by", "tomorrow 12:00", "--one-hand"}},
        {"rye_refused_heard", "rye-card.txt", {"--eat-by", "12:00", "--linear", "--clock", "12"}}};
    return all;
}

class example_page : public program, public testing::WithParamInterface<Page> {};

TEST_P(example_page, looks_as_it_was_approved) {
    const Outcome outcome = run(call_for(GetParam().recipe, GetParam().more));
    ASSERT_LE(outcome.status, 1) << outcome.err;
    const std::string path =
        std::string(LOAFWRIGHT_ROOT) + "/tests/golden/examples/" + GetParam().name + ".txt";
    const char* update = std::getenv("LOAFWRIGHT_UPDATE_GOLDEN");
    if (update != nullptr && std::string(update) == "1") {
        std::ofstream(path, std::ios::binary) << outcome.out;
    }
    ASSERT_TRUE(fs::exists(path)) << path;
    EXPECT_EQ(outcome.out, bytes_of(path));
}

INSTANTIATE_TEST_SUITE_P(in_letters, example_page, testing::ValuesIn(pages()), [](const auto& row) {
    return row.param.name;
});

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) {
        lines.push_back(line);
    }
    return lines;
}

TEST_F(program, a_page_to_be_heard_is_sentences_and_nothing_drawn) {
    for (const Page& page : pages()) {
        std::vector<std::string> more = page.more;
        more.emplace_back("--linear");
        const Outcome outcome = run(call_for(page.recipe, more));
        for (const std::string& line : lines_of(outcome.out)) {
            EXPECT_NE(std::string(".?!").find(line.back()), std::string::npos) << line;
            EXPECT_EQ(line.find("  "), std::string::npos) << line;
            EXPECT_EQ(line.find('['), std::string::npos) << line;
            EXPECT_EQ(line.find("__"), std::string::npos) << line;
            EXPECT_NE(line.front(), ' ') << line;
        }
    }
}

TEST_F(program, what_the_page_speaks_in_changes_no_numbers) {
    const std::vector<std::string> plain = {"--start", "10:00", "--json"};
    const std::vector<std::string> other = {"--start",
                                            "10:00",
                                            "--json",
                                            "--clock",
                                            "12",
                                            "--temperature",
                                            "F",
                                            "--weight",
                                            "oz",
                                            "--one-hand",
                                            "--linear"};
    const Outcome outcome = run(call_for("first-loaf.md", other));
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_EQ(outcome.out, run(call_for("first-loaf.md", plain)).out);
}

TEST_F(program, an_unknown_unit_is_named_beside_the_known_ones) {
    expect_refused(call_for("first-loaf.md", {"--clock", "13"}), {"--clock", "'13'", "24 or 12"});
    expect_refused(call_for("first-loaf.md", {"--temperature", "kelvin"}), {"'kelvin'", "c or f"});
    expect_refused(call_for("first-loaf.md", {"--weight", "stone"}), {"'stone'", "g or oz"});
}

TEST_F(program, a_file_speaks_as_the_screen_does) {
    const Outcome outcome = run(call_for(
        "first-loaf.md", {"--start", "10:00", "--clock", "12", "--linear", "--out", "page.txt"}));
    EXPECT_EQ(bytes_of(folder_ / "page.txt"), outcome.out);
    EXPECT_NE(outcome.out.find("Begin 10:00 am."), std::string::npos) << outcome.out;
}

} // namespace
} // namespace loafwright
