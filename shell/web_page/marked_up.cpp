// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/marked_up.hpp"

#include "shell/web_page/lines.hpp"
#include "shell/web_page/tags.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace loafwright::web_page {
namespace {

using nlohmann::json;

constexpr int deepest_thing = 8;

struct Names {
    const char* thing; // the attribute that makes an element a thing
    const char* type;
    const char* property;
};

constexpr Names names_of(Vocabulary vocabulary) {
    return vocabulary == Vocabulary::microdata ? Names{"itemscope", "itemtype", "itemprop"}
                                               : Names{"typeof", "typeof", "property"};
}

std::vector<std::string_view> words_of_list(std::string_view text) {
    std::vector<std::string_view> words;
    std::size_t i = 0;
    while (i < text.size() && words.size() < 64) {
        while (i < text.size() && is_html_space(text[i])) {
            ++i;
        }
        const std::size_t begin = i;
        while (i < text.size() && !is_html_space(text[i])) {
            ++i;
        }
        if (i > begin) {
            words.push_back(text.substr(begin, i - begin));
        }
    }
    return words;
}

// "Recipe" of "https://schema.org/Recipe", "schema:Recipe" and "Recipe".
std::string own_name(std::string_view word) {
    const std::size_t last = word.find_last_of("/#:");
    return std::string(last == std::string_view::npos ? word : word.substr(last + 1));
}

// Lines as a method tells them: under their headings where they have some.
json value_of_lines(const std::vector<Line>& lines) {
    json sections = json::array();
    std::string plain;
    const auto close = [&] {
        if (!plain.empty()) {
            if (!sections.empty() && sections.back().is_object() &&
                !sections.back().contains("text")) {
                sections.back()["text"] = std::move(plain);
            } else {
                sections.push_back(std::move(plain));
            }
        }
        plain.clear();
    };
    for (const Line& line : lines) {
        if (line.kind == LineKind::heading) {
            close();
            sections.push_back({{"@type", "HowToSection"}, {"name", line.text}});
            continue;
        }
        plain += plain.empty() ? "" : "\n";
        plain += line.text;
    }
    close();
    if (sections.empty()) {
        return nullptr;
    }
    return sections.size() == 1 ? json(sections[0]) : sections;
}

class Finder {
public:
    Finder(const Tree& tree, Vocabulary vocabulary)
        : tree_(tree), nodes_(tree.nodes()), names_(names_of(vocabulary)),
          is_microdata_(vocabulary == Vocabulary::microdata), left_(8 * nodes_.size() + 1000) {}

    std::vector<json> recipes() {
        std::vector<json> found;
        std::size_t recipe_end = 0;
        for (std::size_t i = 0; i < nodes_.size() && left_ > 0; ++i) {
            // Inside another one a recipe with a property is part of what that says.
            if (is_recipe(i) && (i >= recipe_end || !tree_.has(i, names_.property))) {
                found.push_back(thing_at(i, 0));
                recipe_end = std::max<std::size_t>(recipe_end, nodes_[i].end);
            }
        }
        return found;
    }

private:
    [[nodiscard]] bool is_recipe(std::size_t i) const {
        if (nodes_[i].element == Element::text || !tree_.has(i, names_.thing)) {
            return false;
        }
        for (const std::string_view word :
             words_of_list(tree_.attribute(i, names_.type).value_or(""))) {
            const std::string name = own_name(word);
            if (name == "Recipe" || name == "HowTo") {
                return true;
            }
        }
        return false;
    }

    bool spend(std::size_t nodes) {
        if (nodes > left_) {
            left_ = 0;
            return false;
        }
        left_ -= nodes;
        return true;
    }

    json thing_at(std::size_t i, int depth) {
        json thing = json::object();
        json& types = thing["@type"] = json::array();
        for (const std::string_view word :
             words_of_list(tree_.attribute(i, names_.type).value_or(""))) {
            types.push_back(own_name(word));
        }
        if (depth > deepest_thing) {
            return thing;
        }
        gather(i + 1, nodes_[i].end, thing, depth);
        if (is_microdata_) {
            // The element may name others by their ids, whose properties are its own too.
            for (const std::string_view id :
                 words_of_list(tree_.attribute(i, "itemref").value_or(""))) {
                const auto other = by_id(id);
                const bool is_around = other && *other <= i && nodes_[*other].end >= nodes_[i].end;
                if (other && !is_around) {
                    gather(*other, nodes_[*other].end, thing, depth);
                }
            }
        }
        return thing;
    }

    void gather(std::size_t begin, std::size_t end, json& thing, int depth) {
        for (std::size_t i = begin; i < end;) {
            if (nodes_[i].element == Element::text) {
                ++i;
                continue;
            }
            if (!spend(1)) {
                return;
            }
            const bool is_thing = tree_.has(i, names_.thing);
            if (const auto property = tree_.attribute(i, names_.property)) {
                add(*property, i, is_thing, thing, depth);
            }
            i = is_thing ? nodes_[i].end : i + 1;
        }
    }

    void add(std::string_view property, std::size_t i, bool is_thing, json& thing, int depth) {
        const std::vector<std::string_view> words = words_of_list(property);
        if (words.empty()) {
            return;
        }
        const json thing_value = is_thing ? thing_at(i, depth + 1) : json();
        for (const std::string_view word : words) {
            const std::string name = own_name(word);
            const json value = is_thing ? thing_value : value_at(i, name);
            json& values = thing[name];
            if (values.is_null()) {
                values = json::array();
            }
            // What it makes stands bare in an attribute and in words beside it.
            if (!is_thing && value.is_string() && name == "recipeYield") {
                values.push_back(value_of_text(i, name));
            }
            values.push_back(value);
        }
    }

    json value_at(std::size_t i, const std::string& name) {
        for (const char* attribute : {"content", "datetime"}) {
            if (const auto value = tree_.attribute(i, attribute)) {
                return std::string(*value);
            }
        }
        return value_of_text(i, name);
    }

    json value_of_text(std::size_t i, const std::string& name) {
        if (!spend(nodes_[i].end - i)) {
            return nullptr;
        }
        std::vector<Line> lines = lines_of(tree_, i);
        // A title is a heading and names no part.
        if (name != "recipeInstructions" && name != "step") {
            for (Line& line : lines) {
                line.kind = LineKind::paragraph;
            }
        }
        return value_of_lines(lines);
    }

    std::optional<std::size_t> by_id(std::string_view id) {
        if (!has_ids_) {
            has_ids_ = true;
            for (std::size_t i = 0; i < nodes_.size(); ++i) {
                if (const auto own = tree_.attribute(i, "id")) {
                    ids_.emplace(*own, i);
                }
            }
        }
        const auto found = ids_.find(id);
        return found == ids_.end() ? std::nullopt : std::optional<std::size_t>(found->second);
    }

    const Tree& tree_;
    const std::vector<Node>& nodes_;
    Names names_;
    bool is_microdata_;
    std::size_t left_; // nodes that may still be looked at
    bool has_ids_ = false;
    std::map<std::string_view, std::size_t> ids_;
};

} // namespace

std::vector<json> marked_up(const Tree& tree, Vocabulary vocabulary) {
    return Finder(tree, vocabulary).recipes();
}

} // namespace loafwright::web_page
