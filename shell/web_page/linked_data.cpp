// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/linked_data.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

namespace loafwright::web_page {
namespace {

using nlohmann::json;

constexpr std::array<std::string_view, 6> prefixes{"schema:",
                                                   "http://schema.org/",
                                                   "https://schema.org/",
                                                   "http://www.schema.org/",
                                                   "https://www.schema.org/",
                                                   "//schema.org/"};

// Things that lead to other recipes than those of the page.
constexpr std::array<std::string_view, 9> elsewhere{"isRelatedTo",
                                                    "isSimilarTo",
                                                    "mentions",
                                                    "relatedLink",
                                                    "review",
                                                    "comment",
                                                    "author",
                                                    "publisher",
                                                    "isPartOf"};

std::string_view without_prefix(std::string_view name) {
    for (const std::string_view prefix : prefixes) {
        if (name.substr(0, prefix.size()) == prefix) {
            return name.substr(prefix.size());
        }
    }
    return name;
}

const json& null_value() {
    static const json null;
    return null;
}

const json* member(const json& thing, std::string_view name) {
    const auto found = thing.find(std::string(name));
    return found == thing.end() ? nullptr : &*found;
}

const json& types(const json& thing) {
    if (const json* type = member(thing, "@type")) {
        return *type;
    }
    const json* type = member(thing, "type"); // what the context of schema.org calls it
    return type == nullptr ? null_value() : *type;
}

bool names_type(const json& value, std::string_view type) {
    return value.is_string() && without_prefix(value.get_ref<const std::string&>()) == type;
}

std::string printed(double number) {
    if (std::abs(number) < 1e9 && number == std::floor(number)) {
        return std::to_string(static_cast<long long>(number));
    }
    return json(number).dump();
}

} // namespace

bool is_of_type(const json& thing, std::string_view type) {
    if (!thing.is_object()) {
        return false;
    }
    const json& value = types(thing);
    return names_type(value, type) ||
           (value.is_array() && std::any_of(value.begin(), value.end(), [&](const json& each) {
                return names_type(each, type);
            }));
}

const json& property(const json& thing, std::string_view name) {
    if (!thing.is_object()) {
        return null_value();
    }
    if (const json* value = member(thing, name)) {
        return *value;
    }
    for (const std::string_view prefix : prefixes) {
        if (const json* value = member(thing, std::string(prefix) + std::string(name))) {
            return *value;
        }
    }
    return null_value();
}

const json& first_of(const json& thing, std::initializer_list<std::string_view> names) {
    for (const std::string_view name : names) {
        const json& value = property(thing, name);
        if (!values_of(value).empty()) {
            return value;
        }
    }
    return null_value();
}

std::vector<const json*> values_of(const json& value) {
    std::vector<const json*> values;
    if (value.is_array()) {
        for (const json& each : value) {
            const std::vector<const json*> inner = values_of(each);
            values.insert(values.end(), inner.begin(), inner.end());
        }
        return values;
    }
    if (value.is_object()) {
        for (const std::string_view wrapping : {"@value", "@list", "@set"}) {
            if (const json* inner = member(value, wrapping)) {
                return values_of(*inner);
            }
        }
    }
    if (!value.is_null()) {
        values.push_back(&value);
    }
    return values;
}

std::string text_of(const json& value) {
    for (const json* each : values_of(value)) {
        if (each->is_string()) {
            return each->get<std::string>();
        }
        if (each->is_number()) {
            return printed(each->get<double>());
        }
    }
    return {};
}

LinkedData::LinkedData(const std::vector<json>& documents) {
    std::vector<const json*> how_tos;
    std::vector<const json*> to_see;
    for (auto document = documents.rbegin(); document != documents.rend(); ++document) {
        to_see.push_back(&*document);
    }
    while (!to_see.empty()) {
        const json& value = *to_see.back();
        to_see.pop_back();
        if (value.is_array()) {
            for (auto each = value.rbegin(); each != value.rend(); ++each) {
                to_see.push_back(&*each);
            }
        } else if (value.is_object()) {
            const json* id = member(value, "@id");
            if (id != nullptr && id->is_string() && value.size() > 1) {
                by_id_.emplace(id->get<std::string>(), &value);
            }
            if (is_of_type(value, "Recipe")) {
                recipes_.push_back(&value);
            } else if (is_of_type(value, "HowTo")) {
                how_tos.push_back(&value);
            }
            for (auto each = value.rbegin(); each != value.rend(); ++each) {
                const std::string_view name = without_prefix(each.key());
                const bool is_elsewhere =
                    std::find(elsewhere.begin(), elsewhere.end(), name) != elsewhere.end();
                if (each->is_structured() && !is_elsewhere) {
                    to_see.push_back(&*each);
                }
            }
        }
    }
    if (recipes_.empty()) {
        recipes_ = how_tos;
    }
}

const json& LinkedData::resolved(const json& value) const {
    if (value.is_object() && value.size() == 1) {
        if (const json* id = member(value, "@id"); id != nullptr && id->is_string()) {
            const auto found = by_id_.find(id->get_ref<const std::string&>());
            if (found != by_id_.end()) {
                return *found->second;
            }
        }
    }
    return value;
}

} // namespace loafwright::web_page
