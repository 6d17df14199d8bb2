// SPDX-License-Identifier: Apache-2.0
//
// Lengths of time and times of day, by recursive descent over tokens. A number is a length of time
// only with a unit, or where it continues one ("45 minutes to an hour", "another 10" after
// minutes). What the length is *for* is decided here too, from the words directly around it
// ("every", "in all", "before", "keeps"): that is what keeps an anchor or a shelf life from
// becoming a wait.
#include "engine/reading/duration.hpp"

#include "engine/reading/clock.hpp"
#include "engine/reading/number.hpp"
#include "engine/reading/time_words.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace loafwright::reading {
namespace {

constexpr double hour = minutes_an_hour;
constexpr double day = minutes_a_day;

struct Amount {
    double low = 0.0;
    double high = 0.0;
    double unit = 0.0; // 0: none written
    bool about = false;
    bool at_least = false;
    bool at_most = false;
    bool bare_article = false;
    std::size_t next = 0;
};

// "and a half", "and a quarter", "and 15 minutes", "15 minutes", "40" after an amount in hours.
void extend(const std::vector<Token>& tokens, std::size_t end, Amount& amount) {
    std::size_t at = amount.next;
    if (word_at(tokens, at, end, "and")) {
        std::size_t from = at + 1;
        if (word_at(tokens, from, end, "a") || word_at(tokens, from, end, "an")) {
            ++from;
        }
        const auto part = single_number(tokens, from, end);
        const bool is_part = part && part->low < 1.0 && !part->article;
        if (is_part && !(part->range.end < end && unit_minutes(tokens[part->range.end]))) {
            amount.low += part->low * amount.unit;
            amount.high += part->low * amount.unit;
            amount.next = part->range.end;
            return;
        }
        const auto further = single_number(tokens, at + 1, end);
        if (further && !further->article && further->range.end < end) {
            const auto unit = unit_minutes(tokens[further->range.end]);
            if (unit && *unit < amount.unit) {
                amount.low += further->low * *unit;
                amount.high += further->low * *unit;
                amount.next = further->range.end + 1;
            }
        }
        return;
    }
    if (amount.unit < hour || amount.unit >= day) {
        return;
    }
    const auto further = single_number(tokens, at, end);
    if (further && !further->article && tokens[at].kind == TokenKind::number && further->low < 60) {
        const bool has_unit = further->range.end < end && unit_minutes(tokens[further->range.end]);
        const bool minutes_follow =
            has_unit && *unit_minutes(tokens[further->range.end]) < amount.unit;
        // "1h15", "3 hours 40": minutes without the word; not "2 hours 230 C" nor "1 hour 2 eggs".
        const bool alone = !has_unit && further->low >= 5 &&
                           (further->range.end >= end ||
                            tokens[further->range.end].kind == TokenKind::mark || tokens[at].glued);
        if (minutes_follow || (alone && !tokens[at].fraction)) {
            amount.low += further->low;
            amount.high += further->low;
            amount.next = further->range.end + (minutes_follow ? 1U : 0U);
        }
    }
}

// number unit; "half an hour", "three quarters of an hour", "a half hour", "half or three quarters
// of an hour".
std::optional<Amount> amount_at(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
    if (word_at(tokens, at, end, "another") && at + 1 < end) {
        if (const auto unit = unit_minutes(tokens[at + 1])) { // "another hour"
            Amount one;
            one.unit = one.low = one.high = *unit;
            one.next = at + 2;
            return one;
        }
    }
    const auto number = number_phrase(tokens, at, end);
    if (!number) {
        return std::nullopt;
    }
    Amount amount;
    amount.about = number->about;
    amount.at_least = number->at_least;
    amount.at_most = number->at_most;
    amount.bare_article = number->article;
    std::size_t next = number->range.end;
    if (word_at(tokens, next, end, "of") &&
        (word_at(tokens, next + 1, end, "an") || word_at(tokens, next + 1, end, "a"))) {
        next += 2;
    } else if (word_at(tokens, next, end, "an") || word_at(tokens, next, end, "of")) {
        ++next;
    }
    while (word_at(tokens, next, end, "more") || word_at(tokens, next, end, "full") ||
           word_at(tokens, next, end, "good") || word_at(tokens, next, end, "further") ||
           word_at(tokens, next, end, "extra") ||
           (next < end && is_mark(tokens[next], '-') && tokens[next].glued)) {
        ++next;
    }
    if (next >= end) {
        return std::nullopt;
    }
    if (is_mark(tokens[next], '\'') && tokens[next].glued &&
        tokens[next - 1].kind == TokenKind::number) {
        amount.unit = 1.0; // 30'
        amount.low = number->low;
        amount.high = number->high;
        amount.next = next + 1;
        return amount;
    }
    // 1:30 h
    if (next + 2 < end && is_mark(tokens[next], ':') && tokens[next].glued &&
        tokens[next + 1].kind == TokenKind::number && tokens[next + 1].value < 60 &&
        unit_minutes(tokens[next + 2]) == std::optional<double>(hour)) {
        amount.unit = hour;
        amount.low = amount.high = number->low * hour + tokens[next + 1].value;
        amount.next = next + 3;
        return amount;
    }
    const auto unit = unit_minutes(tokens[next]);
    if (!unit) {
        return std::nullopt;
    }
    // "a second rise", "twice a day" are no lengths of time.
    const bool for_before =
        at > 0 && (is_word(tokens[at - 1], "for") || is_word(tokens[at - 1], "than"));
    if (number->article && (*unit < 1.0 || (*unit >= day && !for_before))) {
        return std::nullopt;
    }
    amount.unit = *unit;
    amount.low = number->low * *unit;
    amount.high = number->high * *unit;
    amount.next = next + 1;
    if (amount.next < end && is_mark(tokens[amount.next], '.') && amount.next + 1 < end &&
        !tokens[amount.next + 1].capital && tokens[next].text.size() <= 4) {
        ++amount.next; // "min."
    }
    extend(tokens, end, amount);
    return amount;
}

struct NightWords {
    std::initializer_list<std::string_view> words;
    double low;
    double likely;
    double high;
};

// What words for a night mean, in minutes (common practice: a night is eight to fourteen hours from
// bed time to baking).
std::optional<DurationPhrase>
night_at(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
    static const std::array<NightWords, 19> nights = {
        {{{"for", "the", "night"}, 480, 600, 840},
         {{"the", "whole", "night"}, 480, 600, 840},
         {{"a", "day", "and", "a", "night"}, 1440, 1440, 1440},
         {{"overnight"}, 480, 600, 840},
         {{"over", "night"}, 480, 600, 840},
         {{"all", "night"}, 480, 600, 840},
         {{"through", "the", "night"}, 480, 600, 840},
         {{"during", "the", "night"}, 480, 600, 840},
         {{"until", "morning"}, 480, 600, 840},
         {{"until", "breakfast"}, 480, 600, 840},
         {{"till", "breakfast"}, 480, 600, 840},
         {{"till", "morning"}, 480, 600, 840},
         {{"until", "the", "morning"}, 480, 600, 840},
         {{"until", "the", "next", "day"}, 600, 840, 1200},
         {{"until", "the", "next", "morning"}, 480, 600, 840},
         {{"till", "the", "next", "morning"}, 480, 600, 840},
         {{"till", "bed", "time"}, 180, 300, 420},
         {{"until", "bedtime"}, 180, 300, 420},
         {{"before", "bed", "time"}, 180, 300, 420}}};
    for (const NightWords& night : nights) {
        if (words_at(tokens, at, end, night.words)) {
            DurationPhrase phrase;
            phrase.low = Minutes(night.low);
            phrase.likely = Minutes(night.likely);
            phrase.high = Minutes(night.high);
            phrase.assumed = night.low != night.high;
            phrase.range = TokenRange{at, at + night.words.size()};
            return phrase;
        }
    }
    return std::nullopt;
}

bool any_word_before(const std::vector<Token>& tokens,
                     std::size_t begin,
                     std::size_t at,
                     std::size_t reach,
                     std::initializer_list<std::string_view> words) {
    const std::size_t from = at > begin + reach ? at - reach : begin;
    for (std::size_t token = from; token < at; ++token) {
        for (const std::string_view word : words) {
            if (is_word(tokens[token], word)) {
                return true;
            }
        }
    }
    return false;
}

DurationRole
role_of(const std::vector<Token>& tokens, TokenRange clause, const DurationPhrase& phrase) {
    const std::size_t at = phrase.range.begin;
    const std::size_t next = phrase.range.end;
    const std::size_t end = clause.end;
    if (any_word_before(tokens, clause.begin, at, 1, {"every", "each"}) ||
        any_word_before(tokens, clause.begin, at + 1, 2, {"every"})) {
        return DurationRole::every;
    }
    if (words_at(tokens, next, end, {"in", "all"}) ||
        words_at(tokens, next, end, {"in", "total"}) ||
        words_at(tokens, next, end, {"all", "told"}) || word_at(tokens, next, end, "altogether") ||
        word_at(tokens, next, end, "total")) {
        return DurationRole::total;
    }
    if (any_word_before(tokens, clause.begin, at, 1, {"within"}) &&
        phrase.high.count() < 12 * hour) {
        return DurationRole::limit;
    }
    if (any_word_before(tokens, clause.begin, at, 8, {"don't", "dont", "never", "not", "avoid"}) &&
        !any_word_before(tokens, clause.begin, at, 4, {"but", "until", "then", "and"})) {
        return DurationRole::limit;
    }
    if (any_word_before(tokens, clause.begin, at, 2, {"last"}) && phrase.high.count() < 12 * hour) {
        return DurationRole::last;
    }
    if (any_word_before(tokens, clause.begin, at, 3, {"total"}) &&
        any_word_before(tokens, clause.begin, at, 2, {"is", "reaches"})) {
        return DurationRole::total;
    }
    if (any_word_before(tokens, clause.begin, at, 2, {"total", "whole"}) &&
        !any_word_before(tokens, clause.begin, at, 2, {"the"})) {
        return DurationRole::whole_plan;
    }
    if (any_word_before(
            tokens, clause.begin, at, 6, {"keep",   "keeps",  "kept",   "store",   "stores",
                                          "stored", "within", "freeze", "freezes", "frozen",
                                          "lasts",  "last",   "stay",   "stays",   "fresh",
                                          "good",   "best",   "stale",  "storage", "leftovers"}) &&
        phrase.low.count() >= 12 * hour) {
        return DurationRole::keeps;
    }
    if (phrase.low.count() >= 14 * day || phrase.high.count() >= 14 * day) {
        return DurationRole::keeps;
    }
    if (word_at(tokens, next, end, "before") || word_at(tokens, next, end, "ahead") ||
        word_at(tokens, next, end, "beforehand") || word_at(tokens, next, end, "earlier") ||
        words_at(tokens, next, end, {"prior"}) || word_at(tokens, next, end, "previously")) {
        return DurationRole::ahead;
    }
    if (word_at(tokens, next, end, "between") || word_at(tokens, next, end, "apart") ||
        (any_word_before(tokens, clause.begin, at, 2, {"intervals"}))) {
        return DurationRole::between;
    }
    if (words_at(tokens, next, end, {"a", "side"}) ||
        words_at(tokens, next, end, {"per", "side"}) ||
        words_at(tokens, next, end, {"each", "side"}) ||
        words_at(tokens, next, end, {"on", "each", "side"}) ||
        words_at(tokens, next, end, {"on", "either", "side"})) {
        return DurationRole::each_side;
    }
    if (any_word_before(tokens, clause.begin, at, 3, {"after"}) ||
        any_word_before(tokens, clause.begin, at + 1, 2, {"after"})) {
        return DurationRole::turning;
    }
    if (any_word_before(tokens, clause.begin, at + 2, 4, {"first"}) &&
        phrase.low.count() < 2 * hour &&
        any_word_before(tokens, clause.begin, at + 1, 4, {"after", "for", "first"}) &&
        at > clause.begin &&
        (is_word(tokens[at - 1], "first") || word_at(tokens, at, end, "first"))) {
        return DurationRole::turning;
    }
    if (any_word_before(tokens, clause.begin, at, 2, {"another", "further", "more"}) ||
        word_at(tokens, next, end, "more") || word_at(tokens, next, end, "longer")) {
        return DurationRole::further;
    }
    return DurationRole::length;
}

bool is_mark_at(const std::vector<Token>& tokens, std::size_t at, std::size_t end, char mark) {
    return at < end && is_mark(tokens[at], mark);
}

// "or so", "give or take five", ", ninety minutes at most".
void append_tail(const std::vector<Token>& tokens, std::size_t end, DurationPhrase& phrase) {
    std::size_t& next = phrase.range.end;
    if (words_at(tokens, next, end, {"give", "or", "take"})) {
        if (const auto more = single_number(tokens, next + 3, end); more && !more->article) {
            phrase.low = Minutes(std::max(0.0, phrase.low.count() - more->low));
            phrase.high = Minutes(phrase.high.count() + more->low);
            next = more->range.end;
        }
    } else if (is_mark_at(tokens, next, end, ',') &&
               words_at(tokens, next + 1, end, {"give", "or", "take"})) {
        if (const auto more = single_number(tokens, next + 4, end); more && !more->article) {
            phrase.low = Minutes(std::max(0.0, phrase.low.count() - more->low));
            phrase.high = Minutes(phrase.high.count() + more->low);
            next = more->range.end;
        }
    }
    if (words_at(tokens, next, end, {"or", "so"}) ||
        words_at(tokens, next, end, {"or", "thereabouts"})) {
        phrase.about = true;
        next += 2;
    }
}

// "every hour"
std::optional<DurationPhrase>
every_unit(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
    if (!is_word(tokens[at], "every") || at + 1 >= end) {
        return std::nullopt;
    }
    const auto unit = unit_minutes(tokens[at + 1]);
    if (!unit || *unit > day) {
        return std::nullopt;
    }
    DurationPhrase phrase;
    phrase.low = phrase.likely = phrase.high = Minutes(*unit);
    phrase.role = DurationRole::every;
    phrase.range = TokenRange{at, at + 2};
    return phrase;
}

struct BareMinutes : DurationPhrase {
    bool widens = false; // says more about the length before it
};

// A number without a unit that is a length all the same: "another 10", "25 more", "for 40", "the
// first fifteen" after a length in minutes has the unit of the one before; "wait 15." stands on
// cards.
std::optional<BareMinutes> bare_minutes(const std::vector<Token>& tokens,
                                        TokenRange range,
                                        std::size_t at,
                                        bool minutes_told,
                                        const std::vector<DurationPhrase>& before) {
    const Token& token = tokens[at];
    // "three days in a bin and toast for two more" goes on in days
    const bool told = before.empty() ? minutes_told : in_minutes(before.back());
    const bool last = is_word(token, "last") && !before.empty();
    const bool first = is_word(token, "first") && told;
    const bool further = is_word(token, "another") || is_word(token, "further");
    const bool card = (is_word(token, "wait") || is_word(token, "rest")) && at + 1 < range.end &&
                      tokens[at + 1].kind == TokenKind::number;
    const bool done = told && is_word(token, "in") && at > range.begin &&
                      (is_word(tokens[at - 1], "finished") || is_word(tokens[at - 1], "done") ||
                       is_word(tokens[at - 1], "ready") || is_word(tokens[at - 1], "baked"));
    const bool opens = last || first || further || card || done ||
                       (told && (is_word(token, "for") || is_word(token, "go")));
    const std::size_t from = opens ? at + 1 : at;
    const bool joined =
        at > range.begin && (is_mark(tokens[at - 1], ',') || is_word(tokens[at - 1], "then") ||
                             is_word(tokens[at - 1], "and"));
    if (from >= range.end || !(opens || (!before.empty() && joined))) {
        return std::nullopt;
    }
    const auto number = number_phrase(tokens, from, range.end);
    if (!number || number->article || number->low < 2 || number->low > 90) {
        return std::nullopt;
    }
    const std::size_t next = number->range.end;
    const auto next_is = [&](std::initializer_list<std::string_view> words) {
        return std::any_of(words.begin(), words.end(), [&](std::string_view word) {
            return word_at(tokens, next, range.end, word);
        });
    };
    const bool ends = next >= range.end || tokens[next].kind == TokenKind::mark ||
                      next_is({"with", "if", "or", "until", "to", "without", "at"}) ||
                      (told && next_is({"more", "on"}));
    if (!ends) {
        return std::nullopt;
    }
    BareMinutes phrase;
    phrase.low = Minutes(number->low);
    phrase.high = Minutes(number->high);
    phrase.likely = Minutes(number->middle());
    phrase.unit_unsaid = true;
    phrase.range = TokenRange{from, next};
    phrase.widens =
        !opens && next_is({"if"}) && !before.empty() && before.back().range.end + 1 == at;
    phrase.role = last                           ? DurationRole::last
                  : first                        ? DurationRole::turning
                  : further || next_is({"more"}) ? DurationRole::further
                                                 : DurationRole::length;
    return phrase;
}

} // namespace

bool in_minutes(const DurationPhrase& phrase) {
    return !phrase.assumed && phrase.high.count() <= 90;
}

std::vector<DurationPhrase>
durations_in(const std::vector<Token>& tokens, TokenRange range, bool minutes_told) {
    std::vector<DurationPhrase> durations;
    const std::vector<ClockPhrase> clocks = clocks_in(tokens, range);
    std::size_t at = range.begin;
    std::size_t clock_index = 0;
    while (at < range.end) {
        // "from nine in the evening till six the next morning"
        while (clock_index < clocks.size() && clocks[clock_index].range.begin < at) {
            ++clock_index;
        }
        if (clock_index + 1 < clocks.size() && clocks[clock_index].range.begin == at &&
            !clocks[clock_index].until && clocks[clock_index + 1].until &&
            clocks[clock_index + 1].range.begin - clocks[clock_index].range.end <= 6) {
            const ClockPhrase& from = clocks[clock_index];
            const ClockPhrase& to = clocks[clock_index + 1];
            int minutes =
                (to.clock.hour - from.clock.hour) * 60 + to.clock.minute - from.clock.minute;
            bool half_day_told = from.clock.hour >= 12;
            for (std::size_t token = from.range.begin;
                 token < std::min(range.end, to.range.end + 4);
                 ++token) {
                half_day_told = half_day_told || is_word(tokens[token], "morning") ||
                                is_word(tokens[token], "evening");
            }
            minutes = minutes <= 0
                          ? minutes + (half_day_told || from.clock.hour > 12 ? 24 * 60 : 12 * 60)
                          : minutes;
            minutes = afternoon_rather(minutes, from.clock, to.clock);
            DurationPhrase phrase;
            phrase.low = phrase.likely = phrase.high = Minutes(static_cast<double>(minutes));
            phrase.from = from.clock;
            phrase.to = to.clock;
            phrase.range = TokenRange{from.range.begin, to.range.end};
            durations.push_back(phrase);
            at = to.range.end;
            clock_index += 2;
            continue;
        }
        if (clock_index < clocks.size() && clocks[clock_index].range.begin == at) {
            at = clocks[clock_index].range.end;
            continue;
        }
        if (auto night = night_at(tokens, at, range.end)) {
            durations.push_back(*night);
            at = night->range.end;
            continue;
        }
        auto amount = amount_at(tokens, at, range.end);
        if (!amount) {
            if (const auto hourly = every_unit(tokens, at, range.end)) {
                durations.push_back(*hourly);
                at = hourly->range.end;
                continue;
            }
            if (auto bare = bare_minutes(tokens, range, at, minutes_told, durations)) {
                at = bare->range.end;
                if (bare->widens) { // "ten minutes, fifteen if you are out of practice"
                    DurationPhrase& before = durations.back();
                    before.high = Minutes(std::max(bare->high.count(), before.high.count()));
                    before.likely = before.low + (before.high - before.low) / 2.0;
                    before.range.end = at;
                } else {
                    durations.push_back(*bare);
                }
                continue;
            }
            ++at;
            continue;
        }
        DurationPhrase phrase;
        double low = amount->low;
        double high = amount->high;
        std::size_t next = amount->next;
        // 45 minutes to an hour; 45 min–1 hr; half an hour or forty minutes
        if (next < range.end &&
            (is_dash(tokens[next]) || is_word(tokens[next], "to") || is_word(tokens[next], "or"))) {
            std::size_t from = next + 1;
            if (word_at(tokens, from, range.end, "even") ||
                word_at(tokens, from, range.end, "perhaps") ||
                word_at(tokens, from, range.end, "in")) {
                ++from;
            }
            const auto second = amount_at(tokens, from, range.end);
            if (second && second->low > low) {
                high = second->high;
                next = second->next;
            } else if (const auto bare = single_number(tokens, from, range.end);
                       bare && !bare->article && bare->low * amount->unit > low &&
                       amount->unit > 0 &&
                       (bare->range.end >= range.end ||
                        tokens[bare->range.end].kind == TokenKind::mark)) {
                high = bare->low * amount->unit;
                next = bare->range.end;
            }
        }
        // at least 12 hours … and no more than three days
        if (amount->at_least) {
            for (std::size_t probe = next; probe < std::min(range.end, next + 8); ++probe) {
                const bool upper = words_at(tokens, probe, range.end, {"no", "more", "than"}) ||
                                   words_at(tokens, probe, range.end, {"not", "more", "than"}) ||
                                   words_at(tokens, probe, range.end, {"up", "to"}) ||
                                   words_at(tokens, probe, range.end, {"at", "most"});
                if (!upper) {
                    continue;
                }
                const bool two = is_word(tokens[probe], "up") || is_word(tokens[probe], "at");
                const auto bare = single_number(tokens, probe + (two ? 2U : 3U), range.end);
                const bool unitless = bare && !bare->article &&
                                      (bare->range.end >= range.end ||
                                       tokens[bare->range.end].kind == TokenKind::mark);
                if (unitless && bare->low * amount->unit > low) { // "at least 8 hours or up to 48"
                    high = bare->low * amount->unit;
                    next = bare->range.end;
                } else if (const auto most = amount_at(tokens, probe + (two ? 2U : 3U), range.end);
                           most && most->high > low) {
                    high = most->high;
                    next = most->next;
                }
                break;
            }
        }
        // an hour, ninety minutes at most
        if (next + 1 < range.end && is_mark(tokens[next], ',')) {
            const auto most = amount_at(tokens, next + 1, range.end);
            if (most && most->high > high &&
                words_at(tokens, most->next, range.end, {"at", "most"})) {
                high = most->high;
                next = most->next + 2;
            }
        }
        phrase.low = Minutes(amount->at_most && amount->low == amount->high ? 0.0 : low);
        phrase.high = Minutes(high);
        phrase.likely = Minutes((phrase.low.count() + high) / 2.0);
        phrase.about = amount->about;
        phrase.at_least = amount->at_least;
        phrase.at_most = amount->at_most;
        phrase.range = TokenRange{at, next};
        append_tail(tokens, range.end, phrase);
        phrase.role = role_of(tokens, range, phrase);
        durations.push_back(phrase);
        at = std::max(phrase.range.end, at + 1);
    }
    return durations;
}

} // namespace loafwright::reading
