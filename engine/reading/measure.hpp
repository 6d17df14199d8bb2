// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/quantity/tagged.hpp"
#include "engine/reading/lexicon.hpp"
#include "engine/reading/token.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace loafwright::reading {

/// Whose cups, pints and spoons a text uses.
enum class Region { unknown, us, uk, au };

/// An amount with its unit, in the unit's base measure: grams, millilitres or pieces.
struct Measure {
    Band<double> amount;
    Dimension dimension = Dimension::count;
    const UnitRow* unit = nullptr; // none: pieces
    bool about = false;
    bool by_region = false; // another region's unit of that name differs
    TokenRange range;
};

/// Units as they are written.
class Units {
public:
    explicit Units(const Knowledge& knowledge);

    /// The unit written at `at`, by region; `next` is set behind it.
    [[nodiscard]] const UnitRow* at(const std::vector<Token>& tokens,
                                    std::size_t at,
                                    std::size_t end,
                                    Region region,
                                    std::size_t& next,
                                    bool& by_region) const;

    /// The row of exactly this name, or null.
    [[nodiscard]] const UnitRow* named(std::string_view unit) const;

private:
    const Knowledge& knowledge_;
    std::unordered_map<std::string, std::vector<const UnitRow*>> written_;
};

/// An amount that begins at `at`: number, fill word, unit; sums ("1 lb 2 oz") and multiples ("2 x 7
/// g") worked out. A number without a unit is pieces.
///
/// Promises: nothing when no number stands there, or when what follows makes it a time or a
/// temperature.
std::optional<Measure> measure_at(const std::vector<Token>& tokens,
                                  std::size_t at,
                                  std::size_t end,
                                  const Units& units,
                                  Region region);

/// Is it what things are sold in, a tin, a sachet, a stick?
bool is_package(const UnitRow& unit);

/// How a cup was filled: flour that is sifted first lies lightest, scooped it lies densest.
enum class Filling { as_it_comes, sifted, spooned, scooped };

/// Weighs a measure of an ingredient.
///
/// Promises: mass as it is; volume by the ingredient's weight per cup or spoon; pieces by its
/// weight per piece; nothing when the table
///           has no figure for it.
std::optional<Band<Grams>>
weigh(const Measure& measure, const IngredientRow* row, Filling filling = Filling::as_it_comes);

/// Whose measures the words of a text suggest; unknown when there is no evidence.
Region region_of(const std::vector<Token>& tokens,
                 const std::vector<WordIds>& ids,
                 const Lexicon& lexicon);

} // namespace loafwright::reading
