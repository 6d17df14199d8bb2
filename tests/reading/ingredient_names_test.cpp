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

// The one ingredient of a list with this line.
Ingredient ingredient_of(const std::string& line) {
    static const Reader reader(knowledge());
    auto text = check_text("# Bread\n\n## Ingredients\n\n- " + line +
                               "\n\n## Method\n\nMix everything, then knead.\n",
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

} // namespace
} // namespace loafwright
