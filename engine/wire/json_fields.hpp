// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::wire {

/// What is wrong with a JSON file, each entry with the file and the path inside it.
///
/// Promises: at most twenty errors and twenty warnings are kept, the first ones.
class Complaints {
public:
    explicit Complaints(std::string_view file) : file_(file) {}

    void error(const char* code,
               const std::string& path,
               const std::string& what,
               const std::string& do_this);
    void warning(const char* code,
                 const std::string& path,
                 const std::string& what,
                 const std::string& do_this);

    [[nodiscard]] bool any_error() const { return !errors_.empty(); }
    [[nodiscard]] Diagnostics take_errors();
    [[nodiscard]] Diagnostics take_warnings();

private:
    [[nodiscard]] std::string where(const std::string& path) const;

    std::string file_;
    Diagnostics errors_;
    Diagnostics warnings_;
};

/// The numbers that a key may have, both ends included.
struct WholeRange {
    std::int64_t low = 0;
    std::int64_t high = 0;
};

struct NumberRange {
    double low = 0.0;
    double high = 0.0;
};

/// Reads the keys of one JSON object and notes every mistake.
///
/// Promises: a value that is missing or wrong is reported once and then counts as the low end of
///           its range, an empty text, an empty list, false; an object that is missing or wrong
///           is silent about what it should hold.
/// Never:    throws on input.
class JsonFields {
public:
    [[nodiscard]] bool has(std::string_view key) const;
    /// "breads[2].name".
    [[nodiscard]] std::string path_of(std::string_view key) const;

    std::int64_t whole(std::string_view key, WholeRange range);
    /// None where the key is absent or null.
    std::optional<std::int64_t> whole_if_any(std::string_view key, WholeRange range);
    std::string text(std::string_view key);
    /// None where the key is absent or null.
    std::optional<std::string> text_if_any(std::string_view key);
    /// A number with or without a point.
    double number(std::string_view key, NumberRange range);
    /// None where the key is absent or null.
    std::optional<double> number_if_any(std::string_view key, NumberRange range);
    /// A list of texts; an absent key is an empty list. More than `most`, or one longer than
    /// `longest` bytes, is reported.
    std::vector<std::string>
    texts_if_any(std::string_view key, std::size_t most, std::size_t longest);
    bool truth(std::string_view key);
    /// The index in `words` of the text of `key`; 0 when it is none of them.
    std::size_t one_of(std::string_view key, const std::vector<std::string_view>& words);
    /// None where the key is absent or null.
    std::optional<std::size_t> one_of_if_any(std::string_view key,
                                             const std::vector<std::string_view>& words);
    std::optional<bool> truth_if_any(std::string_view key);
    JsonFields object(std::string_view key);
    /// None where the key is absent or null.
    std::optional<JsonFields> object_if_any(std::string_view key);
    /// The items of a list of objects. More than `most` are reported, and none is looked at.
    std::vector<JsonFields> objects(std::string_view key, std::size_t most);

    /// A warning for every key that was not asked for.
    void refuse_others();

private:
    struct Value; // hides the JSON library from those who include this
    friend tl::expected<JsonFields, Diagnostics>
    json_object(std::string_view bytes, std::string_view file, Complaints& complaints);

    JsonFields(const Value& value, std::string path, Complaints& complaints);

    [[nodiscard]] Value value(std::string_view key);
    [[nodiscard]] Value needed(std::string_view key);
    double number_of(const Value& found, std::string_view key, NumberRange range);
    std::int64_t whole_of(const Value& found, std::string_view key, WholeRange range);

    std::shared_ptr<const Value> value_;
    std::string path_;
    Complaints* complaints_;
    std::vector<std::string> asked_;
};

/// The largest JSON that is read.
inline constexpr std::size_t largest_json_bytes = 1048576;

/// The object that `bytes` hold; `complaints` must outlive it.
///
/// Errors:   text_too_long, json_unreadable with line and column. Anything but an object is told in
///           `complaints`.
/// Never:    throws on input.
tl::expected<JsonFields, Diagnostics>
json_object(std::string_view bytes, std::string_view file, Complaints& complaints);

} // namespace loafwright::wire
