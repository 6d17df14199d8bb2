// SPDX-License-Identifier: Apache-2.0
//
// JSON that somebody else wrote. Each question about a key either gives a value that makes sense
// or leaves a complaint and a harmless value behind, so that the reader above it has no error
// paths and one pass finds all that is wrong. The JSON library keeps no lines, so the place is a
// path: breads[2].steps[0].minutes.low.
#include "engine/wire/json_fields.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <limits>
#include <utility>

namespace loafwright::wire {

namespace {

using Json = nlohmann::json;

constexpr std::size_t most_complaints = 20;
constexpr std::size_t longest_shown_bytes = 40;

std::string range_words(WholeRange range) {
    return std::to_string(range.low) + " to " + std::to_string(range.high);
}

std::string listed(const std::vector<std::string_view>& words) {
    std::string list;
    for (std::size_t i = 0; i < words.size(); ++i) {
        list += i == 0 ? "" : i + 1 == words.size() ? " or " : ", ";
        list += '"' + std::string(words[i]) + '"';
    }
    return list;
}

// Keys come from the file and may be as long as it is.
std::string shortened(std::string words) {
    if (words.size() > longest_shown_bytes) {
        std::size_t end = longest_shown_bytes;
        // Not inside a letter of UTF-8: its later bytes are 10xxxxxx.
        while (end > 0 && (static_cast<unsigned char>(words[end]) & 0xC0U) == 0x80U) {
            --end;
        }
        words.resize(end);
        words += "…";
    }
    return words;
}

bool fits(const Json& number) {
    constexpr auto largest = std::numeric_limits<std::int64_t>::max();
    return !number.is_number_unsigned() ||
           number.get<std::uint64_t>() <= static_cast<std::uint64_t>(largest);
}

// As it would stand in the file, shortened; lists and objects by their kind.
std::string json_words(const Json& value) {
    if (value.is_array()) {
        return "a list";
    }
    if (value.is_object()) {
        return "an object";
    }
    return shortened(value.dump(-1, ' ', false, Json::error_handler_t::replace));
}

// "line 3, column 14" of a byte that counts from 1, as the library has it.
std::string place_of(std::string_view bytes, std::size_t byte) {
    const std::string_view before = bytes.substr(0, byte == 0 ? 0 : byte - 1);
    const auto lines = std::count(before.begin(), before.end(), '\n');
    const std::size_t last = before.rfind('\n');
    const std::size_t column =
        last == std::string_view::npos ? before.size() : before.size() - last - 1;
    return "line " + std::to_string(lines + 1) + ", column " + std::to_string(column + 1);
}

tl::expected<Json, Diagnostics> parsed(std::string_view bytes, std::string_view file) {
    const auto wrong = [file](const char* code, std::string what, const char* do_this) {
        return tl::make_unexpected(
            Diagnostics{{code, Severity::error, std::move(what), std::string(file), do_this}});
    };
    if (bytes.size() > largest_json_bytes) {
        return wrong("text_too_long",
                     "the file is longer than 1024 KiB, the most that is read",
                     "Split it.");
    }
    try {
        return Json::parse(bytes);
    } catch (const Json::parse_error& fault) {
        const bool early = fault.byte > bytes.size();
        return wrong("json_unreadable",
                     "found no JSON" + std::string(early ? ": it ends too early, at " : " at ") +
                         place_of(bytes, fault.byte),
                     "Look just before that place for a missing comma, bracket or quotation mark.");
    } catch (const Json::out_of_range&) {
        // A number past what a double holds, such as 1e999.
        return wrong("json_unreadable",
                     "found a number too large for any use",
                     "Write whole numbers of a few digits.");
    }
}

} // namespace

/// A value and the document it lies in; a null pointer where it is missing or was told already.
struct JsonFields::Value {
    std::shared_ptr<const Json> document;
    const Json* json = nullptr;
};

void Complaints::error(const char* code,
                       const std::string& path,
                       const std::string& what,
                       const std::string& do_this) {
    if (errors_.size() < most_complaints) {
        errors_.push_back({code, Severity::error, what, where(path), do_this});
    }
}

void Complaints::warning(const char* code,
                         const std::string& path,
                         const std::string& what,
                         const std::string& do_this) {
    if (warnings_.size() < most_complaints) {
        warnings_.push_back({code, Severity::warning, what, where(path), do_this});
    }
}

Diagnostics Complaints::take_errors() {
    return std::move(errors_);
}

Diagnostics Complaints::take_warnings() {
    return std::move(warnings_);
}

std::string Complaints::where(const std::string& path) const {
    return path.empty() ? file_ : file_ + " " + path;
}

JsonFields::JsonFields(const Value& value, std::string path, Complaints& complaints)
    : path_(std::move(path)), complaints_(&complaints) {
    Value object = value;
    if (object.json != nullptr && !object.json->is_object()) {
        complaints_->error("value_wrong_kind",
                           path_,
                           "found " + json_words(*object.json) + ", expected an object",
                           "Write its keys in braces.");
        object.json = nullptr;
    }
    value_ = std::make_shared<const Value>(std::move(object));
}

bool JsonFields::has(std::string_view key) const {
    const Json* json = value_->json;
    return json != nullptr && json->find(key) != json->end();
}

std::string JsonFields::path_of(std::string_view key) const {
    return path_.empty() ? std::string(key) : path_ + "." + std::string(key);
}

JsonFields::Value JsonFields::value(std::string_view key) {
    asked_.emplace_back(key);
    return {value_->document, has(key) ? &*value_->json->find(key) : nullptr};
}

JsonFields::Value JsonFields::needed(std::string_view key) {
    const Value found = value(key);
    if (found.json == nullptr && value_->json != nullptr) {
        complaints_->error("key_missing",
                           path_of(key),
                           std::string(key) + " is missing",
                           "Add it; null and [] are not the same as leaving it out.");
    }
    return found;
}

std::int64_t JsonFields::whole_of(const Value& found, std::string_view key, WholeRange range) {
    if (!found.json->is_number_integer()) {
        complaints_->error("value_wrong_kind",
                           path_of(key),
                           "found " + json_words(*found.json) + ", expected a whole number",
                           "Write it without a point and without quotation marks.");
        return range.low;
    }
    const std::int64_t number =
        fits(*found.json) ? found.json->get<std::int64_t>() : range.high + 1;
    if (number < range.low || number > range.high) {
        complaints_->error("value_out_of_range",
                           path_of(key),
                           "found " + json_words(*found.json) + ", expected " + range_words(range),
                           "Give a number inside the range.");
        return range.low;
    }
    return number;
}

std::int64_t JsonFields::whole(std::string_view key, WholeRange range) {
    const Value found = needed(key);
    return found.json == nullptr ? range.low : whole_of(found, key, range);
}

std::optional<std::int64_t> JsonFields::whole_if_any(std::string_view key, WholeRange range) {
    const Value found = value(key);
    if (found.json == nullptr || found.json->is_null()) {
        return std::nullopt;
    }
    return whole_of(found, key, range);
}

std::string JsonFields::text(std::string_view key) {
    const Value found = needed(key);
    if (found.json == nullptr) {
        return "";
    }
    if (!found.json->is_string()) {
        complaints_->error("value_wrong_kind",
                           path_of(key),
                           "found " + json_words(*found.json) + ", expected text",
                           "Put it in quotation marks.");
        return "";
    }
    return found.json->get<std::string>();
}

std::optional<std::string> JsonFields::text_if_any(std::string_view key) {
    const Value found = value(key);
    if (found.json == nullptr || found.json->is_null()) {
        return std::nullopt;
    }
    return text(key);
}

double JsonFields::number_of(const Value& found, std::string_view key, NumberRange range) {
    if (!found.json->is_number()) {
        complaints_->error("value_wrong_kind",
                           path_of(key),
                           "found " + json_words(*found.json) + ", expected a number",
                           "Write it without quotation marks.");
        return range.low;
    }
    const auto number = found.json->get<double>();
    if (!(number >= range.low && number <= range.high)) {
        complaints_->error("value_out_of_range",
                           path_of(key),
                           "found " + json_words(*found.json) + ", expected " +
                               json_words(range.low) + " to " + json_words(range.high),
                           "Give a number inside the range.");
        return range.low;
    }
    return number;
}

double JsonFields::number(std::string_view key, NumberRange range) {
    const Value found = needed(key);
    return found.json == nullptr ? range.low : number_of(found, key, range);
}

std::optional<double> JsonFields::number_if_any(std::string_view key, NumberRange range) {
    const Value found = value(key);
    if (found.json == nullptr || found.json->is_null()) {
        return std::nullopt;
    }
    return number_of(found, key, range);
}

std::vector<std::string>
JsonFields::texts_if_any(std::string_view key, std::size_t most, std::size_t longest) {
    const Value found = value(key);
    std::vector<std::string> texts;
    if (found.json == nullptr || found.json->is_null()) {
        return texts;
    }
    if (!found.json->is_array()) {
        complaints_->error("value_wrong_kind",
                           path_of(key),
                           "found " + json_words(*found.json) + ", expected a list of texts",
                           "Put it in square brackets, [] where there is none.");
        return texts;
    }
    if (found.json->size() > most) {
        complaints_->error("value_out_of_range",
                           path_of(key),
                           "found " + std::to_string(found.json->size()) +
                               " entries, expected at most " + std::to_string(most),
                           "Leave some out.");
        return texts;
    }
    for (std::size_t i = 0; i < found.json->size(); ++i) {
        const Json& entry = (*found.json)[i];
        const std::string path = path_of(key) + "[" + std::to_string(i) + "]";
        if (!entry.is_string()) {
            complaints_->error("value_wrong_kind",
                               path,
                               "found " + json_words(entry) + ", expected text",
                               "Put it in quotation marks.");
        } else if (entry.get_ref<const std::string&>().size() > longest) {
            complaints_->error("value_out_of_range",
                               path,
                               "expected a text of at most " + std::to_string(longest) + " bytes",
                               "Say it in fewer words.");
        } else {
            texts.push_back(entry.get<std::string>());
        }
    }
    return texts;
}

std::optional<std::size_t> JsonFields::one_of_if_any(std::string_view key,
                                                     const std::vector<std::string_view>& words) {
    const Value found = value(key);
    if (found.json == nullptr || found.json->is_null()) {
        return std::nullopt;
    }
    return one_of(key, words);
}

std::optional<bool> JsonFields::truth_if_any(std::string_view key) {
    const Value found = value(key);
    if (found.json == nullptr || found.json->is_null()) {
        return std::nullopt;
    }
    return truth(key);
}

bool JsonFields::truth(std::string_view key) {
    const Value found = needed(key);
    if (found.json == nullptr) {
        return false;
    }
    if (!found.json->is_boolean()) {
        complaints_->error("value_wrong_kind",
                           path_of(key),
                           "found " + json_words(*found.json) + ", expected true or false",
                           "Write true or false without quotation marks.");
        return false;
    }
    return found.json->get<bool>();
}

std::size_t JsonFields::one_of(std::string_view key, const std::vector<std::string_view>& words) {
    const Value found = needed(key);
    if (found.json == nullptr) {
        return 0;
    }
    if (found.json->is_string()) {
        const auto word = std::find(words.begin(), words.end(), found.json->get<std::string>());
        if (word != words.end()) {
            return static_cast<std::size_t>(word - words.begin());
        }
    }
    complaints_->error(found.json->is_string() ? "value_unknown" : "value_wrong_kind",
                       path_of(key),
                       "found " + json_words(*found.json) + ", expected " + listed(words),
                       "Use one of those words.");
    return 0;
}

JsonFields JsonFields::object(std::string_view key) {
    return {needed(key), path_of(key), *complaints_};
}

std::optional<JsonFields> JsonFields::object_if_any(std::string_view key) {
    const Value found = value(key);
    if (found.json == nullptr || found.json->is_null()) {
        return std::nullopt;
    }
    return JsonFields(found, path_of(key), *complaints_);
}

std::vector<JsonFields> JsonFields::objects(std::string_view key, std::size_t most) {
    std::vector<JsonFields> items;
    const Value found = needed(key);
    if (found.json == nullptr) {
        return items;
    }
    if (!found.json->is_array()) {
        complaints_->error("value_wrong_kind",
                           path_of(key),
                           "found " + json_words(*found.json) + ", expected a list",
                           "Put it in square brackets, [] where there is none.");
        return items;
    }
    if (found.json->size() > most) {
        complaints_->error("value_out_of_range",
                           path_of(key),
                           "found " + std::to_string(found.json->size()) +
                               " entries, expected at most " + std::to_string(most),
                           "Leave some out, or split the day in two.");
        return items;
    }
    items.reserve(found.json->size());
    for (std::size_t i = 0; i < found.json->size(); ++i) {
        items.push_back(JsonFields({found.document, &(*found.json)[i]},
                                   path_of(key) + "[" + std::to_string(i) + "]",
                                   *complaints_));
    }
    return items;
}

void JsonFields::refuse_others() {
    if (value_->json == nullptr) {
        return;
    }
    for (const auto& [key, ignored] : value_->json->items()) {
        if (std::find(asked_.begin(), asked_.end(), key) == asked_.end()) {
            // As the file has it: a line end in a key stays "\\n".
            const std::string quoted = Json(key).dump();
            const std::string shown = shortened(quoted.substr(1, quoted.size() - 2));
            complaints_->warning("key_unknown",
                                 path_of(shown),
                                 shown + " is not a key here and was left out",
                                 "Check its spelling, or take it out.");
        }
    }
}

tl::expected<JsonFields, Diagnostics>
json_object(std::string_view bytes, std::string_view file, Complaints& complaints) {
    auto json = parsed(bytes, file);
    if (!json) {
        return tl::make_unexpected(std::move(json.error()));
    }
    const auto document = std::make_shared<const Json>(std::move(*json));
    return JsonFields({document, document.get()}, "", complaints);
}

} // namespace loafwright::wire
