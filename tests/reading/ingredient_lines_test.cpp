// SPDX-License-Identifier: Apache-2.0
//
// The invented lines of an ingredient list that are kept beside the project and not in it, each with
// the item, the grams and their band, and whether it is optional. The bands there come from the same
// published tables as data/ingredients.toml (USDA SR28, HERR 41) and from the exact sizes of units
// (CLDR 41, NIST Handbook 44, UK Weights and Measures Act), so they test the reading and the
// conversion, not the weights. Where the file is not there, the test is skipped and says so.
#include "engine/reading/read.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace loafwright {
namespace {

// Fields of one line of comma-separated values; a quoted field may hold commas and doubled quotes.
std::vector<std::string> fields_of(const std::string& line) {
    std::vector<std::string> fields(1);
    bool quoted = false;
    for (std::size_t at = 0; at < line.size(); ++at) {
        const char c = line[at];
        if (c == '"' && quoted && at + 1 < line.size() && line[at + 1] == '"') {
            fields.back() += c;
            ++at;
        } else if (c == '"') {
            quoted = !quoted;
        } else if (c == ',' && !quoted) {
            fields.emplace_back();
        } else if (c != '\r') {
            fields.back() += c;
        }
    }
    return fields;
}

struct Row {
    std::string id;
    std::string line;
    std::string region;
    std::string unit;
    std::string item;
    bool optional = false;
    std::optional<double> low;
    std::optional<double> high;
};

std::optional<double> number_in(const std::string& field) {
    return field.empty() ? std::nullopt : std::optional<double>(std::stod(field));
}

std::vector<Row> rows_of(std::istream& in) {
    std::vector<Row> rows;
    std::string line;
    std::getline(in, line); // the names of the columns
    while (std::getline(in, line)) {
        const std::vector<std::string> f = fields_of(line);
        if (f.size() == 12) {
            rows.push_back(
                {f[0], f[1], f[2], f[5], f[6], f[8] == "yes", number_in(f[9]), number_in(f[10])});
        }
    }
    return rows;
}

// Words in the method that only books of that region use.
std::string recipe_with(const Row& row) {
    const std::string method =
        row.region == "UK"
            ? "Knead on the worktop, cover with a tea towel and prove. Bake in a loaf tin, gas mark 7."
        : row.region == "AU"
            ? "Knead. Bake at 200 °C fan-forced. The oven must be fan-forced."
            : "Knead, cover with plastic wrap, and proof. Bake in a loaf pan at 400 °F.";
    return "# Bread\n\n## Ingredients\n\n- " + row.line + "\n\n## Method\n\n" + method + "\n";
}

bool is_mass(const std::string& unit) {
    return unit == "gram" || unit == "kilogram" || unit == "ounce" || unit == "pound";
}

std::string told(const std::optional<Band<Grams>>& grams) {
    return grams ? std::to_string(grams->low.count()) + " / " +
                       std::to_string(grams->likely.count()) + " / " +
                       std::to_string(grams->high.count())
                 : "no grams";
}

// The likely grams inside the band, within 2 %; the bands overlap.
bool grams_fit(const std::optional<Band<Grams>>& grams,
               const std::optional<double>& low,
               const std::optional<double>& high,
               bool exact) {
    if (!grams || !low || !high) {
        return !grams && !low && !high;
    }
    const double slack = exact ? std::max(0.5, 0.001 * *high) : 0.02 * *high;
    return grams->likely.count() >= *low - slack && grams->likely.count() <= *high + slack &&
           grams->low.count() <= *high + slack && grams->high.count() >= *low - slack;
}

bool is_known_as(const Knowledge& knowledge, const std::string& known_as, const std::string& item) {
    return std::any_of(
        knowledge.ingredients.begin(), knowledge.ingredients.end(), [&](const IngredientRow& row) {
            return row.item == known_as &&
                   (row.item == item || std::find(row.aliases.begin(), row.aliases.end(), item) !=
                                            row.aliases.end());
        });
}

struct Wanted {
    std::string item;
    std::optional<double> low;
    std::optional<double> high;
};

std::vector<std::string>
failures_of(const Row& row, const Reading& reading, const Knowledge& knowledge) {
    std::vector<std::string> failures;
    const std::vector<Ingredient>& found = reading.recipe.ingredients;
    if (found.empty()) {
        return {"no ingredient"};
    }
    const Ingredient& one = found.front();
    if (!is_known_as(knowledge, one.known_as, row.item)) {
        failures.push_back("known as \"" + one.known_as + "\" (" + one.item + "), not \"" +
                           row.item + "\"");
    }
    if (!grams_fit(one.grams, row.low, row.high, is_mass(row.unit))) {
        failures.push_back(told(one.grams) + ", not " +
                           (row.low ? std::to_string(*row.low) + " to " + std::to_string(*row.high)
                                    : "without"));
    }
    if (one.optional != row.optional) {
        failures.push_back(row.optional ? "not optional" : "optional");
    }
    return failures;
}

TEST(read, masters_the_lines_of_an_ingredient_list) {
    std::ifstream in(std::string(LOAFWRIGHT_ROOT) +
                     "/../shared/reference/checks/ingredient_lines.csv");
    if (!in) {
        GTEST_SKIP() << "the ingredient lines are not there";
    }
    const std::vector<Row> rows = rows_of(in);
    ASSERT_EQ(rows.size(), 107U) << "other lines: adjust what is wanted of them";
    const Knowledge knowledge = built_in_knowledge();
    const Reader reader(knowledge);
    for (const Row& row : rows) {
        auto text = check_text(recipe_with(row), row.id);
        ASSERT_TRUE(text) << row.id;
        const Reading reading = reader.read(*text);
        for (const std::string& failure : failures_of(row, reading, knowledge)) {
            ADD_FAILURE() << row.id << " " << row.line << ": " << failure;
        }
    }
}

} // namespace
} // namespace loafwright
