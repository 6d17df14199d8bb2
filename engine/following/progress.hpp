// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/event.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/planning/plan.hpp"

#include <cstddef>
#include <optional>
#include <set>
#include <vector>

/// What events come to: state is always a fold over them.
namespace loafwright::following {

/// How far a dough had grown, and when that was seen.
struct Looked {
    Instant at;
    Growth growth = Growth::little;
};

/// One line of the page as it really went.
struct LineProgress {
    std::optional<Instant> begun;
    bool told_begun = false; // somebody said so; else the line before it was ticked off
    std::optional<Instant> done;
    std::optional<Instant> look_again; // not ready before
    std::set<std::size_t> acts_done;
    std::optional<Looked> grown; // the last look
    /// The wait began again at `begun`, or goes on longer, so many per cent of its planned length.
    std::optional<double> again_percent;
    std::optional<double> longer_percent;
};

/// One entry for each line of the bread's page.
using BreadProgress = std::vector<LineProgress>;

/// Needs:    a plan of one bread, or `plan.breads` for several.
/// Promises: one entry for each bread. An id counts once; the order in which events arrive does not
///           matter, only when they happened (equal moments: in byte order of ids). A line that is
///           done begins the next one and ends all before it; one that is begun ends all before it.
///           Times never run backwards along a page. A remedy may begin a wait again or make it
///           longer. Events for lines and breads that do not exist, and those taken back, change
///           nothing; notes, photos, temperatures and what is told afterwards
///           neither.
std::vector<BreadProgress>
progress_of(const Plan& plan, const std::vector<Event>& events, const Knowledge& knowledge);

/// The events that count, each once, in the order in which they happened: not those taken back.
std::vector<const Event*> in_order(const std::vector<Event>& events);

/// The plans of the breads: `plan.breads`, or the plan itself.
std::vector<const Plan*> breads_of(const Plan& plan);

} // namespace loafwright::following
