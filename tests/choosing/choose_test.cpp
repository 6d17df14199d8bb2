// SPDX-License-Identifier: Apache-2.0
//
// What is for a first bake is common practice among those who teach: a plain white tin loaf, one
// dough, one day. The texts here are our own.
#include "engine/breads/known_breads.hpp"
#include "engine/choosing/choose.hpp"
#include "engine/choosing/demands.hpp"
#include "engine/planning/plan.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <numeric>
#include <string>
#include <variant>
#include <vector>

namespace loafwright {
namespace {

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

Kitchen kitchen() {
    Kitchen here;
    here.room = {RoomPeriod{ClockTime{}, Celsius(21.0)}};
    return here;
}

Day day() {
    Day today;
    today.now = *parse_rfc3339("2026-11-28T08:00:00Z");
    return today;
}

FittedRecipe fitted(const std::string& text) {
    const auto read =
        breads::read_breads({{"recipe", *check_text(text, "recipe"), {}}}, kitchen(), known());
    EXPECT_TRUE(read) << text;
    return read->fitted.front();
}

const std::string tin_loaf =
    "Plain tin loaf\n\nMix 500 g strong white flour, 10 g salt, 7 g instant yeast and 310 g water. "
    "Knead "
    "for 10 minutes. Leave to rise, covered, for 1 hour 15 minutes, until doubled. Shape it and "
    "put it in a "
    "greased tin. Prove for 45 minutes. Heat the oven to 220°C. Bake for 35 minutes.\n";
const std::string rolls = "Breakfast rolls\n\nMix 500 g strong white flour, 10 g salt, 7 g instant "
                          "yeast and 310 g water. Knead for "
                          "10 minutes. Leave to rise for 1 hour. Divide into 10 pieces and shape "
                          "into balls. Prove for 40 minutes. "
                          "Bake at 220°C for 16 minutes.\n";
const std::string plait = "Feast plait\n\nMix 500 g strong white flour, 8 g salt, 60 g sugar, 80 g "
                          "butter, 2 eggs, 7 g instant yeast "
                          "and 180 g milk. Knead for 12 minutes. Leave to rise for 2 hours. Divide "
                          "into 3 strands and plait them. "
                          "Prove for 1 hour. Bake at 190°C for 30 minutes.\n";
const std::string country_loaf = "Country sourdough\n\nThe night before, mix 50 g sourdough "
                                 "starter with 100 g strong white flour and 100 g water for the "
                                 "leaven. Leave it overnight for 10 hours. In the morning mix 400 "
                                 "g strong white flour, 300 g water, 10 g salt and the "
                                 "leaven. Leave to rise for 4 hours, folding every hour. Shape "
                                 "into a round. Prove for 2 hours. Slash the "
                                 "top. Bake in a lidded pot at 240°C for 45 minutes.\n";

std::map<std::string, Choice> by_title(const std::vector<Choice>& choices) {
    std::map<std::string, Choice> out;
    for (const Choice& choice : choices) {
        out[choice.title] = choice;
    }
    return out;
}

bool says(const Choice& choice, const std::string& words) {
    return std::any_of(
        choice.because.begin(), choice.because.end(), [&](const std::string& because) {
            return because.find(words) != std::string::npos;
        });
}

TEST(choose, the_first_the_second_and_the_later_bread_are_those_that_teachers_name) {
    const std::vector<Choice> choices =
        choose({fitted(country_loaf), fitted(plait), fitted(rolls), fitted(tin_loaf)},
               kitchen(),
               day(),
               known());
    ASSERT_EQ(choices.size(), 4U);
    EXPECT_EQ(choices[0].title, "Plain tin loaf");
    EXPECT_EQ(choices[0].suits, Suits::first);
    EXPECT_EQ(choices[1].title, "Breakfast rolls");
    EXPECT_EQ(choices[1].suits, Suits::second);
    EXPECT_EQ(choices[2].suits, Suits::later);
    EXPECT_EQ(choices[3].title, "Country sourdough");
    EXPECT_EQ(choices[3].suits, Suits::later);
    auto of = by_title(choices);
    EXPECT_EQ(of["Plain tin loaf"].doughs, 1U);
    EXPECT_EQ(of["Country sourdough"].doughs, 2U);
    EXPECT_TRUE(says(of["Plain tin loaf"], "one dough"));
    EXPECT_TRUE(says(of["Breakfast rolls"], "No tin holds it"));
    EXPECT_TRUE(says(of["Feast plait"], "plaited"));
    EXPECT_TRUE(says(of["Country sourdough"], "leaven"));
    EXPECT_TRUE(says(of["Country sourdough"], "slashed"));
    EXPECT_TRUE(says(of["Country sourdough"], "pot with a lid"));
    EXPECT_FALSE(says(of["Plain tin loaf"], "slashed"));
}

TEST(choose, what_can_be_between_two_and_six_comes_before_what_cannot) {
    Day afternoon = day();
    afternoon.now = *parse_rfc3339("2026-11-28T14:00:00Z");
    afternoon.eat_by = *parse_rfc3339("2026-11-28T18:00:00Z");
    // Rises for three hours: no way to eat it by six.
    std::string slow = tin_loaf;
    slow.replace(slow.find("1 hour 15 minutes"), 17, "3 hours");
    slow.replace(0, 14, "Slow tin loaf!");
    std::string quick = rolls;
    quick.replace(quick.find("for 1 hour"), 10, "for 40 minutes");
    const std::vector<Choice> choices =
        choose({fitted(slow), fitted(quick)}, kitchen(), afternoon, known());
    EXPECT_EQ(choices[0].title, "Breakfast rolls");
    EXPECT_TRUE(choices[0].fits_today);
    ASSERT_TRUE(choices[0].eat);
    EXPECT_LE(choices[0].eat->seconds, afternoon.eat_by->seconds);
    EXPECT_FALSE(choices[1].fits_today);
    EXPECT_FALSE(choices[1].eat);
    EXPECT_TRUE(says(choices[1], "What would work: "));
    EXPECT_GT(choices[1].total_minutes, 4 * 60) << "its length is told all the same";
}

TEST(choose, numbers_are_those_of_the_plan) {
    const FittedRecipe recipe = fitted(tin_loaf);
    const Plan made = std::get<Plan>(plan(recipe, kitchen(), day()));
    const Choice choice = choose({recipe}, kitchen(), day(), known()).front();
    EXPECT_EQ(choice.total_minutes, made.total_minutes);
    EXPECT_EQ(choice.hands_on_minutes, made.hands_on_minutes);
    EXPECT_EQ(choice.stages + 1, made.stages.size());
    EXPECT_EQ(choice.begin, made.start);
    EXPECT_EQ(choice.eat, made.eat.likely);
}

TEST(choose, a_shelf_of_none_is_empty) {
    EXPECT_TRUE(choose({}, kitchen(), day(), known()).empty());
}

RC_GTEST_PROP(choose, the_order_does_not_depend_on_how_the_shelf_stands, ()) {
    static const std::vector<FittedRecipe> shelf{
        fitted(country_loaf), fitted(plait), fitted(rolls), fitted(tin_loaf)};
    std::vector<std::size_t> order(shelf.size());
    std::iota(order.begin(), order.end(), 0U);
    const auto keys =
        *rc::gen::container<std::vector<int>>(shelf.size(), rc::gen::arbitrary<int>());
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return std::make_pair(keys[a], a) < std::make_pair(keys[b], b);
    });
    std::vector<FittedRecipe> moved;
    for (const std::size_t i : order) {
        moved.push_back(shelf[i]);
    }
    const auto straight = choose(shelf, kitchen(), day(), known());
    const auto other = choose(moved, kitchen(), day(), known());
    RC_ASSERT(straight.size() == other.size());
    for (std::size_t i = 0; i < straight.size(); ++i) {
        RC_ASSERT(straight[i].title == other[i].title);
        RC_ASSERT(straight[i].because == other[i].because);
        RC_ASSERT(order[other[i].bread] == straight[i].bread);
    }
}

TEST(choose, every_real_recipe_has_its_place_and_reasons) {
    const std::filesystem::path texts =
        std::filesystem::path(LOAFWRIGHT_ROOT) / ".." / "shared" / "recipes" / "texts";
    if (!std::filesystem::is_directory(texts)) {
        GTEST_SKIP() << "the real recipes are not beside the project";
    }
    std::vector<FittedRecipe> shelf;
    for (const auto& entry : std::filesystem::directory_iterator(texts)) {
        std::ifstream in(entry.path(), std::ios::binary);
        const std::string text{std::istreambuf_iterator<char>(in),
                               std::istreambuf_iterator<char>()};
        const auto checked = check_text(text, entry.path().string());
        if (!checked) {
            continue;
        }
        if (auto read =
                breads::read_breads({{entry.path().string(), *checked, {}}}, kitchen(), known())) {
            shelf.push_back(read->fitted.front());
        }
    }
    ASSERT_GT(shelf.size(), 5U);
    const std::vector<Choice> choices = choose(shelf, kitchen(), day(), known());
    ASSERT_EQ(choices.size(), shelf.size());
    for (const Choice& choice : choices) {
        EXPECT_FALSE(choice.because.empty()) << choice.title;
        EXPECT_GT(choice.total_minutes, 0) << choice.title;
        EXPECT_GE(choice.doughs, 1U);
    }
    EXPECT_TRUE(
        std::is_sorted(choices.begin(), choices.end(), [](const Choice& a, const Choice& b) {
            return std::make_pair(!a.fits_today, a.suits) < std::make_pair(!b.fits_today, b.suits);
        }));
}

} // namespace
} // namespace loafwright
