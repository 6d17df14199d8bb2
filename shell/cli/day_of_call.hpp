// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/recipe/recipe.hpp"
#include "shell/cli/arguments.hpp"

#include <tl/expected.hpp>

namespace loafwright::cli {

/// The clock, the zone and the day together: each needs the one before it.
struct When {
    Day day;
    Diagnostics messages;
};

/// The day that a call speaks of.
///
/// Promises: --start and --eat-by outrank the day file.
/// Errors:   those of files and of settings, all that can be found in one go.
tl::expected<When, Diagnostics> when_from(const DayArguments& arguments);

/// The kitchen that a call speaks of.
///
/// Promises: --room-c outranks an answer about the room, and that the kitchen file.
/// Errors:   those of files and of settings; answer_unreadable.
tl::expected<Kitchen, Diagnostics> kitchen_from(const DayArguments& arguments,
                                                const Answers& answers);

} // namespace loafwright::cli
