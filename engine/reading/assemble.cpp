// SPDX-License-Identifier: Apache-2.0
//
// From decided clauses to steps. One pass over the clauses builds drafts and attaches what each
// clause tells; a clause without an action of its own adds to the step before it. Then join.cpp
// joins what belongs together. The rules here are about language ("another ten", "in all", "by the
// morning"), never about a bread.
#include "engine/reading/assemble.hpp"

#include "engine/reading/attach.hpp"
#include "engine/reading/candidate.hpp"
#include "engine/reading/join.hpp"
#include "engine/reading/refer.hpp"
#include "engine/reading/sign.hpp"
#include "engine/reading/untold.hpp"
#include "engine/reading/variant.hpp"
#include "engine/reading/warmth.hpp"

#include <algorithm>
#include <array>

namespace loafwright::reading {
namespace {

class Assembler {
public:
    Assembler(std::string_view text,
              const Layout& layout,
              const Lexicon& lexicon,
              const std::vector<Clause>& clauses,
              const std::vector<Decision>& decisions)
        : text_(text), layout_(layout), lexicon_(lexicon), clauses_(clauses),
          decisions_(decisions) {
        assembly_.uses.resize(clauses.size());
    }

    Assembly run() {
        for (std::size_t index = 0; index < clauses_.size(); ++index) {
            const Clause& clause = clauses_[index];
            before(index, clause);
            if (decisions_[index].kind) {
                step_from(index, clause, *decisions_[index].kind);
            } else if (leads_in(index)) {
                waiting_.push_back(index);
            } else {
                remark_from(index, clause);
            }
            clock_told_ = clock_told_ || !clause.clocks.empty();
            if (heated_in_passing_) {
                assembly_.drafts.push_back(std::move(*heated_in_passing_));
                heated_in_passing_.reset();
            }
        }
        if (auto bake = bake_at_the_end(text_, tokens(), clauses_, assembly_.drafts)) {
            assembly_.drafts.push_back(std::move(*bake));
        }
        wait_by_the_clock(clauses_, assembly_);
        join_drafts(assembly_);
        for (Draft& draft : assembly_.drafts) {
            finish(draft);
        }
        return std::move(assembly_);
    }

private:
    [[nodiscard]] const std::vector<Token>& tokens() const { return layout_.tokens; }

    // "Cover | and let it rise": a few words that are no step by themselves belong to the step that
    // follows in their sentence.
    [[nodiscard]] bool leads_in(std::size_t index) const {
        const Clause& clause = clauses_[index];
        constexpr std::size_t few = 12;
        return clause.action && !clause.negated && !clause.variant && clause.durations.empty() &&
               clause.range.end - clause.range.begin <= few && index + 1 < clauses_.size() &&
               clauses_[index + 1].sentence == clause.sentence &&
               decisions_[index + 1].kind.has_value();
    }

    Draft* last() { return assembly_.drafts.empty() ? nullptr : &assembly_.drafts.back(); }

    // The last step that is a wait, looking back over getting things ready and heating the oven.
    Draft* last_wait() {
        for (auto draft = assembly_.drafts.rbegin(); draft != assembly_.drafts.rend(); ++draft) {
            if (draft->step.during && draft->step.kind == StepKind::fold) {
                continue; // goes on inside its wait
            }
            if (attention_of(draft->step.kind) == Attention::wait &&
                draft->step.kind != StepKind::cool) {
                return &*draft;
            }
            if (draft->step.kind != StepKind::prepare && draft->step.kind != StepKind::preheat &&
                draft->step.kind != StepKind::weigh) {
                return nullptr;
            }
        }
        return nullptr;
    }

    // "When it has doubled…", "In the morning…": what a clause tells about the wait before it.
    void before(std::size_t index, const Clause& clause) {
        if (clause.variant) {
            return;
        }
        heated_in_passing_ = heating_in_passing(text_, tokens(), clause, index);
        if (auto bake = untold_bake(text_, tokens(), clause, index, assembly_.drafts)) {
            assembly_.drafts.push_back(std::move(*bake));
        }
        for (const SubClause& sub : clause.subs) {
            const bool tells = sub.kind == SubKind::when || sub.kind == SubKind::after;
            const bool opens = !clause.action || sub.range.begin < clause.action->range.begin;
            if (!tells || !opens) {
                continue;
            }
            const bool risen =
                std::any_of(clause.cues.begin(), clause.cues.end(), [&](const Match& cue) {
                    return cue.row->means == "risen" && cue.range.begin >= sub.range.begin &&
                           cue.range.begin < sub.range.end;
                });
            const DurationPhrase* stood = nullptr;
            for (const DurationPhrase& duration : clause.durations) {
                stood = belongs_to_wait_before(clause, duration) ? &duration : stood;
            }
            if ((!risen && stood == nullptr) || assembly_.drafts.empty()) {
                continue;
            }
            Draft* wait = last_wait();
            if (wait == nullptr) {
                wait = &untold_wait(index, clause, sub);
            }
            if (!wait->step.cue && risen) {
                wait->step.cue = cue_in(text_, tokens(), sub.range);
            }
            if (!wait->step.minutes && stood != nullptr) {
                wait->step.minutes = band_of(*stood);
            }
            if (!decisions_[index].kind) { // the sign is all that this clause tells
                wait->clauses.push_back(index);
                assembly_.uses[index].draft =
                    static_cast<std::size_t>(wait - assembly_.drafts.data());
            }
        }
        if (night_went_by(clause)) {
            Draft* wait = last_wait();
            const bool dough = std::any_of(
                assembly_.drafts.begin(), assembly_.drafts.end(), [](const Draft& draft) {
                    return draft.step.kind == StepKind::mix || draft.step.kind == StepKind::knead;
                });
            if (wait == nullptr && dough && clause.action) {
                wait = &untold_wait(index, clause, SubClause{SubKind::when, clause.range});
                wait->step.kind = index > 0 && names(clauses_[index - 1], "sponge")
                                      ? StepKind::ferment
                                      : wait->step.kind;
                wait->step.span =
                    span_of(tokens(), TokenRange{clause.range.begin, clause.action->range.begin});
                wait->step.text = tidy(text_, wait->step.span);
            }
            if (wait != nullptr && !wait->step.minutes) {
                wait->step.minutes = TimedBand{
                    Band<Minutes>{Minutes(480), Minutes(600), Minutes(840)}, Basis::assumed};
            }
            if (wait != nullptr) {
                wait->at_night = true;
            }
        }
    }

    // "In the morning", "first thing next day", at the start of a clause.
    [[nodiscard]] bool night_went_by(const Clause& clause) const {
        const TokenRange opening{clause.range.begin,
                                 std::min(clause.range.end, clause.range.begin + 4)};
        if (!clause.subs.empty() && clause.subs.front().kind == SubKind::until) {
            return false;
        }
        const bool morning = any_word(tokens(), opening, {"morning"}) &&
                             any_word(tokens(), opening, {"in", "next", "following"}) &&
                             !any_word(tokens(), opening, {"early"});
        const bool next_day = any_word(tokens(), opening, {"morrow"}) ||
                              (any_word(tokens(), opening, {"day"}) &&
                               any_word(tokens(), opening, {"next", "following"}));
        return morning || next_day;
    }

    // The text tells that the dough has risen but never told anyone to let it: the wait stands
    // between the lines.
    Draft& untold_wait(std::size_t index, const Clause& clause, const SubClause& sub) {
        bool shaped = false;
        for (auto draft = assembly_.drafts.rbegin(); draft != assembly_.drafts.rend(); ++draft) {
            if (attention_of(draft->step.kind) == Attention::wait) {
                break;
            }
            shaped = shaped || draft->step.kind == StepKind::shape;
        }
        assembly_.drafts.push_back(draft_at(text_,
                                            tokens(),
                                            sub.range,
                                            index,
                                            shaped ? StepKind::prove : StepKind::rise,
                                            place_of(clause)));
        return assembly_.drafts.back();
    }

    // "Leave it 2 hours, or, for more flavour, put it in the fridge for 18": one wait, two ways.
    bool other_wait(std::size_t index, const Clause& clause, StepKind kind) {
        Draft* before = last();
        const DurationPhrase* length = own_length(clause);
        if (!clause.action || index == 0) {
            return false;
        }
        // "or, for more flavour, put": a few words may stand between.
        constexpr std::size_t reach = 7;
        const std::size_t at = clause.action->range.begin;
        const std::size_t from =
            std::max(clauses_[index - 1].range.begin, at > reach ? at - reach : std::size_t{0});
        const bool after_or = any_word(tokens(), TokenRange{from, at}, {"or"});
        if (!after_or || length == nullptr || before == nullptr || !before->step.minutes ||
            attention_of(kind) != Attention::wait ||
            attention_of(before->step.kind) != Attention::wait ||
            clauses_[before->clauses.back()].sentence != clause.sentence) {
            return false;
        }
        Alternative other;
        other.kind = before->step.kind;
        other.place = kind == StepKind::chill ? Place::fridge : place_of(clause);
        other.minutes = band_of(*length);
        before->step.alternatives.push_back(other);
        before->clauses.push_back(index);
        assembly_.uses[index].draft = assembly_.drafts.size() - 1;
        return true;
    }

    void step_from(std::size_t index, const Clause& clause, StepKind kind) {
        if (other_wait(index, clause, kind)) {
            return;
        }
        Draft draft;
        Step& step = draft.step;
        step.kind = kind;
        step.span = span_of(tokens(), clause.range);
        step.text = tidy(text_, step.span);
        step.part = part_of(clause);
        step.optional = clause.optional;
        step.meanwhile = clause.meanwhile;
        step.after_night = night_went_by(clause);
        draft.sureness = decisions_[index].score;
        for (const std::size_t lead : waiting_) {
            step.span.begin =
                std::min(step.span.begin, span_of(tokens(), clauses_[lead].range).begin);
            assembly_.uses[lead].draft = assembly_.drafts.size();
            draft.clauses.push_back(lead);
        }
        waiting_.clear();
        draft.clauses.push_back(index);
        if (attention_of(kind) == Attention::wait) {
            step.place = kind == StepKind::chill ? Place::fridge : place_of(clause);
        } else if (kind == StepKind::bake) {
            step.place = Place::oven;
        } else if (kind == StepKind::cook) {
            step.place = Place::hob;
        } else if (kind == StepKind::preheat) {
            step.place =
                names(clause, "oven") || !happens_at(clause, "hob") ? Place::oven : Place::hob;
        }
        if (kind == StepKind::bake) {
            draft.turns_down = turns_down(clause);
        }
        attach_cue(clause, draft);
        if (clause.meanwhile && attention_of(kind) != Attention::wait && kind != StepKind::bake) {
            if (const auto wait = last_wait_in(assembly_)) {
                step.during = *wait;
            }
        }
        attach_temperatures(tokens(), clause, draft);
        if (kind == StepKind::bake && !step.temperature) {
            step.temperature = heat_told_before(index);
            heat_ahead_.reset();
        }
        assembly_.uses[index].draft = assembly_.drafts.size();
        assembly_.drafts.push_back(std::move(draft));
        if (lexicon_.holds("refer back", "", tokens(), layout_.ids, clause.range)) {
            Reference reference;
            reference.kind = kind;
            reference.span = span_of(tokens(), clause.range);
            assembly_.references.push_back(reference);
        }
        attach_times(text_, layout_, lexicon_, clauses_, index, assembly_);
    }

    // "OVEN: 230 C." before the bake; or the second heat of the clause before ("bake at mark 6 for
    // ten minutes, then turn to mark 4 | and give it half an hour").
    [[nodiscard]] std::optional<TemperatureRange> heat_told_before(std::size_t index) const {
        if (index > 0 && clauses_[index - 1].sentence == clauses_[index].sentence &&
            clauses_[index - 1].temperatures.size() > 1 && !assembly_.drafts.empty() &&
            assembly_.drafts.back().step.kind == StepKind::bake) {
            const TemperaturePhrase& second = clauses_[index - 1].temperatures.back();
            return TemperatureRange{second.low, second.high};
        }
        return heat_ahead_;
    }

    [[nodiscard]] bool turns_down(const Clause& clause) const {
        return any_word(tokens(),
                        clause.range,
                        {"down", "reduce", "lower", "decrease", "drop", "turn"}) &&
               !clause.temperatures.empty() &&
               !any_word(tokens(),
                         TokenRange{clause.action->range.begin, clause.action->range.begin + 1},
                         {"bake"});
    }

    void attach_cue(const Clause& clause, Draft& draft) const {
        const StepKind kind = draft.step.kind;
        const bool over_time = attention_of(kind) == Attention::wait || kind == StepKind::bake ||
                               kind == StepKind::knead || kind == StepKind::cook ||
                               kind == StepKind::mix;
        if (!over_time) {
            return;
        }
        for (const SubClause& sub : clause.subs) {
            const bool after_action =
                clause.action && sub.range.begin >= clause.action->range.begin;
            if (sub.kind == SubKind::until && (after_action || clause.by_setting) &&
                !tells_only_time(layout_, lexicon_, sub.range)) {
                draft.step.cue = cue_in(text_, tokens(), sub.range);
                return;
            }
        }
    }

    // A clause without a step of its own: times, temperatures and cues that belong to the step
    // before.
    void remark_from(std::size_t index, const Clause& clause) {
        ClauseUse& use = assembly_.uses[index];
        if (use.draft) {
            return; // taken as the sign of a wait
        }
        if (clause.negated) {
            use.why_not = "says what not to do";
            take_as_reminder(index, clause);
            return;
        }
        if (clause.remedy) {
            use.why_not = "only if something goes wrong";
            take_as_reminder(index, clause);
            return;
        }
        if (clause.variant) {
            use.why_not = "is about another way of making it";
            variants_.keep(text_, tokens(), clause, index, assembly_);
            return;
        }
        const bool refers = clause.action && clause.action->row->means == "refer";
        if (refers && repeat_steps(layout_, clauses_, clause, assembly_)) {
            use.why_not = "repeats steps that are there";
            return;
        }
        if (auto build = build_by_itself(text_, layout_, clauses_, index, assembly_.drafts)) {
            use.draft = assembly_.drafts.size();
            assembly_.drafts.push_back(std::move(*build));
            return;
        }
        Draft* draft = last();
        if (draft == nullptr) {
            use.why_not = "comes before the first step";
            return;
        }
        const bool near = clauses_[draft->clauses.back()].block == clause.block ||
                          clauses_[draft->clauses.back()].sentence + 1 == clause.sentence;
        bool taken = false;
        if (auto wait =
                wait_of_the_clock(text_, tokens(), clause, index, clock_told_, assembly_.drafts)) {
            assembly_.drafts.push_back(std::move(*wait));
            draft = last();
            taken = true;
        }
        for (const DurationPhrase& duration : clause.durations) {
            taken = remark_duration(index, clause, duration) || taken;
            draft = last();
        }
        for (const TemperaturePhrase& temperature : clause.temperatures) {
            const bool oven = temperature.middle() >= 95 && !is_core(tokens(), clause, temperature);
            if (oven && names(clause, "oven") && draft->step.kind != StepKind::bake) {
                heat_ahead_ = TemperatureRange{temperature.low, temperature.high};
            }
            const bool heats = draft->step.kind == StepKind::bake ||
                               draft->step.kind == StepKind::preheat ||
                               draft->step.kind == StepKind::cook;
            const bool waits = is_rising(draft->step.kind) && temperature.middle() < 50;
            if (((oven && heats) || waits) && !draft->step.temperature && near) {
                draft->step.temperature = TemperatureRange{temperature.low, temperature.high};
                taken = true;
            }
        }
        const bool wait = attention_of(draft->step.kind) == Attention::wait ||
                          draft->step.kind == StepKind::bake || draft->step.kind == StepKind::knead;
        if (wait && near && !draft->step.cue && !clause.cues.empty()) {
            for (const SubClause& sub : clause.subs) {
                if (sub.kind == SubKind::until || sub.kind == SubKind::when) {
                    draft->step.cue = cue_in(text_, tokens(), sub.range);
                    taken = true;
                    break;
                }
            }
        }
        if (taken || (near && (!clause.cues.empty() || !clause.facts.empty()))) {
            draft->clauses.push_back(index);
            use.draft = static_cast<std::size_t>(draft - assembly_.drafts.data());
            return;
        }
        use.why_not = refers          ? "refers to a step that could not be found"
                      : clause.action ? "could not be placed among the steps"
                                      : "tells no action";
    }

    bool remark_duration(std::size_t index, const Clause& clause, const DurationPhrase& duration) {
        Draft& draft = assembly_.drafts.back();
        const bool near = clauses_[draft.clauses.back()].block == clause.block ||
                          clauses_[draft.clauses.back()].sentence + 1 >= clause.sentence;
        if (duration.role == DurationRole::every) {
            return false;
        }
        if (duration.role == DurationRole::total &&
            (draft.step.kind == StepKind::bake || draft.step.kind == StepKind::cook)) {
            draft.total = duration.likely;
            return true;
        }
        if (duration.role == DurationRole::ahead && draft.step.kind == StepKind::preheat) {
            draft.step.before_next = duration.likely;
            return true;
        }
        // "After ten minutes a cap of foam tells that it is alive."
        const bool ends_wait = duration.role == DurationRole::turning &&
                               takes_time(draft.step.kind) && !draft.step.minutes;
        if ((!is_length(duration) && !ends_wait) || !near) {
            return false;
        }
        const bool storage = lexicon_.holds("action", "store", tokens(), layout_.ids, clause.range);
        if (storage && duration.likely.count() >= 12 * 60) {
            return false;
        }
        // More than a day that nothing cold or sour holds is no wait of a dough.
        const bool slow = happens_at(clause, "fridge") ||
                          (index > 0 && happens_at(clauses_[index - 1], "fridge")) ||
                          names(clause, "sponge") || draft.step.place == Place::fridge ||
                          draft.step.kind == StepKind::ferment;
        if (duration.likely.count() >= 24 * 60 && !slow) {
            return false;
        }
        const bool hands_too_long = attention_of(draft.step.kind) == Attention::hands &&
                                    draft.step.kind != StepKind::cook &&
                                    duration.likely.count() > 20;
        if (takes_time(draft.step.kind) && !draft.step.minutes && !hands_too_long) {
            draft.step.minutes = band_of(duration);
            return true;
        }
        if (opens_with(tokens(), clause, duration)) {
            if (bakes_by_its_name(tokens(), clause, duration, assembly_.drafts)) {
                Draft bake =
                    draft_at(text_, tokens(), clause.range, index, StepKind::bake, Place::oven);
                bake.step.minutes = band_of(duration);
                attach_temperatures(tokens(), clause, bake);
                assembly_.drafts.push_back(std::move(bake));
                return true;
            }
            const bool fed = names(clauses_[draft.clauses.back()], "sponge");
            if (const auto kind = wait_without_a_verb(assembly_.drafts, clause, fed, duration)) {
                const bool cold = happens_at(clauses_[draft.clauses.back()], "fridge");
                Draft wait = draft_at(text_,
                                      tokens(),
                                      clause.range,
                                      index,
                                      cold ? StepKind::chill : *kind,
                                      cold ? Place::fridge : place_of(clause));
                wait.step.part = part_of(clause);
                wait.step.minutes = band_of(duration);
                wait.step.place = *kind == StepKind::bake ? Place::oven : wait.step.place;
                attach_temperatures(tokens(), clause, wait);
                assembly_.drafts.push_back(std::move(wait));
                return true;
            }
        }
        const bool further =
            duration.role == DurationRole::further && draft.step.minutes && duration.unit_unsaid;
        const bool next_heat = draft.step.minutes && duration.range.begin > 0 &&
                               !clause.temperatures.empty() &&
                               clause.temperatures.front().middle() >= 95;
        if (further || (draft.step.kind == StepKind::bake &&
                        (duration.role == DurationRole::further || next_heat))) {
            Draft part =
                draft_at(text_, tokens(), clause.range, index, draft.step.kind, draft.step.place);
            part.step.part = draft.step.part;
            part.step.minutes = band_of(duration);
            if (next_heat) {
                part.step.temperature = TemperatureRange{clause.temperatures.front().low,
                                                         clause.temperatures.front().high};
            }
            assembly_.drafts.push_back(std::move(part));
            return true;
        }
        return false;
    }

    // "Don't open the oven": kept as a warning under the step that it is about, the nearest before
    // it.
    void take_as_reminder(std::size_t index, const Clause& clause) {
        Draft* draft = last();
        if (draft == nullptr) {
            return;
        }
        const bool near = clauses_[draft->clauses.back()].sentence + 2 >= clause.sentence;
        if (near) {
            assembly_.uses[index].draft = static_cast<std::size_t>(draft - assembly_.drafts.data());
            draft->clauses.push_back(index);
        }
    }

    // The step's text and span from its clauses, where they follow one another.
    void finish(Draft& draft) const {
        for (const std::size_t clause : draft.clauses) {
            const Span span = span_of(tokens(), clauses_[clause].range);
            const bool inside = clauses_[clause].block == clauses_[draft.clauses.front()].block;
            if (inside && assembly_.uses[clause].draft && span.begin >= draft.step.span.begin) {
                draft.step.span.end = std::max(draft.step.span.end, span.end);
            }
        }
        draft.step.text = tidy(text_, draft.step.span);
    }

    std::string_view text_;
    const Layout& layout_;
    const Lexicon& lexicon_;
    const std::vector<Clause>& clauses_;
    const std::vector<Decision>& decisions_;
    std::vector<std::size_t> waiting_; // clauses that lead in the next step
    Variants variants_;
    std::optional<TemperatureRange> heat_ahead_; // told of the oven before any bake
    bool clock_told_ = false;                    // an earlier clause has named a time of day
    std::optional<Draft> heated_in_passing_;     // the preheat to put behind the step that tells it
    Assembly assembly_;
};

} // namespace

Assembly assemble(std::string_view text,
                  const Layout& layout,
                  const Lexicon& lexicon,
                  const std::vector<Clause>& clauses,
                  const std::vector<Decision>& decisions) {
    return Assembler(text, layout, lexicon, clauses, decisions).run();
}

} // namespace loafwright::reading
