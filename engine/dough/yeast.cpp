// SPDX-License-Identifier: Apache-2.0
//
// Dose of yeast. Gas close to dose times time holds for 1 to 3 % fresh and up to three hours; with
// less the yeast multiplies meanwhile. Two counts after Pyler (0.5 % gains 88 % in six hours, 2 %
// gains 29 %, both read second-hand) are the same gain on the flour, 0.44 to 0.58 %, so growth is
// taken as a constant per hour and not as a doubling: G = N0 e + k e^2 / 2. The Manual for Army
// Bakers of 1916 prints 5 hours for a sponge and 8 with half the yeast; this gives 7.75. Food and
// room in the dough are not limited here, so very long rises of much yeast come out too quick.
#include "engine/dough/yeast.hpp"

#include "engine/dough/bands.hpp"
#include "engine/dough/fermentation.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loafwright::dough {

namespace {

constexpr double minutes_an_hour = 60.0;
constexpr Celsius reference{27.0};

// Assumed: with less yeast from the one printed half dose (7.5 to 7.9 h against 8), with more from
// a strain whose gas in two hours grew by 1.5 where the dose grew by 1.79 (Appl. Environ.
// Microbiol., a study of deoxyglucose-resistant baker's yeasts, table 3, read; the model
// says 1.76).
constexpr double doubt_with_less = 0.15;
constexpr double doubt_with_more = 0.30;

Band<double> model_doubt(double ratio) {
    const double width =
        (ratio < 1.0 ? doubt_with_less : doubt_with_more) * std::abs(std::log(ratio));
    return {std::exp(-width), 1.0, std::exp(width)};
}

/// The dose that makes this gas in this time, as low as the growth alone leaves.
double dose_making(double gas, double hours, double gained) {
    return gas / hours - gained * hours / 2.0;
}

} // namespace

Band<double> grams_for_one_fresh(YeastForm form) {
    switch (form) {
    case YeastForm::fresh:
        return exactly(1.0);
    case YeastForm::active_dry:
        return {0.375, 0.40, 0.50};
    case YeastForm::instant:
        return {0.33, 0.33, 0.40};
    }
    return exactly(1.0);
}

Band<Grams> converted(Grams amount, YeastForm from, YeastForm to) {
    if (from == to) {
        return exactly(amount);
    }
    const Band<double> out_of = grams_for_one_fresh(from);
    return scaled(exactly(amount),
                  {Band<double>{1.0 / out_of.high, 1.0 / out_of.likely, 1.0 / out_of.low},
                   grams_for_one_fresh(to)});
}

PercentHours gas_made(BakersPercent fresh_dose, Minutes at_27, PerHour gained) {
    const double e = at_27.count() / minutes_an_hour;
    return PercentHours(fresh_dose.count() * e + gained.count() * e * e / 2.0);
}

Minutes time_at_27(BakersPercent fresh_dose, PercentHours gas, PerHour gained) {
    const double n = fresh_dose.count();
    const double g = gas.count();
    // The root of k e^2 / 2 + N e - G = 0 in the form that does not cancel.
    const double root = n + std::sqrt(n * n + 2.0 * gained.count() * g);
    return Minutes(root > 0.0 ? minutes_an_hour * 2.0 * g / root : 0.0);
}

Minutes worth_at_27(Minutes time, Celsius dough) {
    return time * (relative_rate(dough) / relative_rate(reference));
}

std::optional<Minutes> from_27(Minutes at_27, Celsius dough) {
    const double rate = relative_rate(dough);
    return rate > 0.0 ? std::optional(at_27 * (relative_rate(reference) / rate)) : std::nullopt;
}

std::optional<Band<Minutes>>
rise_with_dose(Minutes stated, BakersPercent stated_dose, BakersPercent dose, Celsius dough) {
    if (relative_rate(dough) <= 0.0 || !(stated_dose > BakersPercent(0.0)) ||
        !(dose > BakersPercent(0.0))) {
        return std::nullopt;
    }
    if (dose == stated_dose || stated <= Minutes(0.0)) {
        return exactly(stated);
    }
    const Minutes there = worth_at_27(stated, dough);
    const auto with = [&](PerHour gained) {
        const Minutes time = time_at_27(dose, gas_made(stated_dose, there, gained), gained);
        return (stated * (time / there)).count();
    };
    const double likely = with(yeast_gained.likely);
    const Band<double> growth{with(yeast_gained.low), likely, with(yeast_gained.high)};
    const Band<double> doubt = model_doubt(dose / stated_dose);
    const Band<double> time = joined({growth, {likely * doubt.low, likely, likely * doubt.high}});
    return Band<Minutes>{Minutes(time.low), Minutes(time.likely), Minutes(time.high)};
}

tl::expected<Band<BakersPercent>, NoDose> dose_for(Minutes wanted,
                                                   Celsius wanted_at,
                                                   Minutes stated,
                                                   BakersPercent stated_dose,
                                                   Celsius stated_at) {
    const double hours = worth_at_27(wanted, wanted_at).count() / minutes_an_hour;
    const Minutes there = worth_at_27(stated, stated_at);
    if (!(hours > 0.0) || !(there > Minutes(0.0))) {
        return tl::unexpected(NoDose::yeast_is_still);
    }
    const auto with = [&](PerHour gained) {
        return dose_making(gas_made(stated_dose, there, gained).count(), hours, gained.count());
    };
    const double likely = with(yeast_gained.likely);
    if (likely < least_dose.count()) {
        return tl::unexpected(NoDose::even_the_least_is_too_quick);
    }
    if (likely > most_dose.count()) {
        return tl::unexpected(NoDose::even_the_most_is_too_slow);
    }
    const auto kept = [](double dose) {
        return BakersPercent(std::clamp(dose, least_dose.count(), most_dose.count()));
    };
    const Band<double> growth{std::max(with(yeast_gained.low), least_dose.count()),
                              likely,
                              std::max(with(yeast_gained.high), least_dose.count())};
    const Band<double> doubt = model_doubt(likely / stated_dose.count());
    // A time uncertain by u of the transfer is a dose uncertain by as much, the other way round.
    const double off = wanted_at == stated_at ? 0.0 : transfer_uncertainty(stated_at, wanted_at);
    const Band<double> dose = joined({growth,
                                      {likely * doubt.low, likely, likely * doubt.high},
                                      {likely * (1.0 - off), likely, likely * (1.0 + off)}});
    return Band<BakersPercent>{kept(dose.low), kept(dose.likely), kept(dose.high)};
}

Band<double> gas_needed(double pressure_ratio) {
    const double half = (1.0 + pressure_ratio) / 2.0;
    const double square = pressure_ratio * pressure_ratio;
    return {std::min(half, square), pressure_ratio, std::max(half, square)};
}

} // namespace loafwright::dough
