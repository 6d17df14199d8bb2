// SPDX-License-Identifier: Apache-2.0
#include "engine/reading/untold.hpp"

#include "engine/reading/candidate.hpp"
#include "engine/reading/warmth.hpp"

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
    constexpr std::ptrdiff_t reach = 40; // further back no sentence points
    const auto end = drafts.rbegin() +
                     std::min<std::ptrdiff_t>(reach, static_cast<std::ptrdiff_t>(drafts.size()));
    for (auto draft = drafts.rbegin(); draft != end; ++draft) {
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

// The length is what the clause begins with ("45 min.", "29 °C for 3 hours"), or all it says of
// what stands there ("it needs five hours").
bool opens_with(const std::vector<Token>& tokens,
                const Clause& clause,
                const DurationPhrase& duration) {
    constexpr std::size_t near = 3;
    if (clause.action) {
        return false;
    }
    const TokenRange lead{clause.range.begin, duration.range.begin};
    const bool needs =
        any_word(
            tokens, lead, {"it", "they", "this", "loaf", "loaves", "bread", "rolls", "buns"}) &&
        any_word(tokens,
                 lead,
                 {"needs", "need", "wants", "want", "takes", "take", "require", "requires"});
    return needs || duration.range.begin <= clause.range.begin + near;
}

// "Loaves of this size will require an hour": behind the last prove, what is shaped bakes.
bool bakes_by_its_name(const std::vector<Token>& tokens,
                       const Clause& clause,
                       const DurationPhrase& duration,
                       const std::vector<Draft>& drafts) {
    const TokenRange lead{clause.range.begin, duration.range.begin};
    if (!any_word(tokens, lead, {"loaf", "loaves", "bread", "rolls", "buns"}) ||
        !any_word(tokens, lead, {"require", "requires", "need", "needs", "take", "takes"})) {
        return false;
    }
    bool shaped = false;
    constexpr std::size_t reach = 20;
    const std::size_t first = drafts.size() > reach ? drafts.size() - reach : 0;
    for (std::size_t at = first; at < drafts.size(); ++at) {
        if (drafts[at].step.kind == StepKind::bake) {
            return false;
        }
        shaped = shaped || drafts[at].step.kind == StepKind::shape;
    }
    return shaped && drafts.back().step.minutes;
}

// "Build two. 90 g rye, 65 g water. 22 °C for 12 hours.": under the heading of a leaven a
// length of time is all that need be told.
std::optional<Draft> build_by_itself(std::string_view text,
                                     const Layout& layout,
                                     const std::vector<Clause>& clauses,
                                     std::size_t index,
                                     const std::vector<Draft>& drafts) {
    const Clause& clause = clauses[index];
    const DurationPhrase* length = own_length(clause);
    const bool hands = clause.action && clause.action->row->means != "refer";
    constexpr double shortest_build_minutes = 60.0;
    const bool row = is_mark(layout.tokens[layout.blocks[clause.block].tokens.begin], '|');
    if ((clause.part != "leaven" && !(row && names(clause, "sponge"))) || hands ||
        length == nullptr || length->likely.count() < shortest_build_minutes) {
        return std::nullopt;
    }
    const Draft* before = drafts.empty() ? nullptr : &drafts.back();
    const bool waits_already = before != nullptr &&
                               attention_of(before->step.kind) == Attention::wait &&
                               clauses[before->clauses.back()].block == clause.block;
    if (waits_already) {
        return std::nullopt;
    }
    Draft wait =
        draft_at(text, layout.tokens, clause.range, index, StepKind::ferment, place_of(clause));
    wait.step.part = part_of(clause);
    wait.step.minutes = band_of(*length);
    attach_temperatures(layout.tokens, clause, wait);
    if (index > 0 && clauses[index - 1].block == clause.block) {
        attach_temperatures(layout.tokens, clauses[index - 1], wait); // "Warm place, 26 °C."
    }
    return wait;
}

// "…at two o'clock, and by nine in the evening it is a mass of foam": a wait that only the
// clock tells.
std::optional<Draft> wait_of_the_clock(std::string_view text,
                                       const std::vector<Token>& tokens,
                                       const Clause& clause,
                                       std::size_t index,
                                       bool clock_told,
                                       const std::vector<Draft>& drafts) {
    const bool ended = std::any_of(clause.clocks.begin(),
                                   clause.clocks.end(),
                                   [](const ClockPhrase& clock) { return clock.until; });
    const bool seen = shows(clause, "risen") || names(clause, "sponge");
    const bool begun = clock_told || clause.clocks.size() > 1;
    const Draft* before = drafts.empty() ? nullptr : &drafts.back();
    if (!ended || !seen || !begun || before == nullptr ||
        (attention_of(before->step.kind) == Attention::wait && !before->step.minutes)) {
        return std::nullopt;
    }
    const bool shaped = before->step.kind == StepKind::shape;
    const bool foams = names(clause, "sponge") ||
                       any_word(tokens, clause.range, {"foam", "foamy", "froth", "bubbles"});
    return draft_at(text,
                    tokens,
                    clause.range,
                    index,
                    foams    ? StepKind::ferment
                    : shaped ? StepKind::prove
                             : StepKind::rise,
                    place_of(clause));
}

} // namespace loafwright::reading
