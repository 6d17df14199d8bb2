// SPDX-License-Identifier: Apache-2.0
//
// Every option is the same rise made otherwise (rise_again.hpp), or made in a night (night.hpp).
#include "engine/fitting/options.hpp"

#include "engine/fitting/night.hpp"
#include "engine/fitting/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace loafwright::fitting {

namespace {

using dough::BakersPercent;

constexpr std::int64_t least_difference = 5;
// From here on butter runs out of a dough (common practice: it melts from 30 to 35 °C).
constexpr Celsius butter_runs{30.0};
/// The wait in whole minutes, as the page has it.
struct Wait {
    Rising rising;
    Band<std::int64_t> told;
};

bool makes_gas(StepKind kind) {
    return kind == StepKind::rise || kind == StepKind::prove || kind == StepKind::ferment;
}

std::int64_t at_least_one(Minutes minutes) {
    return std::max<std::int64_t>(1, whole_minutes(minutes));
}

Minutes minutes_of(std::int64_t minutes) {
    return Minutes(static_cast<double>(minutes));
}

Wait wait_of(const Rising& rising) {
    const std::int64_t low = at_least_one(rising.minutes.low);
    const std::int64_t likely = std::max(low, at_least_one(rising.minutes.likely));
    const std::int64_t high = std::max(likely, at_least_one(rising.minutes.high));
    Wait wait{rising, {low, likely, high}};
    wait.rising.minutes = {minutes_of(low), minutes_of(likely), minutes_of(high)};
    return wait;
}

std::int64_t not_after(std::int64_t fives, std::int64_t told) {
    return std::max(least_difference, std::min(fives, told - told % 5));
}

std::int64_t not_before(std::int64_t fives, std::int64_t told) {
    return std::max(fives, next_five(minutes_of(told)));
}

/// Less time is certain where the dough is warmer or has more yeast, whatever the model's width.
std::optional<Band<std::int64_t>> quicker(const Band<Minutes>& minutes, const Wait& wait) {
    const Band<std::int64_t> out{not_after(nearest_five(minutes.low), wait.told.low),
                                 not_after(nearest_five(minutes.likely), wait.told.likely),
                                 not_after(nearest_five(minutes.high), wait.told.high)};
    return out.likely + least_difference <= wait.told.likely ? std::optional(out) : std::nullopt;
}

std::optional<Band<std::int64_t>> slower(const Band<Minutes>& minutes, const Wait& wait) {
    const Band<std::int64_t> out{not_before(nearest_five(minutes.low), wait.told.low),
                                 not_before(nearest_five(minutes.likely), wait.told.likely),
                                 not_before(nearest_five(minutes.high), wait.told.high)};
    return out.likely - least_difference >= wait.told.likely ? std::optional(out) : std::nullopt;
}

// ---- a warmer spot

std::optional<WaitOption> in_warm_spot(const Wait& wait, const Kitchen& kitchen) {
    const Rising& rising = wait.rising;
    if (!suits_warm_spot(rising, kitchen)) {
        return std::nullopt;
    }
    const Celsius spot = *kitchen.warm_spot;
    const auto minutes = rise_again(wait.rising, {rising.dough, spot, std::nullopt});
    const auto fives = minutes ? quicker(*minutes, wait) : std::nullopt;
    if (!fives) {
        return std::nullopt;
    }
    WaitOption option;
    option.kind = OptionKind::warm_spot;
    option.place = Place::warm;
    option.minutes = *fives;
    option.effect = rising.leaven ? "quicker, milder" : "quicker, a little less flavour";
    if (rising.family == DoughFamily::enriched && spot >= butter_runs) {
        option.effect = "quicker, but butter may run out of it";
    }
    option.change = fmt::format("stand it in your warm spot, {}", degrees_text(spot));
    return option;
}

// ---- another dose

std::optional<WaitOption> with_yeast(const Wait& wait, OptionKind kind, double factor) {
    const auto yeast = doseable(wait.rising);
    if (!yeast || wait.rising.place == Place::fridge) {
        return std::nullopt;
    }
    const Grams weighed = as_weighed(yeast->grams * factor);
    const BakersPercent dose = fresh_dose(*yeast, weighed);
    const bool less = kind == OptionKind::less_yeast;
    if (!within_limits(dose) || (less ? weighed >= yeast->grams : weighed <= yeast->grams)) {
        return std::nullopt;
    }
    const auto minutes = rise_again(
        wait.rising,
        {wait.rising.dough, wait.rising.stands, OtherDose{fresh_dose(*yeast, yeast->grams), dose}});
    if (!minutes) {
        return std::nullopt;
    }
    const auto fives = less ? slower(*minutes, wait) : quicker(*minutes, wait);
    if (!fives) {
        return std::nullopt;
    }
    WaitOption option;
    option.kind = kind;
    option.place = wait.rising.place;
    option.minutes = *fives;
    option.effect = less ? "slower, more flavour" : "quicker, a little yeasty";
    option.change = dose_change(wait.rising, *yeast, weighed);
    option.yeast = exactly(weighed);
    return option;
}

} // namespace

std::string dose_change(const Rising& rising, const YeastInDough& yeast, Grams weighed) {
    const bool less = weighed < yeast.grams;
    const char* others = rising.kind == StepKind::rise    ? "the prove takes"
                         : rising.kind == StepKind::prove ? "the first rise takes"
                                                          : "the rises after it take";
    return fmt::format(
        "{}; {} {} too", dose_text(yeast, weighed), others, less ? "longer" : "less time");
}

bool suits_warm_spot(const Rising& rising, const Kitchen& kitchen) {
    return kitchen.warm_spot && *kitchen.warm_spot > rising.stands &&
           *kitchen.warm_spot <= (rising.leaven ? warmest_spot_for_leaven : warmest_spot);
}

std::vector<WaitOption> options_for(const Rising& rising, const Kitchen& kitchen) {
    const Wait wait = wait_of(rising);
    WaitOption as_told;
    as_told.place = rising.place;
    as_told.minutes = wait.told;
    as_told.effect = "as the recipe means it";
    std::vector<WaitOption> options{as_told};
    if (!makes_gas(rising.kind)) {
        return options;
    }
    for (const auto& option : {in_warm_spot(wait, kitchen),
                               night_in_fridge(wait.rising, kitchen),
                               with_yeast(wait, OptionKind::less_yeast, 0.5),
                               with_yeast(wait, OptionKind::more_yeast, 1.5)}) {
        if (option) {
            options.push_back(*option);
        }
    }
    return options;
}

} // namespace loafwright::fitting
