// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/recipe_data.hpp"

#include "shell/web_page/duration.hpp"
#include "shell/web_page/line_marks.hpp"
#include "shell/web_page/lines.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace loafwright::web_page {
namespace {

using nlohmann::json;

// Recipe, section, list, step, direction, with a wrapping around each.
constexpr int deepest_method = 12;
// A ring of references repeats itself; no recipe has so many things and lines.
constexpr std::size_t most_things = 20000;
constexpr std::size_t most_lines = 2000;

const json& first_of(const json& thing, std::initializer_list<std::string_view> names) {
    for (const std::string_view name : names) {
        const json& value = property(thing, name);
        if (!values_of(value).empty()) {
            return value;
        }
    }
    return property(thing, "");
}

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

/// Lines that gather under the name said last.
class Gatherer {
public:
    void name(std::string words) {
        words = without_colon(std::move(words));
        if (sections_.empty() || !sections_.back().lines.empty()) {
            sections_.emplace_back();
        }
        sections_.back().name = std::move(words);
    }

    void line(std::string words) {
        if (words.empty() || count_ >= most_lines) {
            return;
        }
        if (sections_.empty()) {
            sections_.emplace_back();
        }
        sections_.back().lines.push_back(std::move(words));
        ++count_;
    }

    [[nodiscard]] bool has_name() const {
        return !sections_.empty() && !sections_.back().name.empty();
    }
    [[nodiscard]] bool is_full() const { return count_ >= most_lines; }

    std::vector<NamedLines> take() {
        sections_.erase(std::remove_if(sections_.begin(),
                                       sections_.end(),
                                       [](const NamedLines& each) { return each.lines.empty(); }),
                        sections_.end());
        return std::move(sections_);
    }

private:
    std::vector<NamedLines> sections_;
    std::size_t count_ = 0;
};

class Method {
public:
    explicit Method(const LinkedData& all) : all_(all) {}

    std::vector<NamedLines> of(const json& value) {
        take(value, 0);
        return found_.take();
    }

private:
    static const json& parts(const json& thing) {
        return first_of(thing, {"itemListElement", "steps", "step", "hasPart"});
    }

    void take(const json& value, int depth) {
        if (depth > deepest_method || found_.is_full() || ++things_ > most_things) {
            return;
        }
        for (const json* each : in_order(values_of(value))) {
            const json& thing = all_.resolved(*each);
            if (thing.is_string()) {
                prose(thing.get_ref<const std::string&>());
            } else if (thing.is_object()) {
                take_thing(thing, depth);
            }
        }
    }

    // By their positions where all have one.
    static std::vector<const json*> in_order(std::vector<const json*> values) {
        const auto position = [](const json* value) -> const json& {
            return property(*value, "position");
        };
        if (std::all_of(values.begin(), values.end(), [&](const json* value) {
                return position(value).is_number();
            })) {
            std::stable_sort(
                values.begin(), values.end(), [&](const json* left, const json* right) {
                    return position(left).get<double>() < position(right).get<double>();
                });
        }
        return values;
    }

    void take_thing(const json& thing, int depth) {
        const json& inner = parts(thing);
        const bool has_parts = !values_of(inner).empty();
        if (is_of_type(thing, "HowToSection") ||
            (is_of_type(thing, "ItemList") && has_parts && depth > 0)) {
            found_.name(one_line_of(text_of(property(thing, "name"))));
            if (has_parts) {
                take(inner, depth + 1);
            } else {
                prose(text_of(first_of(thing, {"text", "description"})));
            }
            found_.name({});
        } else if (is_of_type(thing, "ListItem") && !property(thing, "item").is_null()) {
            take(property(thing, "item"), depth + 1);
        } else if (is_of_type(thing, "ItemList") || is_of_type(thing, "HowTo")) {
            take(inner, depth + 1);
        } else {
            step(thing, has_parts ? &inner : nullptr, depth);
        }
    }

    void step(const json& thing, const json* inner, int depth) {
        const std::string name = one_line_of(text_of(property(thing, "name")));
        const std::string text = text_of(first_of(thing, {"text", "description", "articleBody"}));
        std::string words = inner != nullptr ? directions(*inner, depth + 1) : std::string();
        if (words.empty()) {
            const std::vector<Line> lines = lines_of_text(text);
            // Several lines in one step with nothing to lead them are steps of their own.
            if (lines.size() > 1 && is_name_of(name, lines.front().text)) {
                prose(text);
                return;
            }
            words = one_line_of(text);
        }
        if (is_of_type(thing, "HowToTip")) {
            found_.line("Tip: " + words);
            return;
        }
        found_.line(led_by(name, without_step_number(std::move(words))));
    }

    // True when the name only repeats how the text begins, or counts the step.
    static bool is_name_of(std::string_view name, std::string_view text) {
        while (!name.empty() && (name.back() == '.' || name.back() == ' ')) {
            name.remove_suffix(1);
        }
        constexpr std::string_view ellipsis = "\xE2\x80\xA6";
        if (name.size() >= ellipsis.size() &&
            name.substr(name.size() - ellipsis.size()) == ellipsis) {
            name.remove_suffix(ellipsis.size());
        }
        return name.empty() || without_step_number(std::string(name)).empty() ||
               text.find(name) != std::string_view::npos;
    }

    static std::string led_by(const std::string& name, std::string words) {
        if (words.empty()) {
            return without_step_number(name);
        }
        if (is_name_of(name, words)) {
            return words;
        }
        const std::string lead = without_colon(without_step_number(name));
        const bool is_sentence = lead.back() == '.' || lead.back() == '!' || lead.back() == '?';
        return lead + (is_sentence ? " " : ": ") + words;
    }

    // What the parts of one step say, in one line.
    std::string directions(const json& value, int depth) {
        std::string words;
        if (depth > deepest_method || ++things_ > most_things) {
            return words;
        }
        for (const json* each : in_order(values_of(value))) {
            const json& thing = all_.resolved(*each);
            std::string more;
            if (thing.is_string()) {
                more = one_line_of(thing.get_ref<const std::string&>());
            } else if (thing.is_object()) {
                const json& inner =
                    property(thing, "item").is_null() ? parts(thing) : property(thing, "item");
                more = directions(inner, depth + 1);
                if (more.empty()) {
                    more = one_line_of(text_of(first_of(thing, {"text", "description", "name"})));
                }
                if (is_of_type(thing, "HowToTip") && !more.empty()) {
                    more.insert(0, "Tip: ");
                }
            }
            if (!words.empty() && !more.empty()) {
                words += ' ';
            }
            words += more;
            if (words.size() > (std::size_t{64} << 10U)) {
                break;
            }
        }
        return words;
    }

    void prose(std::string_view text) {
        const std::vector<Line> lines = lines_of_text(text);
        for (const Line& line : lines) {
            if (line.kind == LineKind::heading || (lines.size() > 1 && is_part_name(line.text))) {
                if (!without_step_number(line.text).empty()) {
                    found_.name(line.text);
                }
                continue;
            }
            for (std::string& each : numbered_steps(line.text)) {
                found_.line(std::move(each));
            }
        }
    }

    const LinkedData& all_;
    Gatherer found_;
    std::size_t things_ = 0;
};

class Ingredients {
public:
    explicit Ingredients(const LinkedData& all) : all_(all) {}

    std::vector<NamedLines> of(const json& value) {
        take(value, 0);
        return found_.take();
    }

private:
    void take(const json& value, int depth) {
        if (depth > deepest_method || found_.is_full() || ++things_ > most_things) {
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
    Gatherer found_;
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
    data.method = Method(all).of(first_of(thing, {"recipeInstructions", "step", "steps"}));
    data.times.prep = minutes(property(thing, "prepTime"));
    data.times.cook = minutes(first_of(thing, {"cookTime", "performTime"}));
    data.times.total = minutes(property(thing, "totalTime"));
    return data;
}

} // namespace loafwright::web_page
