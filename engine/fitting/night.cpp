// SPDX-License-Identifier: Apache-2.0
//
// A night is taken with the likely fridge; its ends are how long one may leave the dough, not how
// sure we are.
#include "engine/fitting/night.hpp"

#include "engine/dough/bands.hpp"
#include "engine/dough/lump.hpp"
#include "engine/dough/progress.hpp"
#include "engine/dough/window.hpp"
#include "engine/fitting/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace loafwright::fitting {

namespace {

using dough::BakersPercent;
using dough::TemperatureHistory;

constexpr Minutes least_choice{60.0};
// How far the shelf of a dough may be from the kitchen's figure: as wide as an unmeasured fridge,
// because nobody says whether it was measured.
constexpr CelsiusDifference colder_shelf =
    dough::unmeasured_fridge.likely - dough::unmeasured_fridge.low;
constexpr CelsiusDifference warmer_shelf =
    dough::unmeasured_fridge.high - dough::unmeasured_fridge.likely;

Minutes minutes_of(std::int64_t minutes) {
    return Minutes(static_cast<double>(minutes));
}

std::int64_t told_likely(const Rising& rising) {
    return std::max<std::int64_t>(1, whole_minutes(rising.minutes.likely));
}

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

Night night_after(const Rising& rising, const Kitchen& kitchen, Minutes start) {
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
std::optional<Band<std::int64_t>> ends_of(const Rising& rising, const Night& night, Minutes rise) {
    const Minutes latest = night.start + longest_night;
    const auto ready = along(night.history, rising, rise);
    const auto nearly = along(night.history, rising, rise * nearly_risen);
    if (!ready || !nearly || *ready > latest) {
        return std::nullopt;
    }
    const Minutes first = std::max(*nearly, night.start + shortest_night);
    Minutes last = keeps_until(rising, night.history, *ready, latest);
    if (rising.kind == StepKind::prove) {
        last = std::min(last, along(night.history, rising, rise * over_proved).value_or(last));
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
Minutes start_needed(const Rising& rising, const Kitchen& kitchen, Minutes rise) {
    const double wanted = rise.count() * dough::rate_of(curve_of(rising), rising.stands);
    double least = 0.0;
    double most = static_cast<double>(told_likely(rising));
    for (int halving = 0; halving < 40; ++halving) {
        const Minutes middle((least + most) / 2.0);
        const double made = dough::progress(night_after(rising, kitchen, middle).history,
                                            Minutes(0.0),
                                            middle + usual_night,
                                            curve_of(rising))
                                .count();
        (made < wanted ? least : most) = middle.count();
    }
    return minutes_of(nearest_five(Minutes(most)));
}

/// The dose with which a usual night makes the rise: its width is that of the model and of what
/// the night is worth.
std::optional<Band<BakersPercent>>
dose_of_night(const Rising& rising, const Kitchen& kitchen, Minutes rise, BakersPercent told) {
    const dough::Chilling chilling{
        rising.dough,
        {kitchen.fridge - colder_shelf, kitchen.fridge, kitchen.fridge + warmer_shelf},
        dough::time_constant({rising.mass, 0.0, dough::still_air})};
    const auto worth =
        dough::worth_of_chilling(chilling, usual_night, rising.stands, curve_of(rising));
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
night_after_a_start(const Rising& rising, const Kitchen& kitchen, Minutes rise, WaitOption option) {
    const Minutes start = start_needed(rising, kitchen, rise);
    const auto ends = ends_of(rising, night_after(rising, kitchen, start), rise);
    // A start as long as the whole wait leaves the night nothing to do.
    if (!ends || start >= minutes_of(told_likely(rising))) {
        return std::nullopt;
    }
    option.minutes = *ends;
    option.change = fmt::format("{} where it stands first, then the fridge",
                                duration_text(whole_minutes(start)));
    return option;
}

/// Baker's yeast: the dose that the night needs.
std::optional<WaitOption>
night_with_its_dose(const Rising& rising, const Kitchen& kitchen, Minutes rise, WaitOption option) {
    const auto yeast = doseable(rising);
    if (!yeast) {
        return std::nullopt;
    }
    const BakersPercent told = fresh_dose(*yeast, yeast->grams);
    const auto wanted = dose_of_night(rising, kitchen, rise, told);
    if (!wanted) {
        return std::nullopt;
    }
    const auto grams = [&](BakersPercent dose) { return as_weighed(grams_of(*yeast, dose)); };
    const Band<Grams> weighed{grams(wanted->low), grams(wanted->likely), grams(wanted->high)};
    const BakersPercent dose = fresh_dose(*yeast, weighed.likely);
    if (!within_limits(dose) || weighed.likely == yeast->grams) {
        return std::nullopt;
    }
    const auto then = dough::rise_with_dose(rise, told, dose, rising.stands);
    const auto ends =
        then ? ends_of(rising, night_after(rising, kitchen, Minutes(0.0)), then->likely)
             : std::nullopt;
    if (!ends) {
        return std::nullopt;
    }
    option.minutes = *ends;
    option.change = dose_change(rising, *yeast, weighed.likely);
    option.yeast = weighed;
    return option;
}

} // namespace

std::optional<WaitOption> night_in_fridge(const Rising& rising, const Kitchen& kitchen) {
    if ((rising.kind != StepKind::rise && rising.kind != StepKind::prove) ||
        rising.place == Place::fridge || !(kitchen.fridge < rising.stands) ||
        !(rising.mass > Grams(0.0))) {
        return std::nullopt;
    }
    const auto rise = at_the_place(rising, minutes_of(told_likely(rising)));
    if (!rise) {
        return std::nullopt;
    }
    WaitOption option;
    option.kind = OptionKind::fridge;
    option.place = Place::fridge;
    option.effect = effect_of_night(rising);
    const Night night = night_after(rising, kitchen, Minutes(0.0));
    if (const auto ends = ends_of(rising, night, *rise)) {
        option.minutes = *ends;
        return option;
    }
    return rising.leaven ? night_after_a_start(rising, kitchen, *rise, std::move(option))
                         : night_with_its_dose(rising, kitchen, *rise, std::move(option));
}

std::optional<WaitOption> night_where_it_stands(const Rising& rising) {
    const auto yeast = doseable(rising);
    const auto rise = at_the_place(rising, minutes_of(told_likely(rising)));
    const auto wanted = at_the_place(rising, night_at_the_place);
    if (!yeast || !rise || !wanted || rising.kind != StepKind::rise ||
        rising.place == Place::fridge || *rise >= *wanted) {
        return std::nullopt;
    }
    const BakersPercent told = fresh_dose(*yeast, yeast->grams);
    const auto needed = dough::dose_for(*wanted, rising.stands, *rise, told, rising.stands);
    if (!needed) {
        return std::nullopt;
    }
    const auto grams = [&](BakersPercent dose) { return as_weighed(grams_of(*yeast, dose)); };
    const Grams weighed = grams(needed->likely);
    const BakersPercent dose = fresh_dose(*yeast, weighed);
    const auto after = [&](double share) -> std::optional<Minutes> {
        const auto then = dough::rise_with_dose(*rise * share, told, dose, rising.stands);
        return then ? along(history_of(rising), rising, then->likely) : std::nullopt;
    };
    const auto first = after(nearly_risen);
    const auto likely = after(1.0);
    const auto last = after(over_proved);
    if (!within_limits(dose) || weighed >= yeast->grams || !first || !likely || !last) {
        return std::nullopt;
    }
    WaitOption option;
    option.kind = OptionKind::less_yeast;
    option.place = rising.place;
    const std::int64_t low = next_five(*first);
    const std::int64_t high = 5 * (whole_minutes(*last) / 5);
    if (high - low < whole_minutes(least_choice)) {
        return std::nullopt;
    }
    option.minutes = {low, std::clamp(nearest_five(*likely), low, high), high};
    option.effect = "slow, more flavour";
    option.change = dose_change(rising, *yeast, weighed);
    option.yeast = Band<Grams>{grams(needed->low), weighed, grams(needed->high)};
    return option;
}

dough::TemperatureHistory fridge_history(const Rising& rising, const Kitchen& kitchen) {
    return night_after(rising, kitchen, Minutes(0.0)).history;
}

} // namespace loafwright::fitting
