// SPDX-License-Identifier: Apache-2.0
//
// What points elsewhere: to a numbered step, or to the clock. Both are read as told; neither
// becomes a wait that nobody told.
#include "engine/reading/refer.hpp"

#include "engine/reading/number.hpp"

#include <algorithm>

namespace loafwright::reading {
namespace {

constexpr int most_rounds = 6;

int rounds_in(const std::vector<Token>& tokens, TokenRange range) {
    for (std::size_t at = range.begin; at < range.end; ++at) {
        if (is_word(tokens[at], "twice")) {
            return 2;
        }
        if (is_word(tokens[at], "thrice")) {
            return 3;
        }
        if (at + 1 < range.end && is_word(tokens[at + 1], "times")) {
            const auto number = single_number(tokens, at, range.end);
            if (number && !number->article) {
                return std::clamp(static_cast<int>(number->low), 1, most_rounds);
            }
        }
    }
    return 1;
}

// The numbers behind "step" or "steps": "2 and 3", "2 to 4", "2-4".
std::vector<int> steps_in(const std::vector<Token>& tokens, TokenRange range) {
    std::vector<int> steps;
    for (std::size_t at = range.begin; at < range.end; ++at) {
        if (!is_word(tokens[at], "step") && !is_word(tokens[at], "steps")) {
            continue;
        }
        bool up_to = false;
        for (std::size_t token = at + 1; token < range.end; ++token) {
            if (tokens[token].kind == TokenKind::number && !tokens[token].fraction &&
                tokens[token].value <= 99) {
                const int number = static_cast<int>(tokens[token].value);
                for (int between = up_to && !steps.empty() ? steps.back() + 1 : number;
                     between < number;
                     ++between) {
                    steps.push_back(between);
                }
                steps.push_back(number);
                up_to = false;
            } else if (is_word(tokens[token], "to") || is_dash(tokens[token])) {
                up_to = true;
            } else if (!is_word(tokens[token], "and") && !is_mark(tokens[token], ',') &&
                       !is_mark(tokens[token], '&')) {
                break;
            }
        }
        break;
    }
    return steps;
}

int minutes_from(ClockTime from, ClockTime to) {
    int minutes = (to.hour - from.hour) * 60 + to.minute - from.minute;
    // Old books leave out the half of the day: from eleven to five is six hours, from noon to
    // three is three.
    if (minutes <= 0) {
        minutes += from.hour <= 12 && to.hour < 12 ? 12 * 60 : 24 * 60;
    }
    return afternoon_rather(minutes, from, to);
}

} // namespace

bool repeat_steps(const Layout& layout,
                  const std::vector<Clause>& clauses,
                  const Clause& clause,
                  Assembly& assembly) {
    const std::vector<int> wanted = steps_in(layout.tokens, clause.range);
    const DurationPhrase* gap = nullptr;
    for (const DurationPhrase& duration : clause.durations) {
        gap = duration.role == DurationRole::between ? &duration : gap;
    }
    const int rounds = rounds_in(layout.tokens, clause.range);
    for (const int number : wanted) {
        Reference reference;
        reference.number = number;
        reference.times = rounds;
        reference.gap = gap == nullptr ? std::nullopt : std::optional<Minutes>(gap->likely);
        reference.span = span_of(layout.tokens, clause.range);
        assembly.references.push_back(reference);
    }
    std::vector<Draft> round;
    for (const int number : wanted) {
        for (const Draft& draft : assembly.drafts) {
            const auto& block = layout.blocks[clauses[draft.clauses.back()].block];
            if (block.number == number && !draft.step.during) {
                round.push_back(draft);
            }
        }
    }
    if (round.empty() || round.size() > 12) {
        return false;
    }
    for (int done = 0; done < rounds; ++done) {
        if (gap != nullptr) {
            Draft rest;
            rest.step.kind = StepKind::rest;
            rest.step.minutes = band_of(*gap);
            rest.step.span = round.front().step.span;
            rest.step.text = round.front().step.text;
            rest.clauses = round.front().clauses;
            assembly.drafts.push_back(std::move(rest));
        }
        assembly.drafts.insert(assembly.drafts.end(), round.begin(), round.end());
    }
    return true;
}

void wait_by_the_clock(const std::vector<Clause>& clauses, Assembly& assembly) {
    std::optional<ClockTime> last;
    std::size_t since = 0; // the first draft after the last time told
    for (std::size_t index = 0; index < clauses.size(); ++index) {
        const Clause& clause = clauses[index];
        const bool told =
            std::any_of(clause.durations.begin(),
                        clause.durations.end(),
                        [](const DurationPhrase& duration) { return duration.from.has_value(); });
        if (clause.variant || clause.clocks.empty() || told) {
            continue;
        }
        for (const ClockPhrase& phrase : clause.clocks) {
            // Drafts stand in the order of their clauses, so the search goes on from the last time
            // told.
            std::size_t here = since;
            while (here < assembly.drafts.size() &&
                   (assembly.drafts[here].clauses.empty() ||
                    assembly.drafts[here].clauses.back() < index)) {
                ++here;
            }
            if (last) {
                for (std::size_t draft = since; draft < std::min(assembly.drafts.size(), here + 1);
                     ++draft) {
                    Step& step = assembly.drafts[draft].step;
                    if (attention_of(step.kind) == Attention::wait && !step.minutes &&
                        step.kind != StepKind::cool && step.kind != StepKind::activate) {
                        step.minutes = TimedBand{
                            exactly(Minutes(minutes_from(*last, phrase.clock))), Basis::stated};
                        break;
                    }
                }
            }
            if (!phrase.until && here < assembly.drafts.size()) {
                assembly.drafts[here].step.clock = phrase.clock;
            }
            last = phrase.clock;
            since = here;
        }
    }
}

} // namespace loafwright::reading
