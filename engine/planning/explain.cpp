// SPDX-License-Identifier: Apache-2.0
//
// The honest answer first, with the sum behind it; then what would work. The sum comes from a plan
// without anybody's calendar; if that holds, the calendar is what forbids it, and laying that plan
// over the calendar shows where they clash. Ways out are ordinary days with another wish in them,
// planned like any other.
#include "engine/planning/explain.hpp"

#include "engine/planning/ways.hpp"
#include "engine/planning/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace loafwright::planning {

namespace {

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
    Explainer(const Bread& bread, const Kitchen& kitchen, const Day& day)
        : bread_(bread), kitchen_(kitchen), day_(day) {
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
        // A doubt is told in fives.
        const Instant late = later_by_minutes(plan.cut_from, bread_.spread.margin);
        const std::string slow = when(Instant{(late.seconds + 299) / 300 * 300});
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

    // The rules under which ways out are looked for: where no sleep is known nobody is sent to work
    // at night.
    [[nodiscard]] Rules search_rules() const {
        Rules rules;
        rules.night = !day_.sleep_known;
        return rules;
    }

    [[nodiscard]] PlanDay planned(const Bread& bread) const {
        return [&bread](const Day& day) { return attempt(bread, day); };
    }

    // From the soonest that it can be ready, slow doughs too. Cooling in windows can ask for a
    // little more; the first mark that holds is offered.
    [[nodiscard]] std::vector<Instant> meal_marks(const Bread& bread) const {
        constexpr int most_marks = 24;
        Target free_start;
        free_start.start_from = day_.now;
        std::vector<Instant> marks;
        if (const auto plan = attempt_target(bread, day_, search_rules(), free_start)) {
            Instant eat =
                next_full_five(day_.zone, later_by_minutes(plan->cut_from, bread.spread.margin));
            for (int n = 0; n < most_marks; ++n, eat = later_by_minutes(eat, 5)) {
                marks.push_back(eat);
            }
        }
        return marks;
    }

    void offer_starts_near(Ways& ways) const {
        const Instant wish = ways.wish();
        Target target;
        target.aim = schedule::Aim::begin_soonest;
        target.start_from = std::max(wish, day_.now);
        if (const auto later = attempt_target(bread_, day_, search_rules(), target)) {
            ways.offer_start(later->start, minutes_between(wish, later->start), planned(bread_));
        }
        if (wish > day_.now) {
            target.aim = schedule::Aim::begin_last;
            target.start_from = day_.now;
            target.start_to = wish;
            if (const auto sooner = attempt_target(bread_, day_, search_rules(), target)) {
                ways.offer_start(
                    sooner->start, minutes_between(sooner->start, wish), planned(bread_));
            }
        }
        const CivilTime civil = civil_of(day_.zone, wish);
        const std::int64_t wished_day = days_from_civil(civil.date);
        for (std::int64_t days = 1; days <= 3; ++days) {
            const auto then =
                instant_of(day_.zone, {civil_from_days(wished_day + days), civil.clock, 0});
            if (then && *then >= day_.now && attempt(bread_, with_start(day_, *then))) {
                ways.offer_start(*then, minutes_between(wish, *then), planned(bread_));
                break;
            }
        }
        if (ways.count() < 2) {
            // A start at the same clock time never holds: the next morning may.
            Target next;
            next.aim = schedule::Aim::begin_soonest;
            next.start_from = later_by_minutes(std::max(wish, day_.now), 12 * 60);
            if (const auto later = attempt_target(bread_, day_, search_rules(), next)) {
                ways.offer_start(
                    later->start, minutes_between(wish, later->start), planned(bread_));
            }
        }
    }

    // "the same dough as rolls": the wish kept, or a meal that is sooner than the bread as written.
    // One rise in the warm spot is less than all, and one kind of night is enough to choose from.
    void offer_made_otherwise(Ways& ways, std::optional<Instant> soonest_meal) const {
        bool warm = false;
        bool night = false;
        for (const fitting::Otherwise how : fitting::all_otherwise) {
            const bool takes_night = fitting::takes_a_night(how);
            if ((takes_night && night) || (how == fitting::Otherwise::warm_rises && warm)) {
                continue;
            }
            const auto made = fitting::made_otherwise(bread_.recipe, kitchen_, how);
            if (!made) {
                continue;
            }
            const Bread changed = bread_of(made->recipe);
            const MadeWay way{made->change, {taken_by(0, how)}, takes_night};
            if (const auto held = attempt(changed, day_)) {
                ways.offer_at_the_wish(*held, way);
                night = night || takes_night;
                warm = warm || how == fitting::Otherwise::warm_prove ||
                       how == fitting::Otherwise::warm_rise;
            } else if (day_.eat_by) {
                std::vector<Instant> marks = meal_marks(changed);
                marks.erase(std::remove_if(marks.begin(),
                                           marks.end(),
                                           [&](Instant mark) {
                                               return soonest_meal && mark >= *soonest_meal;
                                           }),
                            marks.end());
                const auto meal = ways.offer_meal(marks, planned(changed), way);
                night = night || (meal && takes_night);
            }
        }
    }

    void find_ways(Impossible& impossible) const {
        Ways ways(day_);
        std::optional<Instant> meal;
        if (day_.eat_by) {
            meal = ways.offer_meal(meal_marks(bread_), planned(bread_));
            ways.offer_same_meal_later(planned(bread_));
            Target soon;
            soon.start_from = day_.now;
            if (const auto plan = attempt_target(bread_, day_, search_rules(), soon)) {
                ways.offer_start(
                    plan->start, minutes_between(*day_.eat_by, plan->cut_from), planned(bread_));
            }
        } else {
            offer_starts_near(ways);
        }
        if (!wish_has_passed(day_)) {
            offer_made_otherwise(ways, meal);
        }
        impossible.ways_out = ways.best();
    }

    const Bread& bread_;
    const Kitchen& kitchen_;
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

Impossible explain(const Bread& bread, const Kitchen& kitchen, const Day& day) {
    return Explainer(bread, kitchen, day).run();
}

} // namespace loafwright::planning
