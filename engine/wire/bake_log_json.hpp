// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/following/bake_log.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>

namespace loafwright::wire {

/// {"version": 1, "bake": {…}}, indented by two, times in UTC; the form stands in README.md.
std::string bake_log_json(const BakeLog& log);

/// The log, as bake_log_json writes it. Keys that are null may be left out.
///
/// Errors:   text_too_long, json_unreadable, key_missing, value_wrong_kind, value_unknown,
///           value_out_of_range (also for minutes out of order and an end before its begin),
///           time_unreadable, as many as can be found in one go; key_unknown too, since a log with
///           a key misspelt would be read as one without it.
/// Never:    throws on input.
tl::expected<BakeLog, Diagnostics> bake_log_from_json(std::string_view bytes,
                                                      std::string_view name);

} // namespace loafwright::wire
