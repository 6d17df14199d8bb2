// SPDX-License-Identifier: Apache-2.0
//
// Units of time, and the small comparisons of words that the grammars of lengths and clocks share.
#include "engine/reading/time_words.hpp"

#include <array>

namespace loafwright::reading {
namespace {

struct Unit {
    std::string_view word;
    double minutes;
};

constexpr double hour = minutes_an_hour;
constexpr double day = minutes_a_day;

constexpr std::array<Unit, 21> units = {{{"minute", 1},
                                         {"minutes", 1},
                                         {"min", 1},
                                         {"mins", 1},
                                         {"mn", 1},
                                         {"hour", hour},
                                         {"hours", hour},
                                         {"hr", hour},
                                         {"hrs", hour},
                                         {"h", hour},
                                         {"day", day},
                                         {"days", day},
                                         {"week", 7 * day},
                                         {"weeks", 7 * day},
                                         {"month", 30 * day},
                                         {"months", 30 * day},
                                         {"second", 1.0 / 60},
                                         {"seconds", 1.0 / 60},
                                         {"sec", 1.0 / 60},
                                         {"secs", 1.0 / 60},
                                         {"fortnight", 14 * day}}};

} // namespace

std::optional<double> unit_minutes(const Token& token) {
    if (token.kind != TokenKind::word) {
        return std::nullopt;
    }
    if (token.text == "m" && token.glued && !token.capital) {
        return 1.0; // 45m
    }
    for (const Unit& unit : units) {
        if (token.text == unit.word) {
            return unit.minutes;
        }
    }
    return std::nullopt;
}

bool word_at(const std::vector<Token>& tokens,
             std::size_t at,
             std::size_t end,
             std::string_view word) {
    return at < end && is_word(tokens[at], word);
}

bool words_at(const std::vector<Token>& tokens,
              std::size_t at,
              std::size_t end,
              std::initializer_list<std::string_view> words) {
    for (const std::string_view word : words) {
        if (!word_at(tokens, at, end, word)) {
            return false;
        }
        ++at;
    }
    return true;
}

} // namespace loafwright::reading
