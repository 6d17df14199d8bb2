// SPDX-License-Identifier: Apache-2.0
//
// What a cup weighs, and how much water is in things, against figures that other people gathered:
// the cooking densities of the program `units` (Debian package units, definitions of 2.22), and the
// checks of the shared reference, which are from USDA SR28 and SR27, HERR 41 and the Indian food
// composition tables of 2017.
#include "engine/knowledge/knowledge.hpp"
#include "tests/published/units_program.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <string>
#include <utility>
#include <vector>

namespace loafwright::published {
namespace {

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

// Our item, the name that `units` has for it, and how far apart two honest cups of it are: USDA and
// the kitchens that `units` quotes filled theirs differently.
struct CupOf {
    const char* item;
    const char* name;
    double within;
};
const std::vector<CupOf> cups{{"unsalted butter", "butter", 0.02},
                              {"granulated sugar", "sugar", 0.02},
                              {"honey", "honey", 0.03},
                              {"whole milk", "milk", 0.02},
                              {"molasses", "molasses", 0.07},
                              {"cornstarch", "cornstarch", 0.07},
                              {"soft brown sugar", "brownsugar_light", 0.05},
                              {"vegetable shortening", "shortening", 0.08},
                              {"double cream", "heavycream", 0.05}};

TEST(weights, of_a_cup_agree_with_the_program_units) {
    if (!units_is_installed()) {
        GTEST_SKIP() << "the program units is not installed";
    }
    for (const CupOf& cup : cups) {
        SCOPED_TRACE(cup.item);
        const IngredientRow* row = ingredient_named(known(), cup.item);
        ASSERT_NE(row, nullptr);
        ASSERT_TRUE(row->per_us_cup);
        const auto says = units_says(std::string("1 uscup ") + cup.name, "g");
        ASSERT_TRUE(says.has_value());
        EXPECT_NEAR(row->per_us_cup->likely.count() / *says, 1.0, cup.within);
    }
}

TEST(weights, of_a_cup_of_flour_hold_every_way_to_fill_it) {
    if (!units_is_installed()) {
        GTEST_SKIP() << "the program units is not installed";
    }
    const std::vector<std::pair<const char*, const char*>> flours{
        {"plain white flour", "flour"}, {"strong white bread flour", "breadflour"}};
    for (const auto& [item, name] : flours) {
        const IngredientRow* row = ingredient_named(known(), item);
        ASSERT_NE(row, nullptr);
        for (const char* filled : {"_sifted", "_spooned", "_scooped"}) {
            const auto says = units_says(std::string("1 uscup ") + name + filled, "g");
            ASSERT_TRUE(says.has_value()) << name << filled;
            // Ours are whole grams, or another source's cup a few grams off at the ends.
            EXPECT_GE(*says, row->per_us_cup->low.count() - 4.0) << name << filled;
            EXPECT_LE(*says, row->per_us_cup->high.count() + 1.0) << name << filled;
        }
    }
}

// A line of comma-separated values with quotation marks around some.
std::vector<std::string> columns_of(const std::string& line) {
    std::vector<std::string> columns(1);
    bool quoted = false;
    for (const char c : line) {
        if (c == '"') {
            quoted = !quoted;
        } else if (c == ',' && !quoted) {
            columns.emplace_back();
        } else {
            columns.back() += c;
        }
    }
    return columns;
}

// "1 percent" of the value, or a plain number.
double tolerance_in(const std::string& words, double value) {
    const double number = std::strtod(words.c_str(), nullptr);
    return words.find("percent") != std::string::npos ? value * number / 100.0 : number;
}

TEST(weights, agree_with_the_rows_of_the_shared_reference) {
    std::ifstream file(LOAFWRIGHT_ROOT "/../shared/reference/checks/measures.csv");
    if (!file.is_open()) {
        GTEST_SKIP() << "the shared reference is not there";
    }
    std::string line;
    int cups_and_spoons = 0;
    int waters = 0;
    while (std::getline(file, line)) {
        const std::vector<std::string> columns = columns_of(line);
        if (columns.size() < 6) {
            continue;
        }
        SCOPED_TRACE(line);
        const double value = std::strtod(columns[3].c_str(), nullptr);
        const double within = tolerance_in(columns[5], value);
        const auto after = [&columns](const std::string& words) {
            return columns[1].rfind(words, 0) == 0 ? columns[1].substr(words.size())
                                                   : std::string();
        };
        if (const std::string item = after("weight of 1 US cup of "); !item.empty()) {
            const IngredientRow* row = ingredient_named(known(), item);
            ASSERT_NE(row, nullptr);
            ASSERT_TRUE(row->per_us_cup);
            EXPECT_NEAR(row->per_us_cup->likely.count(), value, within);
            ++cups_and_spoons;
        } else if (const std::string spoonful = after("weight of 1 US tablespoon of ");
                   !spoonful.empty()) {
            const IngredientRow* row = ingredient_named(known(), spoonful);
            ASSERT_NE(row, nullptr);
            ASSERT_TRUE(row->per_tablespoon);
            EXPECT_NEAR(row->per_tablespoon->count(), value, within);
            ++cups_and_spoons;
        } else if (const std::string level = after("weight of 1 US teaspoon of "); !level.empty()) {
            const IngredientRow* row = ingredient_named(known(), level);
            ASSERT_NE(row, nullptr);
            ASSERT_TRUE(row->per_teaspoon);
            EXPECT_NEAR(row->per_teaspoon->count(), value, within);
            ++cups_and_spoons;
        } else if (columns[1].find(", second source") != std::string::npos) {
            const IngredientRow* row = ingredient_named(known(), columns[2]);
            ASSERT_NE(row, nullptr);
            ASSERT_TRUE(row->water_percent);
            EXPECT_NEAR(*row->water_percent, value, within);
            ++waters;
        }
    }
    EXPECT_GE(cups_and_spoons, 20);
    EXPECT_GE(waters, 10);
}

} // namespace
} // namespace loafwright::published
