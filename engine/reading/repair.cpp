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

} // namespace

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
