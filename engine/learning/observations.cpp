// SPDX-License-Identifier: Apache-2.0
#include "engine/learning/observations.hpp"

#include "engine/following/growth.hpp"
#include "engine/following/signs.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::learning {

namespace {

constexpr double short_of_it = 0.75;
constexpr double eye_deviation = 0.3;
constexpr double sign_step = 1.2;
constexpr double sign_deviation = 0.15;
constexpr double at_most_longer = 2.0;
// A look counts for the end of a wait from its last fifth on.
constexpr double near_the_end = 0.8;

bool says_something(const LoggedLine& line) {
    return line.timed && !line.chosen && line.troubles.empty() && line.usual_minutes >= 1.0 &&
           line.place != Place::fridge && real_minutes(line).value_or(0) > 0;
}

// What the signs say of the prove, where they agree.
Proved proved(const BakeLog& log, const Knowledge& knowledge) {
    bool too_short = false;
    bool too_long = false;
    for (const FaultSymptomRow* row : following::signs_of(log.told, knowledge).seen) {
        too_short = too_short || row->proved == Proved::too_short;
        too_long = too_long || row->proved == Proved::too_long;
    }
    return too_short == too_long ? Proved::unsaid
           : too_short           ? Proved::too_short
                                 : Proved::too_long;
}

} // namespace

WantedWait wanted_wait(const BakeLog& log, const LoggedLine& line, const Knowledge& knowledge) {
    const auto real = static_cast<double>(real_minutes(line).value_or(0));
    WantedWait wanted{real, 0.0};
    if (line.wanted_growth && line.grown && line.begun) {
        const auto looked_after = static_cast<double>(minutes_between(*line.begun, line.grown->at));
        const double gain = following::gain_of(line.grown->growth);
        if (looked_after >= near_the_end * real && gain <= short_of_it * *line.wanted_growth) {
            wanted.minutes = real * std::min(at_most_longer, *line.wanted_growth / gain);
            wanted.extra_deviation = eye_deviation;
            return wanted;
        }
    }
    if (line.kind == StepKind::prove) {
        const Proved signs = proved(log, knowledge);
        if (signs != Proved::unsaid) {
            wanted.minutes = signs == Proved::too_short ? real * sign_step : real / sign_step;
            wanted.extra_deviation = sign_deviation;
        }
    }
    return wanted;
}

const LearningRow* learning_row(const Knowledge& knowledge, StepKind kind) {
    for (const LearningRow& row : knowledge.learning) {
        if (row.kind == kind && row.group != LearnedGroup::thermostat) {
            return &row;
        }
    }
    return nullptr;
}

std::vector<Observation> observations_of(const BakeLog& log, const Knowledge& knowledge) {
    std::vector<Observation> observations;
    for (const LoggedLine& line : log.lines) {
        const LearningRow* row = learning_row(knowledge, line.kind);
        const bool risen = row != nullptr && row->group == LearnedGroup::dough;
        if (row == nullptr || !says_something(line) || (risen && log.leaven.empty())) {
            continue;
        }
        Observation observation;
        observation.kind = line.kind;
        WantedWait wanted{static_cast<double>(*real_minutes(line)), 0.0};
        if (risen) {
            observation.leaven = log.leaven;
            wanted = wanted_wait(log, line, knowledge);
        }
        observation.log_factor = std::log(wanted.minutes / line.usual_minutes);
        observation.extra_deviation = wanted.extra_deviation;
        observations.push_back(observation);
    }
    return observations;
}

std::optional<CelsiusDifference> oven_offset_of(const BakeLog& log) {
    double sum = 0.0;
    int count = 0;
    for (const LoggedLine& line : log.lines) {
        if (line.kind != StepKind::bake || !line.setting) {
            continue;
        }
        for (const LoggedTemperature& read : line.temperatures) {
            if (read.measured == Measured::oven) {
                sum += (read.celsius - *line.setting).count();
                ++count;
            }
        }
    }
    return count > 0 ? std::optional(CelsiusDifference(sum / count)) : std::nullopt;
}

} // namespace loafwright::learning
