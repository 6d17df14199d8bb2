// SPDX-License-Identifier: Apache-2.0
//
// Times of day in words. Old books leave out the half of the day; it is told where "morning",
// "evening" or the like stands beside the hour, and left as said where not. A number alone is an
// hour only after "at" or "by", or with "o'clock".
#include "engine/reading/clock.hpp"

#include "engine/reading/number.hpp"
#include "engine/reading/time_words.hpp"

#include <algorithm>

namespace loafwright::reading {
namespace {

// The parts of a day, to place "nine in the evening".
int hour_of_day(
    int told, const std::vector<Token>& tokens, std::size_t at, std::size_t end, bool& sure) {
    sure = true;
    for (std::size_t token = at; token < std::min(end, at + 4); ++token) {
        if (is_word(tokens[token], "evening") || is_word(tokens[token], "afternoon") ||
            is_word(tokens[token], "night") || is_word(tokens[token], "pm")) {
            return told < 12 ? told + 12 : told;
        }
        if (is_word(tokens[token], "morning") || is_word(tokens[token], "am")) {
            return told % 12;
        }
        if (is_word(tokens[token], "p") && token + 2 < end && is_word(tokens[token + 2], "m")) {
            return told < 12 ? told + 12 : told;
        }
        if (is_word(tokens[token], "a") && token + 2 < end && is_mark(tokens[token + 1], '.') &&
            is_word(tokens[token + 2], "m")) {
            return told % 12;
        }
        if (tokens[token].kind == TokenKind::mark && !is_mark(tokens[token], '.')) {
            break;
        }
    }
    sure = false;
    return told;
}

struct PastHour {
    ClockTime clock;
    std::size_t next = 0;
};

// "half past eight", "a quarter to six"
std::optional<PastHour>
past_or_to(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
    const std::size_t from = word_at(tokens, at, end, "a") ? at + 1 : at;
    const bool half = word_at(tokens, from, end, "half");
    const bool quarter = word_at(tokens, from, end, "quarter");
    const bool past = word_at(tokens, from + 1, end, "past");
    const bool to = quarter && word_at(tokens, from + 1, end, "to");
    if (!(half || quarter) || !(past || to)) {
        return std::nullopt;
    }
    const auto hour = single_number(tokens, from + 2, end);
    if (!hour || hour->article || hour->low < 1 || hour->low > 12) {
        return std::nullopt;
    }
    const int told = static_cast<int>(hour->low);
    const int minute = half ? 30 : past ? 15 : 45;
    return PastHour{ClockTime{to ? (told + 11) % 12 : told, minute}, hour->range.end};
}

} // namespace

std::vector<ClockPhrase> clocks_in(const std::vector<Token>& tokens, TokenRange range) {
    std::vector<ClockPhrase> clocks;
    for (std::size_t at = range.begin; at + 1 < range.end; ++at) {
        const bool opens = is_word(tokens[at], "at") || is_word(tokens[at], "by") ||
                           is_word(tokens[at], "from") || is_word(tokens[at], "till") ||
                           is_word(tokens[at], "until") || is_word(tokens[at], "before") ||
                           is_word(tokens[at], "to");
        if (!opens) {
            continue;
        }
        const std::size_t from = word_at(tokens, at + 1, range.end, "about") ? at + 2 : at + 1;
        if (word_at(tokens, from, range.end, "noon") ||
            word_at(tokens, from, range.end, "midday")) {
            ClockPhrase noon;
            noon.clock = ClockTime{12, 0};
            noon.until = !is_word(tokens[at], "at") && !is_word(tokens[at], "from");
            noon.range = TokenRange{at, from + 1};
            clocks.push_back(noon);
            continue;
        }
        if (const auto past = past_or_to(tokens, from, range.end)) {
            ClockPhrase phrase;
            bool sure = false;
            const int hours = hour_of_day(past->clock.hour, tokens, past->next, range.end, sure);
            phrase.clock = ClockTime{hours % 24, past->clock.minute};
            phrase.until = !is_word(tokens[at], "at") && !is_word(tokens[at], "from");
            phrase.range = TokenRange{at, past->next};
            clocks.push_back(phrase);
            at = past->next - 1;
            continue;
        }
        const auto number = single_number(tokens, from, range.end);
        if (!number || number->article || number->low < 1 || number->low > 24) {
            continue;
        }
        std::size_t next = number->range.end;
        int minute = static_cast<int>(
            (number->low - static_cast<double>(static_cast<int>(number->low))) * 60.0 + 0.5);
        if (next + 1 < range.end && is_mark(tokens[next], ':') && tokens[next].glued &&
            tokens[next + 1].kind == TokenKind::number) {
            minute = static_cast<int>(tokens[next + 1].value);
            next += 2;
        }
        bool told = false;
        if (word_at(tokens, next, range.end, "o'clock") ||
            word_at(tokens, next, range.end, "oclock")) {
            ++next;
            told = true;
        }
        bool sure = false;
        const int hours = hour_of_day(static_cast<int>(number->low), tokens, next, range.end, sure);
        const bool unit_follows = next < range.end && unit_minutes(tokens[next]).has_value();
        const bool measured =
            next < range.end &&
            (tokens[next].kind == TokenKind::number || tokens[next].text == "\xC2\xB0" ||
             is_word(tokens[next], "degrees") || is_word(tokens[next], "c") ||
             is_word(tokens[next], "f") || is_word(tokens[next], "times"));
        const bool word_number = tokens[from].kind == TokenKind::word;
        const bool hour_alone = word_number && !unit_follows && !measured &&
                                (is_word(tokens[at], "at") || is_word(tokens[at], "by")) &&
                                (next >= range.end || tokens[next].kind == TokenKind::mark ||
                                 is_word(tokens[next], "and") || is_word(tokens[next], "it") ||
                                 is_word(tokens[next], "the"));
        if (unit_follows || measured || minute > 59 || hours > 23 ||
            !(told || sure || hour_alone)) {
            continue;
        }
        ClockPhrase phrase;
        phrase.clock = ClockTime{hours, minute};
        phrase.until = is_word(tokens[at], "by") || is_word(tokens[at], "till") ||
                       is_word(tokens[at], "until") || is_word(tokens[at], "before") ||
                       is_word(tokens[at], "to");
        phrase.range = TokenRange{at, next};
        clocks.push_back(phrase);
        at = next - 1;
    }
    return clocks;
}

int afternoon_rather(int minutes, ClockTime from, ClockTime to) {
    constexpr int longest_stand = 14 * 60;
    const bool early_to_late = from.hour < 12 && to.hour >= 12;
    return minutes > longest_stand && early_to_late ? minutes - 12 * 60 : minutes;
}

} // namespace loafwright::reading
