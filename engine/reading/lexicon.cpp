// SPDX-License-Identifier: Apache-2.0
//
// Phrases over base forms. A word of the text is looked up as it stands and by the base form that
// English inflection allows (stripping -s, -ed, -ing and a table of irregular verbs), but only
// where that base form is in the vocabulary: the lexicon itself decides what is a word, so no
// stemmer can invent one. A lexicon row may therefore name a form ("doubled") or a base ("double").
#include "engine/reading/lexicon.hpp"

#include "engine/recipe/words.hpp"

#include <algorithm>
#include <array>

namespace loafwright::reading {
namespace {

struct Irregular {
    std::string_view form;
    std::string_view base;
    Inflection inflection;
};

constexpr std::array<Irregular, 52> irregulars = {
    {{"risen", "rise", Inflection::ed},    {"rose", "rise", Inflection::ed},
     {"left", "leave", Inflection::ed},    {"leaves", "leave", Inflection::s},
     {"loaves", "loaf", Inflection::s},    {"halves", "half", Inflection::s},
     {"made", "make", Inflection::ed},     {"taken", "take", Inflection::ed},
     {"took", "take", Inflection::ed},     {"given", "give", Inflection::ed},
     {"gave", "give", Inflection::ed},     {"stood", "stand", Inflection::ed},
     {"kept", "keep", Inflection::ed},     {"beaten", "beat", Inflection::ed},
     {"proven", "prove", Inflection::ed},  {"laid", "lay", Inflection::ed},
     {"ground", "grind", Inflection::ed},  {"put", "put", Inflection::none},
     {"set", "set", Inflection::none},     {"let", "let", Inflection::none},
     {"cut", "cut", Inflection::none},     {"split", "split", Inflection::none},
     {"shaken", "shake", Inflection::ed},  {"broken", "break", Inflection::ed},
     {"begun", "begin", Inflection::ed},   {"gone", "go", Inflection::ed},
     {"goes", "go", Inflection::s},        {"went", "go", Inflection::ed},
     {"eaten", "eat", Inflection::ed},     {"thrown", "throw", Inflection::ed},
     {"fallen", "fall", Inflection::ed},   {"sunk", "sink", Inflection::ed},
     {"grown", "grow", Inflection::ed},    {"spread", "spread", Inflection::none},
     {"fed", "feed", Inflection::ed},      {"lain", "lie", Inflection::ed},
     {"done", "do", Inflection::ed},       {"been", "be", Inflection::ed},
     {"is", "be", Inflection::s},          {"are", "be", Inflection::s},
     {"was", "be", Inflection::ed},        {"were", "be", Inflection::ed},
     {"has", "have", Inflection::s},       {"had", "have", Inflection::ed},
     {"knives", "knife", Inflection::s},   {"dough's", "dough", Inflection::s},
     {"proofed", "proof", Inflection::ed}, {"it's", "it", Inflection::s},
     {"brought", "bring", Inflection::ed}, {"turnt", "turn", Inflection::ed},
     {"burnt", "burn", Inflection::ed},    {"dough", "dough", Inflection::none}}};

struct Stem {
    std::string base;
    Inflection inflection = Inflection::none;
};

// Every base form that English allows for a form, likeliest first.
std::vector<Stem> stems_of(std::string_view word) {
    std::vector<Stem> stems;
    for (const Irregular& row : irregulars) {
        if (row.form == word && row.base != word) {
            stems.push_back({std::string(row.base), row.inflection});
        }
    }
    const auto ends = [&](std::string_view tail) {
        return word.size() > tail.size() + 1 && word.substr(word.size() - tail.size()) == tail;
    };
    const auto without = [&](std::size_t count) {
        return std::string(word.substr(0, word.size() - count));
    };
    const auto undoubled = [](std::string base) {
        if (base.size() > 2 && base[base.size() - 1] == base[base.size() - 2]) {
            base.pop_back();
        }
        return base;
    };
    if (ends("ies")) {
        stems.push_back({without(3) + "y", Inflection::s});
    }
    if (ends("es")) {
        stems.push_back({without(2), Inflection::s});
    }
    if (ends("s") && !ends("ss")) {
        stems.push_back({without(1), Inflection::s});
    }
    if (ends("ied")) {
        stems.push_back({without(3) + "y", Inflection::ed});
    }
    if (ends("ed")) {
        stems.push_back({without(1), Inflection::ed});
        stems.push_back({without(2), Inflection::ed});
        stems.push_back({undoubled(without(2)), Inflection::ed});
    }
    if (ends("ing")) {
        stems.push_back({without(3) + "e", Inflection::ing});
        stems.push_back({without(3), Inflection::ing});
        stems.push_back({undoubled(without(3)), Inflection::ing});
    }
    if (ends("fuls") || ends("ful")) { // teaspoonful, cupfuls
        stems.push_back({without(ends("fuls") ? 4 : 3), Inflection::s});
    }
    return stems;
}

constexpr std::uint32_t gap = 0;
constexpr std::size_t longest_gap = 5;

} // namespace

Lexicon::Lexicon(const Knowledge& knowledge) {
    vocabulary_.reserve(knowledge.lexicon.size() * 3);
    for (const LexiconRow& row : knowledge.lexicon) {
        add(row);
    }
    add_ingredients(knowledge);
    add_units(knowledge);
    for (auto& role : roles_) {
        for (auto& first : role.second) {
            std::stable_sort(
                first.second.begin(), first.second.end(), [this](std::uint32_t a, std::uint32_t b) {
                    return patterns_[a].told > patterns_[b].told;
                });
        }
    }
}

// Names of the ingredient table become phrases of the role "ingredient". A note in brackets ("corn
// flour (US)") is not said.
void Lexicon::add_ingredients(const Knowledge& knowledge) {
    std::size_t count = 0;
    for (const IngredientRow& row : knowledge.ingredients) {
        count += 1 + row.aliases.size();
    }
    ingredient_rows_.reserve(count); // patterns point into it
    const auto name = [this](std::string_view say, std::string_view item) {
        const std::size_t bracket = say.find(" (");
        ingredient_rows_.push_back(LexiconRow{"ingredient", say.substr(0, bracket), item, 1.0, {}});
        add(ingredient_rows_.back());
    };
    // A name of one region comes after the names of all: "oatmeal" is first what it is everywhere.
    for (const bool regional : {false, true}) {
        for (const IngredientRow& row : knowledge.ingredients) {
            if (!regional) {
                name(row.item, row.item);
            }
            for (const std::string_view alias : row.aliases) {
                if (regional == (alias.find(" (") != std::string_view::npos)) {
                    name(alias, row.item);
                }
            }
        }
    }
}

// The words of units are known, so that nobody mends "quarterns" into "quarters". Short ones are
// not mended and stand in the lists of other languages too.
void Lexicon::add_units(const Knowledge& knowledge) {
    constexpr std::size_t shortest = 4;
    for (const UnitRow& row : knowledge.units) {
        for (const std::string_view written : row.written) {
            if (written.size() >= shortest &&
                written.find_first_of(" -.") == std::string_view::npos) {
                id_of(lower_case(written));
            }
        }
    }
}

std::uint32_t Lexicon::id_of(std::string_view word) {
    const auto next = static_cast<std::uint32_t>(vocabulary_.size() + 1);
    return vocabulary_.emplace(std::string(word), next).first->second;
}

void Lexicon::add(const LexiconRow& row) {
    Pattern pattern;
    pattern.row = &row;
    std::size_t at = 0;
    while (at < row.say.size()) {
        const std::size_t blank = std::min(row.say.find_first_of(" -", at), row.say.size());
        std::string_view word = row.say.substr(at, blank - at);
        at = blank + 1;
        if (word.size() > 2 && word.substr(word.size() - 2) == "'s") {
            word.remove_suffix(2);
        }
        if (word.size() > 2 && word.back() == '\'') { // confectioners'
            word.remove_suffix(1);
        }
        if (word.empty()) {
            continue;
        }
        // "2% milk", "10x sugar": the tokeniser parts a number from what is glued to it.
        const std::size_t digits = std::min(word.find_first_not_of("0123456789"), word.size());
        if (digits > 0 && digits < word.size()) {
            pattern.words.push_back({id_of(word.substr(0, digits))});
            ++pattern.told;
            word.remove_prefix(digits);
        }
        std::vector<std::uint32_t> choices;
        std::size_t from = 0;
        while (from <= word.size()) {
            const std::size_t bar = std::min(word.find('|', from), word.size());
            const std::string_view choice = word.substr(from, bar - from);
            choices.push_back(choice == "~" ? gap : id_of(lower_case(choice)));
            from = bar + 1;
        }
        pattern.told += choices.front() == gap ? 0U : 1U;
        pattern.words.push_back(std::move(choices));
    }
    if (pattern.words.empty() || pattern.words.front().front() == gap) {
        return;
    }
    Patterns& patterns = roles_[row.role];
    const auto index = static_cast<std::uint32_t>(patterns_.size());
    for (const std::uint32_t first : pattern.words.front()) {
        patterns[first].push_back(index);
    }
    patterns_.push_back(std::move(pattern));
}

WordIds Lexicon::ids_of(std::string_view word) const {
    WordIds ids;
    const auto exact = vocabulary_.find(std::string(word));
    if (exact != vocabulary_.end()) {
        ids.exact = exact->second;
    }
    for (const Stem& stem : stems_of(word)) {
        const auto base = vocabulary_.find(stem.base);
        if (base != vocabulary_.end()) {
            ids.base = base->second;
            ids.inflection = stem.inflection;
            break;
        }
    }
    return ids;
}

std::vector<WordIds> Lexicon::identify(const std::vector<Token>& tokens) const {
    std::vector<WordIds> ids(tokens.size());
    std::unordered_map<std::string_view, WordIds> known;
    for (std::size_t at = 0; at < tokens.size(); ++at) {
        // Numbers and marks stand in names too: "00 flour", "2% milk".
        if (tokens[at].kind != TokenKind::word) {
            const auto exact =
                tokens[at].fraction ? vocabulary_.end() : vocabulary_.find(tokens[at].text);
            ids[at].exact = exact == vocabulary_.end() ? 0 : exact->second;
            continue;
        }
        if (tokens[at].text.size() > 40) {
            continue;
        }
        const auto found = known.find(tokens[at].text);
        if (found != known.end()) {
            ids[at] = found->second;
        } else {
            ids[at] = ids_of(tokens[at].text);
            known.emplace(tokens[at].text, ids[at]);
        }
    }
    return ids;
}

const LexiconRow* Lexicon::first(std::string_view role) const {
    for (const Pattern& pattern : patterns_) {
        if (pattern.row->role == role) {
            return pattern.row;
        }
    }
    return nullptr;
}

std::size_t Lexicon::end_of_match(const Pattern& pattern,
                                  const std::vector<Token>& tokens,
                                  const std::vector<WordIds>& ids,
                                  std::size_t at,
                                  std::size_t end) const {
    std::size_t token = at;
    bool open_gap = false;
    for (const std::vector<std::uint32_t>& choices : pattern.words) {
        if (choices.front() == gap) {
            open_gap = true;
            continue;
        }
        std::size_t skipped = 0;
        while (true) {
            const bool in_word =
                token < end && (is_mark(tokens[token], '-') || is_mark(tokens[token], '\''));
            if (token >= end ||
                (tokens[token].kind == TokenKind::mark && !in_word && ids[token].exact == 0)) {
                return 0;
            }
            const bool fits = std::any_of(choices.begin(), choices.end(), [&](std::uint32_t word) {
                return ids[token].exact == word || ids[token].base == word;
            });
            if (fits) {
                ++token;
                break;
            }
            const bool over =
                !open_gap || tokens[token].kind == TokenKind::mark || ++skipped > longest_gap;
            if (!in_word && over) {
                return 0;
            }
            ++token;
        }
        open_gap = false;
    }
    return token;
}

Match Lexicon::longest(const Patterns& patterns,
                       const std::vector<Token>& tokens,
                       const std::vector<WordIds>& ids,
                       std::size_t at,
                       std::size_t end) const {
    Match best;
    std::size_t most_words = 0;
    if (at >= end) {
        return best;
    }
    for (const std::uint32_t word : {ids[at].exact, ids[at].base}) {
        if (word == 0) {
            continue;
        }
        const auto first = patterns.find(word);
        if (first == patterns.end()) {
            continue;
        }
        for (const std::uint32_t index : first->second) {
            const Pattern& pattern = patterns_[index];
            const std::size_t stop = end_of_match(pattern, tokens, ids, at, end);
            // More words told beat more words covered: "put ~ oven" over "put ~".
            const bool better =
                best.row == nullptr || pattern.told > most_words ||
                (pattern.told == most_words && pattern.row->weight > best.row->weight);
            if (stop != 0 && better) {
                best.row = pattern.row;
                best.range = TokenRange{at, stop};
                best.head = word == ids[at].exact && word != ids[at].base ? Inflection::none
                                                                          : ids[at].inflection;
                most_words = pattern.told;
            }
        }
    }
    if (best.row != nullptr) {
        best.weight = best.row->weight;
    }
    return best;
}

Match Lexicon::at(std::string_view role,
                  const std::vector<Token>& tokens,
                  const std::vector<WordIds>& ids,
                  std::size_t at,
                  std::size_t end) const {
    const auto patterns = roles_.find(role);
    return patterns == roles_.end() ? Match{} : longest(patterns->second, tokens, ids, at, end);
}

std::vector<Match> Lexicon::find(std::string_view role,
                                 const std::vector<Token>& tokens,
                                 const std::vector<WordIds>& ids,
                                 TokenRange range) const {
    std::vector<Match> matches;
    const auto patterns = roles_.find(role);
    if (patterns == roles_.end()) {
        return matches;
    }
    std::size_t token = range.begin;
    while (token < range.end) {
        const Match match = longest(patterns->second, tokens, ids, token, range.end);
        if (match.row != nullptr) {
            matches.push_back(match);
            token = std::max(match.range.end, token + 1);
        } else {
            ++token;
        }
    }
    return matches;
}

bool Lexicon::holds(std::string_view role,
                    std::string_view means,
                    const std::vector<Token>& tokens,
                    const std::vector<WordIds>& ids,
                    TokenRange range) const {
    const auto patterns = roles_.find(role);
    if (patterns == roles_.end()) {
        return false;
    }
    for (std::size_t token = range.begin; token < range.end; ++token) {
        const Match match = longest(patterns->second, tokens, ids, token, range.end);
        if (match.row != nullptr && (means.empty() || match.row->means == means)) {
            return true;
        }
    }
    return false;
}

std::string Lexicon::base_form(std::string_view word) const {
    for (const Stem& stem : stems_of(word)) {
        if (vocabulary_.count(stem.base) != 0) {
            return stem.base;
        }
    }
    return std::string(word);
}

} // namespace loafwright::reading
