// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/settings/tree.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::settings {

/// What kind of number a key holds, for the hint beside one that is out of range.
enum class Measure { celsius, difference, millimetres, minutes, metres, count, ratio };

/// The numbers that a key may have.
struct Range {
    double low = 0.0;
    double high = 0.0;
    Measure measure = Measure::count;
};

/// "a number", "text", "a list": a kind of TOML value in words.
std::string_view kind_words(TreeValue::Kind kind);

/// The value as it would stand in the file, for a message; lists and tables are named by their
/// kind.
std::string value_words(const TreeValue& value);

/// Sorts by the line in `where`, which begins "file:line"; keeps the order within a line.
void sort_by_line(Diagnostics& diagnostics, std::string_view file);

/// Reads the keys of one TOML table and notes every mistake.
///
/// Promises: each reading function remembers its key, so that `refuse_others` knows what is left;
///           a value that is there but wrong is reported and then counts as absent.
/// Never:    throws on input.
class Fields {
public:
    /// `table` and `complaints` must outlive this; `heading` is "oven" for the keys below [oven],
    /// empty at the top.
    Fields(const TreeValue& table,
           std::string heading,
           std::string_view file,
           Diagnostics& complaints);

    /// The value of `key`, whatever its kind; null when absent.
    const TreeValue* value(std::string_view key);
    std::optional<double> number(std::string_view key, Range range);
    std::optional<bool> truth(std::string_view key);
    /// Text with something in it, at most 100 bytes, blanks at both ends taken off.
    std::optional<std::string> text(std::string_view key);
    /// The index in `words` of the text of `key`.
    std::optional<std::size_t> one_of(std::string_view key, const std::vector<std::string>& words);
    const TreeValue* table(std::string_view key);
    /// The items of a list of tables, [[key]]; empty when absent. More than `most` are reported and
    /// left out.
    std::vector<const TreeValue*> tables(std::string_view key, std::size_t most);

    /// Reports `value_out_of_range` unless `found` is a number inside `range`.
    bool check_range(const TreeValue& found, std::string_view key, Range range);

    /// Reports that `key` is missing; `example` is a line that would do.
    void missing(std::string_view key, std::string_view example);
    /// Reports every key that nobody asked for. `elsewhere` are keys at the top of the file, for
    /// one that slid below a heading.
    void refuse_others(const std::vector<std::string>& elsewhere = {});
    /// Reports anything else about `found`, which belongs to `key`.
    void complain(std::string_view code,
                  const TreeValue& found,
                  std::string_view key,
                  const std::string& what,
                  std::string do_this);

    /// "oven.max_c".
    [[nodiscard]] std::string path(std::string_view key) const;
    /// "kitchen.toml:7 oven.max_c".
    [[nodiscard]] std::string where(int line, std::string_view key) const;

private:
    void wrong_kind(const TreeValue& found, std::string_view key, std::string_view expected);

    const TreeValue& table_;
    std::string heading_;
    std::string_view file_;
    Diagnostics& complaints_;
    std::vector<std::string> asked_;
};

} // namespace loafwright::settings
