// SPDX-License-Identifier: Apache-2.0
#include "engine/reading/head_times.hpp"

#include "engine/reading/duration.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loafwright::reading {
namespace {

struct HeadTimes {
    std::optional<Minutes> cook;
    std::optional<Minutes> total;
};

// The length that stands behind "cook time" and its like, before the next figure of its kind.
HeadTimes times_at_head(const Layout& layout) {
    HeadTimes times;
    const auto& tokens = layout.tokens;
    for (const Block& block : layout.blocks) {
        if (block.role != BlockRole::meta) {
            continue;
        }
        const auto lengths = durations_in(tokens, block.tokens);
        for (std::size_t at = block.tokens.begin; at + 1 < block.tokens.end; ++at) {
            if (!is_word(tokens[at + 1], "time")) {
                continue;
            }
            const bool cook = is_word(tokens[at], "cook") || is_word(tokens[at], "cooking") ||
                              is_word(tokens[at], "bake") || is_word(tokens[at], "baking");
            const bool total = is_word(tokens[at], "total");
            for (const DurationPhrase& length : lengths) {
                // A colon may stand between.
                if (length.range.end <= at + 2 || length.range.begin > at + 4) {
                    continue;
                }
                if (cook && !times.cook) {
                    times.cook = length.likely;
                } else if (total && !times.total) {
                    times.total = length.likely;
                }
                break;
            }
        }
    }
    return times;
}

std::string in_words(Minutes length) {
    const auto minutes = static_cast<std::int64_t>(std::llround(length.count()));
    const std::int64_t hours = minutes / 60;
    const std::int64_t rest = minutes % 60;
    return hours == 0  ? fmt::format("{} min", rest)
           : rest == 0 ? fmt::format("{} h", hours)
                       : fmt::format("{} h {} min", hours, rest);
}

// All that has heat and is no part of something else.
std::vector<Step*> heated(Recipe& recipe) {
    std::vector<Step*> steps;
    for (Step& step : recipe.steps) {
        const bool heats = step.kind == StepKind::bake || step.kind == StepKind::cook;
        if (heats && !step.optional && !step.during) {
            steps.push_back(&step);
        }
    }
    return steps;
}

void compare_cooking(Minutes head, Reading& reading) {
    const std::vector<Step*> steps = heated(reading.recipe);
    double low = 0.0;
    double likely = 0.0;
    double high = 0.0;
    for (const Step* step : steps) {
        if (step->as_read || (!step->minutes && steps.size() != 1)) {
            return;
        }
        if (step->minutes) {
            low += step->minutes->minutes.low.count();
            likely += step->minutes->minutes.likely.count();
            high += step->minutes->minutes.high.count();
        }
    }
    if (steps.empty()) {
        return;
    }
    Step& first = *steps.front();
    if (!first.minutes) {
        first.minutes = TimedBand{exactly(head), Basis::stated};
        return;
    }
    const double count = head.count();
    const bool alike =
        (count >= low * 0.8 && count <= high * 1.25) || std::fabs(count - likely) <= 5.0;
    if (alike) {
        return;
    }
    const std::string_view verb = first.kind == StepKind::bake ? "bake" : "cook";
    if (steps.size() == 1) {
        reading.questions.push_back(
            {"minutes-at-" + first.at,
             fmt::format("{} time", first.kind == StepKind::bake ? "baking" : "cooking"),
             fmt::format("How long does it {}? The method says {}, the head of the recipe {}.",
                         verb,
                         in_words(first.minutes->minutes.likely),
                         in_words(head)),
             in_words(first.minutes->minutes.likely)});
        return;
    }
    reading.remarks.push_back(
        {"times_differ",
         Severity::note,
         fmt::format("the head of the recipe gives {} of cooking, its method comes to {}",
                     in_words(head),
                     in_words(Minutes(likely))),
         "",
         "The method is followed. Look at its times before you begin."});
}

void compare_total(Minutes head, Reading& reading) {
    double least = 0.0;
    for (const Step& step : reading.recipe.steps) {
        const bool alone = step.optional || step.during || step.meanwhile || !step.after.empty();
        if (!alone && !step.as_read && step.minutes && step.minutes->basis == Basis::stated) {
            least += step.minutes->minutes.low.count();
        }
    }
    constexpr double tolerance = 1.2;
    if (least > head.count() * tolerance) {
        reading.remarks.push_back(
            {"times_differ",
             Severity::note,
             fmt::format("the head of the recipe gives {} in all, its method needs {} at least",
                         in_words(head),
                         in_words(Minutes(least))),
             "",
             "The method is followed. Look at its times before you begin."});
    }
}

} // namespace

void compare_head_times(const Layout& layout, Reading& reading) {
    const HeadTimes times = times_at_head(layout);
    if (times.cook) {
        compare_cooking(*times.cook, reading);
    }
    if (times.total) {
        compare_total(*times.total, reading);
    }
}

} // namespace loafwright::reading
