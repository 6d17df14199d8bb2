// SPDX-License-Identifier: Apache-2.0
//
// What several files ask about drafts, clauses and lengths of time.
#include "engine/reading/draft.hpp"

namespace loafwright::reading {

Draft draft_at(std::string_view text,
               const std::vector<Token>& tokens,
               TokenRange range,
               std::size_t clause,
               StepKind kind,
               Place place) {
    Draft draft;
    draft.step.kind = kind;
    draft.step.place = place;
    draft.step.span = span_of(tokens, range);
    draft.step.text = tidy(text, draft.step.span);
    draft.clauses.push_back(clause);
    return draft;
}

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

std::optional<std::string> part_of(const Clause& clause) {
    return clause.part.empty() ? std::nullopt : std::optional(std::string(clause.part));
}

bool takes_time(StepKind kind) {
    return attention_of(kind) == Attention::wait || kind == StepKind::bake ||
           kind == StepKind::cook || kind == StepKind::knead || kind == StepKind::mix ||
           kind == StepKind::prepare;
}

bool is_rising(StepKind kind) {
    return kind == StepKind::rise || kind == StepKind::prove || kind == StepKind::ferment ||
           kind == StepKind::rest;
}

bool belongs_to_wait_before(const Clause& clause, const DurationPhrase& duration) {
    if (!clause.action || clause.subs.empty() || duration.range.end > clause.action->range.begin) {
        return false;
    }
    const SubClause& first = clause.subs.front();
    return (first.kind == SubKind::when || first.kind == SubKind::after) &&
           first.range.begin <= clause.range.begin + 2 && is_length(duration);
}

std::optional<std::size_t> last_wait_in(const Assembly& assembly) {
    for (std::size_t index = assembly.drafts.size(); index > 0; --index) {
        if (attention_of(assembly.drafts[index - 1].step.kind) == Attention::wait) {
            return index - 1;
        }
    }
    return std::nullopt;
}

} // namespace loafwright::reading
