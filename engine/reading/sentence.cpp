// SPDX-License-Identifier: Apache-2.0
#include "engine/reading/sentence.hpp"

#include <algorithm>
#include <initializer_list>
#include <string_view>

namespace loafwright::reading {
namespace {

bool is_abbreviation(const Token& token) {
    return is_any_word(token,
                       {"min",  "mins", "hr", "hrs", "tsp", "tbsp", "oz", "lb", "lbs", "approx",
                        "appr", "eg",   "ie", "no",  "deg", "pt",   "qt", "dr", "st",  "vol",
                        "temp", "ca",   "w",  "e",   "g",   "i",    "a",  "p",  "m",   "c"});
}

} // namespace

// A full stop ends a sentence unless it belongs to an abbreviation and a small letter or a number
// follows.
bool ends_sentence(const std::vector<Token>& tokens,
                   std::size_t begin,
                   std::size_t at,
                   std::size_t end) {
    const Token& token = tokens[at];
    if (is_mark(token, ';') || is_mark(token, '!') || is_mark(token, '?')) {
        return true;
    }
    // A colon parts two statements unless it only names what follows ("Optional: …") or stands in a
    // time.
    if (is_mark(token, ':')) {
        return at >= begin + 4 && at + 1 < end && !tokens[at + 1].glued;
    }
    if (is_mark(token, ')') && at > begin && is_mark(tokens[at - 1], '.')) {
        return true; // "(… fixes that.) Bake"
    }
    if (!is_mark(token, '.')) {
        return false;
    }
    if (at + 1 >= end) {
        return true;
    }
    // "Second rise. 1 hour under a cloth.": a label and what it labels.
    if (at <= begin + 4 && tokens[at + 1].kind == TokenKind::number && !tokens[at + 1].glued) {
        // But "Brush w/ milk. 400F for 20 mins." are two.
        const bool hot =
            at + 2 < end && is_any_word(tokens[at + 2], {"f", "c", "°f", "°c", "degrees"});
        return hot && at > begin + 1;
    }
    const Token& next = tokens[at + 1];
    if (next.kind == TokenKind::mark) {
        return !next.glued;
    }
    if (at > 0 && is_abbreviation(tokens[at - 1]) && token.glued) {
        // "Rest 30 min. 25 minutes at 250 °C.": but "3 min. 20 sec." is one length.
        const bool minutes = is_any_word(tokens[at - 1], {"min", "mins"});
        const bool seconds =
            at + 2 < end && is_any_word(tokens[at + 2], {"s", "sec", "secs", "seconds"});
        return next.capital || (minutes && next.kind == TokenKind::number && !seconds);
    }
    return !next.glued || next.capital;
}

// "1/2 tsp bicarb / Heat the oven": a line that begins with an order in a capital is a sentence of
// its own, even where nobody put a full stop behind the line before. Behind a comma or "and" it
// goes on.
bool begins_sentence(const std::vector<Token>& tokens,
                     const std::vector<WordIds>& ids,
                     const Lexicon& lexicon,
                     std::size_t at,
                     std::size_t end) {
    // "12:45 Add the salt", a line of a timetable.
    const bool clock = at + 3 < end && tokens[at].first_on_line &&
                       tokens[at].kind == TokenKind::number && is_mark(tokens[at + 1], ':') &&
                       tokens[at + 1].glued && tokens[at + 2].kind == TokenKind::number &&
                       tokens[at + 2].glued;
    if (clock) {
        return true;
    }
    if (!tokens[at].first_on_line || !tokens[at].capital) {
        return false;
    }
    const Token& before = tokens[at - 1];
    const bool goes_on = before.kind == TokenKind::mark
                             ? !is_mark(before, '.') && !is_mark(before, ')')
                             : is_any_word(before,
                                           {"and",
                                            "or",
                                            "the",
                                            "a",
                                            "an",
                                            "of",
                                            "to",
                                            "in",
                                            "with",
                                            "until",
                                            "for",
                                            "then",
                                            "at",
                                            "on",
                                            "into",
                                            "from",
                                            "by",
                                            "your"});
    if (goes_on) {
        return false;
    }
    const Match action = lexicon.at("action", tokens, ids, at, end);
    return action.row != nullptr && action.head == Inflection::none;
}

} // namespace loafwright::reading
