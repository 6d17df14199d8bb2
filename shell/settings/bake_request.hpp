// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/breads/bake.hpp"
#include "shell/settings/settings.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <string_view>

namespace loafwright::settings {

/// A request and what there is to say of it.
struct ReadRequest {
    breads::BakeRequest request;
    Diagnostics remarks;      // warnings and notes
    bool has_learned = false; // it brings what the kitchen had taught when it was made
};

/// What to bake, in which kitchen, on which day, from JSON:
///
///     {"version": 1, "breads": [{"name", "text", "answers": [{"key", "value"}],
///       "size": {"pieces"} or {"dough_grams"} or {"factor"} or
///               {"tin_mm": {"length", "width", "height"}},
///       "yeast": "fresh", "active_dry", "instant" or "leaven"}],
///      "kitchen": {…}, "day": {…}, "start" or "eat_by": time, "now": time,
///      "learned": {…},
///      "page": {"clock": "24" or "12", "temperature": "c" or "f", "weight": "g" or "oz", "few":
///      truth}}
///
/// `kitchen` and `day` have the keys of the kitchen and day files (README.md), the lists in the
/// plural: `tins`, `windows`, `oven_claims`. `learned` is what engine/wire/factors_json.hpp writes.
/// Everything but `breads` may be left out. Times are words as in a day file, or RFC 3339.
/// `day.zone` decides the zone, else the system's. Where nobody is
/// said to be asleep, the usual night is kept free if that can be helped.
///
/// Promises: `now` of the request, else `now`; all mistakes in one go, each with its path.
/// Errors:   json_unreadable, those of kitchen_from_toml, day_from_toml and check_text,
///           key_missing, value_out_of_range, said_twice (two sizes), both_start_and_eat_by,
///           time_unreadable, time_skipped.
/// Never:    throws on input, whatever its bytes.
tl::expected<ReadRequest, Diagnostics>
bake_request_from_json(std::string_view json, std::string_view name, Instant now);

/// What is kept of a kitchen and a day, checked like a request: {"kitchen": {…}, "day": {…}}.
///
/// Errors: as above.
Diagnostics faults_of_habits(std::string_view json, std::string_view name, Instant now);

} // namespace loafwright::settings
