// SPDX-License-Identifier: Apache-2.0
#include "shell/settings/tree.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <optional>
#include <utility>

namespace loafwright::settings {

namespace {

using Json = nlohmann::json;

constexpr std::size_t longest_json = 2097152;
constexpr int deepest = 32;

// Nothing for what is nested too deeply.
std::optional<TreeValue> tree_of(const Json& json, int depth) {
    using Kind = TreeValue::Kind;
    TreeValue value;
    value.line = 0;
    if (depth > deepest) {
        return std::nullopt;
    }
    if (json.is_object()) {
        value.kind = Kind::table;
        for (const auto& [key, child] : json.items()) {
            if (child.is_null()) {
                continue;
            }
            auto tree = tree_of(child, depth + 1);
            if (!tree) {
                return std::nullopt;
            }
            value.entries.push_back({key, 0, std::move(*tree)});
        }
    } else if (json.is_array()) {
        value.kind = Kind::array;
        for (const Json& child : json) {
            auto tree = tree_of(child, depth + 1);
            if (!tree) {
                return std::nullopt;
            }
            value.items.push_back(std::move(*tree));
        }
    } else if (json.is_boolean()) {
        value.kind = Kind::truth;
        value.truth = json.get<bool>();
    } else if (json.is_number()) {
        value.kind = json.is_number_integer() ? Kind::whole : Kind::number;
        value.number = json.get<double>();
    } else {
        value.kind = Kind::text;
        value.text = json.is_string() ? json.get<std::string>() : std::string();
    }
    return value;
}

Diagnostic unreadable(std::string_view name, std::string what, std::string do_this) {
    return {
        "json_unreadable", Severity::error, std::move(what), std::string(name), std::move(do_this)};
}

} // namespace

tl::expected<TreeValue, Diagnostic> parse_json(std::string_view text, std::string_view name) {
    if (text.size() > longest_json) {
        return tl::make_unexpected(
            unreadable(name,
                       fmt::format("{} bytes long, expected at most {}", text.size(), longest_json),
                       "Send fewer recipes at a time."));
    }
    try {
        const Json json = Json::parse(text);
        if (!json.is_object()) {
            return tl::make_unexpected(
                unreadable(name, "found no object", "Write its keys in braces."));
        }
        auto tree = tree_of(json, 0);
        if (!tree) {
            return tl::make_unexpected(unreadable(
                name, fmt::format("nested more than {} deep", deepest), "Make it flatter."));
        }
        return std::move(*tree);
    } catch (const Json::parse_error& fault) {
        return tl::make_unexpected(
            unreadable(name,
                       fmt::format("not readable as JSON at byte {}", fault.byte),
                       "Look just before that place for a missing comma, bracket or quotation "
                       "mark."));
    } catch (const Json::out_of_range&) {
        return tl::make_unexpected(unreadable(
            name, "found a number too large for any use", "Write numbers of a few digits."));
    }
}

} // namespace loafwright::settings
