// SPDX-License-Identifier: Apache-2.0
//
// The stages as stretches of one line, and the full hours along it. How long a stage takes shows
// best beside the others; how it is drawn is not decided here.
#include "engine/sheet/day_line.hpp"

#include "engine/sheet/measures.hpp"

#include <algorithm>

namespace loafwright {

namespace {

constexpr std::int64_t longest_minutes = std::int64_t{7} * 24 * 60;
// Zones are set off by quarters of an hour at the finest.
constexpr std::int64_t step_minutes = 15;

} // namespace

DayLine day_line(const Plan& plan, const Zone& zone, ClockForm form) {
    DayLine line;
    line.from = plan.start;
    line.minutes =
        std::clamp<std::int64_t>(minutes_between(plan.start, plan.eat.likely), 0, longest_minutes);
    for (std::size_t i = 0; i < plan.stages.size(); ++i) {
        const Stage& stage = plan.stages[i];
        if (stage.attention == Attention::none) {
            continue;
        }
        Instant end = stage.end.likely;
        if (i + 1 < plan.stages.size() && plan.stages[i + 1].start < end) {
            end = plan.stages[i + 1].start;
        }
        DayLineSpan span;
        span.number = stage.number;
        span.attention = stage.attention;
        span.from_minutes =
            std::clamp<std::int64_t>(minutes_between(plan.start, stage.start), 0, line.minutes);
        span.to_minutes = std::min(minutes_between(plan.start, end), line.minutes);
        if (span.from_minutes < span.to_minutes) {
            line.spans.push_back(span);
        }
    }
    const Instant quarter{plan.start.seconds -
                          (plan.start.seconds % (60 * step_minutes) + 60 * step_minutes) %
                              (60 * step_minutes)};
    for (Instant at = quarter; minutes_between(plan.start, at) <= line.minutes;
         at = later_by_minutes(at, step_minutes)) {
        const CivilTime civil = civil_of(zone, at);
        if (civil.clock.minute == 0 && plan.start <= at) {
            line.hours.push_back(DayLineHour{
                minutes_between(plan.start, at), civil.clock.hour, sheet::clock(zone, at, form)});
        }
    }
    return line;
}

} // namespace loafwright
