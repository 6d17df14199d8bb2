// SPDX-License-Identifier: Apache-2.0
//
// The amount in an ingredient line, in the line's own words.

#include "engine/provisions/amounts.hpp"

#include <gtest/gtest.h>

#include <string>

namespace loafwright::provisions {
namespace {

struct Line {
    std::string name;
    std::string line;
    std::string amount;
    Measure measure;
};

void PrintTo(const Line& line, std::ostream* out) {
    *out << line.line;
}

class AmountIn : public ::testing::TestWithParam<Line> {};

TEST_P(AmountIn, is_the_written_one) {
    static const Knowledge knowledge = built_in_knowledge();
    const WrittenAmount amount = amount_in(GetParam().line, knowledge);
    EXPECT_EQ(amount.text, GetParam().amount);
    EXPECT_EQ(static_cast<int>(amount.measure), static_cast<int>(GetParam().measure));
}

INSTANTIATE_TEST_SUITE_P(
    provisions,
    AmountIn,
    ::testing::Values(Line{"spoons", "2 tsp instant yeast", "2 tsp", Measure::spoon},
                      Line{"glued", "500g strong white flour", "500g", Measure::grams},
                      Line{"behind", "Butter, 50 g", "50 g", Measure::grams},
                      Line{"grams_first", "1 cup (150 g) rye flour", "150 g", Measure::grams},
                      Line{"mixed_number", "1 1/2 cups water", "1 1/2 cups", Measure::cup},
                      Line{"glyph", "1½ tbsp honey", "1½ tbsp", Measure::spoon},
                      Line{"range", "3-4 tablespoons milk", "3-4 tablespoons", Measure::spoon},
                      Line{"half_a", "half a teaspoon salt", "half a teaspoon", Measure::spoon},
                      Line{"heaped", "1 heaped tsp salt", "1 heaped tsp", Measure::spoon},
                      Line{"ounces", "4 oz lard", "4 oz", Measure::other_weight},
                      Line{"volume", "300 ml milk", "300 ml", Measure::volume},
                      Line{"pieces", "2 eggs", "2", Measure::pieces},
                      Line{"one_word", "an egg, beaten", "an", Measure::pieces},
                      Line{"none", "flour for dusting", "", Measure::none},
                      Line{"empty", "", "", Measure::none}),
    [](const auto& line) { return line.param.name; });

} // namespace
} // namespace loafwright::provisions
