// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/recipe_method.hpp"

#include "shell/web_page/gathered_lines.hpp"
#include "shell/web_page/line_marks.hpp"
#include "shell/web_page/lines.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

namespace loafwright::web_page {
namespace {

using nlohmann::json;

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
        if (depth > deepest_list || found_.is_full() || ++things_ > most_things) {
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
        const std::string name = one_line_of(text_of(property(thing, "name")));
        const bool is_named_list =
            is_of_type(thing, "ItemList") && has_parts && depth > 0 && !name.empty();
        if (is_of_type(thing, "HowToSection") || is_named_list) {
            found_.name(name);
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
        if (depth > deepest_list || ++things_ > most_things) {
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
    GatheredLines found_;
    std::size_t things_ = 0;
};

} // namespace

std::vector<NamedLines> method_of(const json& value, const LinkedData& all) {
    return Method(all).of(value);
}

} // namespace loafwright::web_page
