// SPDX-License-Identifier: Apache-2.0
//
// Numbers as people write them in recipes, by recursive descent over tokens. Digits, glyphs and
// words follow one grammar, so "1 1/2", "1½", "one and a half" and "1-1/2" cannot differ. "1-1/2"
// is a mixed number because its second part is below one and its first is whole; "3-4" is a range.
#include "engine/reading/number.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace loafwright::reading {
namespace {

struct NumberWord {
    std::string_view word;
    double value;
};

constexpr std::array<NumberWord, 31> whole_words = {
    {{"zero", 0},     {"one", 1},      {"two", 2},        {"three", 3},     {"four", 4},
     {"five", 5},     {"six", 6},      {"seven", 7},      {"eight", 8},     {"nine", 9},
     {"ten", 10},     {"eleven", 11},  {"twelve", 12},    {"thirteen", 13}, {"fourteen", 14},
     {"fifteen", 15}, {"sixteen", 16}, {"seventeen", 17}, {"eighteen", 18}, {"nineteen", 19},
     {"twenty", 20},  {"thirty", 30},  {"forty", 40},     {"fifty", 50},    {"sixty", 60},
     {"seventy", 70}, {"eighty", 80},  {"ninety", 90},    {"couple", 2},    {"dozen", 12},
     {"hundred", 100}}};

constexpr std::array<NumberWord, 12> part_words = {{{"half", 0.5},
                                                    {"halves", 0.5},
                                                    {"third", 1.0 / 3},
                                                    {"thirds", 1.0 / 3},
                                                    {"quarter", 0.25},
                                                    {"quarters", 0.25},
                                                    {"fourth", 0.25},
                                                    {"fourths", 0.25},
                                                    {"eighth", 0.125},
                                                    {"eighths", 0.125},
                                                    {"fifth", 0.2},
                                                    {"fifths", 0.2}}};

template <std::size_t Size>
std::optional<double> value_of(const std::array<NumberWord, Size>& table, const Token& token) {
    if (!token.may_be_number) {
        return std::nullopt;
    }
    for (const NumberWord& row : table) {
        if (token.text == row.word) {
            return row.value;
        }
    }
    return std::nullopt;
}

bool is_article(const Token& token) {
    return is_word(token, "a") || is_word(token, "an");
}

struct Piece {
    double value = 0.0;
    std::size_t next = 0;
};

// Below one: "1/2", "½", "half", "a half", "three quarters", "two-thirds", "one-half", "l/2" as a
// scanner has it.
std::optional<Piece> part(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
    if (at >= end) {
        return std::nullopt;
    }
    const Token& token = tokens[at];
    if (token.kind == TokenKind::number && token.fraction && token.value < 1.0) {
        return Piece{token.value, at + 1};
    }
    if ((is_word(token, "l") || is_word(token, "i")) && at + 2 < end &&
        is_mark(tokens[at + 1], '/') && tokens[at + 2].kind == TokenKind::number &&
        tokens[at + 1].glued && tokens[at + 2].glued && tokens[at + 2].value >= 2) {
        return Piece{1.0 / tokens[at + 2].value, at + 3};
    }
    if (const auto whole = value_of(part_words, token)) {
        // "third" and "fourth" alone are places in a row ("the third rise"); only half and quarter
        // stand alone.
        if (token.text == "half" || token.text == "quarter") {
            return Piece{*whole, at + 1};
        }
        return std::nullopt;
    }
    if (at + 1 < end) {
        const auto below = value_of(part_words, tokens[at + 1]);
        if (is_article(token) && below && tokens[at + 1].text != "halves") {
            return Piece{*below, at + 2};
        }
        const auto above = value_of(whole_words, token);
        if (above && below && *above >= 1 && *above <= 7 && *above * *below < 1.0 &&
            (tokens[at + 1].hyphenated || *above > 1 || tokens[at + 1].text == "half" ||
             tokens[at + 1].text == "third" || tokens[at + 1].text == "quarter" ||
             tokens[at + 1].text == "fourth" || tokens[at + 1].text == "eighth")) {
            return Piece{*above * *below, at + 2};
        }
        // "three-" at a line's end leaves its hyphen behind.
        if (above && is_mark(tokens[at + 1], '-') && at + 2 < end) {
            const auto further = value_of(part_words, tokens[at + 2]);
            if (further && *above * *further < 1.0) {
                return Piece{*above * *further, at + 3};
            }
        }
    }
    return std::nullopt;
}

std::optional<Piece> whole(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
    if (at >= end) {
        return std::nullopt;
    }
    const Token& token = tokens[at];
    if (token.kind == TokenKind::number && !(token.fraction && token.value < 1.0)) {
        return Piece{token.value, at + 1};
    }
    if (is_word(token, "few")) {
        return Piece{3.0, at + 1};
    }
    if (is_word(token, "several")) {
        return Piece{4.0, at + 1};
    }
    const auto value = value_of(whole_words, token);
    if (!value) {
        return std::nullopt;
    }
    // twenty five, twenty-five
    if (*value >= 20 && *value < 100 && at + 1 < end) {
        const auto unit = value_of(whole_words, tokens[at + 1]);
        if (unit && *unit >= 1 && *unit <= 9) {
            return Piece{*value + *unit, at + 2};
        }
    }
    // five-and-twenty
    if (*value >= 1 && *value <= 9 && at + 2 < end && is_word(tokens[at + 1], "and")) {
        const auto tens = value_of(whole_words, tokens[at + 2]);
        if (tens && *tens >= 20 && *tens <= 90) {
            return Piece{*value + *tens, at + 3};
        }
    }
    // two dozen, two hundred
    if (at + 1 < end && (is_word(tokens[at + 1], "dozen") || is_word(tokens[at + 1], "hundred")) &&
        *value < 12) {
        return Piece{*value * (tokens[at + 1].text == "dozen" ? 12.0 : 100.0), at + 2};
    }
    return Piece{*value, at + 1};
}

bool is_whole(double value) {
    return std::fabs(value - std::round(value)) < 1e-9;
}

std::size_t skip_of(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
    return at < end && is_word(tokens[at], "of") ? at + 1 : at;
}

NumberPhrase made(double low, double high, std::size_t begin, std::size_t end) {
    NumberPhrase phrase;
    phrase.low = low;
    phrase.high = high;
    phrase.range = TokenRange{begin, end};
    return phrase;
}

} // namespace

bool is_number_word(std::string_view word) {
    const auto is = [word](const NumberWord& row) { return row.word == word; };
    return std::any_of(whole_words.begin(), whole_words.end(), is) ||
           std::any_of(part_words.begin(), part_words.end(), is);
}

bool is_dash(const Token& token) {
    return token.kind == TokenKind::mark &&
           (token.text == "-" || token.text == "\xE2\x80\x93" || token.text == "~");
}

bool is_hedge(const Token& token) {
    if (token.kind == TokenKind::mark) {
        return token.text == "~" || token.text == "\xC2\xB1" || token.text == "\xE2\x89\x88";
    }
    static constexpr std::array<std::string_view, 15> hedges = {"about",
                                                                "around",
                                                                "approximately",
                                                                "approx",
                                                                "appr",
                                                                "roughly",
                                                                "nearly",
                                                                "almost",
                                                                "circa",
                                                                "perhaps",
                                                                "maybe",
                                                                "some",
                                                                "say",
                                                                "just",
                                                                "quite"};
    if (token.kind != TokenKind::word) {
        return false;
    }
    for (const std::string_view hedge : hedges) {
        if (token.text == hedge) {
            return true;
        }
    }
    return false;
}

std::optional<NumberPhrase>
single_number(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
    if (at >= end) {
        return std::nullopt;
    }
    const Token& opening = tokens[at];
    const bool may_open = opening.kind == TokenKind::number || opening.may_be_number ||
                          is_article(opening) || is_word(opening, "few") ||
                          is_word(opening, "several") || is_word(opening, "l") ||
                          is_word(opening, "i");
    if (!may_open) {
        return std::nullopt;
    }
    if (const auto below = part(tokens, at, end)) {
        // half a dozen, half an hour, half a cup
        std::size_t next = below->next;
        if (next + 1 < end && is_article(tokens[next]) && is_word(tokens[next + 1], "dozen")) {
            return made(below->value * 12.0, below->value * 12.0, at, next + 2);
        }
        if (next < end && is_article(tokens[next]) && tokens[at].kind == TokenKind::word) {
            ++next;
        }
        return made(below->value, below->value, at, next);
    }
    if (const auto units = whole(tokens, at, end)) {
        std::size_t next = units->next;
        double value = units->value;
        const bool pair = is_word(tokens[at], "couple");
        // mixed: 1 1/2, 1½, 1-1/2, 2 and 1/4, one and a half, two and three quarters
        if (is_whole(value) && next < end && !pair) {
            std::size_t from = next;
            const bool joined = is_word(tokens[from], "and") || is_mark(tokens[from], '&') ||
                                is_mark(tokens[from], '-') || is_mark(tokens[from], '+');
            if (joined) {
                ++from;
            }
            const auto below = part(tokens, from, end);
            const bool digits = below && tokens[from].kind == TokenKind::number;
            const bool in_words = below && joined && !digits && !is_mark(tokens[next], '-');
            // "1 half" is not a mixed number, "one and a half" is; "3 & half" too. "Two 1/4-ounce
            // packages" are two of a size.
            const bool two_styles = digits && !joined && tokens[at].kind == TokenKind::word;
            if (below && (digits || in_words) && !two_styles) {
                value += below->value;
                next = below->next;
            }
        }
        if (pair) {
            next = skip_of(tokens, next, end);
        }
        return made(value, value, at, next);
    }
    if (is_article(tokens[at])) {
        if (at + 1 < end &&
            (is_word(tokens[at + 1], "couple") || is_word(tokens[at + 1], "dozen"))) {
            const double value = tokens[at + 1].text == "dozen" ? 12.0 : 2.0;
            return made(value, value, at, skip_of(tokens, at + 2, end));
        }
        if (at + 1 < end && is_word(tokens[at + 1], "few")) {
            return made(2.0, 4.0, at, at + 2);
        }
        // a good ten minutes, a full hour: the adjective belongs to the article
        std::size_t next = at + 1;
        if (next < end && (is_word(tokens[next], "good") || is_word(tokens[next], "full") ||
                           is_word(tokens[next], "large") || is_word(tokens[next], "further") ||
                           is_word(tokens[next], "bare") || is_word(tokens[next], "scant"))) {
            ++next;
            if (const auto inner = single_number(tokens, next, end); inner && !inner->article) {
                return made(inner->low, inner->high, at, inner->range.end);
            }
        }
        NumberPhrase phrase = made(1.0, 1.0, at, at + 1);
        phrase.article = true;
        return phrase;
    }
    return std::nullopt;
}

std::optional<NumberPhrase>
number_phrase(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
    const std::size_t begin = at;
    bool about = false;
    bool at_least = false;
    bool at_most = false;
    bool paired = false; // "between", "from"
    while (at < end) {
        if (is_hedge(tokens[at])) {
            about = true;
            ++at;
            if (at < end && is_mark(tokens[at], '.')) { // approx.
                ++at;
            }
        } else if (is_word(tokens[at], "c") && at + 1 < end && is_mark(tokens[at + 1], '.')) {
            about = true;
            at += 2;
        } else if (at + 1 < end && is_word(tokens[at], "at") && is_word(tokens[at + 1], "least")) {
            at_least = true;
            at += 2;
        } else if (at + 1 < end && is_word(tokens[at], "at") && is_word(tokens[at + 1], "most")) {
            at_most = true;
            at += 2;
        } else if (at + 1 < end && is_word(tokens[at], "up") && is_word(tokens[at + 1], "to")) {
            at_most = true;
            at += 2;
        } else if (at + 2 < end && is_word(tokens[at], "no") && is_word(tokens[at + 1], "more") &&
                   is_word(tokens[at + 2], "than")) {
            at_most = true;
            at += 3;
        } else if (at + 1 < end && is_word(tokens[at], "just") &&
                   is_word(tokens[at + 1], "under")) {
            about = true;
            at += 2;
        } else if (is_word(tokens[at], "between") || is_word(tokens[at], "from")) {
            paired = true;
            ++at;
        } else if (is_word(tokens[at], "scant") || is_word(tokens[at], "heaped") ||
                   is_word(tokens[at], "heaping") || is_word(tokens[at], "rounded") ||
                   is_word(tokens[at], "level") || is_word(tokens[at], "generous")) {
            ++at;
        } else {
            break;
        }
        if (at - begin > 6) {
            return std::nullopt;
        }
    }
    auto first = single_number(tokens, at, end);
    if (!first) {
        return std::nullopt;
    }
    NumberPhrase phrase = *first;
    phrase.about = about;
    phrase.at_least = at_least;
    phrase.at_most = at_most;
    std::size_t next = first->range.end;
    const bool can_join = next + 1 < end;
    if (can_join) {
        const Token& join = tokens[next];
        const bool joins = is_dash(join) || is_word(join, "to") || is_word(join, "or") ||
                           (paired && is_word(join, "and"));
        std::size_t from = next + 1;
        while (joins && from < end && is_hedge(tokens[from])) {
            ++from;
        }
        if (joins && from < end) {
            const auto second = single_number(tokens, from, end);
            // "one or a" is no range; and a range rises.
            if (second && !second->article && second->low > phrase.low) {
                phrase.high = second->high;
                next = second->range.end;
            } else if (second && !second->article && is_dash(join) && second->low < 1.0 &&
                       is_whole(phrase.low)) {
                phrase.low = phrase.high = phrase.low + second->low; // 1–½ as a scanner has it
                next = second->range.end;
            }
        } else if (is_mark(join, ',') && from + 1 < end &&
                   (is_word(tokens[from], "maybe") || is_word(tokens[from], "perhaps"))) {
            const auto second = single_number(tokens, from + 1, end);
            if (second && second->low > phrase.low) {
                phrase.high = second->high;
                next = second->range.end;
            }
        }
    }
    if (at_most && phrase.low == phrase.high) {
        phrase.low = 0.0;
    }
    phrase.range = TokenRange{begin, next};
    return phrase;
}

} // namespace loafwright::reading
