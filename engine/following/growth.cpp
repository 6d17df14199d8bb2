// SPDX-License-Identifier: Apache-2.0
#include "engine/following/growth.hpp"

#include "engine/planning/margin.hpp"
#include "engine/planning/words.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::following {

namespace {

// How far an eye is off, as a deviation of the logarithm: half a word to either side, whatever the
// word, so that more growth never means a longer wait.
constexpr double eye_deviation = 0.3;

// A tenth of the likely value at least, so that nothing counts as certain.
double log_deviation(double low, double high) {
    return std::max(0.1, std::log(high / low) / (2.0 * planning::ninetieth_percentile));
}

} // namespace

double gain_of(Growth seen) {
    switch (seen) {
    case Growth::little:
        return 0.2;
    case Growth::half_as_much:
        return 0.5;
    case Growth::doubled:
        return 1.0;
    case Growth::more:
        return 1.6;
    }
    return 0.2;
}

double growth_wanted(const std::string& cue, StepKind kind) {
    if (planning::words::has_word(cue, {"tripl", "trebl", "three times"})) {
        return 2.0;
    }
    if (planning::words::has_word(cue, {"half as much", "half as big", "by half", "half again"})) {
        return 0.5;
    }
    if (planning::words::has_word(cue, {"doubl", "twice"})) {
        return 1.0;
    }
    return kind == StepKind::prove ? 0.8 : 1.0;
}

Band<std::int64_t>
wait_after_look(Band<std::int64_t> planned, std::int64_t elapsed, Growth seen, double wanted) {
    const double gain = gain_of(seen);
    if (elapsed < 5) {
        return planned;
    }
    if (gain >= wanted) {
        return {elapsed, elapsed, std::max(elapsed, std::min(planned.high, elapsed + 15))};
    }
    const double looked = static_cast<double>(elapsed) * wanted / gain;
    const double plan_deviation =
        log_deviation(static_cast<double>(planned.low), static_cast<double>(planned.high));
    const double plan_weight = 1.0 / (plan_deviation * plan_deviation);
    const double eye_weight = 1.0 / (eye_deviation * eye_deviation);
    const double middle = (plan_weight * std::log(static_cast<double>(planned.likely)) +
                           eye_weight * std::log(looked)) /
                          (plan_weight + eye_weight);
    const double ends = planning::ninetieth_percentile / std::sqrt(plan_weight + eye_weight);
    const auto minutes = [elapsed](double log_minutes) {
        return std::max(elapsed, static_cast<std::int64_t>(std::lround(std::exp(log_minutes))));
    };
    return {minutes(middle - ends), minutes(middle), minutes(middle + ends)};
}

} // namespace loafwright::following
