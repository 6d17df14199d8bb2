// SPDX-License-Identifier: Apache-2.0
//
// What earlier bakes in this kitchen taught comes on top of the physics, as a factor of the length.
// It comes last: the recipe's own time calibrates, the physics carries it over, the log corrects
// what both leave wrong.
#include "engine/fitting/learned.hpp"

#include "engine/fitting/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>

namespace loafwright::fitting {

namespace {

constexpr double ninetieth_percentile = 1.2815515655446004; // of the standard normal curve
constexpr double in_fives_from = 20.0;

// A text's own doubt, as a deviation of the logarithm; 0 for a band without width.
double deviation_of(const Band<double>& band) {
    return band.low > 0.0 && band.high > band.low
               ? std::log(band.high / band.low) / (2.0 * ninetieth_percentile)
               : 0.0;
}

std::int64_t whole(double minutes, bool in_fives) {
    const Minutes exact(minutes);
    return in_fives ? nearest_five(exact) : std::max<std::int64_t>(1, whole_minutes(exact));
}

bool can_learn(const FittedStep& step) {
    const bool timed = step.attention == Attention::hands || step.kind == StepKind::bake ||
                       (step.attention == Attention::wait && step.place != Place::fridge);
    return timed && !step.stretch && step.basis != Basis::open && step.minutes.likely > 0;
}

std::string difference_words(std::int64_t longer) {
    return longer > 0   ? duration_text(longer) + " longer than we would have said"
           : longer < 0 ? duration_text(-longer) + " shorter than we would have said"
                        : "as long as we would have said";
}

std::string_view wait_name(StepKind kind) {
    switch (kind) {
    case StepKind::rise:
        return "the first rise";
    case StepKind::prove:
        return "the prove";
    case StepKind::ferment:
        return "the leaven or sponge";
    default:
        return "";
    }
}

} // namespace

Band<double> with_factor(const Band<double>& band, const KindFactor& factor) {
    const auto squared = [](double value) { return value * value; };
    const double text_alone =
        std::max(0.0, squared(deviation_of(band)) - squared(factor.prior_deviation));
    const double deviation =
        std::sqrt(squared(factor.factor_deviation) + squared(factor.within_deviation) + text_alone);
    const double likely = band.likely * std::exp(factor.log_mean);
    const double side = std::exp(ninetieth_percentile * deviation);
    return {likely / side, likely, likely * side};
}

void apply_learned(const KitchenFactors& factors,
                   std::string_view leaven,
                   std::vector<FittedStep>& steps) {
    for (FittedStep& step : steps) {
        const KindFactor* factor = learned_factor(factors, step.kind, leaven);
        if (factor == nullptr || !can_learn(step)) {
            continue;
        }
        const Band<std::int64_t> usual = step.minutes;
        const Band<double> learned = with_factor({static_cast<double>(usual.low),
                                                  static_cast<double>(usual.likely),
                                                  static_cast<double>(usual.high)},
                                                 *factor);
        const bool in_fives = step.attention == Attention::wait && learned.likely >= in_fives_from;
        step.minutes = {whole(learned.low, in_fives),
                        whole(learned.likely, in_fives),
                        whole(learned.high, in_fives)};
        step.usual_minutes = usual;
        step.basis = Basis::learned;
        step.reason = fmt::format("from your bakes: {}; {}",
                                  difference_words(step.minutes.likely - usual.likely),
                                  step.reason);
    }
}

std::vector<Phrase> learned_notes(const std::vector<FittedStep>& steps) {
    std::vector<Phrase> notes;
    for (const FittedStep& step : steps) {
        const std::string_view name = wait_name(step.kind);
        if (!step.usual_minutes || name.empty()) {
            continue;
        }
        const std::int64_t longer = step.minutes.likely - step.usual_minutes->likely;
        if (longer != 0) {
            notes.push_back(phrase(
                fmt::format("From your bakes: {} takes {}.", name, difference_words(longer))));
        }
    }
    return notes;
}

CelsiusDifference learned_offset(const OvenOffset& oven) {
    return CelsiusDifference(5.0 * std::round(oven.likely.count() / 5.0));
}

Kitchen kitchen_as_learned(Kitchen kitchen) {
    const OvenOffset& oven = kitchen.factors.oven;
    if (oven.measured > 0 && kitchen.oven.offset == CelsiusDifference(0.0)) {
        kitchen.oven.offset = learned_offset(oven);
    }
    return kitchen;
}

} // namespace loafwright::fitting
