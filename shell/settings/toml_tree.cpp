// SPDX-License-Identifier: Apache-2.0
//
// The only file that knows toml++. It turns the library's nodes into a plain tree with line
// numbers, so that the rest of the room compiles quickly and can be read without knowing the
// library. The library stops at the first mistake in the TOML itself, so there is one diagnostic
// for that; mistakes in the meaning are all found later.
#include "shell/settings/tree.hpp"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>
#include <cstddef>
#include <exception>

namespace loafwright::settings {

namespace {

constexpr std::size_t longest_text = 1048576;

int line_of(const toml::source_region& region, int otherwise) {
    return region.begin.line > 0 ? static_cast<int>(region.begin.line) : otherwise;
}

CivilDate civil_date(const toml::date& date) {
    return CivilDate{date.year, date.month, date.day};
}

TreeValue tree_of(const toml::node& node, int line_above) {
    using Kind = TreeValue::Kind;
    TreeValue value;
    value.line = line_of(node.source(), line_above);
    if (const auto* table = node.as_table()) {
        value.kind = Kind::table;
        for (const auto& [key, child] : *table) {
            const int line = line_of(key.source(), value.line);
            value.entries.push_back({std::string(key.str()), line, tree_of(child, line)});
        }
    } else if (const auto* array = node.as_array()) {
        value.kind = Kind::array;
        for (const auto& child : *array) {
            value.items.push_back(tree_of(child, value.line));
        }
    } else if (const auto* text = node.as_string()) {
        value.kind = Kind::text;
        value.text = text->get();
    } else if (const auto* whole = node.as_integer()) {
        value.kind = Kind::whole;
        value.number = static_cast<double>(whole->get());
    } else if (const auto* number = node.as_floating_point()) {
        value.kind = Kind::number;
        value.number = number->get();
    } else if (const auto* truth = node.as_boolean()) {
        value.kind = Kind::truth;
        value.truth = truth->get();
    } else if (const auto* clock = node.as_time()) {
        value.kind = Kind::clock;
        value.civil.clock = ClockTime{clock->get().hour, clock->get().minute};
        value.civil.second = clock->get().second;
    } else if (const auto* date = node.as_date()) {
        value.kind = Kind::date;
        value.civil.date = civil_date(date->get());
    } else if (const auto* date_time = node.as_date_time()) {
        const toml::date_time& moment = date_time->get();
        value.kind = Kind::date_time;
        value.civil.date = civil_date(moment.date);
        value.civil.clock = ClockTime{moment.time.hour, moment.time.minute};
        value.civil.second = moment.time.second;
        if (moment.offset) {
            value.kind = Kind::instant;
            const std::int64_t local = days_from_civil(value.civil.date) * 86400 +
                                       std::int64_t{value.civil.clock.hour} * 3600 +
                                       std::int64_t{value.civil.clock.minute} * 60 +
                                       value.civil.second;
            value.instant = Instant{local - std::int64_t{moment.offset->minutes} * 60};
        }
    }
    return value;
}

Diagnostic unreadable(std::string where, std::string what, std::string do_this) {
    Diagnostic diagnostic;
    diagnostic.code = "settings_unreadable";
    diagnostic.where = std::move(where);
    diagnostic.what = std::move(what);
    diagnostic.do_this = std::move(do_this);
    return diagnostic;
}

// The library says "Error while parsing key-value pair: expected …"; what follows the colon is the
// news.
std::string news_in(std::string_view description) {
    const std::string_view opening = "Error while parsing ";
    if (description.substr(0, opening.size()) == opening) {
        const std::size_t colon = description.find(": ");
        if (colon != std::string_view::npos) {
            description.remove_prefix(colon + 2);
        }
    }
    // The parser quotes what it found, line ends and all; a message is one line.
    std::string line(description);
    std::replace_if(
        line.begin(),
        line.end(),
        [](char c) { return static_cast<unsigned char>(c) < 0x20U; },
        ' ');
    return line;
}

} // namespace

const TreeValue* TreeValue::find(std::string_view key) const {
    const auto entry = std::find_if(
        entries.begin(), entries.end(), [key](const TreeEntry& e) { return e.key == key; });
    return entry == entries.end() ? nullptr : &entry->value;
}

tl::expected<TreeValue, Diagnostic> parse_toml(std::string_view text, std::string_view name) {
    if (text.size() > longest_text) {
        return tl::unexpected(
            unreadable(std::string(name),
                       fmt::format("{} bytes long, expected at most {}", text.size(), longest_text),
                       "Check that this is the right file."));
    }
    try {
        const toml::table table = toml::parse(text, name);
        return tree_of(table, 1);
    } catch (const toml::parse_error& fault) {
        return tl::unexpected(unreadable(fmt::format("{}:{}", name, line_of(fault.source(), 1)),
                                         "not readable as TOML: " + news_in(fault.description()),
                                         "A line looks like this: key = 19, or key = \"words\"."));
    }
}

} // namespace loafwright::settings
