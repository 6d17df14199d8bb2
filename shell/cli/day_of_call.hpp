// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/breads/known_breads.hpp"
#include "engine/diagnostic/diagnostic.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/recipe/recipe.hpp"
#include "shell/cli/day_arguments.hpp"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace loafwright::cli {

/// The clock, the zone and the day together: each needs the one before it.
struct When {
    Day day;
    Diagnostics messages;
};

/// The breads, the kitchen and the day of a call.
struct BreadsOfCall {
    std::vector<breads::BreadText> texts;
    Kitchen kitchen;
    When when;
};

/// Promises: every input is looked at before the first is complained about; --start and --eat-by
/// outrank
///           the day file, --room-c an answer about the room, and that the kitchen file.
/// Errors:   those of bread_texts, of files and of settings; answer_unreadable.
tl::expected<BreadsOfCall, Diagnostics> breads_of_call(const std::vector<std::string>& files,
                                                       const Answers& answers,
                                                       const breads::Wanted& wanted,
                                                       const DayArguments& arguments);

} // namespace loafwright::cli
