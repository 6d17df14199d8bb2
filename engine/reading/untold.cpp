// SPDX-License-Identifier: Apache-2.0
#include "engine/reading/untold.hpp"

#include <algorithm>

namespace loafwright::reading {
namespace {

bool any_in_the_heat(const std::vector<Draft>& drafts) {
    return std::any_of(drafts.begin(), drafts.end(), [](const Draft& draft) {
        return draft.step.kind == StepKind::bake || draft.step.kind == StepKind::cook;
    });
}

} // namespace

std::optional<Draft> heating_in_passing(std::string_view text,
                                        const std::vector<Token>& tokens,
                                        const Clause& clause,
                                        std::size_t index) {
    for (const SubClause& sub : clause.subs) {
        const bool heats = sub.kind == SubKind::meanwhile &&
                           any_word(tokens, sub.range, {"oven"}) &&
                           any_word(tokens, sub.range, {"heats", "heating", "warms", "preheats"});
        if (!heats) {
            continue;
        }
        for (const TemperaturePhrase& temperature : clause.temperatures) {
            if (temperature.range.begin >= sub.range.begin &&
                temperature.range.begin < sub.range.end) {
                Draft draft =
                    draft_at(text, tokens, sub.range, index, StepKind::preheat, Place::oven);
                draft.step.temperature = TemperatureRange{temperature.low, temperature.high};
                return draft;
            }
        }
    }
    return std::nullopt;
}

std::optional<Draft> untold_bake(std::string_view text,
                                 const std::vector<Token>& tokens,
                                 const Clause& clause,
                                 std::size_t index,
                                 const std::vector<Draft>& drafts) {
    const auto told =
        std::find_if(clause.subs.begin(), clause.subs.end(), [&tokens](const SubClause& sub) {
            const bool after = sub.kind == SubKind::when || sub.kind == SubKind::after;
            return after && any_word(tokens, sub.range, {"baked", "baking"});
        });
    if (told == clause.subs.end() || any_in_the_heat(drafts)) {
        return std::nullopt;
    }
    const bool dough = std::any_of(drafts.begin(), drafts.end(), [](const Draft& draft) {
        return is_rising(draft.step.kind) || draft.step.kind == StepKind::shape;
    });
    if (!dough) {
        return std::nullopt;
    }
    return draft_at(text, tokens, told->range, index, StepKind::bake, Place::oven);
}

std::optional<Draft> bake_at_the_end(std::string_view text,
                                     const std::vector<Token>& tokens,
                                     const std::vector<Clause>& clauses,
                                     const std::vector<Draft>& drafts) {
    if (any_in_the_heat(drafts)) {
        return std::nullopt;
    }
    for (std::size_t index = clauses.size(); index > 0; --index) {
        const Clause& clause = clauses[index - 1];
        for (const SubClause& sub : clause.subs) {
            const bool ahead = sub.kind == SubKind::before || sub.kind == SubKind::until;
            if (!clause.variant && ahead &&
                any_word(tokens, sub.range, {"oven", "baking", "baked"})) {
                return draft_at(text, tokens, sub.range, index - 1, StepKind::bake, Place::oven);
            }
        }
    }
    return std::nullopt;
}

} // namespace loafwright::reading
