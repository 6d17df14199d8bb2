// SPDX-License-Identifier: Apache-2.0
//
// From decided clauses to steps. One pass over the clauses builds drafts and attaches what each
// clause tells; a clause without an action of its own adds to the step before it. Then join.cpp
// joins what belongs together. The rules here are about language ("another ten", "in all", "by the
// morning"), never about a bread.
#include "engine/reading/assemble.hpp"

#include "engine/reading/candidate.hpp"
#include "engine/reading/join.hpp"

#include <algorithm>
#include <array>

namespace loafwright::reading {
namespace {

bool any_word(const std::vector<Token>& tokens,
              TokenRange range,
              std::initializer_list<std::string_view> words) {
    for (std::size_t at = range.begin; at < range.end; ++at) {
        for (const std::string_view word : words) {
            if (is_word(tokens[at], word)) {
                return true;
            }
        }
    }
    return false;
}

TimedBand band_of(const DurationPhrase& duration) {
    TimedBand band;
    const double sides = duration.role == DurationRole::each_side ? 2.0 : 1.0;
    band.minutes =
        Band<Minutes>{duration.low * sides, duration.likely * sides, duration.high * sides};
    band.basis = duration.assumed ? Basis::assumed : Basis::stated;
    return band;
}

bool is_length(const DurationPhrase& duration) {
    return duration.role == DurationRole::length || duration.role == DurationRole::further ||
           duration.role == DurationRole::each_side;
}

// A temperature of the loaf's middle, not of the oven.
bool is_core(const std::vector<Token>& tokens,
             const Clause& clause,
             const TemperaturePhrase& temperature) {
    if (temperature.middle() < 60 || temperature.middle() > 105) {
        return false;
    }
    return any_word(tokens,
                    clause.range,
                    {"inside",
                     "middle",
                     "centre",
                     "center",
                     "core",
                     "internal",
                     "thermometer",
                     "reads",
                     "probe",
                     "reaches"});
}

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
        }
        bake_at_the_end();
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
        untold_bake(index, clause);
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
            if (!risen || assembly_.drafts.empty()) {
                continue;
            }
            Draft* wait = last_wait();
            if (wait == nullptr) {
                wait = &untold_wait(index, clause, sub);
            }
            if (wait != nullptr && !wait->step.cue) {
                wait->step.cue = cue_text(sub.range);
            }
        }
        const TokenRange opening{clause.range.begin,
                                 std::min(clause.range.end, clause.range.begin + 4)};
        const bool morning = any_word(tokens(), opening, {"morning"}) &&
                             any_word(tokens(), opening, {"in", "next", "following"});
        if (morning && !clause.subs.empty() && clause.subs.front().kind == SubKind::until) {
            return;
        }
        if (morning) {
            Draft* wait = last_wait();
            if (wait != nullptr && !wait->step.minutes) {
                TimedBand night;
                night.minutes = Band<Minutes>{Minutes(480), Minutes(600), Minutes(840)};
                night.basis = Basis::assumed;
                wait->step.minutes = night;
            }
            if (wait != nullptr) {
                wait->at_night = true;
            }
        }
    }

    // "when baked", "till the oven is ready" in a text that never says to bake: it goes without
    // saying.
    void untold_bake(std::size_t index, const Clause& clause) {
        const bool baked =
            std::any_of(assembly_.drafts.begin(), assembly_.drafts.end(), [](const Draft& draft) {
                return draft.step.kind == StepKind::bake || draft.step.kind == StepKind::cook;
            });
        const bool dough =
            std::any_of(assembly_.drafts.begin(), assembly_.drafts.end(), [](const Draft& draft) {
                return is_rising(draft.step.kind) || draft.step.kind == StepKind::shape;
            });
        if (baked || !dough) {
            return;
        }
        for (const SubClause& sub : clause.subs) {
            const bool tells = sub.kind == SubKind::when || sub.kind == SubKind::after;
            if (tells && any_word(tokens(), sub.range, {"baked", "baking"})) {
                Draft draft;
                draft.step.kind = StepKind::bake;
                draft.step.place = Place::oven;
                draft.step.span = span_of(tokens(), sub.range);
                draft.step.text = tidy(text_, draft.step.span);
                draft.clauses.push_back(index);
                assembly_.drafts.push_back(std::move(draft));
                return;
            }
        }
    }

    // "just before putting in the oven" is all that some old books say of baking.
    void bake_at_the_end() {
        const auto heats = [](const Draft& draft) {
            return draft.step.kind == StepKind::bake || draft.step.kind == StepKind::cook;
        };
        if (std::any_of(assembly_.drafts.begin(), assembly_.drafts.end(), heats)) {
            return;
        }
        for (std::size_t index = clauses_.size(); index > 0; --index) {
            const Clause& clause = clauses_[index - 1];
            for (const SubClause& sub : clause.subs) {
                const bool oven = any_word(tokens(), sub.range, {"oven", "baking", "baked"});
                if (clause.variant || !oven ||
                    (sub.kind != SubKind::before && sub.kind != SubKind::until)) {
                    continue;
                }
                Draft draft;
                draft.step.kind = StepKind::bake;
                draft.step.place = Place::oven;
                draft.step.span = span_of(tokens(), sub.range);
                draft.step.text = tidy(text_, draft.step.span);
                draft.clauses.push_back(index - 1);
                assembly_.drafts.push_back(std::move(draft));
                return;
            }
        }
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
        Draft draft;
        draft.step.kind = shaped ? StepKind::prove : StepKind::rise;
        draft.step.span = span_of(tokens(), sub.range);
        draft.step.text = tidy(text_, draft.step.span);
        draft.step.place = place_of(clause);
        draft.clauses.push_back(index);
        assembly_.drafts.push_back(std::move(draft));
        return assembly_.drafts.back();
    }

    [[nodiscard]] static Place place_of(const Clause& clause) {
        return happens_at(clause, "fridge") ? Place::fridge
               : happens_at(clause, "warm") ? Place::warm
                                            : Place::counter;
    }

    void step_from(std::size_t index, const Clause& clause, StepKind kind) {
        Draft draft;
        Step& step = draft.step;
        step.kind = kind;
        step.span = span_of(tokens(), clause.range);
        step.text = tidy(text_, step.span);
        step.part = layout_.blocks[clause.block].part;
        step.optional = clause.optional;
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
            if (const auto wait = index_of_last_wait()) {
                step.during = *wait;
            }
        }
        attach_temperatures(clause, draft);
        assembly_.uses[index].draft = assembly_.drafts.size();
        assembly_.drafts.push_back(std::move(draft));
        attach_durations(index, clause);
    }

    [[nodiscard]] std::optional<std::size_t> index_of_last_wait() const {
        for (std::size_t index = assembly_.drafts.size(); index > 0; --index) {
            if (attention_of(assembly_.drafts[index - 1].step.kind) == Attention::wait) {
                return index - 1;
            }
        }
        return std::nullopt;
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
                !only_time(sub.range)) {
                draft.step.cue = cue_text(sub.range);
                return;
            }
        }
    }

    // "until the next morning" tells a time, not a sign.
    [[nodiscard]] bool only_time(TokenRange range) const {
        return lexicon_.find("cue", tokens(), layout_.ids, range).empty() &&
               (any_word(tokens(),
                         range,
                         {"morning", "night", "bed", "day", "o'clock", "tomorrow", "time"}) ||
                range.end - range.begin < 2);
    }

    // The words after "until" or "when", without a closing mark and without the time that stands
    // with them.
    [[nodiscard]] Cue cue_text(TokenRange range) const {
        std::size_t begin = range.begin + 1;
        std::size_t end = range.end;
        while (begin < end &&
               (is_word(tokens()[begin], "the") || is_word(tokens()[begin], "it") ||
                is_word(tokens()[begin], "has") || is_word(tokens()[begin], "is") ||
                is_word(tokens()[begin], "they") || is_word(tokens()[begin], "are") ||
                is_word(tokens()[begin], "soon") || is_word(tokens()[begin], "as") ||
                is_word(tokens()[begin], "have"))) {
            ++begin;
        }
        constexpr std::size_t longest = 9;
        end = std::min(end, begin + longest);
        while (end > begin &&
               (tokens()[end - 1].kind == TokenKind::mark || is_word(tokens()[end - 1], "and") ||
                is_word(tokens()[end - 1], "or") || is_word(tokens()[end - 1], "the") ||
                is_word(tokens()[end - 1], "a"))) {
            --end;
        }
        if (begin >= end) {
            begin = range.begin;
            end = range.end;
        }
        Cue cue;
        cue.span = span_of(tokens(), TokenRange{begin, end});
        cue.text = tidy(text_, *cue.span);
        return cue;
    }

    void attach_temperatures(const Clause& clause, Draft& draft) const {
        Step& step = draft.step;
        for (const TemperaturePhrase& temperature : clause.temperatures) {
            if (is_core(tokens(), clause, temperature)) {
                continue;
            }
            const bool of_oven = temperature.middle() >= 95;
            const bool heats = step.kind == StepKind::bake || step.kind == StepKind::preheat ||
                               step.kind == StepKind::cook;
            const bool waits = attention_of(step.kind) == Attention::wait &&
                               step.kind != StepKind::cool && step.kind != StepKind::activate;
            if (((heats && of_oven) || (waits && temperature.middle() < 60)) && !step.temperature) {
                step.temperature = TemperatureRange{temperature.low, temperature.high};
            }
        }
    }

    // Gives the clause's lengths of time to the draft that it has just become (the last one),
    // splitting off further parts.
    void attach_durations(std::size_t index, const Clause& clause) {
        std::size_t draft = assembly_.drafts.size() - 1;
        std::size_t heat = 0; // which oven temperature of the clause is the next part's
        for (const DurationPhrase& duration : clause.durations) {
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
                if (attention_of(step.kind) == Attention::wait && clause.action &&
                    duration.range.begin >= clause.action->range.begin) {
                    length(index, clause, duration, draft, heat);
                } else {
                    step.before_next = duration.likely;
                }
                break;
            case DurationRole::turning:
                turning(duration, draft);
                break;
            case DurationRole::between:
            case DurationRole::whole_plan:
            case DurationRole::keeps:
            case DurationRole::limit:
                break;
            }
        }
    }

    void length(std::size_t index,
                const Clause& clause,
                const DurationPhrase& duration,
                std::size_t& draft,
                std::size_t& heat) {
        Step& step = assembly_.drafts[draft].step;
        const bool after_or = duration.range.begin > clause.range.begin &&
                              is_word(tokens()[duration.range.begin - 1], "or");
        if (step.kind == StepKind::preheat && duration.likely.count() >= 15 &&
            any_word(tokens(), clause.range, {"before", "ahead"})) {
            step.before_next = duration.likely;
            return;
        }
        if (!step.minutes) {
            if (step.kind == StepKind::serve || step.kind == StepKind::store) {
                return;
            }
            step.minutes = band_of(duration);
            return;
        }
        if (after_or && attention_of(step.kind) == Attention::wait) {
            Alternative other;
            other.kind = step.kind;
            const TokenRange rest{duration.range.begin, clause.range.end};
            const bool fridge = lexicon_.holds("place", "fridge", tokens(), layout_.ids, rest);
            other.place = fridge ? Place::fridge : step.place;
            other.minutes = band_of(duration);
            step.alternatives.push_back(other);
            if (fridge && step.place == Place::fridge) { // the fridge belongs to the other way
                step.place = Place::counter;
            }
            return;
        }
        const bool parts = step.kind == StepKind::bake || step.kind == StepKind::cook ||
                           step.kind == StepKind::knead;
        const bool same = step.minutes->minutes.low == duration.low &&
                          step.minutes->minutes.high == duration.high;
        if (!parts || (same && duration.role != DurationRole::further) || after_or) {
            return; // told again
        }
        // "30 minutes covered, then 20 uncovered": a further part of the same bake.
        Draft further;
        further.step.kind = step.kind;
        further.step.place = step.place;
        further.step.part = step.part;
        further.step.minutes = band_of(duration);
        const TokenRange tail{duration.range.begin, clause.range.end};
        further.step.span = span_of(tokens(), tail);
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
        step.repeat = duration.likely;
        if (attention_of(step.kind) == Attention::wait) {
            return;
        }
        const DurationPhrase* span = nullptr;
        for (const DurationPhrase& other : clauses_[index].durations) {
            if (is_length(other)) {
                span = &other;
            }
        }
        if (span == nullptr) {
            if (const auto wait = index_of_last_wait()) {
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

    // "after the first ten minutes" of a bake: the part before lasts so long. "Fold after an hour":
    // inside the wait before it.
    void turning(const DurationPhrase& duration, std::size_t draft) {
        Draft& now = assembly_.drafts[draft];
        if (now.step.kind == StepKind::fold || now.step.kind == StepKind::finish ||
            now.step.kind == StepKind::knock_back) {
            if (const auto wait = index_of_last_wait(); wait && *wait < draft) {
                now.step.during = *wait;
                now.step.after_start = duration.likely;
            }
            return;
        }
        if (now.step.kind != StepKind::bake && now.step.kind != StepKind::cook) {
            return;
        }
        for (std::size_t index = draft; index > 0; --index) {
            Step& earlier = assembly_.drafts[index - 1].step;
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

    // A clause without a step of its own: times, temperatures and cues that belong to the step
    // before.
    void remark_from(std::size_t index, const Clause& clause) {
        ClauseUse& use = assembly_.uses[index];
        if (clause.negated) {
            use.why_not = "says what not to do";
            take_as_reminder(index, clause);
            return;
        }
        if (clause.variant) {
            use.why_not = "is about another way of making it";
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
        for (const DurationPhrase& duration : clause.durations) {
            taken = remark_duration(index, clause, duration) || taken;
            draft = last();
        }
        for (const TemperaturePhrase& temperature : clause.temperatures) {
            const bool oven = temperature.middle() >= 95 && !is_core(tokens(), clause, temperature);
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
                    draft->step.cue = cue_text(sub.range);
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
        use.why_not = clause.action ? "could not be placed among the steps" : "tells no action";
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
        if (!is_length(duration) || !near) {
            return false;
        }
        const bool storage = lexicon_.holds("action", "store", tokens(), layout_.ids, clause.range);
        if (storage && duration.likely.count() >= 12 * 60) {
            return false;
        }
        if (takes_time(draft.step.kind) && !draft.step.minutes) {
            draft.step.minutes = band_of(duration);
            return true;
        }
        const bool further =
            duration.role == DurationRole::further && draft.step.minutes && duration.unit_unsaid;
        if (further ||
            (draft.step.kind == StepKind::bake && duration.role == DurationRole::further)) {
            Draft part;
            part.step.kind = draft.step.kind;
            part.step.place = draft.step.place;
            part.step.part = draft.step.part;
            part.step.minutes = band_of(duration);
            part.step.span = span_of(tokens(), clause.range);
            part.step.text = tidy(text_, part.step.span);
            part.clauses.push_back(index);
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
    Assembly assembly_;
};

} // namespace

bool takes_time(StepKind kind) {
    return attention_of(kind) == Attention::wait || kind == StepKind::bake ||
           kind == StepKind::cook || kind == StepKind::knead || kind == StepKind::mix ||
           kind == StepKind::prepare;
}

bool is_rising(StepKind kind) {
    return kind == StepKind::rise || kind == StepKind::prove || kind == StepKind::ferment ||
           kind == StepKind::rest;
}

Assembly assemble(std::string_view text,
                  const Layout& layout,
                  const Lexicon& lexicon,
                  const std::vector<Clause>& clauses,
                  const std::vector<Decision>& decisions) {
    return Assembler(text, layout, lexicon, clauses, decisions).run();
}

} // namespace loafwright::reading
