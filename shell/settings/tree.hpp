// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/quantity/time.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace loafwright::settings {

struct TreeEntry;

/// One value of a file or a request with the line on which it stands, 0 where lines mean nothing.
/// Only the fields that belong to `kind` mean anything.
struct TreeValue {
    enum class Kind { table, array, text, whole, number, truth, clock, date, date_time, instant };

    Kind kind = Kind::table;
    int line = 1;
    std::vector<TreeEntry> entries; // table, in byte order of their keys
    std::vector<TreeValue> items;   // array
    std::string text;               // text
    double number = 0.0;            // whole and number; may be infinite or not a number
    bool truth = false;             // truth
    CivilTime civil;                // clock (without its date), date (without its clock), date_time
    Instant instant;                // instant

    /// The value of `key`, or null.
    [[nodiscard]] const TreeValue* find(std::string_view key) const;
};

struct TreeEntry {
    std::string key;
    int line = 1; // of the key
    TreeValue value;
};

/// The whole of a TOML text as a tree of plain values; `name` is the file's name for messages.
///
/// Errors: settings_unreadable, with the line; also for a text longer than one mebibyte.
/// Never:  throws on input.
tl::expected<TreeValue, Diagnostic> parse_toml(std::string_view text, std::string_view name);

/// The whole of a JSON text (RFC 8259), an object, as such a tree, without lines; null counts as
/// absent, and of two equal keys the last one.
///
/// Errors: json_unreadable, with line and column where they are known; also for more than two
///         mebibytes and for lists and objects more than 32 deep.
/// Never:  throws on input.
tl::expected<TreeValue, Diagnostic> parse_json(std::string_view text, std::string_view name);

} // namespace loafwright::settings
