// SPDX-License-Identifier: Apache-2.0
//
// How settings are read and how their mistakes are worded: found this, expected that, and a guess
// at what was meant. A number out of range is often a slip of the point, degrees Fahrenheit or
// centimetres, so those are tried before giving up.
#include "shell/settings/fields.hpp"

#include "engine/quantity/conversion.hpp"
#include "shell/settings/suggest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace loafwright::settings {

namespace {

using Kind = TreeValue::Kind;

constexpr std::size_t longest_text = 100;

bool inside(double number, Range range) {
    return number >= range.low && number <= range.high;
}

std::string number_hint(double found, Range range) {
    if (range.measure == Measure::celsius) {
        const double celsius = std::round(celsius_from_fahrenheit(found).degrees());
        if (found >= 32.0 && inside(celsius, range)) {
            return fmt::format("If that is Fahrenheit, write {:g}.", celsius);
        }
    }
    if (range.measure == Measure::millimetres && inside(found * 10.0, range)) {
        return fmt::format("If that is centimetres, write {:g}.", found * 10.0);
    }
    for (const double factor : {10.0, 100.0}) {
        const double tenths = found / factor * 10.0;
        // 185 may be 18.5; nobody means 999.99.
        if (inside(found / factor, range) && std::floor(tenths) == tenths) {
            return fmt::format("Did you mean {:g}?", found / factor);
        }
    }
    switch (range.measure) {
    case Measure::celsius:
        return "Give it in degrees Celsius.";
    case Measure::difference:
        return "Give it in degrees Celsius, below zero when the oven runs cool.";
    case Measure::millimetres:
        return "Give it in millimetres.";
    case Measure::minutes:
        return "Give it in minutes.";
    case Measure::metres:
        return "Give it in metres above the sea.";
    case Measure::count:
        return fmt::format("Give a whole number from {:g} to {:g}.", range.low, range.high);
    case Measure::ratio:
        return fmt::format("Give a number from {:g} to {:g}.", range.low, range.high);
    }
    return "";
}

std::string trimmed(std::string_view text) {
    const std::size_t begin = text.find_first_not_of(" \t\r\n");
    if (begin == std::string_view::npos) {
        return "";
    }
    return std::string(text.substr(begin, text.find_last_not_of(" \t\r\n") - begin + 1));
}

// "\"hand\" or \"mixer\"".
std::string listed(const std::vector<std::string>& words) {
    std::string list;
    for (std::size_t i = 0; i < words.size(); ++i) {
        list += i == 0 ? "" : i + 1 == words.size() ? " or " : ", ";
        list += in_quotes(words[i]);
    }
    return list;
}

bool is_number(const TreeValue& value) {
    return value.kind == Kind::whole || value.kind == Kind::number;
}

// The text of a value given in quotation marks where a number or true was wanted.
bool reads_as_number(const std::string& text) {
    char* end = nullptr;
    const double value = std::strtod(text.c_str(), &end);
    return !text.empty() && end == text.c_str() + text.size() && std::isfinite(value);
}

// The number behind "file:".
int line_in(const std::string& where, std::string_view file) {
    return where.size() > file.size() ? std::atoi(where.c_str() + file.size() + 1) : 0;
}

} // namespace

std::string_view kind_words(Kind kind) {
    switch (kind) {
    case Kind::table:
        return "a table";
    case Kind::array:
        return "a list";
    case Kind::text:
        return "text";
    case Kind::whole:
    case Kind::number:
        return "a number";
    case Kind::truth:
        return "true or false";
    case Kind::clock:
        return "a clock time";
    case Kind::date:
        return "a date";
    case Kind::date_time:
    case Kind::instant:
        return "a date with a time";
    }
    return "a value";
}

std::string value_words(const TreeValue& value) {
    switch (value.kind) {
    case Kind::text:
        return in_quotes(value.text);
    case Kind::whole:
    case Kind::number:
        return fmt::format("{:g}", value.number);
    case Kind::truth:
        return value.truth ? "true" : "false";
    default:
        return std::string(kind_words(value.kind));
    }
}

void sort_by_line(Diagnostics& diagnostics, std::string_view file) {
    std::stable_sort(
        diagnostics.begin(), diagnostics.end(), [file](const Diagnostic& a, const Diagnostic& b) {
            return line_in(a.where, file) < line_in(b.where, file);
        });
}

Fields::Fields(const TreeValue& table,
               std::string heading,
               std::string_view file,
               Diagnostics& complaints)
    : table_(table), heading_(std::move(heading)), file_(file), complaints_(complaints) {}

const TreeValue* Fields::value(std::string_view key) {
    asked_.emplace_back(key);
    return table_.find(key);
}

std::optional<double> Fields::number(std::string_view key, Range range) {
    const TreeValue* found = value(key);
    if (found == nullptr || !check_range(*found, key, range)) {
        return std::nullopt;
    }
    return found->number;
}

std::optional<bool> Fields::truth(std::string_view key) {
    const TreeValue* found = value(key);
    if (found == nullptr) {
        return std::nullopt;
    }
    if (found->kind != Kind::truth) {
        wrong_kind(*found, key, "true or false");
        return std::nullopt;
    }
    return found->truth;
}

std::optional<std::string> Fields::text(std::string_view key) {
    const TreeValue* found = value(key);
    if (found == nullptr) {
        return std::nullopt;
    }
    if (found->kind != Kind::text) {
        wrong_kind(*found, key, "text in quotation marks");
        return std::nullopt;
    }
    std::string words = trimmed(found->text);
    if (words.empty() || words.size() > longest_text) {
        complain(
            "value_out_of_range",
            *found,
            key,
            words.empty()
                ? " is empty, expected a word or two"
                : fmt::format(" is {} bytes long, expected at most {}", words.size(), longest_text),
            words.empty() ? "Write something between the quotation marks, or leave the line out."
                          : "Shorten it.");
        return std::nullopt;
    }
    return words;
}

std::optional<std::size_t> Fields::one_of(std::string_view key,
                                          const std::vector<std::string>& words) {
    const auto found = text(key);
    if (!found) {
        return std::nullopt;
    }
    const auto match = std::find(words.begin(), words.end(), *found);
    if (match != words.end()) {
        return static_cast<std::size_t>(match - words.begin());
    }
    const auto near = nearest(*found, words);
    complain("value_unknown",
             *table_.find(key),
             key,
             fmt::format(" is {}, expected {}", in_quotes(*found), listed(words)),
             near ? fmt::format("Did you mean {}?", in_quotes(*near)) : "Use one of those words.");
    return std::nullopt;
}

const TreeValue* Fields::table(std::string_view key) {
    const TreeValue* found = value(key);
    if (found != nullptr && found->kind != Kind::table) {
        wrong_kind(*found, key, fmt::format("a heading [{}] with its keys below", path(key)));
        return nullptr;
    }
    return found;
}

std::vector<const TreeValue*> Fields::tables(std::string_view key, std::size_t most) {
    std::vector<const TreeValue*> list;
    const TreeValue* found = value(key);
    if (found == nullptr) {
        return list;
    }
    const std::string expected = fmt::format("one heading [[{}]] for each", path(key));
    if (found->kind != Kind::array) {
        wrong_kind(*found, key, expected);
        return list;
    }
    if (found->items.size() > most) {
        complain("value_out_of_range",
                 *found,
                 key,
                 fmt::format(" stands {} times, expected at most {}", found->items.size(), most),
                 "Leave some out.");
        return list;
    }
    for (const TreeValue& item : found->items) {
        if (item.kind == Kind::table) {
            list.push_back(&item);
        } else {
            wrong_kind(item, key, expected);
        }
    }
    return list;
}

bool Fields::check_range(const TreeValue& found, std::string_view key, Range range) {
    if (!is_number(found)) {
        wrong_kind(found, key, "a number");
        return false;
    }
    const bool whole = std::floor(found.number) == found.number;
    if (inside(found.number, range) && (whole || range.measure != Measure::count)) {
        return true;
    }
    complain("value_out_of_range",
             found,
             key,
             fmt::format(" is {:g}, expected {:g} to {:g}", found.number, range.low, range.high),
             number_hint(found.number, range));
    return false;
}

void Fields::missing(std::string_view key, std::string_view example) {
    Diagnostic diagnostic;
    diagnostic.code = "key_missing";
    diagnostic.where = where(table_.line, key);
    diagnostic.what = fmt::format("{} is missing", path(key));
    diagnostic.do_this = fmt::format("Add a line such as: {}", example);
    complaints_.push_back(diagnostic);
}

void Fields::refuse_others(const std::vector<std::string>& elsewhere) {
    for (const TreeEntry& entry : table_.entries) {
        if (std::find(asked_.begin(), asked_.end(), entry.key) != asked_.end()) {
            continue;
        }
        const std::string shown = in_quotes(entry.key);
        const std::string key = shown.substr(1, shown.size() - 2);
        Diagnostic diagnostic;
        diagnostic.code = "key_unknown";
        diagnostic.where = where(entry.line, key);
        diagnostic.what = fmt::format("{} is not a key here", path(key));
        const auto near = nearest(entry.key, asked_);
        if (std::find(elsewhere.begin(), elsewhere.end(), entry.key) != elsewhere.end()) {
            diagnostic.do_this = fmt::format(
                "Move the line above the first heading in square brackets: below [{}] it "
                "belongs to that.",
                heading_);
        } else if (near) {
            diagnostic.do_this = fmt::format("Did you mean {}?", path(*near));
        } else {
            std::vector<std::string> known = asked_;
            std::sort(known.begin(), known.end());
            known.erase(std::unique(known.begin(), known.end()), known.end());
            diagnostic.do_this = fmt::format("Known here: {}.", fmt::join(known, ", "));
        }
        complaints_.push_back(diagnostic);
    }
}

void Fields::complain(std::string_view code,
                      const TreeValue& found,
                      std::string_view key,
                      const std::string& what,
                      std::string do_this) {
    Diagnostic diagnostic;
    diagnostic.code = std::string(code);
    diagnostic.where = where(found.line, key);
    diagnostic.what = path(key) + what;
    diagnostic.do_this = std::move(do_this);
    complaints_.push_back(diagnostic);
}

std::string Fields::path(std::string_view key) const {
    return heading_.empty() ? std::string(key) : fmt::format("{}.{}", heading_, key);
}

std::string Fields::where(int line, std::string_view key) const {
    return line > 0 ? fmt::format("{}:{} {}", file_, line, path(key))
                    : fmt::format("{} {}", file_, path(key));
}

void Fields::wrong_kind(const TreeValue& found, std::string_view key, std::string_view expected) {
    std::string do_this = fmt::format("Write {}.", expected);
    if (found.kind == Kind::text && expected == "a number" && reads_as_number(found.text)) {
        do_this = fmt::format("Write {} without the quotation marks.", found.text);
    }
    if (found.kind == Kind::text && expected == "true or false") {
        const bool yes = found.text == "true" || found.text == "yes" || found.text == "on";
        const bool no = found.text == "false" || found.text == "no" || found.text == "off";
        do_this = yes || no ? fmt::format("Write {} without quotation marks.", yes) : do_this;
    }
    complain("value_wrong_kind",
             found,
             key,
             fmt::format(" is {}, expected {}", value_words(found), expected),
             do_this);
}

} // namespace loafwright::settings
