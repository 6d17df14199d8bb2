// SPDX-License-Identifier: Apache-2.0
//
// The pages of the examples as they were looked at and approved, in every form that letters have.
// Golden pages are rewritten when LOAFWRIGHT_UPDATE_GOLDEN is 1, and then looked at.
#include "engine/quantity/time.hpp"
#include "shell/output/text_lines.hpp"
#include "tests/cli/program.hpp"
#include "tests/output/calendar_reader.hpp"

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
        {"loaf_and_rolls_page",
         "first-loaf.md",
         {std::string(LOAFWRIGHT_ROOT) + "/examples/rolls.md",
          "--eat-by",
          "18:30",
          "--kitchen",
          kitchen}},
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
            if (line.empty()) {
                continue; // between the pages of several breads
            }
            EXPECT_NE(std::string(".?!").find(line.back()), std::string::npos) << line;
            EXPECT_EQ(line.find("  "), std::string::npos) << line;
            EXPECT_EQ(line.find('['), std::string::npos) << line;
            EXPECT_EQ(line.find("__"), std::string::npos) << line;
            EXPECT_NE(line.front(), ' ') << line;
        }
    }
}

TEST_F(program, every_real_recipe_is_a_page_a_voice_and_a_calendar) {
    const fs::path folder = fs::path(LOAFWRIGHT_ROOT) / ".." / "shared" / "recipes" / "texts";
    if (!fs::is_directory(folder)) {
        GTEST_SKIP() << "no shared recipes beside the repository";
    }
    std::size_t read = 0;
    for (const auto& entry : fs::directory_iterator(folder)) {
        const std::vector<std::string> call = {"plan",
                                               entry.path().string(),
                                               "--now",
                                               "2026-10-24T18:00:00Z",
                                               "--zone",
                                               "Europe/London",
                                               "--start",
                                               "20:00"};
        const auto with = [&call](const std::vector<std::string>& more) {
            std::vector<std::string> words = call;
            words.insert(words.end(), more.begin(), more.end());
            return words;
        };
        const Outcome page = run(with({"--out", "bake.ics", "--out", "bake.json"}));
        ASSERT_EQ(page.status, 0) << entry.path() << page.err;
        ++read;
        for (const std::string& line : lines_of(page.out)) {
            EXPECT_LE(output::columns_of(line), 80U) << line;
        }
        for (const std::string& line : lines_of(run(with({"--linear"})).out)) {
            EXPECT_NE(std::string(".?!").find(line.back()), std::string::npos) << line;
        }
        const output::ReadCalendar calendar = output::read_calendar(bytes_of(folder_ / "bake.ics"));
        EXPECT_EQ(calendar.faults, 0) << entry.path();
        const auto json = nlohmann::json::parse(bytes_of(folder_ / "bake.json"));
        const auto& plan = json.at("plan");
        ASSERT_EQ(calendar.events.size(), plan.at("stages").size());
        const auto time = [](const nlohmann::json& text) {
            return parse_rfc3339(text.get<std::string>()).value();
        };
        std::size_t ready = 0;
        for (std::size_t i = 0; i < calendar.events.size(); ++i) {
            const auto& stage = plan.at("stages")[i];
            const output::ReadEvent& event = calendar.events[i];
            EXPECT_EQ(event.start, time(stage.at("start")));
            EXPECT_EQ(event.end, time(stage.at("end").at("likely")));
            bool called = false;
            for (const auto& alarm : event.alarms) {
                called = called || alarm.at < event.start;
                const bool to_cut = alarm.words.rfind("Ready to cut", 0) == 0;
                ready += to_cut ? 1U : 0U;
                EXPECT_TRUE(!to_cut || alarm.at == time(plan.at("cut_from")));
            }
            EXPECT_TRUE(called || stage.at("attention") != "hands") << event.summary;
        }
        EXPECT_EQ(ready, 1U) << entry.path();
    }
    EXPECT_GT(read, 0U);
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
