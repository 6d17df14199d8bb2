// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/bake_log.hpp"
#include "engine/knowledge/knowledge.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loafwright {

/// One bake of a bread as a row of a chart, oldest first.
struct BakePoint {
    std::optional<Instant> begun;
    std::optional<double> prove_over_plan; // real over planned minutes, where somebody timed it
    std::optional<double> rise_over_plan;
    std::optional<double> growth_over_wanted; // of the last rise that somebody looked at
    std::optional<Crust> crust;
    std::optional<Crumb> crumb;
    std::optional<bool> again;
    std::vector<std::string> signs; // as they are shown
};

/// What got better, in words.
struct Progress {
    std::vector<std::string> better_than_last; // sentences, since the bake before
    std::vector<std::string> better_than_first;
    /// What is otherwise now and neither better nor worse by itself: "the prove was 70 min, before
    /// 45 min".
    std::vector<std::string> differed;
    /// Where our times were wrong, bake after bake: "Our prove was too short in two of three bakes;
    /// you waited for the dough."
    std::vector<std::string> our_time;
    std::vector<BakePoint> points;
};

/// What got better since the first bake and the last one of one bread.
///
/// Better is: a crust or a crumb that is right and was not; a sign that is gone and was there (only
/// where the later bake was told of at all); a dough nearer to the growth it wanted; bread to be
/// baked again that was not. Keeping to a clock is never better, and what is not better is not
/// named: a finding, not a mark.
/// Our time was wrong where the baker waited 15 % or more longer or shorter than planned for a wait
/// that somebody timed, in more than half of the bakes that tell and twice at least.
///
/// Needs:    logs of one bread, oldest first.
/// Promises: no logs give nothing at all; one gives its point and no comparison. The sentences have
///           no numbers that rank.
Progress progress_of(const std::vector<BakeLog>& logs, const Knowledge& knowledge);

} // namespace loafwright
