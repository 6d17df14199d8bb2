// SPDX-License-Identifier: Apache-2.0
//
// Lines with times. Inside a line, what is short and has a moment of its own becomes an act: a
// fold, the oven on, the oven down, the lid off. The oven is switched on so that it is hot at the
// early end of the last wait before the bake: it waits for the dough.
#include "engine/planning/stages.hpp"

#include "engine/planning/words.hpp"
#include "engine/recipe/words.hpp"

#include <algorithm>

namespace loafwright::planning {

namespace {

bool ends_with(std::string_view text, std::string_view end) {
    return text.size() >= end.size() && text.substr(text.size() - end.size()) == end;
}

class StageMaker {
public:
    StageMaker(const FittedRecipe& recipe,
               const BreadChain& chain,
               const Placed& placed,
               const Day& day,
               const Milestones& milestones)
        : recipe_(recipe), chain_(chain), placed_(placed), day_(day), milestones_(milestones) {}

    std::vector<Stage> run() {
        for (const Draft& draft : drafts_of(recipe_, chain_)) {
            Stage stage = stage_of(draft);
            if (!stages_.empty() && is_no_line(draft, stage)) {
                std::vector<std::size_t>& before = stages_.back().steps;
                before.insert(before.end(), stage.steps.begin(), stage.steps.end());
                stages_.back().last_part = stage.last_part;
            } else {
                stages_.push_back(std::move(stage));
            }
        }
        switch_oven_on();
        if (chain_.eaten) {
            eat();
        }
        for (std::size_t s = 0; s < stages_.size(); ++s) {
            Stage& stage = stages_[s];
            stage.number = static_cast<int>(s) + 1;
            stage.own_number = stage.number;
            stage.bread = recipe_.recipe.title;
            std::stable_sort(stage.acts.begin(), stage.acts.end(), [](const Act& a, const Act& b) {
                return a.at < b.at;
            });
            add_reminders(stage);
        }
        return std::move(stages_);
    }

private:
    [[nodiscard]] bool is_no_line(const Draft& draft, const Stage& stage) const {
        if (placed_.lines) {
            return std::find(placed_.lines->begin(), placed_.lines->end(), draft.first) ==
                   placed_.lines->end();
        }
        // "Chill until wanted", and it is wanted at once.
        return stage.attention == Attention::wait && stage.acts.empty() &&
               stage.start == stage.end.likely;
    }

    [[nodiscard]] std::string_view text_of(std::size_t fitted) const {
        const auto step = recipe_.steps[fitted].step;
        return step && *step < recipe_.recipe.steps.size()
                   ? std::string_view(recipe_.recipe.steps[*step].text)
                   : std::string_view();
    }

    void note_step(Stage& stage, std::size_t fitted) const {
        const auto step = recipe_.steps[fitted].step;
        if (step && std::find(stage.steps.begin(), stage.steps.end(), *step) == stage.steps.end()) {
            stage.steps.push_back(*step);
        }
    }

    void
    add_act(Stage& stage, std::int64_t after, const std::string& text, std::size_t fitted) const {
        if (text.empty()) {
            return;
        }
        Act act;
        act.after_start_minutes = after;
        act.at = later_by_minutes(stage.start, after);
        act.text = text;
        act.step = recipe_.steps[fitted].step;
        const auto& oven = recipe_.steps[fitted].oven;
        if (oven && ends_with(text, words::oven(*oven))) {
            act.oven = oven;
        }
        stage.acts.push_back(act);
    }

    [[nodiscard]] Stage stage_of(const Draft& draft) {
        Stage stage;
        stage.attention = draft.attention;
        stage.first_part = draft.first;
        stage.last_part = draft.last;
        const bool bake = draft.attention == Attention::near;
        stage.start = draft.after_oven && draft.first == chain_.tail && chain_.last_heat &&
                              chain_.atoms[draft.first].attention == Attention::wait
                          ? milestones_.out_of_oven
                          : placed_.frame.at(placed_.starts[draft.first]);
        for (std::size_t k = draft.first; k < draft.last; ++k) {
            if (chain_.atoms[k].fitted) {
                note_step(stage, *chain_.atoms[k].fitted);
            }
        }
        stage.title = title_of(draft, stage);
        stage.who = who_of(draft);
        set_end(draft, stage);
        set_reason(draft, stage);
        set_cue(draft, stage);
        if (bake) {
            add_bake_acts(draft, stage);
        } else if (draft.attention == Attention::wait) {
            add_wait_acts(draft, stage);
        } else {
            add_rests(draft, stage);
        }
        return stage;
    }

    // Whose hands, where there is a choice: those of the first work of the line.
    [[nodiscard]] std::string who_of(const Draft& draft) const {
        for (std::size_t k = draft.first; k < draft.last && day_.people.size() > 1; ++k) {
            if (k < placed_.people.size() && placed_.people[k] &&
                *placed_.people[k] < day_.people.size()) {
                return day_.people[*placed_.people[k]];
            }
        }
        return {};
    }

    // Minutes from the start of a bake's line to atom k (or to its end): as placed, but bakes in a
    // row count exactly from where the first goes in.
    [[nodiscard]] std::int64_t
    exact_after(const Draft& draft, const Stage& stage, std::size_t k) const {
        const auto placed_after = [&](std::int64_t minute) {
            return minutes_between(stage.start, placed_.frame.at(minute));
        };
        std::int64_t run = 0;
        std::size_t b = k;
        while (b > draft.first && chain_.atoms[b - 1].kind == StepKind::bake) {
            --b;
            run += chain_.atoms[b].minutes.likely;
        }
        if (b < k) {
            return placed_after(placed_.starts[b]) + run;
        }
        return k < draft.last ? placed_after(placed_.starts[k]) : placed_after(placed_.ends[k - 1]);
    }

    void set_end(const Draft& draft, Stage& stage) const {
        std::int64_t low = 0;
        std::int64_t high = 0;
        bool chosen = false;
        for (std::size_t k = draft.first; k < draft.last; ++k) {
            const Atom& atom = chain_.atoms[k];
            low += atom.minutes.low;
            high += atom.minutes.high;
            chosen = chosen || atom.stretch;
        }
        Instant end = placed_.frame.at(placed_.ends[draft.last - 1]);
        // Dough that is kept waiting a little waits where it is.
        const bool kept = (draft.attention == Attention::wait ||
                           chain_.atoms[draft.last - 1].attention == Attention::wait) &&
                          draft.last < chain_.atoms.size();
        const Instant next = kept ? placed_.frame.at(placed_.starts[draft.last]) : end;
        if (chosen) {
            end = std::max(end, next);
        }
        if (draft.attention == Attention::near) {
            // The oven is exact, and what cools has left it.
            std::size_t last = draft.last;
            while (last > draft.first + 1 && last > chain_.tail &&
                   chain_.atoms[last - 1].attention == Attention::wait) {
                --last;
            }
            end = later_by_minutes(stage.start, exact_after(draft, stage, last));
            set_oven_minutes(draft, last, stage);
        }
        const bool cools =
            draft.after_oven && draft.last == chain_.atoms.size() && chain_.last_heat;
        if (cools) {
            const Band<std::int64_t>& cut = recipe_.cut_after_minutes;
            stage.end = {
                std::min(later_by_minutes(milestones_.out_of_oven, cut.low), milestones_.cut_from),
                milestones_.cut_from,
                std::max(later_by_minutes(milestones_.out_of_oven, cut.high),
                         milestones_.cut_from)};
            if (stage.end.low < stage.start) {
                stage.end.low = stage.start;
            }
            return;
        }
        stage.end = {chosen ? end : std::min(later_by_minutes(stage.start, low), end),
                     end,
                     std::max({later_by_minutes(stage.start, high), end, next})};
        if (draft.attention != Attention::hands &&
            chain_.atoms[draft.first].kind != StepKind::preheat) {
            stage.look_from = stage.end.low;
        }
    }

    // Slashed or brushed first: the line is longer than the bake.
    void set_oven_minutes(const Draft& draft, std::size_t last, Stage& stage) const {
        if (chain_.atoms[draft.first].kind == StepKind::bake) {
            return;
        }
        Band<std::int64_t> oven{0, 0, 0};
        for (std::size_t k = draft.first; k < last; ++k) {
            const Atom& atom = chain_.atoms[k];
            if (atom.kind == StepKind::bake) {
                oven.low += atom.minutes.low;
                oven.likely += atom.minutes.likely;
                oven.high += atom.minutes.high;
            }
        }
        if (oven.likely > 0) {
            stage.oven_minutes = oven;
        }
    }

    void set_reason(const Draft& draft, Stage& stage) const {
        std::int64_t longest = 0;
        for (std::size_t k = draft.first; k < draft.last; ++k) {
            const Atom& atom = chain_.atoms[k];
            if (!atom.fitted || atom.attention != draft.attention) {
                continue;
            }
            const FittedStep& step = recipe_.steps[*atom.fitted];
            if (step.minutes.likely > longest) {
                longest = step.minutes.likely;
                stage.basis = step.basis;
                stage.reason = step.reason;
            }
        }
    }

    void set_cue(const Draft& draft, Stage& stage) const {
        for (std::size_t k = draft.last; k-- > draft.first;) {
            const Atom& atom = chain_.atoms[k];
            const bool own = draft.attention == Attention::hands
                                 ? atom.attention == Attention::hands
                                 : !atom.inside && atom.hands_minutes == 0;
            if (own && atom.fitted && recipe_.steps[*atom.fitted].cue) {
                stage.cue = recipe_.steps[*atom.fitted].cue;
                return;
            }
        }
    }

    void add_bake_acts(const Draft& draft, Stage& stage) const {
        std::optional<std::size_t> before;
        for (std::size_t k = draft.first; k < draft.last; ++k) {
            const std::int64_t after = exact_after(draft, stage, k);
            const Atom& atom = chain_.atoms[k];
            if (atom.kind != StepKind::bake) {
                if (atom.fitted) {
                    add_act(stage, after, hands_words(*atom.fitted), *atom.fitted);
                }
                continue;
            }
            if (!before && after > 0) {
                add_act(stage, after, "into the oven", *atom.fitted);
            }
            const bool told =
                std::any_of(chain_.ovens.begin(), chain_.ovens.end(), [k](const OvenOn& oven) {
                    return oven.bake == k && oven.hot_at;
                });
            if (before && !told) {
                add_act(
                    stage, after, words::bake_act(recipe_, *before, *atom.fitted), *atom.fitted);
            } else if (!before && chain_.oven && recipe_.steps[*atom.fitted].oven &&
                       *chain_.oven != *recipe_.steps[*atom.fitted].oven &&
                       k == chain_.first_bake) {
                // Heated hotter than it bakes, to make up for the door.
                const Celsius to = *recipe_.steps[*atom.fitted].oven;
                add_act(stage,
                        after,
                        (to < *chain_.oven ? "oven down to " : "oven up to ") + words::oven(to),
                        *atom.fitted);
            }
            for (const InBake& inner : chain_.in_bake) {
                if (inner.atom == k) {
                    note_step(stage, inner.fitted);
                    add_act(stage,
                            after + inner.after_minutes,
                            hands_words(inner.fitted),
                            inner.fitted);
                }
            }
            before = atom.fitted;
        }
    }

    void add_wait_acts(const Draft& draft, Stage& stage) const {
        std::optional<std::size_t> last_wait;
        for (std::size_t k = draft.first; k < draft.last; ++k) {
            const Atom& atom = chain_.atoms[k];
            if (!atom.fitted) {
                continue;
            }
            const std::int64_t after =
                minutes_between(stage.start, placed_.frame.at(placed_.starts[k]));
            if (atom.attention == Attention::hands) {
                add_act(stage, after, hands_words(*atom.fitted), *atom.fitted);
                continue;
            }
            const bool moves = last_wait && *last_wait != *atom.fitted &&
                               recipe_.steps[*atom.fitted].place != recipe_.steps[*last_wait].place;
            if (moves) {
                add_act(stage,
                        after,
                        recipe_.steps[*atom.fitted].place == Place::fridge
                            ? "into the fridge"
                            : "out of the fridge, covered",
                        *atom.fitted);
            }
            last_wait = atom.fitted;
        }
    }

    // A rest inside a go of work, when lines were short.
    void add_rests(const Draft& draft, Stage& stage) const {
        for (std::size_t k = draft.first; k < draft.last; ++k) {
            const Atom& atom = chain_.atoms[k];
            if (atom.attention == Attention::wait && atom.fitted && atom.planned > 0) {
                add_act(stage,
                        minutes_between(stage.start, placed_.frame.at(placed_.starts[k])),
                        (atom.kind == StepKind::activate ? "wake the yeast, " : "rest ") +
                            words::duration(placed_.ends[k] - placed_.starts[k]),
                        *atom.fitted);
            }
        }
    }

    [[nodiscard]] std::string hands_words(std::size_t fitted) const {
        const StepKind kind = recipe_.steps[fitted].kind;
        switch (kind) {
        case StepKind::fold:
        case StepKind::knock_back:
            return words::verb(kind, text_of(fitted));
        case StepKind::finish: {
            const std::string word = words::verb(kind, text_of(fitted));
            if (word != "finish") {
                return word;
            }
            break;
        }
        default:
            break;
        }
        const std::string own = words::first_words(text_of(fitted));
        return own.empty() ? words::verb(kind, {}) : own;
    }

    [[nodiscard]] std::string title_of(const Draft& draft, const Stage& stage) {
        if (draft.after_oven && draft.attention == Attention::wait) {
            const bool first =
                std::none_of(stages_.begin(), stages_.end(), [&](const Stage& before) {
                    return before.title == words::out_title(recipe_);
                });
            return first ? words::out_title(recipe_) : std::string("Leave to cool");
        }
        if (draft.attention == Attention::near) {
            return "Bake";
        }
        if (draft.attention == Attention::hands) {
            std::vector<std::size_t> fitted;
            for (std::size_t k = draft.first; k < draft.last; ++k) {
                if (chain_.atoms[k].attention == Attention::hands && chain_.atoms[k].fitted) {
                    fitted.push_back(*chain_.atoms[k].fitted);
                }
            }
            return words::hands_title(recipe_, fitted);
        }
        // The longest wait gives the line its name.
        std::optional<std::size_t> longest;
        for (std::size_t k = draft.first; k < draft.last; ++k) {
            const Atom& atom = chain_.atoms[k];
            if (atom.attention == Attention::wait &&
                (!longest || atom.planned > chain_.atoms[*longest].planned)) {
                longest = k;
            }
        }
        if (!longest || !chain_.atoms[*longest].fitted) {
            return chain_.atoms[draft.first].kind == StepKind::preheat ? "Heat the oven" : "Rest";
        }
        words::WaitPlace place;
        place.rises = 0;
        for (std::size_t k = 0; k < chain_.atoms.size(); ++k) {
            const Atom& atom = chain_.atoms[k];
            const bool first_part = k == 0 || chain_.atoms[k - 1].fitted != atom.fitted;
            if (atom.kind == StepKind::prove && k >= draft.last) {
                place.later_prove = true;
            }
            if (atom.kind == StepKind::rise && first_part && !continues_wait(k)) {
                ++place.rises;
                place.number =
                    k <= draft.first || rises_before(draft, k) == 0 ? place.rises : place.number;
            }
        }
        place.night =
            holds_small_hours(stage.start, placed_.frame.at(placed_.ends[draft.last - 1]));
        return words::wait_title(recipe_, *chain_.atoms[*longest].fitted, place);
    }

    // Rises inside the draft before atom k.
    [[nodiscard]] std::size_t rises_before(const Draft& draft, std::size_t k) const {
        std::size_t count = 0;
        for (std::size_t b = draft.first; b < std::min(k, draft.last); ++b) {
            count += chain_.atoms[b].kind == StepKind::rise ? 1U : 0U;
        }
        return k < draft.last ? count : 1;
    }

    // True when atom k goes on with a wait that a fold interrupted.
    [[nodiscard]] bool continues_wait(std::size_t k) const {
        for (std::size_t b = k; b-- > 0;) {
            const Atom& before = chain_.atoms[b];
            if (before.attention == Attention::wait) {
                return before.kind == chain_.atoms[k].kind;
            }
            if (before.kind != StepKind::fold && !before.inside) {
                return false;
            }
        }
        return false;
    }

    [[nodiscard]] bool holds_small_hours(Instant from, Instant to) const {
        const CivilTime civil = civil_of(day_.zone, from);
        const std::int64_t minute = civil.clock.hour * 60 + civil.clock.minute;
        constexpr std::int64_t three_in_the_morning = 180;
        const std::int64_t until = minute <= three_in_the_morning
                                       ? three_in_the_morning - minute
                                       : three_in_the_morning + 1440 - minute;
        return minutes_between(from, to) >= until;
    }

    void switch_oven_on() {
        if (chain_.heat_minutes == 0 || !chain_.first_bake) {
            return;
        }
        for (const OvenOn& oven : chain_.ovens) {
            const Instant bake = placed_.frame.at(placed_.starts[oven.bake]);
            const Instant first = placed_.frame.at(placed_.starts.front());
            const Instant on = std::max(first, later_by_minutes(bake, -oven.before_minutes));
            std::size_t at = 0;
            while (at + 1 < stages_.size() && stages_[at + 1].start <= on) {
                ++at;
            }
            Act act;
            act.at = on;
            act.after_start_minutes = minutes_between(stages_[at].start, on);
            act.text = oven_words(oven);
            act.oven = oven.setting;
            if (oven.bake == *chain_.first_bake) {
                for (const std::size_t fitted : chain_.preheats) {
                    note_step(stages_[at], fitted);
                    act.step = act.step ? act.step : recipe_.steps[fitted].step;
                }
            }
            stages_[at].acts.push_back(act);
        }
    }

    [[nodiscard]] std::string oven_words(const OvenOn& oven) const {
        if (oven.hot_at && oven.setting) {
            return (*oven.setting < *oven.hot_at ? "oven down to " : "oven up to ") +
                   words::oven(*oven.setting);
        }
        return std::string(recipe_.dough_leaves_oven ? "dough out, then oven on" : "oven on") +
               (oven.setting ? ", " + words::oven(*oven.setting) : "");
    }

    void eat() {
        Stage stage;
        stage.title = "Eat";
        stage.attention = Attention::none;
        stage.start = milestones_.eat.likely;
        stage.end = milestones_.eat;
        stage.end.low = stage.end.likely = stage.start;
        stage.end.high = stage.start;
        stage.first_part = stage.last_part = chain_.atoms.size();
        for (std::size_t f = 0; f < recipe_.steps.size(); ++f) {
            if (recipe_.steps[f].kind == StepKind::serve) {
                note_step(stage, f);
            }
        }
        stages_.push_back(stage);
    }

    void add_reminders(Stage& stage) const {
        for (const std::size_t step : stage.steps) {
            if (step < recipe_.recipe.steps.size()) {
                const auto& own = recipe_.recipe.steps[step].reminders;
                stage.reminders.insert(stage.reminders.end(), own.begin(), own.end());
            }
        }
        // An act has a box and a time of its own.
        const auto is_act = [&stage](const Reminder& reminder) {
            return std::any_of(stage.acts.begin(), stage.acts.end(), [&reminder](const Act& act) {
                return lower_case(act.text) == lower_case(reminder.text);
            });
        };
        stage.reminders.erase(
            std::remove_if(stage.reminders.begin(), stage.reminders.end(), is_act),
            stage.reminders.end());
        std::stable_sort(stage.reminders.begin(),
                         stage.reminders.end(),
                         [](const Reminder& a, const Reminder& b) { return a.weight > b.weight; });
    }

    const FittedRecipe& recipe_;
    const BreadChain& chain_;
    const Placed& placed_;
    const Day& day_;
    const Milestones& milestones_;
    std::vector<Stage> stages_;
};

} // namespace

std::vector<Stage> stages_of(const FittedRecipe& recipe,
                             const BreadChain& chain,
                             const Placed& placed,
                             const Day& day,
                             const Milestones& milestones) {
    return StageMaker(recipe, chain, placed, day, milestones).run();
}

} // namespace loafwright::planning
