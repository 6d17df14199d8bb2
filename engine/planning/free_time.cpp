// SPDX-License-Identifier: Apache-2.0
//
// "You are free 13:30 to 14:35": a wait up to the moment when one should begin looking, cut at each
// act, and only what is long enough to go out for. Once the bread is out of the oven nobody asks
// any more.
#include "engine/planning/stages.hpp"

#include <algorithm>

namespace loafwright::planning {

namespace {

constexpr std::int64_t worth_going_out = 20;

std::int64_t minutes_of(const FittedRecipe& recipe, const Act& act) {
    for (const FittedStep& step : recipe.steps) {
        if (act.step && step.step == act.step && step.attention == Attention::hands) {
            return up_to_five(std::clamp<std::int64_t>(step.minutes.likely, 0, 60));
        }
    }
    return 0;
}

} // namespace

std::vector<FreeSpan> free_time(const FittedRecipe& recipe, const std::vector<Stage>& stages) {
    std::vector<FreeSpan> spans;
    for (const Stage& stage : stages) {
        if (stage.attention != Attention::wait || !stage.look_from) {
            continue;
        }
        Instant from = stage.start;
        const auto close = [&](Instant to) {
            if (minutes_between(from, to) >= worth_going_out) {
                spans.push_back({from, to});
            }
        };
        for (const Act& act : stage.acts) {
            if (act.at < *stage.look_from) {
                close(act.at);
                from = std::max(from, later_by_minutes(act.at, minutes_of(recipe, act)));
            }
        }
        close(*stage.look_from);
    }
    return spans;
}

} // namespace loafwright::planning
