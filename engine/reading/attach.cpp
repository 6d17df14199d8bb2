// SPDX-License-Identifier: Apache-2.0
//
// What each length of time in a clause is for, once it is known what the clause does. The words
// around the length have given it a role (duration.cpp); here the role meets the step: a rhythm
// inside a wait, a further part of a bake, the other of two ways.
#include "engine/reading/attach.hpp"

#include <algorithm>

namespace loafwright::reading {
namespace {

class Attacher {
public:
    Attacher(std::string_view text,
             const Layout& layout,
             const Lexicon& lexicon,
             const std::vector<Clause>& clauses,
             Assembly& assembly)
        : text_(text), layout_(layout), lexicon_(lexicon), clauses_(clauses), assembly_(assembly) {}

    void run(std::size_t index) {
        const Clause& clause = clauses_[index];
        std::size_t draft = assembly_.drafts.size() - 1;
        std::size_t heat = 0; // which oven temperature of the clause is the next part's
        for (const DurationPhrase& duration : clause.durations) {
            if (belongs_to_wait_before(clause, duration)) {
                continue;
            }
            Step& step = assembly_.drafts[draft].step;
            switch (duration.role) {
            case DurationRole::length:
            case DurationRole::further:
            case DurationRole::each_side:
                length(index, clause, duration, draft, heat);
                break;
            case DurationRole::total:
                if (step.kind == StepKind::bake || step.kind == StepKind::cook) {
                    assembly_.drafts[draft].total = duration.likely;
                } else if (!step.minutes) {
                    step.minutes = band_of(duration);
                }
                break;
            case DurationRole::every:
                every(index, duration, draft);
                break;
            case DurationRole::ahead:
                // "let it cool 15 minutes before serving" is how long, "half an hour before
                // baking, heat the oven" is when.
                if (step.kind == StepKind::prepare && duration.likely.count() >= 20 &&
                    any_word(layout_.tokens, clause.range, {"out", "from"})) {
                    another_wait(index, clause, duration, StepKind::rest); // out of the fridge
                    draft = assembly_.drafts.size() - 1;
                } else if (attention_of(step.kind) == Attention::wait && clause.action &&
                           duration.range.begin >= clause.action->range.begin) {
                    length(index, clause, duration, draft, heat);
                } else {
                    step.before_next = duration.likely;
                }
                break;
            case DurationRole::turning:
                turning(index, clause, duration, draft);
                break;
            case DurationRole::between:
                between(clause, duration, draft);
                break;
            case DurationRole::last:
                last_part(index, clause, duration, draft);
                break;
            case DurationRole::whole_plan:
            case DurationRole::keeps:
            case DurationRole::limit:
                break;
            }
        }
    }

private:
    void length(std::size_t index,
                const Clause& clause,
                const DurationPhrase& duration,
                std::size_t& draft,
                std::size_t& heat) {
        Step& step = assembly_.drafts[draft].step;
        const Token* before = duration.range.begin > clause.range.begin
                                  ? &layout_.tokens[duration.range.begin - 1]
                                  : nullptr;
        const bool after_or = before != nullptr && is_word(*before, "or");
        if (const auto kind = wait_named(clause, duration);
            kind && *kind != step.kind && attention_of(step.kind) != Attention::wait) {
            another_wait(index, clause, duration, *kind);
            return;
        }
        if (step.kind == StepKind::preheat && duration.likely.count() >= 15 &&
            any_word(layout_.tokens, clause.range, {"before", "ahead"})) {
            step.before_next = duration.likely;
            return;
        }
        if (duration.from && !step.clock) {
            step.clock = duration.from; // "from nine in the evening till six"
        }
        const bool guessed =
            step.minutes && step.minutes->basis == Basis::assumed && !duration.assumed;
        if (guessed && !after_or) { // "overnight, 14 hours": the figure outranks the word
            step.minutes = band_of(duration);
            return;
        }
        if (!step.minutes) {
            if (step.kind == StepKind::serve || step.kind == StepKind::store) {
                return;
            }
            if (too_long_for_hands(step.kind, duration)) {
                another_wait(index, clause, duration, wait_after(clause, step.kind, duration));
                draft = assembly_.drafts.size() - 1;
                return;
            }
            step.minutes = band_of(duration);
            return;
        }
        if (after_or && duration.role == DurationRole::further) { // "or an hour longer in winter"
            step.minutes->minutes.high += duration.high;
            return;
        }
        const bool with_the_machine =
            before != nullptr && is_mark(*before, '(') &&
            any_word(layout_.tokens, clause.range, {"mixer", "machine", "processor", "hand"});
        if (after_or || with_the_machine) {
            other_way(clause, duration, step);
            return;
        }
        const bool parts = step.kind == StepKind::bake || step.kind == StepKind::cook ||
                           step.kind == StepKind::knead;
        const bool same = step.minutes->minutes.low == duration.low &&
                          step.minutes->minutes.high == duration.high;
        const bool goes_on =
            before != nullptr && (is_word(*before, "then") || is_word(*before, "and"));
        if (attention_of(step.kind) == Attention::wait && before != nullptr &&
            is_word(*before, "then")) {
            another_wait(index,
                         clause,
                         duration,
                         step.kind); // "2 h at room temperature, then 12 h in the fridge"
            return;
        }
        if (!parts || (same && duration.role != DurationRole::further && !goes_on)) {
            return; // told again
        }
        // "30 minutes covered, then 20 uncovered": a further part of the same bake.
        Draft further;
        further.is_further = true;
        further.step.kind = step.kind;
        further.step.place = step.place;
        further.step.part = step.part;
        further.step.minutes = band_of(duration);
        const TokenRange tail{duration.range.begin, clause.range.end};
        further.step.span = span_of(layout_.tokens, tail);
        further.step.text = tidy(text_, further.step.span);
        further.clauses.push_back(index);
        ++heat;
        std::size_t seen = 0;
        for (const TemperaturePhrase& temperature : clause.temperatures) {
            if (temperature.middle() >= 95 && seen++ == heat) {
                further.step.temperature = TemperatureRange{temperature.low, temperature.high};
            }
        }
        assembly_.drafts.push_back(std::move(further));
        draft = assembly_.drafts.size() - 1;
    }

    // "Fold every 30 minutes for 2 hours": the wait is two hours, the fold happens inside it.
    void every(std::size_t index, const DurationPhrase& duration, std::size_t& draft) {
        Step& step = assembly_.drafts[draft].step;
        if (attention_of(step.kind) == Attention::wait) {
            fold_inside(index, duration, draft);
            return;
        }
        step.repeat = duration.likely;
        if (step.kind == StepKind::shape) {
            step.kind = StepKind::fold; // stretching it every half hour is folding
        }
        const DurationPhrase* span = nullptr;
        for (const DurationPhrase& other : clauses_[index].durations) {
            if (is_length(other)) {
                span = &other;
            }
        }
        if (span == nullptr) {
            if (const auto wait = last_wait_in(assembly_)) {
                step.during = *wait;
            }
            return;
        }
        Draft wait;
        wait.step.kind = StepKind::rise;
        wait.step.minutes = band_of(*span);
        wait.step.span = step.span;
        wait.step.text = step.text;
        wait.step.part = step.part;
        wait.clauses.push_back(index);
        step.minutes.reset();
        assembly_.drafts.insert(assembly_.drafts.begin() + static_cast<std::ptrdiff_t>(draft),
                                std::move(wait));
        assembly_.drafts.back().step.during = draft;
        assembly_.uses[index].draft = draft;
        ++draft;
    }

    // "four hours, turning it every hour": the fold is told inside the wait's own clause.
    void fold_inside(std::size_t index, const DurationPhrase& duration, std::size_t draft) {
        const TokenRange range = clauses_[index].range;
        const bool folds = lexicon_.holds("fold word", "", layout_.tokens, layout_.ids, range);
        if (!folds) {
            return;
        }
        Draft fold;
        fold.step.kind = StepKind::fold;
        fold.step.repeat = duration.likely;
        fold.step.during = draft;
        fold.step.span = assembly_.drafts[draft].step.span;
        fold.step.text = assembly_.drafts[draft].step.text;
        fold.clauses.push_back(index);
        assembly_.drafts.push_back(std::move(fold));
    }

    // "after the first ten minutes" of a bake: the part before lasts so long. "Fold after an hour":
    // inside the wait before it.
    void turning(std::size_t index,
                 const Clause& clause,
                 const DurationPhrase& duration,
                 std::size_t& draft) {
        Draft& now = assembly_.drafts[draft];
        // "Fifty minutes, the first fifteen with a hot fire": two heats of one bake.
        const bool two_heats =
            now.step.kind == StepKind::bake && now.step.minutes && !now.is_further &&
            duration.range.begin > clause.range.begin &&
            any_word(layout_.tokens,
                     TokenRange{duration.range.begin - 1, duration.range.end},
                     {"first"}) &&
            any_word(layout_.tokens,
                     clause.range,
                     {"fire", "heat", "hot", "hotter", "high", "steam", "lid", "covered"});
        if (two_heats && duration.likely < now.step.minutes->minutes.low) {
            Draft rest;
            rest.step = now.step;
            rest.is_further = true;
            rest.clauses.push_back(index);
            const TokenRange tail{duration.range.begin, clause.range.end};
            rest.step.span = span_of(layout_.tokens, tail);
            rest.step.text = tidy(text_, rest.step.span);
            Band<Minutes>& left = rest.step.minutes->minutes;
            left = Band<Minutes>{left.low - duration.likely,
                                 left.likely - duration.likely,
                                 left.high - duration.likely};
            now.step.minutes = band_of(duration);
            now.step.cue.reset();
            assembly_.drafts.push_back(std::move(rest));
            draft = assembly_.drafts.size() - 1;
            return;
        }
        if (now.step.kind == StepKind::fold || now.step.kind == StepKind::finish ||
            now.step.kind == StepKind::knock_back) {
            if (const auto wait = last_wait_in(assembly_); wait && *wait < draft) {
                now.step.during = *wait;
                now.step.after_start = duration.likely;
            }
            return;
        }
        const bool once_more =
            duration.range.begin > clause.range.begin &&
            any_word(layout_.tokens,
                     TokenRange{duration.range.begin - 1, duration.range.begin + 1},
                     {"second", "another", "further"});
        if (once_more && draft > 0 &&
            attention_of(assembly_.drafts[draft - 1].step.kind) == Attention::hands) {
            // "Turn it over, and after a second half-hour scale it off": it has stood meanwhile.
            Draft stood = draft_at(text_,
                                   layout_.tokens,
                                   duration.range,
                                   index,
                                   duration.likely.count() < 25 ? StepKind::rest : StepKind::rise,
                                   Place::counter);
            stood.step.minutes = band_of(duration);
            std::swap(assembly_.drafts[draft], stood);
            assembly_.drafts.push_back(std::move(stood));
            draft = assembly_.drafts.size() - 1;
            assembly_.uses[index].draft = draft;
            return;
        }
        if (now.step.kind != StepKind::bake && now.step.kind != StepKind::cook) {
            // "After fifty minutes take it out": so long did the step before last.
            if (draft > 0 && takes_time(assembly_.drafts[draft - 1].step.kind) &&
                !assembly_.drafts[draft - 1].step.minutes) {
                assembly_.drafts[draft - 1].step.minutes = band_of(duration);
            }
            return;
        }
        // "Bake at 200 °C for the first ten minutes, then…"
        const bool named_first = duration.range.begin > clause.range.begin &&
                                 any_word(layout_.tokens,
                                          TokenRange{duration.range.begin - 1, duration.range.end},
                                          {"first"});
        const bool alone = std::none_of(
            assembly_.drafts.begin(),
            assembly_.drafts.begin() + static_cast<std::ptrdiff_t>(draft),
            [&now](const Draft& earlier) { return earlier.step.kind == now.step.kind; });
        if (alone && named_first && !now.step.minutes) {
            now.step.minutes = band_of(duration);
            return;
        }
        // "Have the oven at 400 and after fifteen minutes turn it down": it has baked so long.
        if (alone && !named_first && now.turns_down && draft > 0) {
            Draft hot =
                draft_at(text_, layout_.tokens, duration.range, index, StepKind::bake, Place::oven);
            hot.step.minutes = band_of(duration);
            for (std::size_t at = draft; at > 0; --at) {
                const Step& earlier = assembly_.drafts[at - 1].step;
                if (earlier.kind == StepKind::preheat && earlier.temperature) {
                    hot.step.temperature = earlier.temperature;
                    break;
                }
            }
            std::swap(assembly_.drafts[draft], hot);
            assembly_.drafts.push_back(std::move(hot));
            draft = assembly_.drafts.size() - 1;
            assembly_.uses[index].draft = draft;
            return;
        }
        for (std::size_t at = draft; at > 0; --at) {
            Step& earlier = assembly_.drafts[at - 1].step;
            if (earlier.kind != now.step.kind) {
                continue;
            }
            if (earlier.minutes && earlier.minutes->basis == Basis::stated &&
                earlier.minutes->minutes.low.count() > duration.likely.count() &&
                !now.step.minutes) {
                const Minutes first = duration.likely;
                TimedBand rest = *earlier.minutes;
                rest.minutes = Band<Minutes>{rest.minutes.low - first,
                                             rest.minutes.likely - first,
                                             rest.minutes.high - first};
                now.step.minutes = rest;
            }
            TimedBand first = band_of(duration);
            earlier.minutes = first;
            return;
        }
    }

    // "an autolyse of 45 minutes", "a 20 minute rest": the noun beside the length names the wait.
    [[nodiscard]] std::optional<StepKind> wait_named(const Clause& clause,
                                                     const DurationPhrase& duration) const {
        const auto& tokens = layout_.tokens;
        std::size_t at = duration.range.begin;
        if (at >= clause.range.begin + 2 && is_word(tokens[at - 1], "of")) {
            const std::size_t from = at >= clause.range.begin + 3 ? at - 3 : at - 2;
            for (std::size_t token = from; token + 1 < at; ++token) {
                const Match noun = lexicon_.at("wait noun", tokens, layout_.ids, token, at - 1);
                if (noun.row != nullptr && noun.range.end + 1 == at) {
                    return step_kind_named(noun.row->means);
                }
            }
        }
        at = duration.range.end;
        if (at < clause.range.end) {
            const Match noun = lexicon_.at("wait noun", tokens, layout_.ids, at, clause.range.end);
            const bool verb = at > 0 && duration.range.begin == clause.range.begin;
            if (noun.row != nullptr && noun.head == Inflection::none && !verb) {
                return step_kind_named(noun.row->means);
            }
        }
        return std::nullopt;
    }

    // "put it in tins and keep it by the fender an hour": no hands are busy that long, so the dough
    // waits.
    static bool too_long_for_hands(StepKind kind, const DurationPhrase& duration) {
        const double minutes = duration.likely.count();
        switch (kind) {
        case StepKind::mix:
            return minutes > 20;
        case StepKind::shape:
        case StepKind::divide:
        case StepKind::finish:
        case StepKind::knock_back:
            return minutes > 15;
        case StepKind::knead:
            return minutes > 45;
        default:
            return false;
        }
    }

    [[nodiscard]] StepKind
    wait_after(const Clause& clause, StepKind kind, const DurationPhrase& duration) const {
        // "Slash, lid on, 25 minutes": what is cut stands in the oven next.
        if (kind == StepKind::finish && clause.action &&
            (clause.action->row->say == "slash" || clause.action->row->say == "score")) {
            return StepKind::bake;
        }
        if (kind == StepKind::shape || kind == StepKind::finish) {
            return StepKind::prove;
        }
        const bool sponge =
            std::any_of(clause.nouns.begin(), clause.nouns.end(), [](const Match& noun) {
                return noun.row->means == "sponge";
            });
        return sponge                          ? StepKind::ferment
               : duration.likely.count() <= 35 ? StepKind::rest
                                               : StepKind::rise;
    }

    void another_wait(std::size_t index,
                      const Clause& clause,
                      const DurationPhrase& duration,
                      StepKind kind) {
        Draft wait;
        wait.step.kind = kind;
        wait.step.minutes = band_of(duration);
        const TokenRange tail{duration.range.begin, clause.range.end};
        const bool fridge = lexicon_.holds("place", "fridge", layout_.tokens, layout_.ids, tail);
        if (fridge) {
            wait.step.kind = StepKind::chill;
            wait.step.place = Place::fridge;
            Step& before = assembly_.drafts.back().step; // the fridge is the second wait's
            if (before.place == Place::fridge && before.kind != StepKind::chill) {
                before.place = Place::counter;
            }
        }
        wait.step.span = span_of(layout_.tokens, tail);
        wait.step.text = tidy(text_, wait.step.span);
        wait.step.part = assembly_.drafts.back().step.part;
        wait.clauses.push_back(index);
        assembly_.drafts.push_back(std::move(wait));
    }

    // "… or overnight in the fridge", "or 12 minutes by hand"; "or 2 hours if the kitchen is cold"
    // is the same wait, longer.
    void other_way(const Clause& clause, const DurationPhrase& duration, Step& step) const {
        const std::size_t next = duration.range.end;
        const bool depends = next < clause.range.end &&
                             any_word(layout_.tokens,
                                      TokenRange{next, std::min(clause.range.end, next + 3)},
                                      {"if", "when", "winter", "summer"});
        if (depends) {
            Band<Minutes>& minutes = step.minutes->minutes;
            minutes.high = Minutes(std::max(minutes.high.count(), duration.high.count()));
            minutes.low = Minutes(std::min(minutes.low.count(), duration.low.count()));
            minutes.likely = minutes.low + (minutes.high - minutes.low) / 2.0;
            return;
        }
        Alternative other;
        other.kind = step.kind;
        const TokenRange rest{duration.range.begin, clause.range.end};
        const bool fridge = lexicon_.holds("place", "fridge", layout_.tokens, layout_.ids, rest);
        other.place = fridge ? Place::fridge : step.place;
        other.minutes = band_of(duration);
        step.alternatives.push_back(other);
        if (fridge && step.place == Place::fridge) { // the fridge belongs to the other way
            step.place = Place::counter;
        }
    }

    // "three folds with 30 minutes between": a rhythm. Between feeds it is how long the leaven
    // works.
    void between(const Clause& clause, const DurationPhrase& duration, std::size_t draft) {
        Step& step = assembly_.drafts[draft].step;
        if (attention_of(step.kind) == Attention::wait && !step.minutes) {
            step.minutes = band_of(duration);
        } else if (step.kind == StepKind::fold) {
            step.repeat = duration.likely;
            if (const auto wait = last_wait_in(assembly_); wait && clause.meanwhile) {
                step.during = *wait;
            }
        }
    }

    // "40 minutes, the lid off for the last 15": two parts.
    void last_part(std::size_t index,
                   const Clause& clause,
                   const DurationPhrase& duration,
                   std::size_t& draft) {
        Step& step = assembly_.drafts[draft].step;
        if (step.kind == StepKind::preheat) {
            step.before_next = duration.likely;
            return;
        }
        // Foil over the crust for the last minutes is no part of its own; a lid that comes off is.
        if (!any_word(
                layout_.tokens,
                clause.range,
                {"lid", "lids", "uncover", "uncovered", "off", "without", "remove", "removing"})) {
            return;
        }
        std::size_t whole = draft;
        if (!step.minutes && draft > 0 && assembly_.drafts[draft - 1].step.kind == step.kind) {
            whole = draft - 1; // "…, taking the lid off for the last 15" became a draft of its own
        }
        Step& first = assembly_.drafts[whole].step;
        if (first.kind != StepKind::bake || !first.minutes ||
            first.minutes->minutes.low.count() <= duration.likely.count()) {
            return;
        }
        const Minutes last = duration.likely;
        first.minutes->minutes.low = first.minutes->minutes.low - last;
        first.minutes->minutes.likely = first.minutes->minutes.likely - last;
        first.minutes->minutes.high = first.minutes->minutes.high - last;
        if (whole != draft) {
            step.minutes = band_of(duration);
            return;
        }
        Draft part;
        part.step.kind = first.kind;
        part.step.place = first.place;
        part.step.part = first.part;
        part.step.minutes = band_of(duration);
        part.step.span =
            span_of(layout_.tokens, TokenRange{duration.range.begin, clause.range.end});
        part.step.text = tidy(text_, part.step.span);
        part.clauses.push_back(index);
        assembly_.drafts.push_back(std::move(part));
        draft = assembly_.drafts.size() - 1;
    }

private:
    std::string_view text_;
    const Layout& layout_;
    const Lexicon& lexicon_;
    const std::vector<Clause>& clauses_;
    Assembly& assembly_;
};

} // namespace

void attach_times(std::string_view text,
                  const Layout& layout,
                  const Lexicon& lexicon,
                  const std::vector<Clause>& clauses,
                  std::size_t clause,
                  Assembly& assembly) {
    Attacher(text, layout, lexicon, clauses, assembly).run(clause);
}

} // namespace loafwright::reading
