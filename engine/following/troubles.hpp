// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/event.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/knowledge/knowledge.hpp"

#include <optional>
#include <string_view>
#include <vector>

/// What happens when something has happened.
namespace loafwright::following {

/// "no_salt" and the like, as in data/remedies.toml.
std::string_view name_of(Trouble trouble);
std::optional<Trouble> trouble_named(std::string_view name);

/// The row of a trouble, or null.
const RemedyRow* remedy_for(const Knowledge& knowledge, Trouble trouble);

/// The day with what the events say of it: who goes out is away until then (the first of the day's
/// people), a taken oven is somebody else's until then. A trouble that asks until when and was not
/// told counts for an hour.
Day day_after(const Day& day, const std::vector<Event>& events);

} // namespace loafwright::following
