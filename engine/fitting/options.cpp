// SPDX-License-Identifier: Apache-2.0
//
// Every option is the same rise made otherwise. The rise is what the wait makes along the dough's
// own temperature (dough/progress.hpp); a spot or a fridge is another temperature along which to
// make it, another dose is another time for it at the place (dough/yeast.hpp), carried back to the
// same cooling or warming dough. A night is taken with the likely fridge; its ends are how long one
// may leave the dough, not how sure we are.
#include "engine/fitting/options.hpp"

#include "engine/dough/bands.hpp"
#include "engine/dough/curve.hpp"
#include "engine/dough/lump.hpp"
#include "engine/dough/progress.hpp"
#include "engine/dough/temperature_history.hpp"
#include "engine/dough/window.hpp"
#include "engine/fitting/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace loafwright::fitting {

namespace {

using dough::BakersPercent;
using dough::Curve;
using dough::TemperatureHistory;

constexpr std::int64_t least_difference = 5;
constexpr Minutes least_choice{60.0};
// From here on butter runs out of a dough (common practice: it melts from 30 to 35 °C).
constexpr Celsius butter_runs{30.0};
// How far the shelf of a dough may be from the kitchen's figure: as wide as an unmeasured fridge,
// because nobody says whether it was measured.
constexpr CelsiusDifference colder_shelf =
    dough::unmeasured_fridge.likely - dough::unmeasured_fridge.low;
constexpr CelsiusDifference warmer_shelf =
    dough::unmeasured_fridge.high - dough::unmeasured_fridge.likely;

/// The wait with what follows from it.
struct Wait {
    const Rising& rising;
    Curve curve;
    TemperatureHistory here;
    Band<std::int64_t> told;
};

bool makes_gas(StepKind kind) {
    return kind == StepKind::rise || kind == StepKind::prove || kind == StepKind::ferment;
}

std::int64_t at_least_one(Minutes minutes) {
    return std::max<std::int64_t>(1, whole_minutes(minutes));
}

Wait wait_of(const Rising& rising) {
    const std::int64_t low = at_least_one(rising.minutes.low);
    const std::int64_t likely = std::max(low, at_least_one(rising.minutes.likely));
    const std::int64_t high = std::max(likely, at_least_one(rising.minutes.high));
    return {rising,
            rising.leaven ? Curve::leaven_yeast : Curve::gas,
            dough::in_one_place(rising.dough, rising.stands, rising.time_constant),
            {low, likely, high}};
}

Minutes minutes_of(std::int64_t minutes) {
    return Minutes(static_cast<double>(minutes));
}

/// The told band led through `through`, which gives a band for one stated time: the band's own
/// width and that of the way, joined.
template <typename Through>
std::optional<Band<Minutes>> led(const Band<std::int64_t>& told, const Through& through) {
    const auto low = through(minutes_of(told.low));
    const auto likely = through(minutes_of(told.likely));
    const auto high = through(minutes_of(told.high));
    if (!low || !likely || !high) {
        return std::nullopt;
    }
    const double middle = likely->likely.count();
    const Band<double> out = dough::joined({{low->likely.count(), middle, high->likely.count()},
                                            {likely->low.count(), middle, likely->high.count()}});
    return Band<Minutes>{Minutes(out.low), Minutes(out.likely), Minutes(out.high)};
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
    if (!kitchen.warm_spot || !(*kitchen.warm_spot > rising.stands) ||
        *kitchen.warm_spot > (rising.leaven ? warmest_spot_for_leaven : warmest_spot)) {
        return std::nullopt;
    }
    const Celsius spot = *kitchen.warm_spot;
    const TemperatureHistory there = dough::in_one_place(rising.dough, spot, rising.time_constant);
    const auto minutes = led(wait.told, [&](Minutes stated) {
        return dough::transferred(stated, wait.here, there, wait.curve);
    });
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

/// Baker's yeast whose dose can be changed.
std::optional<YeastInDough> doseable(const Rising& rising) {
    if (rising.leaven || !rising.yeast || !(rising.yeast->grams > Grams(0.0)) ||
        !(rising.yeast->flour > Grams(0.0))) {
        return std::nullopt;
    }
    return rising.yeast;
}

/// The dose belongs to the whole dough, so the other rise is named with it.
std::string dose_change(const Rising& rising, const YeastInDough& yeast, Grams weighed) {
    const bool less = weighed < yeast.grams;
    const char* others = rising.kind == StepKind::rise    ? "the prove takes"
                         : rising.kind == StepKind::prove ? "the first rise takes"
                                                          : "the rises after it take";
    return fmt::format(
        "{}; {} {} too", dose_text(yeast, weighed), others, less ? "longer" : "less time");
}

/// The rise as minutes at the place, as if the dough had the place's temperature all along.
std::optional<Minutes> at_the_place(const Wait& wait, Minutes stated) {
    return dough::minutes_at(wait.rising.stands,
                             dough::progress(wait.here, Minutes(0.0), stated, wait.curve),
                             wait.curve);
}

/// The time from the start that so many minutes at the place take.
std::optional<Minutes>
along(const TemperatureHistory& history, const Wait& wait, Minutes at_the_place) {
    const dough::Progress wanted(at_the_place.count() *
                                 dough::rate_of(wait.curve, wait.rising.stands));
    return dough::time_until(history, wanted, Minutes(0.0), wait.curve);
}

std::optional<WaitOption> with_yeast(const Wait& wait, OptionKind kind, double factor) {
    const auto yeast = doseable(wait.rising);
    if (!yeast || wait.rising.place == Place::fridge) {
        return std::nullopt;
    }
    const Grams weighed = as_weighed(yeast->grams * factor);
    const BakersPercent told_dose = fresh_dose(*yeast, yeast->grams);
    const BakersPercent dose = fresh_dose(*yeast, weighed);
    const bool less = kind == OptionKind::less_yeast;
    if (!within_limits(dose) || (less ? weighed >= yeast->grams : weighed <= yeast->grams)) {
        return std::nullopt;
    }
    const auto minutes = led(wait.told, [&](Minutes stated) -> std::optional<Band<Minutes>> {
        const auto told = at_the_place(wait, stated);
        const auto then =
            told ? dough::rise_with_dose(*told, told_dose, dose, wait.rising.stands) : std::nullopt;
        if (!then) {
            return std::nullopt;
        }
        const auto low = along(wait.here, wait, then->low);
        const auto likely = along(wait.here, wait, then->likely);
        const auto high = along(wait.here, wait, then->high);
        if (!low || !likely || !high) {
            return std::nullopt;
        }
        return Band<Minutes>{*low, *likely, *high};
    });
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

// ---- a night in the fridge

dough::DoughFamily forgiving_like(const Rising& rising) {
    if (rising.family == DoughFamily::wholegrain) {
        return dough::DoughFamily::wholemeal_or_rye;
    }
    if (rising.leaven || rising.family == DoughFamily::sourdough) {
        return dough::DoughFamily::sourdough_wheat;
    }
    return rising.family == DoughFamily::enriched ? dough::DoughFamily::enriched
                                                  : dough::DoughFamily::lean;
}

/// Until when a dough that is ready at `ready` may be left, at most `latest`: each minute uses up
/// that minute's share of the window at the dough's own temperature. What still works is in that
/// window too, so a first rise may come to twice its gas; the knock-back sets it right.
Minutes keeps_until(const Rising& rising,
                    const TemperatureHistory& history,
                    Minutes ready,
                    Minutes latest) {
    const dough::DoughFamily family = forgiving_like(rising);
    const dough::Rise rise =
        rising.kind == StepKind::rise ? dough::Rise::first_rise : dough::Rise::final_prove;
    const Minutes stride(5.0);
    double used = 0.0;
    Minutes until = ready;
    while (until + stride <= latest) {
        const auto window =
            dough::usable_window(family, rise, dough::dough_at(history, until + stride / 2.0));
        used += window ? stride / window->likely : 1.0;
        if (used > 1.0) {
            break;
        }
        until += stride;
    }
    return until;
}

/// A cold night, perhaps after some time where the dough stands.
struct Night {
    Minutes start;
    TemperatureHistory history;
};

Night night_after(const Wait& wait, const Kitchen& kitchen, Minutes start) {
    const Rising& rising = wait.rising;
    const Minutes in_the_cold = dough::time_constant({rising.mass, 0.0, dough::still_air}).likely;
    Night night{start, {rising.dough, {}}};
    if (start > Minutes(0.0)) {
        night.history.stays.push_back({start, rising.stands, rising.stands, rising.time_constant});
    }
    night.history.stays.push_back({Minutes(0.0), kitchen.fridge, kitchen.fridge, in_the_cold});
    return night;
}

/// When a night with so much to rise, in minutes at the place, can end.
///
/// Errors:   nothing where it is not made by the longest night, or does not keep for a night.
std::optional<Band<std::int64_t>> ends_of(const Wait& wait, const Night& night, Minutes rise) {
    const Minutes latest = night.start + longest_night;
    const auto ready = along(night.history, wait, rise);
    const auto nearly = along(night.history, wait, rise * nearly_risen);
    if (!ready || !nearly || *ready > latest) {
        return std::nullopt;
    }
    const Minutes first = std::max(*nearly, night.start + shortest_night);
    Minutes last = keeps_until(wait.rising, night.history, *ready, latest);
    if (wait.rising.kind == StepKind::prove) {
        last = std::min(last, along(night.history, wait, rise * over_proved).value_or(last));
    }
    const std::int64_t low = next_five(first);
    const std::int64_t high = 5 * (whole_minutes(last) / 5);
    if (high - low < whole_minutes(least_choice)) {
        return std::nullopt;
    }
    return Band<std::int64_t>{
        low, std::clamp(nearest_five(night.start + usual_night), low, high), high};
}

/// How long the dough must stand first, so that a usual night makes the rest of its rise.
Minutes start_needed(const Wait& wait, const Kitchen& kitchen, Minutes rise) {
    const double wanted = rise.count() * dough::rate_of(wait.curve, wait.rising.stands);
    double least = 0.0;
    double most = static_cast<double>(wait.told.likely);
    for (int halving = 0; halving < 40; ++halving) {
        const Minutes middle((least + most) / 2.0);
        const double made = dough::progress(night_after(wait, kitchen, middle).history,
                                            Minutes(0.0),
                                            middle + usual_night,
                                            wait.curve)
                                .count();
        (made < wanted ? least : most) = middle.count();
    }
    return minutes_of(nearest_five(Minutes(most)));
}

/// The dose with which a usual night makes the rise: its width is that of the model and of what
/// the night is worth.
std::optional<Band<BakersPercent>>
dose_of_night(const Wait& wait, const Kitchen& kitchen, Minutes rise, BakersPercent told) {
    const Rising& rising = wait.rising;
    const dough::Chilling chilling{
        rising.dough,
        {kitchen.fridge - colder_shelf, kitchen.fridge, kitchen.fridge + warmer_shelf},
        dough::time_constant({rising.mass, 0.0, dough::still_air})};
    const auto worth = dough::worth_of_chilling(chilling, usual_night, rising.stands, wait.curve);
    if (!worth) {
        return std::nullopt;
    }
    const auto dose = [&](Minutes night) {
        return dough::dose_for(night, rising.stands, rise, told, rising.stands);
    };
    const auto likely = dose(worth->likely);
    if (!likely) {
        return std::nullopt;
    }
    const auto most = dose(worth->low);
    const auto least = dose(worth->high);
    const double middle = likely->likely.count();
    const Band<double> joined = dough::joined({{likely->low.count(), middle, likely->high.count()},
                                               {(least ? least->likely : dough::least_dose).count(),
                                                middle,
                                                (most ? most->likely : dough::most_dose).count()}});
    return Band<BakersPercent>{std::max(dough::least_dose, BakersPercent(joined.low)),
                               BakersPercent(joined.likely),
                               std::min(dough::most_dose, BakersPercent(joined.high))};
}

std::string effect_of_night(const Rising& rising) {
    if (rising.leaven) {
        return rising.kind == StepKind::prove ? "keeps its shape better, more sour"
                                              : "firmer to shape, more sour";
    }
    return rising.kind == StepKind::prove ? "keeps its shape better, more flavour"
                                          : "firmer to shape, more flavour";
}

/// Leaven: a part of the rise where the dough stands, the rest in the night.
std::optional<WaitOption>
night_after_a_start(const Wait& wait, const Kitchen& kitchen, Minutes rise, WaitOption option) {
    const Minutes start = start_needed(wait, kitchen, rise);
    const auto ends = ends_of(wait, night_after(wait, kitchen, start), rise);
    // A start as long as the whole wait leaves the night nothing to do.
    if (!ends || start >= minutes_of(wait.told.likely)) {
        return std::nullopt;
    }
    option.minutes = *ends;
    option.change = fmt::format("{} where it stands first, then the fridge",
                                duration_text(whole_minutes(start)));
    return option;
}

/// Baker's yeast: the dose that the night needs.
std::optional<WaitOption>
night_with_its_dose(const Wait& wait, const Kitchen& kitchen, Minutes rise, WaitOption option) {
    const auto yeast = doseable(wait.rising);
    if (!yeast) {
        return std::nullopt;
    }
    const BakersPercent told = fresh_dose(*yeast, yeast->grams);
    const auto wanted = dose_of_night(wait, kitchen, rise, told);
    if (!wanted) {
        return std::nullopt;
    }
    const auto grams = [&](BakersPercent dose) { return as_weighed(grams_of(*yeast, dose)); };
    const Band<Grams> weighed{grams(wanted->low), grams(wanted->likely), grams(wanted->high)};
    const BakersPercent dose = fresh_dose(*yeast, weighed.likely);
    if (!within_limits(dose) || weighed.likely == yeast->grams) {
        return std::nullopt;
    }
    const auto then = dough::rise_with_dose(rise, told, dose, wait.rising.stands);
    const auto ends =
        then ? ends_of(wait, night_after(wait, kitchen, Minutes(0.0)), then->likely) : std::nullopt;
    if (!ends) {
        return std::nullopt;
    }
    option.minutes = *ends;
    option.change = dose_change(wait.rising, *yeast, weighed.likely);
    option.yeast = weighed;
    return option;
}

std::optional<WaitOption> in_fridge(const Wait& wait, const Kitchen& kitchen) {
    const Rising& rising = wait.rising;
    if ((rising.kind != StepKind::rise && rising.kind != StepKind::prove) ||
        rising.place == Place::fridge || !(kitchen.fridge < rising.stands) ||
        !(rising.mass > Grams(0.0))) {
        return std::nullopt;
    }
    const auto rise = at_the_place(wait, minutes_of(wait.told.likely));
    if (!rise) {
        return std::nullopt;
    }
    WaitOption option;
    option.kind = OptionKind::fridge;
    option.place = Place::fridge;
    option.effect = effect_of_night(rising);
    const Night night = night_after(wait, kitchen, Minutes(0.0));
    if (const auto ends = ends_of(wait, night, *rise)) {
        option.minutes = *ends;
        return option;
    }
    return rising.leaven ? night_after_a_start(wait, kitchen, *rise, std::move(option))
                         : night_with_its_dose(wait, kitchen, *rise, std::move(option));
}

} // namespace

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
                               in_fridge(wait, kitchen),
                               with_yeast(wait, OptionKind::less_yeast, 0.5),
                               with_yeast(wait, OptionKind::more_yeast, 1.5)}) {
        if (option) {
            options.push_back(*option);
        }
    }
    return options;
}

} // namespace loafwright::fitting
