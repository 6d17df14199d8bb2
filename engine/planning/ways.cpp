// SPDX-License-Identifier: Apache-2.0
//
// A way out is an ordinary day with another wish in it, or the same day with a bread made
// otherwise. Everything here is planned before it is told.
#include "engine/planning/ways.hpp"

#include "engine/planning/attempt.hpp"
#include "engine/planning/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace loafwright::planning {

namespace {

constexpr std::int64_t days_ahead = 3;

std::optional<Instant> days_after_today(const Day& day, Instant moment, std::int64_t days) {
    const std::int64_t today = days_from_civil(civil_of(day.zone, day.now).date);
    const auto then =
        instant_of(day.zone, {civil_from_days(today + days), civil_of(day.zone, moment).clock, 0});
    return then ? std::optional<Instant>(*then) : std::nullopt;
}

// A clock time, with its day unless that is the day of `beside`.
std::string clock_beside(const Day& day, Instant beside, Instant then) {
    const bool same_day =
        words::day(day.zone, day.now, beside) == words::day(day.zone, day.now, then);
    return same_day ? clock_text(day.zone, then) : words::clock_and_day(day.zone, day.now, then);
}

// When the oven is switched on first, for the morning after a night.
std::string oven_on_words(const Plan& plan, const Day& day) {
    std::optional<Instant> on;
    for (const Stage& stage : plan.stages) {
        for (const Act& act : stage.acts) {
            if (act.text.find("oven on") != std::string::npos && (!on || act.at < *on)) {
                on = act.at;
            }
        }
    }
    return on ? fmt::format("; oven on at {}", words::clock_and_day(day.zone, day.now, *on))
              : std::string();
}

} // namespace

Ways::Ways(const Day& day)
    : day_(day), wish_(day.eat_by  ? *day.eat_by
                       : day.start ? *day.start
                                   : next_full_five(day.zone, day.now)) {}

void Ways::add(const Plan& held, WayOut way, std::int64_t distance) {
    const bool known = std::any_of(ways_.begin(), ways_.end(), [&](const Way& other) {
        return other.way.change == way.change;
    });
    if (known) {
        return;
    }
    const bool at_night =
        std::any_of(held.warnings.begin(), held.warnings.end(), [](const Diagnostic& warning) {
            return warning.code == "at_night";
        });
    ways_.push_back({std::move(way), std::abs(distance), at_night});
}

std::optional<Ways::Meal> Ways::first_meal(const std::vector<Instant>& marks,
                                           const PlanDay& plan_day) const {
    for (const Instant eat : marks) {
        if (eat < wish_) {
            continue;
        }
        if (auto held = plan_day(with_eat_by(day_, eat))) {
            return Meal{eat, std::move(*held)};
        }
    }
    return std::nullopt;
}

std::optional<Instant> Ways::offer_meal(const std::vector<Instant>& marks,
                                        const PlanDay& plan_day) {
    const auto meal = first_meal(marks, plan_day);
    if (!meal) {
        return std::nullopt;
    }
    add(meal->plan,
        {fmt::format("eat at {}", words::clock_and_day(day_.zone, day_.now, meal->eat)),
         meal->eat,
         {}},
        minutes_between(wish_, meal->eat));
    return meal->eat;
}

std::optional<Instant>
Ways::offer_meal(const std::vector<Instant>& marks, const PlanDay& plan_day, const MadeWay& made) {
    const auto meal = first_meal(marks, plan_day);
    if (!meal) {
        return std::nullopt;
    }
    add_made(meal->plan, made, minutes_between(wish_, meal->eat));
    return meal->eat;
}

void Ways::offer_at_the_wish(const Plan& held, const MadeWay& made) {
    add_made(held, made, 0);
}

void Ways::add_made(const Plan& held, const MadeWay& made, std::int64_t distance) {
    WayOut way{made.change, held.eat.likely, made.taken_by};
    if (made.takes_a_night) {
        way.change += oven_on_words(held, day_);
    }
    add(held, std::move(way), distance);
}

void Ways::offer_same_meal_later(const PlanDay& plan_day) {
    for (std::int64_t days = 1; days <= days_ahead; ++days) {
        const auto then = days_after_today(day_, wish_, days);
        if (!then || *then <= wish_) {
            continue;
        }
        if (const auto held = plan_day(with_eat_by(day_, *then))) {
            add(*held,
                {fmt::format("begin at {} and eat at {}",
                             words::clock_and_day(day_.zone, day_.now, held->start),
                             clock_beside(day_, held->start, *then)),
                 *then,
                 {}},
                minutes_between(wish_, *then));
            return;
        }
    }
}

void Ways::offer_start(Instant start, std::int64_t distance, const PlanDay& plan_day) {
    const auto held = plan_day(with_start(day_, start));
    if (!held) {
        return;
    }
    add(*held,
        {fmt::format("begin at {} and eat from {}",
                     words::clock_and_day(day_.zone, day_.now, start),
                     clock_beside(day_, start, held->cut_from)),
         held->eat.likely,
         {}},
        distance);
}

std::vector<WayOut> Ways::best() const {
    std::vector<Way> ways = ways_;
    const auto by_night = [](const Way& way) { return way.at_night; };
    if (!std::all_of(ways.begin(), ways.end(), by_night)) {
        ways.erase(std::remove_if(ways.begin(), ways.end(), by_night), ways.end());
    }
    std::stable_sort(ways.begin(), ways.end(), [](const Way& a, const Way& b) {
        return a.distance < b.distance;
    });
    const auto as_written = [](const Way& way) { return way.way.taken_by.empty(); };
    if (ways.size() > most_ways_out) {
        const auto last = ways.begin() + static_cast<std::ptrdiff_t>(most_ways_out) - 1;
        if (std::none_of(ways.begin(), last + 1, as_written)) {
            const auto plain = std::find_if(last, ways.end(), as_written);
            if (plain != ways.end()) {
                std::iter_swap(last, plain);
            }
        }
        ways.resize(most_ways_out);
    }
    std::vector<WayOut> best;
    for (Way& way : ways) {
        best.push_back(std::move(way.way));
    }
    return best;
}

Day with_start(const Day& day, Instant start) {
    Day changed = day;
    changed.eat_by.reset();
    changed.start = start;
    return changed;
}

Day with_eat_by(const Day& day, Instant eat_by) {
    Day changed = day;
    changed.start.reset();
    changed.eat_by = eat_by;
    return changed;
}

TakenBy taken_by(std::size_t bread, fitting::Otherwise how) {
    return {bread, {std::string(fitting::otherwise_key), std::string(fitting::name_of(how))}};
}

} // namespace loafwright::planning
