// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/breads/bake.hpp"
#include "engine/diagnostic/diagnostic.hpp"
#include "engine/following/event.hpp"
#include "engine/knowledge/knowledge.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

/// JSON for a bake that goes on, version 1, each answer on one line (docs/openapi.yaml).
namespace loafwright::wire {

inline constexpr std::size_t most_events_at_once = 100;
inline constexpr std::size_t longest_note = 4000; // bytes

/// {"version", "plan", "sheets", "questions"} or {"version", "impossible", "questions"}.
std::string plan_answer_json(const breads::Bake& bake);

/// {"version", "plan", "sheets", "moment", "change", "last"}; `last` is the number of the last
/// event that counted.
///
/// Needs: the bake has a plan.
std::string
bake_state_json(const breads::Bake& bake, const breads::BakeState& state, std::int64_t last);

/// The words and rows that screens need: {"troubles": [{"key", "tells", "remedy", "asks_until",
/// "source"}]}.
std::string help_json(const Knowledge& knowledge);

/// One event as it is kept and sent, times in UTC.
std::string event_json(const Event& event);

/// The events of {"events": [Event…]}, as event_json writes them; the form stands in README.md.
///
/// Errors:   json_unreadable, key_missing, value_wrong_kind, value_unknown, value_out_of_range,
///           time_unreadable, as many as can be found in one go.
/// Never:    throws on input.
tl::expected<std::vector<Event>, Diagnostics> events_from_json(std::string_view bytes,
                                                               std::string_view name);

/// One event; errors as above.
tl::expected<Event, Diagnostics> event_from_json(std::string_view bytes, std::string_view name);

} // namespace loafwright::wire
