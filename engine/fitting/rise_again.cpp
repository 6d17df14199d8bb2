// SPDX-License-Identifier: Apache-2.0
//
// A rise is an amount of gas. Another dose makes it in another time at the place; a place or a
// start of another temperature is another way along which to make it. Both are carried over from
// the told minutes, which know the dough.
#include "engine/fitting/rise_again.hpp"

#include "engine/dough/bands.hpp"
#include "engine/dough/progress.hpp"

namespace loafwright::fitting {

namespace {

std::optional<Band<Minutes>> once_again(const Rising& rising,
                                        const OtherRise& other,
                                        const dough::TemperatureHistory& then,
                                        Minutes stated) {
    if (!other.dose) {
        return dough::transferred(stated, history_of(rising), then, curve_of(rising));
    }
    const auto told = at_the_place(rising, stated);
    const auto dosed =
        told ? dough::rise_with_dose(*told, other.dose->told, other.dose->now, rising.stands)
             : std::nullopt;
    if (!dosed) {
        return std::nullopt;
    }
    const auto low = along(then, rising, dosed->low);
    const auto likely = along(then, rising, dosed->likely);
    const auto high = along(then, rising, dosed->high);
    if (!low || !likely || !high) {
        return std::nullopt;
    }
    return Band<Minutes>{*low, *likely, *high};
}

} // namespace

dough::Curve curve_of(const Rising& rising) {
    return rising.leaven ? dough::Curve::leaven_yeast : dough::Curve::gas;
}

dough::TemperatureHistory history_of(const Rising& rising) {
    return dough::in_one_place(rising.dough, rising.stands, rising.time_constant);
}

std::optional<YeastInDough> doseable(const Rising& rising) {
    if (rising.leaven || !rising.yeast || !(rising.yeast->grams > Grams(0.0)) ||
        !(rising.yeast->flour > Grams(0.0))) {
        return std::nullopt;
    }
    return rising.yeast;
}

dough::BakersPercent grown_in(const dough::TemperatureHistory& history, Minutes minutes) {
    constexpr Celsius counted_at{27.0};
    const auto at_27 =
        dough::minutes_at(counted_at,
                          dough::progress(history, Minutes(0.0), minutes, dough::Curve::gas),
                          dough::Curve::gas);
    const double hours = at_27 ? at_27->count() / 60.0 : 0.0;
    return dough::BakersPercent(dough::yeast_gained.likely.count() * hours);
}

std::optional<Minutes> at_the_place(const Rising& rising, Minutes stated) {
    return dough::minutes_at(
        rising.stands,
        dough::progress(history_of(rising), Minutes(0.0), stated, curve_of(rising)),
        curve_of(rising));
}

std::optional<Minutes>
along(const dough::TemperatureHistory& history, const Rising& rising, Minutes at_the_place) {
    const dough::Progress wanted(at_the_place.count() *
                                 dough::rate_of(curve_of(rising), rising.stands));
    return dough::time_until(history, wanted, Minutes(0.0), curve_of(rising));
}

std::optional<Band<Minutes>> rise_again(const Rising& rising, const OtherRise& other) {
    const dough::TemperatureHistory then =
        dough::in_one_place(other.dough, other.stands, rising.time_constant);
    const auto low = once_again(rising, other, then, rising.minutes.low);
    const auto likely = once_again(rising, other, then, rising.minutes.likely);
    const auto high = once_again(rising, other, then, rising.minutes.high);
    if (!low || !likely || !high) {
        return std::nullopt;
    }
    const double middle = likely->likely.count();
    const Band<double> out = dough::joined({{low->likely.count(), middle, high->likely.count()},
                                            {likely->low.count(), middle, likely->high.count()}});
    return Band<Minutes>{Minutes(out.low), Minutes(out.likely), Minutes(out.high)};
}

} // namespace loafwright::fitting
