// SPDX-License-Identifier: Apache-2.0
#include "engine/reading/bare_list.hpp"

#include <algorithm>
#include <optional>

namespace loafwright::reading {
namespace {

// The bare number of a line, a sum where it has a plus: none in brackets, none with a unit or a per
// cent sign.
std::optional<double> bare_number(const std::vector<Token>& tokens, Span line) {
    const auto first = std::lower_bound(
        tokens.begin(), tokens.end(), line.begin, [](const Token& token, std::size_t at) {
            return token.span.begin < at;
        });
    std::optional<double> sum;
    bool plus = false;
    for (auto token = first; token != tokens.end() && token->span.end <= line.end; ++token) {
        if (is_mark(*token, '(')) {
            break;
        }
        if (token->kind != TokenKind::number) {
            plus = is_mark(*token, '+');
            continue;
        }
        const auto next = token + 1;
        const bool last = next == tokens.end() || next->span.end > line.end;
        const bool bare = !token->fraction && (last || is_mark(*next, '+') || is_mark(*next, '('));
        if (!bare || (sum && !plus)) {
            return std::nullopt;
        }
        sum = sum.value_or(0.0) + token->value;
        plus = false;
    }
    return sum;
}

} // namespace

bool weigh_bare_list(const Layout& layout,
                     const Knowledge& knowledge,
                     std::vector<Ingredient>& ingredients) {
    constexpr std::size_t fewest = 3;
    constexpr double least_flour = 100.0;
    constexpr double least = 0.5;
    struct Bare {
        Ingredient* ingredient;
        double number;
    };
    std::vector<Bare> bare;
    bool flour = false;
    for (Ingredient& ingredient : ingredients) {
        if (ingredient.grams) {
            return false;
        }
        const IngredientRow* row = row_of(knowledge, ingredient);
        if (row == nullptr || !ingredient.span || row->role == "egg") {
            continue;
        }
        const auto number = bare_number(layout.tokens, *ingredient.span);
        if (number && *number >= least) {
            bare.push_back({&ingredient, *number});
            flour = flour || (row->role == "flour" && *number >= least_flour);
        }
    }
    if (bare.size() < fewest || !flour) {
        return false;
    }
    for (const Bare& one : bare) {
        one.ingredient->grams = exactly(Grams(one.number));
    }
    return true;
}

} // namespace loafwright::reading
