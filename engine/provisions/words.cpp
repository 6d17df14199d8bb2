// SPDX-License-Identifier: Apache-2.0
//
// Looking for phrases in short texts. A phrase counts as said only when it is not denied just
// before it within the same clause; how far back that reaches is a choice between "no need of a
// mixer", which must be seen, and "so that it does not stick to the paper", which must not.

#include "engine/provisions/words.hpp"

#include <algorithm>
#include <array>

namespace loafwright::provisions {
namespace {

// U+2019, which printed texts have for an apostrophe.
constexpr std::string_view curly_apostrophe = "\xE2\x80\x99";

constexpr std::array<std::string_view, 14> denials{"no",
                                                   "not",
                                                   "without",
                                                   "never",
                                                   "don't",
                                                   "needn't",
                                                   "isn't",
                                                   "aren't",
                                                   "avoid",
                                                   "neither",
                                                   "nor",
                                                   "hardly",
                                                   "instead",
                                                   "skip"};
// After "or", these do not open a second choice: "ten minutes or so".
constexpr std::array<std::string_view, 8> no_choice{
    "so", "until", "till", "more", "less", "two", "longer", "thereabouts"};

constexpr std::size_t denial_reach = 3;
constexpr std::size_t alternative_reach = 4;

bool is_letter_or_digit(char letter) {
    const auto byte = static_cast<unsigned char>(letter);
    return (byte >= '0' && byte <= '9') || (byte >= 'a' && byte <= 'z') ||
           (byte >= 'A' && byte <= 'Z') || byte >= 0x80;
}

char lower(char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

bool same_letters(std::string_view said, std::string_view wanted) {
    return std::equal(said.begin(), said.end(), wanted.begin(), wanted.end(), [](char a, char b) {
        return a == lower(b);
    });
}

bool same_word(std::string_view said, std::string_view wanted) {
    if (said.size() == wanted.size()) {
        return same_letters(said, wanted);
    }
    return said.size() == wanted.size() + 1 && said.back() == 's' &&
           same_letters(said.substr(0, wanted.size()), wanted);
}

bool belongs_to_word(char letter) {
    return is_letter_or_digit(letter) || letter == '\'';
}

// The word of a phrase at or after `at`, which is moved behind it; empty at the end. Phrases are
// many and texts are few, so phrases are walked through where they stand and not cut up.
std::string_view next_word(std::string_view phrase, std::size_t& at) {
    while (at < phrase.size() && !belongs_to_word(phrase[at])) {
        ++at;
    }
    const std::size_t begin = at;
    while (at < phrase.size() && belongs_to_word(phrase[at])) {
        ++at;
    }
    return phrase.substr(begin, at - begin);
}

// How many words the phrase takes up from `first` on; 0 when it does not stand there.
std::size_t length_at(const Words& words, std::size_t first, std::string_view phrase) {
    std::size_t at = 0;
    std::size_t count = 0;
    for (std::string_view wanted = next_word(phrase, at); !wanted.empty();
         wanted = next_word(phrase, at)) {
        if (first + count >= words.size()) {
            return 0;
        }
        const Word& said = words[first + count];
        if (!same_word(said.text, wanted) || (count > 0 && said.after_mark)) {
            return 0;
        }
        ++count;
    }
    return count;
}

template <std::size_t Count>
bool is_one_of(const std::array<std::string_view, Count>& all, std::string_view word) {
    return std::find(all.begin(), all.end(), word) != all.end();
}

} // namespace

Words words_of(std::string_view text) {
    Words words;
    bool mark = false;
    std::size_t at = 0;
    while (at < text.size()) {
        if (!is_letter_or_digit(text[at])) {
            const char letter = text[at];
            mark = mark || (letter != ' ' && letter != '-' && letter != '\'' && letter != '\n' &&
                            letter != '/' && letter != '"');
            ++at;
            continue;
        }
        Word word;
        word.begin = at;
        word.after_mark = mark && !words.empty();
        mark = false;
        while (at < text.size()) {
            if (text.compare(at, curly_apostrophe.size(), curly_apostrophe) == 0) {
                word.text += '\'';
                at += curly_apostrophe.size();
            } else if (is_letter_or_digit(text[at]) || text[at] == '\'') {
                word.text += lower(text[at]);
                ++at;
            } else {
                break;
            }
        }
        while (!word.text.empty() && word.text.back() == '\'') {
            word.text.pop_back();
        }
        word.end = at;
        if (!word.text.empty()) {
            words.push_back(std::move(word));
        }
    }
    return words;
}

std::vector<Match> matches(const Words& words, std::string_view phrase) {
    std::vector<Match> found;
    std::size_t ignored = 0;
    const std::string_view wanted = next_word(phrase, ignored);
    if (wanted.empty()) {
        return found;
    }
    const char initial = lower(wanted.front());
    for (std::size_t first = 0; first < words.size(); ++first) {
        // OPTIMIZATION: nearly every word falls at its first letter.
        if (words[first].text.front() != initial) {
            continue;
        }
        const std::size_t count = length_at(words, first, phrase);
        if (count > 0) {
            found.push_back({first, count});
        }
    }
    return found;
}

bool is_denied(const Words& words, const Match& match) {
    for (std::size_t back = 0; back < denial_reach && match.first > back; ++back) {
        const std::size_t at = match.first - 1 - back;
        if (words[at + 1].after_mark) {
            return false;
        }
        if (is_one_of(denials, words[at].text)) {
            return true;
        }
    }
    return false;
}

bool is_alternative(const Words& words, const Match& match) {
    for (std::size_t back = 0; back < alternative_reach && match.first > back; ++back) {
        const std::size_t at = match.first - 1 - back;
        if (words[at + 1].after_mark) {
            return false;
        }
        if (words[at].text == "or") {
            return !is_one_of(no_choice, words[at + 1].text);
        }
    }
    return false;
}

bool says_any(const Words& words, const std::vector<std::string_view>& phrases) {
    return std::any_of(phrases.begin(), phrases.end(), [&](std::string_view phrase) {
        const auto found = matches(words, phrase);
        return std::any_of(found.begin(), found.end(), [&](const Match& match) {
            return !is_denied(words, match);
        });
    });
}

} // namespace loafwright::provisions
