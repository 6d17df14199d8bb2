// SPDX-License-Identifier: Apache-2.0
//
// Every name of the ingredient table, as a line of a list would have it, is read as its own row;
// and every spelling of a unit that has one meaning weighs what its row says.
#include "engine/reading/read.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace loafwright {
namespace {

const Knowledge& knowledge() {
    static const Knowledge all = built_in_knowledge();
    return all;
}

// The one ingredient of a list with this line; `words` tell where the book is from.
Ingredient ingredient_of(const std::string& line, const std::string& words = "") {
    static const Reader reader(knowledge());
    auto text = check_text("# Bread\n\n## Ingredients\n\n- " + line +
                               "\n\n## Method\n\nMix everything, then knead. " + words + "\n",
                           "test");
    EXPECT_TRUE(text.has_value());
    const Reading reading = reader.read(*text);
    EXPECT_EQ(reading.recipe.ingredients.size(), 1U) << line;
    return reading.recipe.ingredients.empty() ? Ingredient{} : reading.recipe.ingredients.front();
}

// Rows that a bare name may be read as besides its own: sizes of eggs hang on the region.
bool may_be(const IngredientRow& row, const std::string& known_as) {
    return known_as == row.item ||
           (row.role == "egg" && row.item.find("egg") == 0 && known_as.find("egg") == 0 &&
            row.item.find("white") == std::string_view::npos &&
            row.item.find("yolk") == std::string_view::npos);
}

TEST(read, knows_every_name_of_the_ingredient_table) {
    std::size_t names = 0;
    for (const IngredientRow& row : knowledge().ingredients) {
        std::vector<std::string_view> all = row.aliases;
        all.push_back(row.item);
        for (const std::string_view name : all) {
            if (name.find(" (") != std::string_view::npos) {
                continue; // a note for us, nobody writes it
            }
            ++names;
            const Ingredient one = ingredient_of("120 g " + std::string(name));
            EXPECT_TRUE(may_be(row, one.known_as))
                << name << " is read as " << one.known_as << ", not " << row.item;
            ASSERT_TRUE(one.grams) << name;
            EXPECT_DOUBLE_EQ(one.grams->likely.count(), 120.0) << name;
            EXPECT_FALSE(one.optional) << name;
            EXPECT_TRUE(one.substitutes.empty()) << name;
        }
    }
    EXPECT_GE(names, 700U);
}

// Words that only books of the unit's region use.
std::string words_of_region(const UnitRow& unit) {
    const auto is_of = [&unit](std::string_view region) {
        return std::find(unit.regions.begin(), unit.regions.end(), region) != unit.regions.end();
    };
    return is_of("UK")   ? "Prove on the worktop under a tea towel. Bake at gas mark 7."
           : is_of("US") ? "Cover with plastic wrap and proof. Bake in a loaf pan at 400 °F."
           : is_of("AU") ? "Bake in a fan-forced oven; a fan-forced oven is quick."
                         : "";
}

// What the unit is a measure of: a stick is of butter.
std::string thing_in(const UnitRow& unit) {
    const auto says = [&unit](std::string_view word) {
        return unit.unit.find(word) != std::string_view::npos;
    };
    return says("yeast cake") || says("yeast block") ? "fresh yeast"
           : says("yeast")                           ? "active dry yeast"
           : says("baking powder")                   ? "baking powder"
           : says("butter")                          ? "butter"
           : says("garlic")                          ? "garlic"
           : says("quartern") || says("peck")        ? "flour"
                                                     : "water";
}

TEST(read, knows_every_spelling_of_a_unit) {
    // Nobody writes the first two by hand; a Japanese book is not told from an American one; no
    // row of the ingredient table is vanilla sugar.
    const std::vector<std::string_view> aside = {
        "label ounce", "label cup", "Japanese cup", "vanilla sugar sachet (EU)"};
    std::size_t spellings = 0;
    for (const UnitRow& unit : knowledge().units) {
        const bool weighs =
            unit.dimension == Dimension::mass || unit.dimension == Dimension::volume;
        if (!weighs || !unit.value ||
            std::find(aside.begin(), aside.end(), unit.unit) != aside.end()) {
            continue;
        }
        for (const std::string_view written : unit.written) {
            ++spellings;
            const Ingredient one = ingredient_of("2 " + std::string(written) + " " + thing_in(unit),
                                                 words_of_region(unit));
            ASSERT_TRUE(one.grams) << unit.unit << ", " << written;
            // Water weighs a gram a millilitre, within 1 %.
            const double wanted = 2.0 * unit.value->likely;
            EXPECT_NEAR(one.grams->likely.count(), wanted, 0.015 * wanted)
                << unit.unit << ", " << written << ", read as " << one.item;
        }
    }
    EXPECT_GE(spellings, 180U);
}

} // namespace
} // namespace loafwright
