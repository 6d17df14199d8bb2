// SPDX-License-Identifier: Apache-2.0
//
// The honest answer first, with the sum behind it; then what would work. The sum comes from a plan
// without anybody's calendar; if that holds, the calendar is what forbids it, and laying that plan
// over the calendar shows where they clash. Ways out are ordinary days with another wish in them,
// planned like any other.
#include "engine/planning/explain.hpp"

#include "engine/planning/other_waits.hpp"
#include "engine/planning/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>

namespace loafwright::planning {

namespace {

constexpr std::size_t most_ways_out = 4;
constexpr std::size_t most_reasons = 4;

std::string span_text(const Zone& zone, Instant from, Instant to) {
    return clock_text(zone, from) + " to " + clock_text(zone, to);
}

std::string cooling_words(std::int64_t minutes) {
    if (minutes == 0) {
        return "";
    }
    return minutes == 60 ? " with one hour's cooling"
                         : fmt::format(" with {} of cooling", words::duration(minutes));
}

class Explainer {
public:
    Explainer(const Bread& bread, const Day& day) : bread_(bread), day_(day) {
        soonest_ = next_full_five(day.zone, day.now);
    }

    Impossible run() {
        Impossible impossible;
        say_why(impossible);
        find_ways(impossible);
        return impossible;
    }

private:
    [[nodiscard]] std::string wish_text() const {
        if (day_.eat_by) {
            return fmt::format("You can't eat this by {}", when(*day_.eat_by));
        }
        return fmt::format("You can't begin this at {}", when(day_.start.value_or(soonest_)));
    }

    // A clock time, with its day unless it is today's.
    [[nodiscard]] std::string when(Instant moment) const {
        return words::clock_unless_today(day_.zone, day_.now, moment);
    }

    void say_why(Impossible& impossible) const {
        if (wish_has_passed(day_)) {
            impossible.why =
                fmt::format("{} has passed.", when(day_.eat_by ? *day_.eat_by : *day_.start));
            impossible.reasons.push_back(
                fmt::format("It is {} now.", clock_text(day_.zone, day_.now)));
            return;
        }
        const Rules free_of_all{false, false, false};
        const auto unbound = attempt_under(bread_, day_, free_of_all);
        if (unbound) {
            impossible.reasons = clashes(*unbound);
            if (!impossible.reasons.empty()) {
                std::string reason = impossible.reasons.front();
                impossible.why = fmt::format("{}: {}.", wish_text(), reason);
            }
        } else if (day_.eat_by) {
            Target now;
            now.start_from = soonest_;
            now.start_to = soonest_;
            if (const auto plan = attempt_target(bread_, day_, free_of_all, now)) {
                impossible.why = sum_of(*plan);
                impossible.reasons.push_back(
                    fmt::format("The steps take {} from the first to the first slice",
                                words::duration(plan->total_minutes)));
                impossible.reasons.push_back(
                    fmt::format("\"By {}\" allows for a slow dough, about {} more",
                                clock_text(day_.zone, *day_.eat_by),
                                words::duration(bread_.spread.margin)));
            }
        }
        if (impossible.why.empty()) {
            const bool asks_too_much = bread_.chain.atoms.size() > 1000;
            impossible.why =
                fmt::format("{}: {}.",
                            wish_text(),
                            asks_too_much ? "it has more steps than fit into a calendar"
                                          : "it takes longer than can be planned ahead");
        }
        for (std::string& reason : impossible.reasons) {
            if (!reason.empty() && reason.back() != '.') {
                reason += '.';
            }
        }
    }

    [[nodiscard]] std::string sum_of(const Plan& plan) const {
        const std::string end = when(plan.cut_from);
        const std::string slow = when(later_by_minutes(plan.cut_from, bread_.spread.margin));
        std::string text = fmt::format("{}. From {} it takes {}{}: {}",
                                       wish_text(),
                                       clock_text(day_.zone, plan.start),
                                       words::duration(plan.total_minutes),
                                       cooling_words(bread_.cut_minutes),
                                       end);
        if (slow != end) {
            text += fmt::format(", or {} if the dough is slow", slow);
        }
        return text + ".";
    }

    // Where a plan made without anybody's calendar meets the calendar, in the order of the clock.
    [[nodiscard]] std::vector<std::string> clashes(const Plan& plan) const {
        std::vector<std::string> found;
        const auto add = [&found](const std::string& reason) {
            if (!reason.empty() && found.size() < most_reasons &&
                std::find(found.begin(), found.end(), reason) == found.end()) {
                found.push_back(reason);
            }
        };
        Instant oven_on{INT64_MAX};
        for (const Stage& stage : plan.stages) {
            for (const Act& act : stage.acts) {
                if (act.text.find("oven on") != std::string::npos) {
                    oven_on = std::min(oven_on, act.at);
                }
            }
            if (stage.attention == Attention::hands) {
                add(window_clash(
                    fmt::format("\"{}\"", stage.title), stage.start, stage.end.likely));
            } else if (stage.attention == Attention::near) {
                const Instant from = std::min(oven_on, stage.start);
                add(oven_clash(from, stage.end.likely));
                for (const OvenClaim& claim : day_.oven_claims) {
                    if (from < claim.to && stage.end.likely > claim.from) {
                        add(fmt::format("the oven is taken from {}",
                                        span_text(day_.zone, claim.from, claim.to)));
                    }
                }
            } else if (stage.attention == Attention::wait) {
                for (const Act& act : stage.acts) {
                    if (act.text.find("oven on") == std::string::npos) {
                        add(window_clash(
                            fmt::format("\"{}\"", act.text), act.at, later_by_minutes(act.at, 5)));
                    }
                }
            }
        }
        return found;
    }

    [[nodiscard]] std::string who(std::size_t person) const {
        const bool alone = day_.people.size() < 2;
        return alone || person >= day_.people.size() ? "you are" : day_.people[person] + " is";
    }

    [[nodiscard]] const PresenceWindow*
    window_of(std::size_t person, Instant from, Instant to, bool busy_counts) const {
        for (const PresenceWindow& window : day_.windows) {
            if (window.person == person && window.from < to && from < window.to &&
                (busy_counts || window.state != Presence::busy)) {
                return &window;
            }
        }
        return nullptr;
    }

    // Nobody can do it: says why for the first person, for each where there are more.
    [[nodiscard]] std::string
    window_clash(const std::string& what, Instant from, Instant to) const {
        std::string reason;
        const std::size_t people = std::max<std::size_t>(1, day_.people.size());
        for (std::size_t person = 0; person < people; ++person) {
            const PresenceWindow* window = window_of(person, from, to, true);
            if (window == nullptr) {
                return "";
            }
            const char* state = window->state == Presence::asleep ? "asleep"
                                : window->state == Presence::away ? "away"
                                                                  : "busy";
            reason +=
                reason.empty() ? fmt::format("{} falls at {}, while ", what, when(from)) : " and ";
            reason += fmt::format(
                "{} {} ({})", who(person), state, span_text(day_.zone, window->from, window->to));
        }
        return reason;
    }

    [[nodiscard]] std::string oven_clash(Instant from, Instant to) const {
        const std::size_t people = std::max<std::size_t>(1, day_.people.size());
        for (Instant minute = from; minute < to; minute = later_by_minutes(minute, 1)) {
            bool watched = false;
            for (std::size_t person = 0; person < people; ++person) {
                watched = watched ||
                          window_of(person, minute, later_by_minutes(minute, 1), false) == nullptr;
            }
            if (!watched) {
                return fmt::format("the oven would be hot at {} with nobody awake at home",
                                   when(minute));
            }
        }
        return "";
    }

    struct Way {
        WayOut way;
        std::int64_t distance = 0;
        bool at_night = false;
    };

    [[nodiscard]] Day with_start(Instant start) const {
        Day changed = day_;
        changed.eat_by.reset();
        changed.start = start;
        return changed;
    }

    [[nodiscard]] Day with_eat_by(Instant eat_by) const {
        Day changed = day_;
        changed.start.reset();
        changed.eat_by = eat_by;
        return changed;
    }

    // The rules under which ways out are looked for: without a described day nobody is sent to work
    // at night.
    [[nodiscard]] Rules search_rules() const {
        Rules rules = rules_of(day_);
        rules.night = !day_.described;
        return rules;
    }

    void
    add(std::vector<Way>& ways, const Plan& plan, std::string change, std::int64_t distance) const {
        Way way;
        way.way = {std::move(change), plan.eat.likely};
        way.distance = std::abs(distance);
        way.at_night =
            std::any_of(plan.warnings.begin(), plan.warnings.end(), [](const Diagnostic& warning) {
                return warning.code == "at_night";
            });
        const bool known = std::any_of(ways.begin(), ways.end(), [&](const Way& other) {
            return other.way.change == way.way.change;
        });
        if (!known) {
            ways.push_back(std::move(way));
        }
    }

    // "eat at 15:40 today": the earliest time that holds as a time to eat by.
    void offer_later_meal(std::vector<Way>& ways, Instant wish) const {
        Target free_start;
        free_start.start_from = day_.now;
        const auto plan = attempt_target(bread_, day_, search_rules(), free_start);
        if (!plan) {
            return;
        }
        Instant eat =
            next_full_five(day_.zone, later_by_minutes(plan->cut_from, bread_.spread.margin));
        // Cooling in windows can ask for a little more; the first mark that holds is offered.
        for (int tries = 0; tries < 24; ++tries, eat = later_by_minutes(eat, 5)) {
            if (eat < wish) {
                continue;
            }
            const auto held = attempt(bread_, with_eat_by(eat));
            if (held) {
                add(ways,
                    *held,
                    fmt::format("eat at {}", words::clock_and_day(day_.zone, day_.now, eat)),
                    minutes_between(wish, eat));
                return;
            }
        }
    }

    // "begin at 08:20 tomorrow and eat at 14:00": the same meal on a later day.
    void offer_same_meal_later(std::vector<Way>& ways, Instant wish) const {
        const CivilTime civil = civil_of(day_.zone, wish);
        const std::int64_t today = days_from_civil(civil_of(day_.zone, day_.now).date);
        for (std::int64_t days = 1; days <= 3; ++days) {
            const auto then =
                instant_of(day_.zone, {civil_from_days(today + days), civil.clock, 0});
            if (!then || *then <= wish) {
                continue;
            }
            const auto held = attempt(bread_, with_eat_by(*then));
            if (held) {
                const bool same_day = words::day(day_.zone, day_.now, held->start) ==
                                      words::day(day_.zone, day_.now, *then);
                add(ways,
                    *held,
                    fmt::format("begin at {} and eat at {}",
                                words::clock_and_day(day_.zone, day_.now, held->start),
                                same_day ? clock_text(day_.zone, *then)
                                         : words::clock_and_day(day_.zone, day_.now, *then)),
                    minutes_between(wish, *then));
                return;
            }
        }
    }

    // "begin at 07:00 tomorrow and eat from 11:25".
    void offer_start(std::vector<Way>& ways, Instant start, std::int64_t distance) const {
        const auto held = attempt(bread_, with_start(start));
        if (!held) {
            return;
        }
        const bool same_day = words::day(day_.zone, day_.now, start) ==
                              words::day(day_.zone, day_.now, held->cut_from);
        add(ways,
            *held,
            fmt::format("begin at {} and eat from {}",
                        words::clock_and_day(day_.zone, day_.now, start),
                        same_day ? clock_text(day_.zone, held->cut_from)
                                 : words::clock_and_day(day_.zone, day_.now, held->cut_from)),
            distance);
    }

    void offer_starts_near(std::vector<Way>& ways, Instant wish) const {
        Target target;
        target.aim = schedule::Aim::begin_soonest;
        target.start_from = std::max(wish, day_.now);
        if (const auto later = attempt_target(bread_, day_, search_rules(), target)) {
            offer_start(ways, later->start, minutes_between(wish, later->start));
        }
        if (wish > day_.now) {
            target.aim = schedule::Aim::begin_last;
            target.start_from = day_.now;
            target.start_to = wish;
            if (const auto sooner = attempt_target(bread_, day_, search_rules(), target)) {
                offer_start(ways, sooner->start, minutes_between(sooner->start, wish));
            }
        }
        const CivilTime civil = civil_of(day_.zone, wish);
        const std::int64_t wished_day = days_from_civil(civil.date);
        for (std::int64_t days = 1; days <= 3; ++days) {
            const auto then =
                instant_of(day_.zone, {civil_from_days(wished_day + days), civil.clock, 0});
            if (then && *then >= day_.now && attempt(bread_, with_start(*then))) {
                offer_start(ways, *then, minutes_between(wish, *then));
                break;
            }
        }
        if (ways.size() < 2) {
            // A start at the same clock time never holds: the next morning may.
            Target next;
            next.aim = schedule::Aim::begin_soonest;
            next.start_from = later_by_minutes(std::max(wish, day_.now), 12 * 60);
            if (const auto later = attempt_target(bread_, day_, search_rules(), next)) {
                offer_start(ways, later->start, minutes_between(wish, later->start));
            }
        }
    }

    // "the rises in your warm spot", "a night in the fridge for the prove": the same wish with
    // another wait.
    void offer_other_waits(std::vector<Way>& ways) const {
        for (const OtherWaits& other : other_waits_of(bread_.recipe)) {
            const Bread changed = bread_of(other.recipe);
            if (const auto held = attempt(changed, day_)) {
                add(ways, *held, other.change, 0);
            }
        }
    }

    void find_ways(Impossible& impossible) const {
        std::vector<Way> ways;
        if (!wish_has_passed(day_)) {
            offer_other_waits(ways);
        }
        if (day_.eat_by) {
            offer_later_meal(ways, *day_.eat_by);
            offer_same_meal_later(ways, *day_.eat_by);
            Target soon;
            soon.start_from = day_.now;
            if (const auto plan = attempt_target(bread_, day_, search_rules(), soon)) {
                offer_start(ways, plan->start, minutes_between(*day_.eat_by, plan->cut_from));
            }
        } else {
            offer_starts_near(ways, day_.start.value_or(soonest_));
        }
        const auto by_day =
            std::count_if(ways.begin(), ways.end(), [](const Way& way) { return !way.at_night; });
        if (by_day > 0) {
            ways.erase(std::remove_if(
                           ways.begin(), ways.end(), [](const Way& way) { return way.at_night; }),
                       ways.end());
        }
        std::stable_sort(ways.begin(), ways.end(), [](const Way& a, const Way& b) {
            return a.distance < b.distance;
        });
        for (const Way& way : ways) {
            if (impossible.ways_out.size() < most_ways_out) {
                impossible.ways_out.push_back(way.way);
            }
        }
    }

    const Bread& bread_;
    const Day& day_;
    Instant soonest_;
};

} // namespace

bool wish_has_passed(const Day& day) {
    if (day.eat_by) {
        return *day.eat_by <= day.now;
    }
    // The minute that is running has not passed.
    return day.start && day.start->seconds + 60 <= day.now.seconds;
}

Impossible explain(const Bread& bread, const Day& day) {
    return Explainer(bread, day).run();
}

} // namespace loafwright::planning
