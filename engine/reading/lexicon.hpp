// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/reading/token.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace loafwright::reading {

/// What was done to a word to find it: "knead", "kneads", "kneaded", "kneading".
enum class Inflection : std::uint8_t { none, s, ed, ing };

/// A phrase of the lexicon found in the text.
struct Match {
    TokenRange range;
    const LexiconRow* row = nullptr;
    Inflection head = Inflection::none; // of its first word
    double weight = 0.0;
};

/// A word of the text as the lexicon knows it: by its exact form and by its base form, 0 when
/// unknown.
struct WordIds {
    std::uint32_t exact = 0;
    std::uint32_t base = 0;
    Inflection inflection = Inflection::none;
};

/// Finds phrases in tokens.
///
/// A phrase is lower-case words; "a|b" means either; "~" stands for up to four words, none of them
/// a mark. Needs:    `knowledge` outlives the Lexicon. Promises: `find` looks at each token a
/// bounded number of times; the longest phrase of a role at a place wins.
class Lexicon {
public:
    explicit Lexicon(const Knowledge& knowledge);

    /// The ids of every token; computed once a text.
    [[nodiscard]] std::vector<WordIds> identify(const std::vector<Token>& tokens) const;

    /// All matches of phrases of one role inside `range`, longest first at each place, places in
    /// order, not overlapping.
    [[nodiscard]] std::vector<Match> find(std::string_view role,
                                          const std::vector<Token>& tokens,
                                          const std::vector<WordIds>& ids,
                                          TokenRange range) const;

    /// The longest match of a role that begins at `at`, or one without a row.
    [[nodiscard]] Match at(std::string_view role,
                           const std::vector<Token>& tokens,
                           const std::vector<WordIds>& ids,
                           std::size_t at,
                           std::size_t end) const;

    /// Does the range hold a phrase of this role with this meaning (empty: any)?
    [[nodiscard]] bool holds(std::string_view role,
                             std::string_view means,
                             const std::vector<Token>& tokens,
                             const std::vector<WordIds>& ids,
                             TokenRange range) const;

    /// The first row of a role, or null.
    [[nodiscard]] const LexiconRow* first(std::string_view role) const;

    /// The base form of a word where the lexicon knows it, else the word.
    [[nodiscard]] std::string base_form(std::string_view word) const;

    /// Is it a word of the vocabulary, in any inflection?
    [[nodiscard]] bool recognises(std::string_view word) const {
        const WordIds ids = ids_of(word);
        return ids.exact != 0 || ids.base != 0;
    }

private:
    struct Pattern {
        std::vector<std::vector<std::uint32_t>> words; // the choices at each place; 0 is the gap
        std::size_t told = 0;                          // places that are no gap
        const LexiconRow* row = nullptr;
    };
    using Patterns =
        std::unordered_map<std::uint32_t,
                           std::vector<std::uint32_t>>; // by first word, into patterns_

    [[nodiscard]] Match longest(const Patterns& patterns,
                                const std::vector<Token>& tokens,
                                const std::vector<WordIds>& ids,
                                std::size_t at,
                                std::size_t end) const;
    std::uint32_t id_of(std::string_view word);
    void add_ingredients(const Knowledge& knowledge);
    void add_units(const Knowledge& knowledge);
    void add(const LexiconRow& row);
    [[nodiscard]] WordIds ids_of(std::string_view word) const;
    [[nodiscard]] std::size_t end_of_match(const Pattern& pattern,
                                           const std::vector<Token>& tokens,
                                           const std::vector<WordIds>& ids,
                                           std::size_t at,
                                           std::size_t end) const;

    std::vector<LexiconRow>
        ingredient_rows_; // role "ingredient": names and aliases; means the table's item
    std::unordered_map<std::string, std::uint32_t> vocabulary_;
    std::vector<Pattern> patterns_;
    std::unordered_map<std::string_view, Patterns> roles_;
};

} // namespace loafwright::reading
