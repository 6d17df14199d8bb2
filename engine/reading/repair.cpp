// SPDX-License-Identifier: Apache-2.0
//
// Scanners confuse shapes (rn and m, l and i, c and e, h and b), people swap or double letters. For
// every word that nobody knows the few forms that one confused shape could have come from are
// tried. Swapped and doubled letters are mended only into words that the grammars compare letter by
// letter ("mintues"): plain English is full of words one such slip from a baker's. Short words are
// left alone.
#include "engine/reading/repair.hpp"

#include "engine/reading/number.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <unordered_map>

namespace loafwright::reading {
namespace {

constexpr std::size_t shortest = 4;
constexpr std::size_t longest = 14;

struct Confusion {
    std::string_view seen;
    std::string_view meant;
};

constexpr std::array<Confusion, 13> confusions = {{{"rn", "m"},
                                                   {"m", "rn"},
                                                   {"l", "i"},
                                                   {"i", "l"},
                                                   {"c", "e"},
                                                   {"e", "c"},
                                                   {"h", "b"},
                                                   {"b", "h"},
                                                   {"cl", "d"},
                                                   {"d", "cl"},
                                                   {"vv", "w"},
                                                   {"ii", "u"},
                                                   {"li", "h"}}};

// Words that the grammars compare letter by letter.
constexpr std::array<std::string_view, 14> grammar_words = {"minute",
                                                            "minutes",
                                                            "hour",
                                                            "hours",
                                                            "second",
                                                            "seconds",
                                                            "degrees",
                                                            "celsius",
                                                            "fahrenheit",
                                                            "quarters",
                                                            "about",
                                                            "until",
                                                            "another",
                                                            "every"};

bool is_grammar_word(const std::string& word) {
    return is_number_word(word) ||
           std::find(grammar_words.begin(), grammar_words.end(), word) != grammar_words.end();
}

bool is_known(const std::string& word, const Lexicon& lexicon) {
    return is_grammar_word(word) || lexicon.recognises(word);
}

// One slip away: a confused shape, two letters swapped, one doubled or dropped.
std::string mended(const std::string& word, const Lexicon& lexicon) {
    std::string tried;
    for (std::size_t at = 0; at < word.size(); ++at) {
        for (const Confusion& confusion : confusions) {
            if (word.compare(at, confusion.seen.size(), confusion.seen) == 0) {
                tried = word;
                tried.replace(at, confusion.seen.size(), confusion.meant);
                if (is_known(tried, lexicon)) {
                    return tried;
                }
            }
        }
    }
    if (word.size() < 6) {
        return word;
    }
    for (std::size_t at = 0; at + 1 < word.size(); ++at) {
        tried = word;
        std::swap(tried[at], tried[at + 1]);
        if (tried != word && is_grammar_word(tried)) {
            return tried;
        }
        tried = word;
        tried.erase(at, 1);
        if (is_grammar_word(tried)) {
            return tried;
        }
    }
    return word;
}

// Words that a unit of time or a measure runs into when the gap between them is lost: "hourina warm
// place", "2 cupsof flour".
constexpr std::array<std::string_view, 14> run_into = {"minute",
                                                       "minutes",
                                                       "hour",
                                                       "hours",
                                                       "cup",
                                                       "cups",
                                                       "tsp",
                                                       "tbsp",
                                                       "teaspoon",
                                                       "teaspoons",
                                                       "tablespoon",
                                                       "tablespoons",
                                                       "ounces",
                                                       "pounds"};
constexpr std::array<std::string_view, 12> short_words = {
    "in", "a", "of", "the", "or", "and", "at", "on", "until", "till", "to", "for"};

// The lengths of one to three words that a word consists of; empty: it is no such run.
std::vector<std::size_t> run_of(std::string_view word) {
    std::vector<std::size_t> lengths;
    const auto first = std::find_if(run_into.rbegin(), run_into.rend(), [&](std::string_view one) {
        return word.size() > one.size() && word.substr(0, one.size()) == one;
    });
    const bool two_short = word == "ina"; // no word of English, and every baker's warm place
    if (first == run_into.rend() && !two_short) {
        return {};
    }
    std::size_t at = 0;
    if (!two_short) {
        lengths.push_back(first->size());
        at = first->size();
    }
    while (at < word.size() && lengths.size() < 3) {
        const auto next =
            std::find_if(short_words.begin(), short_words.end(), [&](std::string_view one) {
                return word.substr(at, one.size()) == one;
            });
        if (next == short_words.end()) {
            return {};
        }
        lengths.push_back(next->size());
        at += next->size();
    }
    return at == word.size() ? lengths : std::vector<std::size_t>{};
}

} // namespace

void part_runs(std::vector<Token>& tokens, const Lexicon& lexicon) {
    std::vector<Token> parted;
    bool any = false;
    for (std::size_t index = 0; index < tokens.size(); ++index) {
        Token& token = tokens[index];
        const bool whole = token.kind != TokenKind::word || token.text.size() < 3 ||
                           token.text.size() != token.span.end - token.span.begin ||
                           is_known(token.text, lexicon);
        const std::vector<std::size_t> lengths =
            whole ? std::vector<std::size_t>{} : run_of(token.text);
        if (!lengths.empty() && !any) {
            parted.assign(tokens.begin(), tokens.begin() + static_cast<std::ptrdiff_t>(index));
            any = true;
        }
        if (lengths.empty()) {
            if (any) {
                parted.push_back(std::move(token));
            }
            continue;
        }
        std::size_t at = 0;
        for (const std::size_t length : lengths) {
            Token piece = token;
            piece.text = token.text.substr(at, length);
            piece.span = Span{token.span.begin + at, token.span.begin + at + length};
            piece.may_be_number = is_number_word(piece.text);
            piece.first_on_line = token.first_on_line && at == 0;
            piece.glued = token.glued && at == 0;
            piece.capital = token.capital && at == 0;
            parted.push_back(std::move(piece));
            at += length;
        }
    }
    if (any) {
        tokens = std::move(parted);
    }
}

void repair_words(std::vector<Token>& tokens, const Lexicon& lexicon) {
    std::unordered_map<std::string, std::string> seen;
    for (Token& token : tokens) {
        const bool plain = token.kind == TokenKind::word && token.text.size() >= shortest &&
                           token.text.size() <= longest &&
                           std::all_of(token.text.begin(), token.text.end(), [](char c) {
                               return c >= 'a' && c <= 'z';
                           });
        if (!plain || is_known(token.text, lexicon)) {
            continue;
        }
        const auto found = seen.find(token.text);
        const std::string mend = found != seen.end() ? found->second : mended(token.text, lexicon);
        if (found == seen.end()) {
            seen.emplace(token.text, mend);
        }
        token.text = mend;
        token.may_be_number = is_number_word(token.text);
    }
}

} // namespace loafwright::reading
