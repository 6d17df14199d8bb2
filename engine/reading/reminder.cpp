// SPDX-License-Identifier: Apache-2.0
//
// Reminders are cut from the text, never written: around each word that matters grows the phrase it
// stands in, to the next mark or joining word, nine words at most. Figures (temperatures) come with
// their unit.
#include "engine/reading/reminder.hpp"

#include "engine/reading/look_alike.hpp"

#include <algorithm>

namespace loafwright::reading {
namespace {

bool stops(const Token& token) {
    return token.kind == TokenKind::mark && !is_mark(token, '-') && !is_mark(token, '/') &&
           !is_mark(token, '\'') && !is_mark(token, '"') && token.text != "\xC2\xB0" &&
           !is_mark(token, '%');
}

bool joins(const Token& token) {
    return is_word(token, "and") || is_word(token, "then") || is_word(token, "or") ||
           is_word(token, "but") || is_word(token, "until") || is_word(token, "till") ||
           is_word(token, "when") || is_word(token, "which") || is_word(token, "while") ||
           is_word(token, "for") || is_word(token, "about");
}

bool light(const Token& token) {
    return is_word(token, "the") || is_word(token, "a") || is_word(token, "an") ||
           is_word(token, "is") || is_word(token, "are") || is_word(token, "it") ||
           is_word(token, "has") || is_word(token, "in") || is_word(token, "to") ||
           is_word(token, "of") || is_word(token, "with") || is_word(token, "at") ||
           is_word(token, "on") || is_word(token, "by") || is_word(token, "than") ||
           is_word(token, "as");
}

bool opens_a_phrase(const Token& token) {
    return is_word(token, "in") || is_word(token, "on") || is_word(token, "into") ||
           is_word(token, "onto") || is_word(token, "with") || is_word(token, "from") ||
           is_word(token, "under") || is_word(token, "over") || is_word(token, "upon") ||
           is_word(token, "at") || is_word(token, "by") || is_word(token, "so");
}

// "it will come smooth" keeps its "it".
bool tells_of_it(const Token& next) {
    return is_word(next, "will") || is_word(next, "should") || is_word(next, "must") ||
           is_word(next, "may") || is_word(next, "ought");
}

std::size_t words_in(const std::vector<Token>& tokens, TokenRange range) {
    return static_cast<std::size_t>(std::count_if(
        tokens.begin() + static_cast<std::ptrdiff_t>(range.begin),
        tokens.begin() + static_cast<std::ptrdiff_t>(range.end),
        [](const Token& token) { return token.kind != TokenKind::mark && !token.hyphenated; }));
}

// Grows a match to the phrase around it inside the clause.
TokenRange phrase_around(const std::vector<Token>& tokens, TokenRange clause, TokenRange match) {
    TokenRange range = match;
    // To the right first: what follows a cue or a warning is its object.
    while (range.end < clause.end && !stops(tokens[range.end]) && !joins(tokens[range.end]) &&
           words_in(tokens, TokenRange{range.begin, range.end + 1}) <= longest_reminder_words) {
        ++range.end;
    }
    while (range.begin > clause.begin && !stops(tokens[range.begin - 1]) &&
           !joins(tokens[range.begin - 1]) &&
           words_in(tokens, TokenRange{range.begin - 1, range.end}) <= longest_reminder_words) {
        --range.begin;
    }
    // Full: better a whole phrase less than half of one ("seam side down | in a greased 2 lb
    // loaf").
    if (range.end < clause.end && !stops(tokens[range.end]) && !joins(tokens[range.end])) {
        for (std::size_t at = range.end; at > match.end; --at) {
            if (opens_a_phrase(tokens[at - 1])) {
                range.end = at - 1;
                break;
            }
        }
    }
    while (range.end > match.end &&
           (light(tokens[range.end - 1]) || tokens[range.end - 1].kind == TokenKind::mark)) {
        --range.end;
    }
    while (range.begin < match.begin &&
           (is_word(tokens[range.begin], "the") || is_word(tokens[range.begin], "a") ||
            is_word(tokens[range.begin], "an") ||
            (is_word(tokens[range.begin], "it") && !tells_of_it(tokens[range.begin + 1])) ||
            tokens[range.begin].kind == TokenKind::mark)) {
        ++range.begin;
    }
    while (words_in(tokens, range) > longest_reminder_words && range.begin < match.begin) {
        ++range.begin;
    }
    while (words_in(tokens, range) > longest_reminder_words && range.end > range.begin + 1) {
        --range.end;
    }
    return range;
}

// A fact of "when light, add…" stays on its side.
TokenRange part_around(const Clause& clause, TokenRange match) {
    for (const SubClause& sub : clause.subs) {
        if (sub.range.begin < match.begin && match.end <= sub.range.end) {
            return {sub.range.begin + 1, sub.range.end};
        }
    }
    return clause.range;
}

bool overlaps(Span a, Span b) {
    return a.begin < b.end && b.begin < a.end;
}

void add(std::string_view text,
         const std::vector<Token>& tokens,
         Span span,
         int weight,
         std::vector<Reminder>& reminders) {
    if (span.begin >= span.end) {
        return;
    }
    for (Reminder& reminder : reminders) {
        if (reminder.span && overlaps(*reminder.span, span)) {
            const bool inside =
                span.begin >= reminder.span->begin && span.end <= reminder.span->end;
            const bool around =
                span.begin <= reminder.span->begin && span.end >= reminder.span->end;
            if (around) {
                reminder.span = span;
                reminder.text = tidy_figures(text, tokens, span);
            }
            // Two phrases that overlap tell the same thing: the first one found stays.
            reminder.weight =
                inside || around ? std::max(reminder.weight, weight) : reminder.weight;
            return;
        }
    }
    Reminder reminder;
    reminder.span = span;
    reminder.text = tidy_figures(text, tokens, span);
    reminder.weight = weight;
    reminders.push_back(std::move(reminder));
}

void add(std::string_view text,
         const std::vector<Token>& tokens,
         TokenRange range,
         int weight,
         std::vector<Reminder>& reminders) {
    add(text, tokens, span_of(tokens, range), weight, reminders);
}

} // namespace

void add_reminders(std::string_view text,
                   const Layout& layout,
                   const std::vector<Clause>& clauses,
                   Draft& draft) {
    std::vector<Reminder>& reminders = draft.step.reminders;
    constexpr std::size_t most_clauses =
        64; // a step joined from very many clauses keeps the first ones' facts
    std::size_t seen = 0;
    for (const std::size_t index : draft.clauses) {
        if (seen++ == most_clauses) {
            break;
        }
        const Clause& clause = clauses[index];
        for (const TemperaturePhrase& temperature : clause.temperatures) {
            TokenRange range = temperature.range;
            if (clause.action && clause.action->range.end <= range.begin &&
                range.end - clause.action->range.begin <= 12) {
                range = phrase_around(layout.tokens, clause.range, range);
            }
            add(text, layout.tokens, range, 88, reminders);
        }
        for (const DurationPhrase& duration : clause.durations) {
            if (duration.role ==
                DurationRole::limit) { // "not open the oven for the first ten minutes"
                TokenRange range = duration.range;
                while (range.begin > clause.range.begin && !stops(layout.tokens[range.begin - 1]) &&
                       words_in(layout.tokens, TokenRange{range.begin - 1, range.end}) <=
                           longest_reminder_words) {
                    --range.begin;
                }
                add(text, layout.tokens, range, 75, reminders);
                continue;
            }
            const bool tells = duration.role == DurationRole::every ||
                               duration.role == DurationRole::each_side ||
                               (clause.negated && duration.role != DurationRole::keeps);
            if (tells) {
                add(text,
                    layout.tokens,
                    phrase_around(layout.tokens, clause.range, duration.range),
                    75,
                    reminders);
            }
        }
        for (const Match& fact : clause.facts) {
            add(text,
                layout.tokens,
                phrase_around(layout.tokens, part_around(clause, fact.range), fact.range),
                static_cast<int>(fact.weight),
                reminders);
        }
    }
    if (draft.step.cue && draft.step.cue->span) {
        add(text, layout.tokens, *draft.step.cue->span, 84, reminders);
    }
    std::stable_sort(reminders.begin(), reminders.end(), [](const Reminder& a, const Reminder& b) {
        return a.weight > b.weight;
    });
}

} // namespace loafwright::reading
