// SPDX-License-Identifier: Apache-2.0
#include "engine/reading/variant.hpp"

#include "engine/reading/candidate.hpp"

namespace loafwright::reading {
namespace {

// "For rolls, …" names rolls.
std::string
bread_named(std::string_view text, const std::vector<Token>& tokens, const Clause& clause) {
    std::size_t begin = clause.range.begin;
    while (begin < clause.range.end && !is_word(tokens[begin], "for")) {
        ++begin;
    }
    std::size_t end = begin;
    while (end < clause.range.end && end < begin + 5 && tokens[end].kind == TokenKind::word) {
        ++end;
    }
    return begin + 1 < end ? tidy(text, span_of(tokens, TokenRange{begin + 1, end}))
                           : std::string("the other way");
}

} // namespace

void Variants::keep(std::string_view text,
                    const std::vector<Token>& tokens,
                    const Clause& clause,
                    std::size_t index,
                    Assembly& assembly) {
    const DurationPhrase* length = own_length(clause);
    DurationPhrase bare;
    if (length == nullptr && pending_) { // "…; for one big loaf, 40."
        for (std::size_t at = clause.range.begin; at < clause.range.end; ++at) {
            const Token& token = tokens[at];
            const bool minutes = token.kind == TokenKind::number && !token.fraction &&
                                 token.value >= 2 && token.value <= 240;
            const bool alone = at + 1 >= clause.range.end || tokens[at + 1].kind == TokenKind::mark;
            if (minutes && alone) {
                bare.low = bare.likely = bare.high = Minutes(token.value);
                length = &bare;
            }
        }
    }
    if (length == nullptr) {
        return;
    }
    std::optional<StepKind> kind;
    if (clause.action) {
        const std::string_view means = clause.action->row->means;
        kind = step_kind_named(means.substr(0, means.find_first_of("|?")));
    }
    Alternative other;
    other.minutes = band_of(*length);
    if (!kind && pending_ && pending_->sentence + 1 >= clause.sentence) {
        Draft draft = draft_at(
            text, tokens, clause.range, index, pending_->other.kind, pending_->other.place);
        draft.step.minutes = other.minutes;
        draft.step.alternatives.push_back(pending_->other);
        assembly.kinds_of_bread = {pending_->bread, bread_named(text, tokens, clause)};
        assembly.uses[index].draft = assembly.drafts.size();
        assembly.drafts.push_back(std::move(draft));
        pending_.reset();
        return;
    }
    if (!kind || !takes_time(*kind)) {
        return;
    }
    other.kind = *kind;
    other.place = *kind == StepKind::bake ? Place::oven : Place::counter;
    for (auto draft = assembly.drafts.rbegin(); draft != assembly.drafts.rend(); ++draft) {
        if (draft->step.kind == *kind && draft->step.minutes) {
            draft->step.alternatives.push_back(other);
            assembly.kinds_of_bread = {bread_named(text, tokens, clause), "the bread as written"};
            return;
        }
    }
    pending_ = Pending{other, clause.sentence, bread_named(text, tokens, clause)};
}

} // namespace loafwright::reading
