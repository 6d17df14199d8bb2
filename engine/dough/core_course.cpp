// SPDX-License-Identifier: Apache-2.0
#include "engine/dough/core_course.hpp"

#include "engine/dough/root.hpp"

#include <algorithm>
#include <cstddef>

namespace loafwright::dough {

namespace {

double between(const CorePoint& from, const CorePoint& to, double minute) {
    const double span = (to.at - from.at).count();
    const double x = (minute - from.at.count()) / span;
    const double rest = 1.0 - x;
    return rest * rest * (1.0 + 2.0 * x) * from.core.degrees() +
           x * x * (3.0 - 2.0 * x) * to.core.degrees() +
           span * x * rest * (rest * from.kelvin_per_minute - x * to.kelvin_per_minute);
}

// The first time at which direction * (core - target) is not below zero.
std::optional<Minutes> first_across(const CoreCourse& course, Celsius target, double direction) {
    const auto over = [&](double degrees) { return direction * (degrees - target.degrees()); };
    for (std::size_t i = 0; i < course.size(); ++i) {
        if (over(course[i].core.degrees()) < 0.0) {
            continue;
        }
        if (i == 0) {
            return course[0].at;
        }
        const CorePoint& from = course[i - 1];
        const CorePoint& to = course[i];
        return Minutes(crossing([&](double minute) { return over(between(from, to, minute)); },
                                from.at.count(),
                                to.at.count(),
                                1e-9));
    }
    return std::nullopt;
}

} // namespace

Celsius core_at(const CoreCourse& course, Minutes at) {
    if (at <= course.front().at) {
        return course.front().core;
    }
    const auto to = std::lower_bound(
        course.begin(), course.end(), at, [](const CorePoint& point, Minutes time) {
            return point.at < time;
        });
    if (to == course.end()) {
        return course.back().core;
    }
    return Celsius(between(*(to - 1), *to, at.count()));
}

std::optional<Minutes> first_at_or_above(const CoreCourse& course, Celsius target) {
    return first_across(course, target, 1.0);
}

std::optional<Minutes> first_at_or_below(const CoreCourse& course, Celsius target) {
    return first_across(course, target, -1.0);
}

} // namespace loafwright::dough
