// SPDX-License-Identifier: Apache-2.0
#include "engine/reading/untold.hpp"

#include "engine/reading/candidate.hpp"

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
        const bool heats =
            sub.kind == SubKind::meanwhile && any_word(tokens, clause.range, {"oven"}) &&
            any_word(
                tokens, sub.range, {"heats", "heating", "warms", "preheats", "heat", "preheat"});
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

std::optional<StepKind> wait_without_a_verb(const std::vector<Draft>& drafts,
                                            const Clause& clause,
                                            bool of_a_leaven,
                                            const DurationPhrase& length) {
    if (drafts.empty()) {
        return std::nullopt;
    }
    const StepKind last = drafts.back().step.kind;
    const double minutes = length.likely.count();
    const bool leaven = of_a_leaven || clause.part == "leaven" || names(clause, "sponge");
    if (attention_of(last) != Attention::hands && last != StepKind::preheat) {
        return std::nullopt;
    }
    if (leaven && minutes >= 60) {
        return StepKind::ferment;
    }
    bool shaped = false;
    bool heated = false;
    for (auto draft = drafts.rbegin(); draft != drafts.rend(); ++draft) {
        const StepKind kind = draft->step.kind;
        if (kind == StepKind::bake) {
            return minutes <= 240 ? std::optional<StepKind>(StepKind::cool) : std::nullopt;
        }
        heated = heated || kind == StepKind::preheat;
        if (attention_of(kind) == Attention::wait) {
            if (kind == StepKind::prove) {
                return heated ? std::optional<StepKind>(StepKind::bake) : std::nullopt;
            }
            break;
        }
        shaped = shaped || kind == StepKind::shape || kind == StepKind::divide;
    }
    if (last == StepKind::knead || last == StepKind::cook) {
        return minutes > 20 ? std::optional<StepKind>(StepKind::rise) : std::nullopt;
    }
    return shaped         ? StepKind::prove
           : heated       ? StepKind::bake
           : minutes < 20 ? StepKind::rest
                          : StepKind::rise;
}

} // namespace loafwright::reading
