// SPDX-License-Identifier: Apache-2.0
//
// Two bakes side by side. Only what somebody told counts: a bake of which nothing was said is
// neither better nor worse.
#include "engine/learning/progress.hpp"

#include "engine/fitting/words.hpp"
#include "engine/following/growth.hpp"
#include "engine/following/signs.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace loafwright {

namespace {

constexpr double off_from = 0.15;
constexpr double nearer_from = 0.15;

bool told_anything(const BakeLog& log) {
    return log.told.crust || log.told.crumb || log.told.again || !log.told.symptoms.empty();
}

std::optional<double> over_plan(const LoggedLine* line) {
    if (line == nullptr || !line->timed || line->chosen || line->minutes.likely <= 0) {
        return std::nullopt;
    }
    return static_cast<double>(real_minutes(*line).value_or(0)) /
           static_cast<double>(line->minutes.likely);
}

std::optional<double> growth_over_wanted(const BakeLog& log) {
    std::optional<double> last;
    for (const LoggedLine& line : log.lines) {
        if (line.grown && line.wanted_growth) {
            last = following::gain_of(line.grown->growth) / *line.wanted_growth;
        }
    }
    return last;
}

BakePoint point_of(const BakeLog& log, const Knowledge& knowledge) {
    BakePoint point;
    for (const LoggedLine& line : log.lines) {
        point.begun = point.begun ? point.begun : line.begun;
    }
    point.prove_over_plan = over_plan(line_of(log, StepKind::prove));
    point.rise_over_plan = over_plan(line_of(log, StepKind::rise));
    point.growth_over_wanted = growth_over_wanted(log);
    point.crust = log.told.crust;
    point.crumb = log.told.crumb;
    point.again = log.told.again;
    for (const FaultSymptomRow* row : following::signs_of(log.told, knowledge).seen) {
        point.signs.emplace_back(row->tells);
    }
    return point;
}

/// How an earlier bake is spoken of.
struct When {
    std::string_view at;    // "it was pale last time", "than at the first bake"
    std::string_view since; // "gone since the first bake"
};

// What is better than it was then.
std::vector<std::string>
better(const BakeLog& before, const BakeLog& after, const Knowledge& knowledge, const When& then) {
    std::vector<std::string> say;
    const BakePoint was = point_of(before, knowledge);
    const BakePoint is = point_of(after, knowledge);
    if (is.crust == Crust::right && was.crust && was.crust != Crust::right) {
        say.push_back(fmt::format("The crust is right; it was {} {}.",
                                  was.crust == Crust::pale ? "pale" : "dark",
                                  then.at));
    }
    if (is.crumb == Crumb::even && was.crumb && was.crumb != Crumb::even) {
        say.push_back(fmt::format("The crumb is even; it was {} {}.",
                                  was.crumb == Crumb::close ? "close" : "open",
                                  then.at));
    }
    if (told_anything(after)) {
        // Crust and crumb have their own sentences.
        constexpr std::array<std::string_view, 4> picked{
            "pale_crust", "dark_crust", "dense_crumb", "coarse_crumb"};
        for (const FaultSymptomRow* row : following::signs_of(before.told, knowledge).seen) {
            const bool is_pick =
                std::find(picked.begin(), picked.end(), row->key) != picked.end() &&
                (row->key == "pale_crust" || row->key == "dark_crust" ? was.crust.has_value()
                                                                      : was.crumb.has_value());
            const bool still =
                std::find(is.signs.begin(), is.signs.end(), row->tells) != is.signs.end();
            if (!is_pick && !still) {
                say.push_back(fmt::format("Gone since {}: {}.", then.since, row->tells));
            }
        }
    }
    if (was.growth_over_wanted && is.growth_over_wanted) {
        const double missed_before = std::fabs(std::log(*was.growth_over_wanted));
        const double missed_now = std::fabs(std::log(*is.growth_over_wanted));
        if (missed_now + nearer_from < missed_before) {
            say.push_back(
                fmt::format("The dough came nearer to the rise it wants than {}.", then.at));
        }
    }
    if (is.again == true && was.again == false) {
        say.push_back("You want to bake it again.");
    }
    return say;
}

std::string_view wait_name(StepKind kind) {
    return kind == StepKind::rise ? "first rise" : "prove";
}

std::vector<std::string> differences(const BakeLog& before, const BakeLog& after) {
    std::vector<std::string> say;
    for (const StepKind kind : {StepKind::rise, StepKind::prove, StepKind::bake}) {
        const LoggedLine* was = line_of(before, kind);
        const LoggedLine* is = line_of(after, kind);
        if (was == nullptr || is == nullptr || !was->timed || !is->timed) {
            continue;
        }
        const std::int64_t minutes_then = real_minutes(*was).value_or(0);
        const std::int64_t minutes_now = real_minutes(*is).value_or(0);
        if (std::llabs(minutes_now - minutes_then) >= 5) {
            say.push_back(fmt::format("The {} took {}; last time {}.",
                                      kind == StepKind::bake ? "bake" : wait_name(kind),
                                      fitting::duration_text(minutes_now),
                                      fitting::duration_text(minutes_then)));
        }
    }
    for (const std::string& change : after.told.changed) {
        say.push_back(fmt::format("You changed: {}.", change));
    }
    if (after.told.changed.size() > 1) {
        say.push_back("Several things changed at once: this bake can't tell which of them made the "
                      "difference.");
    }
    return say;
}

std::string count_word(std::size_t count) {
    constexpr std::array<std::string_view, 10> words{
        "none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"};
    return count < words.size() ? std::string(words.at(count)) : std::to_string(count);
}

void add_our_time(std::vector<std::string>& say, const std::vector<BakeLog>& logs, StepKind kind) {
    std::size_t tell = 0;
    std::size_t too_short = 0;
    std::size_t too_long = 0;
    for (const BakeLog& log : logs) {
        if (const auto ratio = over_plan(line_of(log, kind))) {
            ++tell;
            too_short += *ratio >= 1.0 + off_from ? 1U : 0U;
            too_long += *ratio <= 1.0 - off_from ? 1U : 0U;
        }
    }
    const std::size_t wrong = std::max(too_short, too_long);
    if (wrong >= 2 && 2 * wrong > tell) {
        say.push_back(fmt::format("Our {} was too {} in {} of {} bakes; you went by the dough.",
                                  wait_name(kind),
                                  too_short >= too_long ? "short" : "long",
                                  count_word(wrong),
                                  count_word(tell)));
    }
}

} // namespace

Progress progress_of(const std::vector<BakeLog>& logs, const Knowledge& knowledge) {
    Progress progress;
    for (const BakeLog& log : logs) {
        progress.points.push_back(point_of(log, knowledge));
    }
    if (logs.size() < 2) {
        return progress;
    }
    const BakeLog& last = logs.back();
    const BakeLog& before = logs[logs.size() - 2];
    progress.better_than_last = better(before, last, knowledge, {"last time", "last time"});
    if (logs.size() > 2) {
        progress.better_than_first =
            better(logs.front(), last, knowledge, {"at the first bake", "the first bake"});
    }
    progress.differed = differences(before, last);
    add_our_time(progress.our_time, logs, StepKind::rise);
    add_our_time(progress.our_time, logs, StepKind::prove);
    return progress;
}

} // namespace loafwright
