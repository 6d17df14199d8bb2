// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/reading/layout.hpp"
#include "engine/reading/measure.hpp"
#include "engine/recipe/recipe.hpp"

#include <optional>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <vector>

namespace loafwright::reading {

/// An ingredient as found in the text, with the tokens it covers.
struct FoundIngredient {
    Ingredient ingredient;
    TokenRange range;
    bool regional = false;  // its unit differs between regions
    bool by_region = false; // its unit differs between regions and the text does not tell
    bool vague_yeast =
        false; // yeast by the spoon or cup in an old text: liquid barm, not today's cake
    std::optional<double>
        disagreement; // ratio of two amounts given for it that differ by more than a tenth
    bool salt_without_amount = false;
};

/// A mention in the method of something: all of it, or a share ("half the flour", "the rest").
struct Mention {
    std::string known_as;
    std::string item;
    std::optional<double> share;
    TokenRange range;
};

/// Everything that turns words into ingredients.
class IngredientReader {
public:
    IngredientReader(const Knowledge& knowledge,
                     const Lexicon& lexicon,
                     const Units& units,
                     std::string_view text,
                     const Layout& layout,
                     std::optional<Region> told_region);

    /// One line of an ingredient list; nothing when no item can be made out.
    [[nodiscard]] std::optional<FoundIngredient> line(const Block& block) const;

    /// What else the line of `first` puts in: "1 egg + 1 tbsp milk", "saffron, steeped in 2 tbsp
    /// milk".
    [[nodiscard]] std::vector<FoundIngredient> beside(const FoundIngredient& first) const;

    /// Amounts with their items in running text.
    [[nodiscard]] std::vector<FoundIngredient> in_prose(TokenRange range) const;

    /// Items named in running text, with shares.
    [[nodiscard]] std::vector<Mention> mentions(TokenRange range) const;

    [[nodiscard]] Region region() const { return region_; }

    /// The table's row of exactly this name, or null.
    [[nodiscard]] const IngredientRow* row_named(std::string_view item) const;

    /// How warm the text wants an item that stands in `item`, if it says so beside it.
    /// `within`, its line or clause, bounds the search.
    [[nodiscard]] std::optional<TemperatureRange>
    warmth_beside(TokenRange item, std::optional<TokenRange> within = std::nullopt) const;

private:
    [[nodiscard]] bool starts_at(std::string_view words, std::size_t at, std::size_t end) const;
    struct Amounts {
        std::vector<Measure> measures;
        TokenRange range;
        Filling filling = Filling::as_it_comes;
    };
    [[nodiscard]] Amounts amounts_at(std::size_t at, std::size_t end) const;
    [[nodiscard]] const UnitRow*
    package_at(std::size_t at, std::size_t end, std::size_t& next) const;
    [[nodiscard]] bool sold_by_the_piece(const Match& match, const Measure& measure) const;
    [[nodiscard]] const IngredientRow* egg_row(TokenRange range) const;
    [[nodiscard]] std::optional<Band<Grams>>
    grams_of(const Amounts& amounts, const IngredientRow* row, FoundIngredient& found) const;
    [[nodiscard]] std::string words(TokenRange range) const;
    [[nodiscard]] TokenRange item_words(TokenRange match, std::size_t from) const;
    void describe(FoundIngredient& found,
                  const Match& match,
                  const Amounts& amounts,
                  std::size_t words_from,
                  TokenRange within) const;

    // Of a line of a list.
    [[nodiscard]] Amounts first_amounts(TokenRange range) const;
    [[nodiscard]] Match first_item(TokenRange range, const Amounts& amounts) const;
    [[nodiscard]] const LexiconRow* named(const std::vector<Token>& words) const;
    [[nodiscard]] const LexiconRow* prepared(TokenRange item, TokenRange range) const;
    [[nodiscard]] Match part_of_fruit(TokenRange range, const Amounts& amounts) const;
    [[nodiscard]] const LexiconRow*
    said_before_or(const Match& item, std::size_t from, Amounts& own) const;
    [[nodiscard]] FoundIngredient second(const FoundIngredient& first,
                                         const Match& item,
                                         const Amounts& amounts,
                                         TokenRange rest) const;
    void add_amounts_behind(const Match& item, TokenRange range, Amounts& amounts) const;
    void add_substitutes(FoundIngredient& found,
                         const Match& item,
                         TokenRange range,
                         const Amounts& amounts) const;

    const Knowledge& knowledge_;
    const Lexicon& lexicon_;
    const Units& units_;
    std::string_view text_;
    const Layout& layout_;
    Region region_;
    std::unordered_map<std::string_view, const IngredientRow*> rows_;
    /// "oatmeal" and the row that it is in the region "US".
    std::unordered_map<std::string, std::pair<const IngredientRow*, std::string_view>>
        regional_names_;
    std::unordered_set<std::string_view> warmth_openings_; // first words of the warmth table
};

} // namespace loafwright::reading
