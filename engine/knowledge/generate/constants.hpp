// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/generate/data_file.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Values as they are written in a C++ source file.
namespace loafwright::generate {

/// A string literal; UTF-8 goes through as it is.
std::string quoted(std::string_view text);
/// A literal of type double that reads back to the same value.
std::string literal(double value);
std::string literal(const std::optional<double>& value);
/// "Grams{7.8}", or std::nullopt.
std::string tagged(std::string_view type, const std::optional<double>& value);
/// "Band<Grams>{Grams{1.0}, Grams{2.0}, Grams{3.0}}".
std::string band(std::string_view type, const Figures& figures);
std::string band(std::string_view type, const std::optional<Figures>& figures);
/// "StepKind::rise", or std::nullopt.
std::string enumerator(std::string_view type, const std::optional<std::string>& name);

/// The lists of words of one table, one behind the other.
class WordPool {
public:
    /// Adds the words and tells where they stand, as a WordRange.
    std::string range_of(const std::vector<std::string>& words);
    /// The definition of `words`, or nothing when there are none.
    [[nodiscard]] std::string definition() const;
    [[nodiscard]] bool empty() const { return words_.empty(); }

private:
    std::vector<std::string> words_;
};

/// Says which of several rows had a key first, so that the second can be refused.
class SeenKeys {
public:
    /// True when `key` is new; else the fault names the line of the first.
    bool add(const Row& row, std::string_view what, const std::string& key);

private:
    std::map<std::string, std::int64_t> lines_;
};

} // namespace loafwright::generate
