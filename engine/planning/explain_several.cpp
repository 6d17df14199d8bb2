// SPDX-License-Identifier: Apache-2.0
//
// The no to several breads. The schedule room names the rules that clash; here they get the words
// of a kitchen. Ways out are ordinary days again: another time, one bread fewer, the second shelf,
// another pair of hands.
#include "engine/planning/explain_several.hpp"

#include "engine/planning/explain.hpp"
#include "engine/planning/other_waits.hpp"
#include "engine/planning/words.hpp"
#include "engine/recipe/words.hpp"
#include "engine/schedule/why.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <set>
#include <utility>

namespace loafwright::planning {

namespace {

constexpr std::size_t most_ways_out = 4;
constexpr int most_tries = 8;
// A day with less bread is further from the wish than one with the same bread and help.
constexpr std::int64_t one_bread_fewer = 60;
// Questions about a no are answered from fewer conflicts each: there are many of them.
constexpr std::int64_t conflicts_a_question = 1000;

std::string title_of(const Bread& bread) {
    return bread.recipe.recipe.title.empty() ? std::string("bread") : bread.recipe.recipe.title;
}

struct Way {
    WayOut way;
    std::int64_t distance = 0;
};

class Explainer {
public:
    Explainer(const Breads& breads, const Day& day, const Tried& tried)
        : breads_(breads), day_(day), tried_(tried) {
        breads_.conflicts = conflicts_a_question;
    }

    Impossible run() {
        Impossible impossible;
        if (!about_one(impossible)) {
            about_all(impossible);
        }
        std::vector<Way> ways = wish_has_passed(day_) ? std::vector<Way>{} : ways_at_the_wish();
        add_other_times(ways);
        std::stable_sort(ways.begin(), ways.end(), [](const Way& a, const Way& b) {
            return a.distance < b.distance;
        });
        for (Way& way : ways) {
            if (impossible.ways_out.size() < most_ways_out) {
                impossible.ways_out.push_back(std::move(way.way));
            }
        }
        return impossible;
    }

private:
    [[nodiscard]] Instant wish() const {
        return day_.eat_by  ? *day_.eat_by
               : day_.start ? *day_.start
                            : next_full_five(day_.zone, day_.now);
    }

    // A clock time, with its day unless it is today's.
    [[nodiscard]] std::string when(Instant moment) const {
        return words::clock_unless_today(day_.zone, day_.now, moment);
    }

    // A bread that cannot be made even alone is the whole answer.
    bool about_one(Impossible& impossible) const {
        for (const Bread& bread : breads_.breads) {
            if (wish_has_passed(day_) || !planning::attempt(bread, day_)) {
                Impossible alone = planning::explain(bread, day_);
                impossible.why = wish_has_passed(day_)
                                     ? alone.why
                                     : fmt::format("{}: {}", title_of(bread), alone.why);
                impossible.reasons = std::move(alone.reasons);
                return true;
            }
        }
        return false;
    }

    void about_all(Impossible& impossible) const {
        const std::string wish_words =
            day_.eat_by ? fmt::format("You can't eat all of these by {}", when(wish()))
                        : fmt::format("You can't begin all of these at {}", when(wish()));
        if (tried_.hardest && !tried_.gave_up) {
            const schedule::Why why =
                schedule::why_not(tried_.hardest->problem, conflicts_a_question);
            impossible.reasons = in_words(why.reasons);
        }
        const std::string because = !impossible.reasons.empty() ? impossible.reasons.front()
                                    : tried_.gave_up            ? "no order of work was found"
                                                     : "they don't fit beside each other";
        impossible.why = fmt::format("{}: {}.", wish_words, because);
        for (std::string& reason : impossible.reasons) {
            reason = capitalised(reason) + '.';
        }
    }

    [[nodiscard]] std::vector<std::string>
    in_words(const std::vector<schedule::Reason>& reasons) const {
        const bool alone = day_.people.size() < 2;
        const auto has = [&reasons](std::string_view rule) {
            return std::any_of(reasons.begin(), reasons.end(), [rule](const auto& reason) {
                return reason.rule == rule;
            });
        };
        std::vector<std::string> told;
        if (has("hands")) {
            told.push_back(alone ? "your hands are wanted for two of them at once"
                                 : "hands are wanted in more places than there are people");
        }
        if (has("oven_temperature") || has("changeover")) {
            told.emplace_back("they want the oven at different heats at the same time");
        }
        if (has("oven_space")) {
            told.push_back(breads_.kitchen.oven.shelves < 2
                               ? "the oven has one shelf, and they are ready for it together"
                               : "they are ready together, and the oven has no shelf for each");
        }
        if (has("oven_claim")) {
            told.emplace_back("the oven is taken for part of the time");
        }
        if (has("unattended")) {
            told.emplace_back("the oven would be hot with nobody awake at home");
        }
        if (has("window")) {
            told.emplace_back(alone ? "you are not there for all of the work"
                                    : "nobody is there for part of the work");
        }
        if (has("lag_max")) {
            told.emplace_back("dough does not wait for so long");
        }
        if (has("ready_by") && day_.eat_by) {
            told.push_back(fmt::format("they are to be cool by {}, slow doughs too",
                                       clock_text(day_.zone, *day_.eat_by)));
        }
        return told;
    }

    static void
    add(std::vector<Way>& ways, std::string change, Instant eat, std::int64_t distance) {
        const bool known = std::any_of(
            ways.begin(), ways.end(), [&](const Way& other) { return other.way.change == change; });
        if (!known) {
            ways.push_back({{std::move(change), eat}, std::abs(distance)});
        }
    }

    [[nodiscard]] std::vector<Way> ways_at_the_wish() const {
        std::vector<Way> ways;
        if (breads_.kitchen.oven.shelves < 2) {
            Breads wider = breads_;
            wider.kitchen.oven.shelves = 2;
            if (const Tried held = planning::attempt(wider, day_); held.plan) {
                add(ways, "use the second shelf", held.plan->eat.likely, 0);
            }
        }
        Day helped = day_;
        helped.people.emplace_back("a helper");
        if (const Tried held = planning::attempt(breads_, helped); held.plan) {
            add(ways, "a helper for the day", held.plan->eat.likely, 0);
        }
        offer_other_waits(ways);
        for (std::size_t b = 0; b < breads_.breads.size(); ++b) {
            if (const auto held = without(b)) {
                add(ways,
                    fmt::format("leave out {}", title_of(breads_.breads[b])),
                    held->eat.likely,
                    one_bread_fewer);
            }
        }
        return ways;
    }

    [[nodiscard]] std::optional<Plan> without(std::size_t left_out) const {
        std::vector<Bread> rest;
        for (std::size_t b = 0; b < breads_.breads.size(); ++b) {
            if (b != left_out) {
                rest.push_back(breads_.breads[b]);
            }
        }
        if (rest.size() == 1) {
            return planning::attempt(rest.front(), day_);
        }
        std::vector<OvenRun> runs = oven_runs(rest);
        const Breads fewer{std::move(rest), std::move(runs), breads_.kitchen, conflicts_a_question};
        return planning::attempt(fewer, day_).plan;
    }

    // The same change for every bread that can have it.
    void offer_other_waits(std::vector<Way>& ways) const {
        std::set<std::string> changes;
        std::vector<std::vector<OtherWaits>> others;
        for (const Bread& bread : breads_.breads) {
            others.push_back(other_waits_of(bread.recipe));
            for (const OtherWaits& other : others.back()) {
                changes.insert(other.change);
            }
        }
        for (const std::string& change : changes) {
            std::vector<Bread> changed;
            for (std::size_t b = 0; b < breads_.breads.size(); ++b) {
                const auto other =
                    std::find_if(others[b].begin(), others[b].end(), [&](const OtherWaits& own) {
                        return own.change == change;
                    });
                changed.push_back(other == others[b].end() ? breads_.breads[b]
                                                           : bread_of(other->recipe));
            }
            std::vector<OvenRun> runs = oven_runs(changed);
            const Breads all{
                std::move(changed), std::move(runs), breads_.kitchen, conflicts_a_question};
            if (const Tried held = planning::attempt(all, day_); held.plan) {
                add(ways, change, held.plan->eat.likely, 0);
            }
        }
    }

    [[nodiscard]] std::optional<Plan> on(std::optional<Instant> start,
                                         std::optional<Instant> eat_by) const {
        Day day = day_;
        day.start = start;
        day.eat_by = eat_by;
        return planning::attempt(breads_, day).plan;
    }

    void add_other_times(std::vector<Way>& ways) const {
        if (day_.eat_by) {
            offer_later_meal(ways);
            offer_same_meal_later(ways);
        } else {
            offer_later_start(ways);
        }
    }

    // "eat at 20:10 today": from the soonest that all of them can be ready.
    void offer_later_meal(std::vector<Way>& ways) const {
        const auto soonest = on(std::nullopt, std::nullopt);
        if (!soonest) {
            return;
        }
        Instant eat = next_full_five(day_.zone, soonest->cut_from);
        for (const Plan& bread : soonest->breads) {
            eat = std::max(eat, next_full_five(day_.zone, bread.eat.high));
        }
        for (int n = 0; n < most_tries; ++n, eat = later_by_minutes(eat, 15 * (n + 1))) {
            if (eat < wish()) {
                continue;
            }
            if (on(std::nullopt, eat)) {
                add(ways,
                    fmt::format("eat at {}", words::clock_and_day(day_.zone, day_.now, eat)),
                    eat,
                    minutes_between(wish(), eat));
                return;
            }
        }
    }

    void offer_same_meal_later(std::vector<Way>& ways) const {
        for (std::int64_t days = 1; days <= 3; ++days) {
            const auto then = days_after_today(wish(), days);
            if (!then || *then <= wish()) {
                continue;
            }
            if (const auto held = on(std::nullopt, *then)) {
                add(ways,
                    fmt::format("begin at {} and eat at {}",
                                words::clock_and_day(day_.zone, day_.now, held->start),
                                words::clock_and_day(day_.zone, day_.now, *then)),
                    *then,
                    minutes_between(wish(), *then));
                return;
            }
        }
    }

    void offer_later_start(std::vector<Way>& ways) const {
        for (const std::int64_t hours : {1, 2, 3, 4, 6, 8, 12, 24, 48}) {
            const Instant start = later_by_minutes(wish(), 60 * hours);
            if (start < day_.now) {
                continue;
            }
            if (const auto held = on(start, std::nullopt)) {
                add(ways,
                    fmt::format("begin at {} and eat from {}",
                                words::clock_and_day(day_.zone, day_.now, start),
                                words::clock_and_day(day_.zone, day_.now, held->cut_from)),
                    held->cut_from,
                    60 * hours);
                if (ways.size() >= 2) {
                    return;
                }
            }
        }
    }

    [[nodiscard]] std::optional<Instant> days_after_today(Instant moment, std::int64_t days) const {
        const std::int64_t today = days_from_civil(civil_of(day_.zone, day_.now).date);
        const auto then = instant_of(
            day_.zone, {civil_from_days(today + days), civil_of(day_.zone, moment).clock, 0});
        return then ? std::optional<Instant>(*then) : std::nullopt;
    }

    Breads breads_;
    const Day& day_;
    const Tried& tried_;
};

} // namespace

Impossible explain(const Breads& breads, const Day& day, const Tried& tried) {
    return Explainer(breads, day, tried).run();
}

} // namespace loafwright::planning
