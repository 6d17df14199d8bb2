// SPDX-License-Identifier: Apache-2.0
//
// The no to several breads. The schedule room names the rules that clash; here they get the words
// of a kitchen. Ways out are ordinary days again: another time, one bread fewer, the second shelf,
// another pair of hands.
#include "engine/planning/explain_several.hpp"

#include "engine/planning/explain.hpp"
#include "engine/planning/ways.hpp"
#include "engine/planning/words.hpp"
#include "engine/recipe/words.hpp"
#include "engine/schedule/why.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace loafwright::planning {

namespace {

constexpr int most_marks = 8;
// A day with less bread is further from the wish than one with the same bread and help.
constexpr std::int64_t one_bread_fewer = 60;
// Questions about a no are answered from fewer conflicts each: there are many of them.
constexpr std::int64_t conflicts_a_question = 1000;

std::string title_of(const Bread& bread) {
    return bread.recipe.recipe.title.empty() ? std::string("bread") : bread.recipe.recipe.title;
}

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
        Ways ways(day_);
        if (!wish_has_passed(day_)) {
            offer_help(ways);
            offer_made_otherwise(ways);
            offer_fewer(ways);
        }
        offer_other_times(ways);
        impossible.ways_out = ways.best();
        return impossible;
    }

private:
    // A clock time, with its day unless it is today's.
    [[nodiscard]] std::string when(Instant moment) const {
        return words::clock_unless_today(day_.zone, day_.now, moment);
    }

    // A bread that cannot be made even alone is the whole answer.
    bool about_one(Impossible& impossible) const {
        for (const Bread& bread : breads_.breads) {
            if (wish_has_passed(day_) || !planning::attempt(bread, day_)) {
                Impossible alone = planning::explain(bread, breads_.kitchen, day_);
                impossible.why = wish_has_passed(day_)
                                     ? alone.why
                                     : fmt::format("{}: {}", title_of(bread), alone.why);
                impossible.reasons = std::move(alone.reasons);
                return true;
            }
        }
        return false;
    }

    void about_all(Impossible& impossible) {
        const std::string wish_words =
            day_.eat_by ? fmt::format("You can't eat all of these by {}",
                                      when(day_.eat_by ? *day_.eat_by : Ways(day_).wish()))
                        : fmt::format("You can't begin all of these at {}",
                                      when(day_.eat_by ? *day_.eat_by : Ways(day_).wish()));
        if (tried_.hardest && !tried_.gave_up) {
            impossible.reasons = in_words(rules_that_clash(*tried_.hardest));
        }
        const std::string because = !impossible.reasons.empty() ? impossible.reasons.front()
                                    : tried_.gave_up            ? "no order of work was found"
                                                     : "they don't fit beside each other";
        impossible.why = fmt::format("{}: {}.", wish_words, because);
        for (std::string& reason : impossible.reasons) {
            reason = capitalised(reason) + '.';
        }
    }

    // All rules but the meal's can be kept by the end of the soonest plan, so that nothing later
    // need be looked at; a whole horizon is many times as long.
    [[nodiscard]] std::vector<schedule::Reason> rules_that_clash(const SharedProblem& hardest) {
        const std::optional<Plan>& plan = soonest();
        if (day_.eat_by && plan) {
            Instant end = *day_.eat_by;
            for (const Stage& stage : plan->stages) {
                end = std::max(end, stage.end.likely);
            }
            schedule::Problem sooner = hardest.problem;
            sooner.horizon = std::min(sooner.horizon, ceil_mark(hardest.frame.origin, end) + 60);
            auto found = schedule::reasons_why_not(sooner, conflicts_a_question).reasons;
            if (!found.empty()) {
                return found;
            }
        }
        return schedule::reasons_why_not(hardest.problem, conflicts_a_question).reasons;
    }

    // The same breads on this day without a wish: the soonest that all of them can be ready.
    [[nodiscard]] const std::optional<Plan>& soonest() {
        if (!soonest_) {
            Day soon = day_;
            soon.start.reset();
            soon.eat_by.reset();
            soonest_ = planned()(soon);
        }
        return *soonest_;
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

    void offer_help(Ways& ways) const {
        if (breads_.kitchen.oven.shelves < 2) {
            Breads wider = breads_;
            wider.kitchen.oven.shelves = 2;
            if (const Tried held = planning::attempt(wider, day_); held.plan) {
                ways.add(*held.plan, {"use the second shelf", held.plan->eat.likely, {}}, 0);
            }
        }
        Day helped = day_;
        helped.people.emplace_back("a helper");
        if (const Tried held = planning::attempt(breads_, helped); held.plan) {
            ways.add(*held.plan, {"a helper for the day", held.plan->eat.likely, {}}, 0);
        }
    }

    void offer_fewer(Ways& ways) const {
        for (std::size_t b = 0; b < breads_.breads.size(); ++b) {
            if (const auto held = without(b)) {
                ways.add(*held,
                         {fmt::format("leave out {}", title_of(breads_.breads[b])),
                          held->eat.likely,
                          {}},
                         one_bread_fewer);
            }
        }
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
        return planned_with(std::move(rest));
    }

    [[nodiscard]] std::optional<Plan> planned_with(std::vector<Bread> breads) const {
        std::vector<OvenRun> runs = oven_runs(breads);
        const Breads all{std::move(breads), std::move(runs), breads_.kitchen, conflicts_a_question};
        return planning::attempt(all, day_).plan;
    }

    // The same change for as few of the breads as it takes: first for all that can have it, then
    // each that can do without is left as written.
    void offer_made_otherwise(Ways& ways) const {
        for (const fitting::Otherwise how : fitting::all_otherwise) {
            std::vector<std::optional<fitting::MadeOtherwise>> made;
            for (const Bread& bread : breads_.breads) {
                made.push_back(fitting::made_otherwise(bread.recipe, breads_.kitchen, how));
            }
            const auto with = [&](const std::vector<bool>& changed) {
                std::vector<Bread> breads;
                for (std::size_t b = 0; b < made.size(); ++b) {
                    breads.push_back(changed[b] ? bread_of(made[b]->recipe) : breads_.breads[b]);
                }
                return planned_with(std::move(breads));
            };
            std::vector<bool> changed;
            for (const auto& one : made) {
                changed.push_back(one.has_value());
            }
            const auto left = [&changed] {
                return std::count(changed.begin(), changed.end(), true);
            };
            auto held = left() > 0 ? with(changed) : std::nullopt;
            for (std::size_t b = 0; held && b < changed.size() && left() > 1; ++b) {
                if (!changed[b]) {
                    continue;
                }
                changed[b] = false;
                if (auto without_it = with(changed)) {
                    held = std::move(without_it);
                } else {
                    changed[b] = true;
                }
            }
            if (held) {
                ways.offer_at_the_wish(*held, way_of(how, made, changed));
            }
        }
    }

    [[nodiscard]] MadeWay way_of(fitting::Otherwise how,
                                 const std::vector<std::optional<fitting::MadeOtherwise>>& made,
                                 const std::vector<bool>& changed) const {
        MadeWay way;
        way.takes_a_night = fitting::takes_a_night(how);
        bool alike = true;
        for (std::size_t b = 0; b < made.size(); ++b) {
            alike = alike && changed[b] && made[b]->change == made.front()->change;
        }
        for (std::size_t b = 0; b < made.size(); ++b) {
            if (!changed[b]) {
                continue;
            }
            way.taken_by.push_back(taken_by(b, how));
            if (!alike) {
                way.change += way.change.empty() ? "" : "; ";
                way.change += fmt::format("{}: {}", title_of(breads_.breads[b]), made[b]->change);
            }
        }
        if (alike) {
            way.change = made.front()->change;
        }
        return way;
    }

    [[nodiscard]] PlanDay planned() const {
        return [this](const Day& day) { return planning::attempt(breads_, day).plan; };
    }

    void offer_other_times(Ways& ways) {
        if (day_.eat_by) {
            ways.offer_meal(meal_marks(), planned());
            ways.offer_same_meal_later(planned());
            return;
        }
        const std::size_t at_the_wish = ways.count();
        for (const std::int64_t hours : {1, 2, 3, 4, 6, 8, 12, 24, 48}) {
            const Instant start = later_by_minutes(ways.wish(), 60 * hours);
            if (start >= day_.now) {
                ways.offer_start(start, 60 * hours, planned());
            }
            if (ways.count() > at_the_wish && ways.count() >= 2) {
                return;
            }
        }
    }

    // From the soonest that all of them can be ready, in growing strides.
    [[nodiscard]] std::vector<Instant> meal_marks() {
        std::vector<Instant> marks;
        if (const std::optional<Plan>& plan = soonest()) {
            Instant eat = next_full_five(day_.zone, plan->cut_from);
            for (const Plan& bread : plan->breads) {
                eat = std::max(eat, next_full_five(day_.zone, bread.eat.high));
            }
            for (int n = 0; n < most_marks; ++n, eat = later_by_minutes(eat, 15 * n)) {
                marks.push_back(eat);
            }
        }
        return marks;
    }

    Breads breads_;
    const Day& day_;
    const Tried& tried_;
    std::optional<std::optional<Plan>> soonest_; // outer: not asked yet
};

} // namespace

Impossible explain(const Breads& breads, const Day& day, const Tried& tried) {
    return Explainer(breads, day, tried).run();
}

} // namespace loafwright::planning
