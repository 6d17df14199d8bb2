// SPDX-License-Identifier: Apache-2.0
//
// Weights as they are weighed. A household scale shows whole grams, and few show the tenth that a
// pinch of yeast asks for; what these steps are is common practice.

#include "engine/formula/amount_words.hpp"

#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace loafwright::formula {
namespace {

constexpr double spoons_below_grams = 3.0;
constexpr double whole_within = 0.1; // of a piece
constexpr std::array<std::string_view, 8> eighths{"", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"};

std::string spoons(double teaspoons) {
    const auto count = static_cast<int>(std::floor(teaspoons * 8.0 + 0.5));
    if (count == 0) {
        return "a pinch";
    }
    const std::string whole = count >= 8 ? std::to_string(count / 8) : std::string();
    const std::string part(eighths.at(static_cast<std::size_t>(count % 8)));
    return fmt::format("about {}{}{} tsp", whole, whole.empty() || part.empty() ? "" : " ", part);
}

std::string pieces(double count, std::string_view name) {
    const double whole = std::floor(count + 0.5);
    if (whole < 1.0 || std::abs(count - whole) > whole_within) {
        return fmt::format("about {:.1f} {}s", count, name);
    }
    return fmt::format("{:.0f} {}{}", whole, name, whole == 1.0 ? "" : "s");
}

constexpr std::array<std::string_view, 28> units{
    "g",        "gram",        "grams",      "gramme",    "grammes", "kg",     "kilo",
    "ml",       "l",           "cl",         "dl",        "litre",   "litres", "liter",
    "liters",   "oz",          "ounce",      "ounces",    "lb",      "pound",  "tsp",
    "teaspoon", "tablespoons", "tablespoon", "teaspoons", "tbsp",    "cup",    "cups"};

// A digit, or a byte of "½" and its like.
bool ends_a_number(char letter) {
    return (letter >= '0' && letter <= '9') || (static_cast<unsigned char>(letter) & 0x80U) != 0;
}

bool is_letter(char letter) {
    return letter >= 'a' && letter <= 'z';
}

} // namespace

bool names_an_amount(std::string_view words) {
    const std::string text = lower_case(words);
    for (std::size_t at = 0; at + 1 < text.size(); ++at) {
        if (!ends_a_number(text[at])) {
            continue;
        }
        const std::size_t begin = text[at + 1] == ' ' ? at + 2 : at + 1;
        std::size_t end = begin;
        while (end < text.size() && is_letter(text[end])) {
            ++end;
        }
        const std::string_view unit = std::string_view(text).substr(begin, end - begin);
        if (std::find(units.begin(), units.end(), unit) != units.end()) {
            return true;
        }
    }
    return false;
}

void forget_amounts(Recipe& recipe, std::initializer_list<std::string_view> about) {
    const auto old = [about](const Reminder& reminder) {
        return names_an_amount(reminder.text) &&
               (about.size() == 0 || has_any_word(lower_case(reminder.text), about));
    };
    for (Step& step : recipe.steps) {
        step.reminders.erase(std::remove_if(step.reminders.begin(), step.reminders.end(), old),
                             step.reminders.end());
    }
}

Measured measured(Grams grams, const IngredientRow* row) {
    const double count = grams.count();
    if (row != nullptr && count < spoons_below_grams && row->per_teaspoon) {
        return {fmt::format("{} g", std::floor(count * 10.0 + 0.5) / 10.0),
                spoons(grams / *row->per_teaspoon)};
    }
    const std::string weight = count < spoons_below_grams
                                   ? fmt::format("{} g", std::floor(count * 10.0 + 0.5) / 10.0)
                                   : fmt::format("{:.0f} g", std::floor(count + 0.5));
    if (row != nullptr && row->role == "egg" && row->per_piece) {
        return {weight, pieces(grams / row->per_piece->likely, row->piece_name)};
    }
    return {weight, ""};
}

} // namespace loafwright::formula
