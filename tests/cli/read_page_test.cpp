// SPDX-License-Identifier: Apache-2.0
//
// The page of `loafwright read` from a reading made by hand.
#include "shell/cli/read_page.hpp"
#include "shell/output/text_lines.hpp"

#include <gtest/gtest.h>

#include <sstream>
#include <string>

namespace loafwright::cli {
namespace {

Reading reading() {
    Reading out;
    out.recipe.title = "Plain tin loaf";
    Ingredient flour;
    flour.text = "500g of strong white flour";
    flour.item = "strong white flour";
    flour.grams = exactly(Grams(500.0));
    out.recipe.ingredients = {flour};
    Step rise;
    rise.kind = StepKind::rise;
    rise.place = Place::warm;
    rise.text = "Oil the bowl, return the dough, cover it and forget about it for an hour to an "
                "hour and a half, "
                "somewhere warm, until it has doubled.";
    rise.minutes = TimedBand{between(Minutes(60.0), Minutes(90.0)), Basis::stated};
    rise.cue = Cue{"it has doubled", Span{90, 104}};
    rise.reminders = {Reminder{"cover it", Span{30, 38}, 50}};
    rise.span = Span{0, 120};
    Step bake;
    bake.kind = StepKind::bake;
    bake.text = "Bake.";
    bake.temperature = TemperatureRange{Celsius(200.0), Celsius(220.0)};
    bake.after = {0};
    out.recipe.steps = {rise, bake};
    out.unread = {Unread{"Anyone can make this.", Span{130, 150}, "says nothing to do"}};
    out.questions = {Question{"minutes-bake", "baking", "How long does it bake?", "35 min"}};
    return out;
}

TEST(read_page, shows_what_was_understood_beside_the_words) {
    const std::string page = read_page(reading(), 80, output::Weight::plain, Why::left_out);
    EXPECT_EQ(page.substr(0, 15), "Plain tin loaf\n");
    for (const std::string words : {"  500 g                 500g of strong white flour",
                                    "  1 first rise          Oil the bowl",
                                    "· 1 h to 1 h 30",
                                    "· somewhere warm",
                                    "→ ready: it has doubled",
                                    "→ mind: cover it",
                                    "· 200 to 220 °C",
                                    "Not used",
                                    "says nothing to do    Anyone can make this.",
                                    "minutes-bake          How long does it bake?",
                                    "→ until you say: 35 min"}) {
        EXPECT_NE(page.find(words), std::string::npos) << words << "\n" << page;
    }
    EXPECT_EQ(page.find("why:"), std::string::npos);
}

TEST(read_page, why_names_source_and_place) {
    const std::string page = read_page(reading(), 80, output::Weight::plain, Why::shown);
    EXPECT_NE(page.find("→ why: from the recipe; read from bytes 0 to 120"), std::string::npos);
    EXPECT_NE(page.find("→ why: the text gives no length"), std::string::npos);
    EXPECT_NE(page.find("→ after step 1"), std::string::npos);
}

TEST(read_page, no_line_is_too_wide) {
    for (const std::size_t columns : {std::size_t{40}, std::size_t{63}, std::size_t{80}}) {
        std::istringstream page(read_page(reading(), columns, output::Weight::plain, Why::shown));
        for (std::string line; std::getline(page, line);) {
            EXPECT_LE(output::columns_of(line), columns) << line;
        }
    }
}

TEST(read_page, a_text_without_steps_says_so) {
    const std::string page = read_page(Reading{}, 80, output::Weight::plain, Why::left_out);
    EXPECT_NE(page.find("No step could be read."), std::string::npos);
}

} // namespace
} // namespace loafwright::cli
