// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/event.hpp"
#include "engine/planning/plan.hpp"

#include <optional>
#include <vector>

/// What events come to: state is always a fold over them.
namespace loafwright::following {

/// One line of the page as it really went.
struct LineProgress {
    std::optional<Instant> begun;
    bool told_begun = false; // somebody said so; else the line before it was ticked off
    std::optional<Instant> done;
    std::optional<Instant> look_again; // not ready before
};

/// One entry for each line of the bread's page.
using BreadProgress = std::vector<LineProgress>;

/// Needs:    a plan of one bread, or `plan.breads` for several.
/// Promises: one entry for each bread. An id counts once; the order in which events arrive does not
///           matter, only when they happened (equal moments: in byte order of ids). A line that is
///           done begins the next one and ends all before it; one that is begun ends all before it.
///           Times never run backwards along a page. Events for lines and breads that do not exist,
///           and those taken back, change nothing.
std::vector<BreadProgress> progress_of(const Plan& plan, const std::vector<Event>& events);

/// The plans of the breads: `plan.breads`, or the plan itself.
std::vector<const Plan*> breads_of(const Plan& plan);

} // namespace loafwright::following
