// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/sheet/compose.hpp"

#include <vector>

namespace loafwright {

/// The pages of several breads: first the clock they share, then each bread's own.
///
/// The shared page has a numbered line for everything that is done, acts too, in the order of the
/// clock and with its bread's name. A wait that begins as the hands leave the dough stands on their
/// line, and an act that comes three times or more is one line with all its times. What to weigh,
/// cues and reminders stand on the bread's own.
///
/// Needs:    `plan.breads`, `recipes` and `provisions` of the same length, at least two, in one
/// order.
std::vector<Sheet> compose(const Plan& plan,
                           const std::vector<FittedRecipe>& recipes,
                           const std::vector<Provisions>& provisions,
                           const Day& day,
                           const SheetOptions& options);

/// A sheet with one line for each of `plan.stages`, for those who show a plan line by line (a
/// calendar): the page itself, or the lines of all breads with their names.
///
/// Needs: `pages` composed from `plan`.
Sheet compose_lines(const Plan& plan, const std::vector<Sheet>& pages);

} // namespace loafwright
