// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/recipe_data.hpp"

#include "shell/web_page/duration.hpp"
#include "shell/web_page/gathered_lines.hpp"
#include "shell/web_page/line_marks.hpp"
#include "shell/web_page/lines.hpp"
#include "shell/web_page/recipe_method.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace loafwright::web_page {
namespace {

using nlohmann::json;

bool has_letter(std::string_view text) {
    return std::any_of(text.begin(), text.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    });
}

// UN/CEFACT Recommendation 20, the codes that schema.org's unitCode takes; those of a kitchen.
std::string_view unit_of_code(std::string_view code) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 9> units{{{"GRM", "g"},
                                                                                  {"KGM", "kg"},
                                                                                  {"MLT", "ml"},
                                                                                  {"CLT", "cl"},
                                                                                  {"LTR", "litres"},
                                                                                  {"ONZ", "oz"},
                                                                                  {"LBR", "lb"},
                                                                                  {"C62", ""},
                                                                                  {"H87", ""}}};
    for (const auto& [name, unit] : units) {
        if (name == code) {
            return unit;
        }
    }
    return code;
}

// "500 g" from a QuantitativeValue or a PropertyValue.
std::string quantity(const json& thing) {
    std::string words = one_line_of(text_of(property(thing, "value")));
    if (words.empty()) {
        const std::string low = one_line_of(text_of(property(thing, "minValue")));
        const std::string high = one_line_of(text_of(property(thing, "maxValue")));
        words = low.empty() || high.empty() || low == high ? low + (low == high ? "" : high)
                                                           : low + " to " + high;
    }
    std::string unit = one_line_of(text_of(property(thing, "unitText")));
    if (unit.empty()) {
        unit = unit_of_code(one_line_of(text_of(property(thing, "unitCode"))));
    }
    if (!words.empty() && !unit.empty()) {
        words += ' ';
    }
    return words + unit;
}

std::string amount(const json& value) {
    for (const json* each : values_of(value)) {
        std::string words = each->is_object() ? quantity(*each) : one_line_of(text_of(*each));
        if (!words.empty()) {
            return words;
        }
    }
    return {};
}

// Of ["2", "2 loaves"] the one that says most.
std::string makes(const json& value) {
    std::string best;
    for (const json* each : values_of(value)) {
        std::string words = each->is_object() ? quantity(*each) : one_line_of(text_of(*each));
        const bool is_better =
            has_letter(words) != has_letter(best) ? has_letter(words) : words.size() > best.size();
        if (is_better) {
            best = std::move(words);
        }
    }
    return best.size() > 200 ? std::string() : best;
}

class Ingredients {
public:
    explicit Ingredients(const LinkedData& all) : all_(all) {}

    std::vector<NamedLines> of(const json& value) {
        take(value, 0);
        return found_.take();
    }

private:
    void take(const json& value, int depth) {
        if (depth > deepest_list || found_.is_full() || ++things_ > most_things) {
            return;
        }
        for (const json* each : values_of(value)) {
            const json& thing = all_.resolved(*each);
            if (thing.is_string()) {
                words(thing.get_ref<const std::string&>());
            } else if (thing.is_object()) {
                take_thing(thing, depth);
            }
        }
    }

    void words(std::string_view text) {
        for (const Line& line : lines_of_text(text)) {
            std::string plain = without_bullet(line.text);
            if (line.kind == LineKind::heading || is_part_name(plain)) {
                found_.name(std::move(plain));
            } else {
                found_.line(std::move(plain));
            }
        }
    }

    void take_thing(const json& thing, int depth) {
        const std::string name = one_line_of(text_of(property(thing, "name")));
        const json& inner = first_of(thing, {"itemListElement", "recipeIngredient", "supply"});
        if (!values_of(inner).empty()) {
            found_.name(name);
            take(inner, depth + 1);
            found_.name({});
            return;
        }
        const json& item = property(thing, "item");
        if (!item.is_null()) {
            take(item, depth + 1);
            return;
        }
        std::string much = amount(first_of(thing, {"requiredQuantity", "amount"}));
        if (much.empty()) {
            much = quantity(thing);
        }
        std::string line = much;
        if (!name.empty()) {
            line += line.empty() ? "" : " ";
            line += name;
        } else {
            const std::string text = text_of(first_of(thing, {"text", "description"}));
            if (!text.empty()) {
                words(text);
                return;
            }
        }
        found_.line(std::move(line));
    }

    const LinkedData& all_;
    GatheredLines found_;
    std::size_t things_ = 0;
};

std::optional<Minutes> minutes(const json& value) {
    for (const json* each : values_of(value)) {
        if (each->is_string()) {
            if (auto read = minutes_of_duration(each->get_ref<const std::string&>())) {
                return read;
            }
        }
    }
    return std::nullopt;
}

std::size_t bytes_of(const std::vector<NamedLines>& sections) {
    std::size_t bytes = 0;
    for (const NamedLines& section : sections) {
        for (const std::string& line : section.lines) {
            bytes += line.size();
        }
    }
    return bytes;
}

} // namespace

std::size_t RecipeData::method_bytes() const {
    return bytes_of(method);
}

std::size_t RecipeData::bytes() const {
    return bytes_of(method) + bytes_of(ingredients);
}

RecipeData recipe_data(const json& thing, const LinkedData& all) {
    RecipeData data;
    data.title = one_line_of(text_of(first_of(thing, {"name", "headline"})));
    data.makes = makes(first_of(thing, {"recipeYield", "yield"}));
    data.ingredients =
        Ingredients(all).of(first_of(thing, {"recipeIngredient", "ingredients", "supply"}));
    data.method = method_of(first_of(thing, {"recipeInstructions", "step", "steps"}), all);
    data.times.prep = minutes(property(thing, "prepTime"));
    data.times.cook = minutes(first_of(thing, {"cookTime", "performTime"}));
    data.times.total = minutes(property(thing, "totalTime"));
    return data;
}

} // namespace loafwright::web_page
