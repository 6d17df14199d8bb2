// SPDX-License-Identifier: Apache-2.0
//
// Instants become minutes elapsed since an origin, so a night in which the clocks change is an hour
// longer or shorter on paper and not in the dough.
#include "engine/planning/frame.hpp"

#include <algorithm>

namespace loafwright::planning {

namespace {

constexpr std::int64_t mark_seconds = 300;
constexpr std::int64_t day_minutes = 1440;

schedule::WindowState state_of(Presence presence) {
    switch (presence) {
    case Presence::away:
        return schedule::WindowState::away;
    case Presence::asleep:
        return schedule::WindowState::asleep;
    case Presence::busy:
        return schedule::WindowState::busy;
    }
    return schedule::WindowState::busy;
}

} // namespace

std::int64_t floor_mark(Instant origin, Instant moment) {
    const std::int64_t seconds = moment.seconds - origin.seconds;
    const std::int64_t marks = seconds / mark_seconds - (seconds % mark_seconds < 0 ? 1 : 0);
    return marks * 5;
}

std::int64_t ceil_mark(Instant origin, Instant moment) {
    const std::int64_t floor = floor_mark(origin, moment);
    return later_by_minutes(origin, floor) == moment ? floor : floor + 5;
}

Instant full_five_before(const Zone& zone, Instant moment) {
    const CivilTime civil = civil_of(zone, moment);
    return Instant{moment.seconds - (civil.clock.minute % 5) * 60 - civil.second};
}

std::vector<std::pair<Instant, Instant>> nights_of(const Zone& zone, const Frame& frame) {
    std::vector<std::pair<Instant, Instant>> nights;
    const std::int64_t first = days_from_civil(civil_of(zone, frame.origin).date) - 1;
    const std::int64_t last = days_from_civil(civil_of(zone, frame.at(frame.horizon)).date);
    for (std::int64_t day = first; day <= last; ++day) {
        const auto from = instant_of(zone, {civil_from_days(day), night_from, 0});
        const auto to = instant_of(zone, {civil_from_days(day + 1), night_to, 0});
        if (from && to) {
            nights.emplace_back(*from, *to);
        }
    }
    return nights;
}

std::vector<schedule::Person> people_of(const Day& day, const Rules& rules, const Frame& frame) {
    std::vector<schedule::Person> people;
    for (const std::string& name : day.people) {
        people.push_back({name, {}});
    }
    if (people.empty()) {
        people.push_back({"you", {}});
    }
    const auto add =
        [&](schedule::Person& person, Instant from, Instant to, schedule::WindowState state) {
            const std::int64_t first = std::max<std::int64_t>(0, floor_mark(frame.origin, from));
            const std::int64_t last = std::min(frame.horizon, ceil_mark(frame.origin, to));
            if (from < to && first < last) {
                person.windows.push_back({first, last, state});
            }
        };
    if (rules.people) {
        for (const PresenceWindow& window : day.windows) {
            if (window.person < people.size()) {
                add(people[window.person], window.from, window.to, state_of(window.state));
            }
        }
    }
    if (rules.night) {
        for (const auto& [from, to] : nights_of(day.zone, frame)) {
            for (schedule::Person& person : people) {
                add(person, from, to, schedule::WindowState::asleep);
            }
        }
    }
    return people;
}

std::vector<schedule::Claim> claims_of(const Day& day, const Rules& rules, const Frame& frame) {
    std::vector<schedule::Claim> claims;
    if (!rules.claims) {
        return claims;
    }
    for (const OvenClaim& claim : day.oven_claims) {
        const std::int64_t first = floor_mark(frame.origin, claim.from);
        const std::int64_t last = ceil_mark(frame.origin, claim.to);
        if (last > 0 && first < frame.horizon && first < last) {
            claims.push_back({std::max<std::int64_t>(first, -day_minutes), last, std::nullopt});
        }
    }
    return claims;
}

} // namespace loafwright::planning
