// SPDX-License-Identifier: Apache-2.0
//
// With the place at P + s t, u = T - P solves u' = -u / tau + s' in closed form:
//
//   T(t) = P + s (t - tau) + (T0 - P + s tau) exp(-t / tau).
#include "engine/dough/temperature_history.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::dough {

TemperatureHistory steady(Celsius dough) {
    return {dough, {}};
}

TemperatureHistory in_one_place(Celsius dough, Celsius place, Minutes time_constant) {
    return {dough, {Stay{Minutes(0.0), place, place, time_constant}}};
}

TemperatureHistory in_a_changing_room(Celsius dough,
                                      const std::vector<Celsius>& readings,
                                      Minutes apart,
                                      Minutes time_constant) {
    TemperatureHistory history{dough, {}};
    for (std::size_t i = 0; i + 1 < readings.size(); ++i) {
        history.stays.push_back({apart, readings[i], readings[i + 1], time_constant});
    }
    history.stays.push_back({Minutes(0.0), readings.back(), readings.back(), time_constant});
    return history;
}

Celsius dough_within(const Stay& stay, Celsius start, Minutes after) {
    const double t = std::max(0.0, after.count());
    const double tau = stay.time_constant.count();
    // Beyond its end, and in a stay of no length, the place is as it was last.
    if (t > stay.lasts.count()) {
        const Celsius at_end =
            stay.lasts > Minutes(0.0) ? dough_within(stay, start, stay.lasts) : start;
        const double left = tau > 0.0 ? std::exp(-(t - stay.lasts.count()) / tau) : 0.0;
        return stay.place_last + (at_end - stay.place_last) * left;
    }
    if (stay.lasts <= Minutes(0.0)) {
        return start;
    }
    const double slope = (stay.place_last - stay.place_first).count() / stay.lasts.count();
    if (tau <= 0.0) {
        return stay.place_first + CelsiusDifference(slope * t);
    }
    const double distance = (start - stay.place_first).count() + slope * tau;
    return stay.place_first + CelsiusDifference(slope * (t - tau) + distance * std::exp(-t / tau));
}

Celsius dough_at(const TemperatureHistory& history, Minutes at) {
    Celsius dough = history.start;
    Minutes left = std::max(Minutes(0.0), at);
    for (std::size_t i = 0; i < history.stays.size(); ++i) {
        const Stay& stay = history.stays[i];
        const bool last = i + 1 == history.stays.size();
        if (last || left < stay.lasts) {
            return dough_within(stay, dough, left);
        }
        dough = dough_within(stay, dough, stay.lasts);
        left = left - stay.lasts;
    }
    return dough;
}

} // namespace loafwright::dough
