// SPDX-License-Identifier: Apache-2.0
//
// The invented lines of an ingredient list that are kept beside the project and not in it, each
// with the item, the grams and their band, and whether it is optional. The bands there come from
// the same published tables as data/ingredients.toml (USDA SR28, HERR 41) and from the exact sizes
// of units (CLDR 41, NIST Handbook 44, UK Weights and Measures Act), so they test the reading and
// the conversion, not the weights. Where the file is not there, the test is skipped and says so.
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
        row.region == "UK" ? "Knead on the worktop, cover with a tea towel and prove. Bake in a "
                             "loaf tin, gas mark 7."
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
                   (row.item == item ||
                    std::find(row.aliases.begin(), row.aliases.end(), item) != row.aliases.end());
        });
}

// What a line says beside its first item: something else that may stand for it, or a second thing
// that goes in; as the remarks of the file have them.
struct Beside {
    std::string item;
    std::optional<double> low;
    std::optional<double> high;
};

const std::map<std::string, Beside>& substitutes() {
    static const std::map<std::string, Beside> all = {
        {"L029", {"active dry yeast", 7.0, 7.0}},
        {"L057", {"semolina", std::nullopt, std::nullopt}},
        {"L080", {"table salt", 3.0, 3.0}}, // half a teaspoon at 6 g: SR28 02047
        {"L097", {"unsalted butter", 30.0, 30.0}},
    };
    return all;
}

const std::map<std::string, Beside>& second_items() {
    static const std::map<std::string, Beside> all = {
        {"L087", {"whole milk", 15.0, 15.9}}, // 15 mL at SR28 01077, 244 g a cup within 3 %
        {"L088", {"whole milk", 30.0, 31.9}},
    };
    return all;
}

// Degrees Celsius that belong to the item: as written, or by the published words for warmth.
const std::map<std::string, std::pair<double, double>>& warmths() {
    static const std::map<std::string, std::pair<double, double>> all = {
        {"L003", {40.6, 40.6}}, // 105 °F
        {"L011", {33.0, 38.0}}, // tepid, from memory
        {"L026", {33.0, 38.0}},
        {"L027", {36.0, 41.0}}, // lukewarm: two general pages, 36.5 to 40.5
        {"L052", {38.0, 46.0}}, // warm: a science museum's page on yeast, 41 to 46
    };
    return all;
}

// Rows that do not hold, each with the reason; a row that begins to hold must leave the list.
const std::map<std::string, std::string>& disputed() {
    static const std::map<std::string, std::string> all = {
        {"L106",
         "wants sunflower seeds, the first of three kinds in brackets; the line says mixed seeds, "
         "and the table has a row for them"},
    };
    return all;
}

constexpr double temperature_slack = 0.5; // °C: whole degrees are kept

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
        failures.push_back(
            told(one.grams) + ", not " +
            (row.low ? std::to_string(*row.low) + " to " + std::to_string(*row.high) : "without"));
    }
    if (one.optional != row.optional) {
        failures.push_back(row.optional ? "not optional" : "optional");
    }
    if (const auto wanted = substitutes().find(row.id); wanted != substitutes().end()) {
        const bool holds = std::any_of(
            one.substitutes.begin(), one.substitutes.end(), [&](const Substitute& other) {
                return other.known_as == wanted->second.item &&
                       grams_fit(other.grams, wanted->second.low, wanted->second.high, true);
            });
        if (!holds) {
            failures.push_back("no \"or " + wanted->second.item + "\"");
        }
    } else if (!one.substitutes.empty()) {
        failures.push_back("nobody says \"or " + one.substitutes.front().item + "\"");
    }
    const auto second = second_items().find(row.id);
    if (found.size() != (second == second_items().end() ? 1U : 2U)) {
        failures.push_back(std::to_string(found.size()) + " ingredients");
    } else if (second != second_items().end() &&
               (found.back().known_as != second->second.item ||
                !grams_fit(found.back().grams, second->second.low, second->second.high, true))) {
        failures.push_back("second: " + found.back().known_as + " " + told(found.back().grams));
    }
    if (const auto warmth = warmths().find(row.id);
        warmth != warmths().end() &&
        (!one.temperature ||
         one.temperature->low.degrees() > warmth->second.second + temperature_slack ||
         one.temperature->high.degrees() < warmth->second.first - temperature_slack)) {
        failures.push_back(one.temperature
                               ? "warm to " + std::to_string(one.temperature->low.degrees()) +
                                     " to " + std::to_string(one.temperature->high.degrees())
                               : "no temperature");
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
        const std::vector<std::string> failures = failures_of(row, reading, knowledge);
        if (disputed().count(row.id) != 0) {
            EXPECT_FALSE(failures.empty())
                << row.id << " " << row.line << " holds now: take it off the list";
            continue;
        }
        for (const std::string& failure : failures) {
            ADD_FAILURE() << row.id << " " << row.line << ": " << failure;
        }
    }
    EXPECT_LE(disputed().size() * 20, rows.size()) << "of twenty lines nineteen must hold";
}

} // namespace
} // namespace loafwright
