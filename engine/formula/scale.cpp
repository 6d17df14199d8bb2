// SPDX-License-Identifier: Apache-2.0
//
// Another size of the same bread. Only amounts and pieces change; how much longer a larger loaf
// bakes is for engine/fitting to say, which finds in `written_for` what the times were stated for.

#include "engine/formula/scale.hpp"

#include "engine/formula/dough_parts.hpp"
#include "engine/formula/tin.hpp"
#include "engine/knowledge/family.hpp"

#include <cmath>
#include <type_traits>

namespace loafwright {
namespace {

// A product and its inverse do not meet to the last digit.
constexpr double as_it_was = 1e-9;
// From two pieces on, more dough means more pieces.
constexpr double several_pieces = 1.5;

void multiply(std::optional<Band<Grams>>& grams, double factor) {
    if (grams) {
        *grams = {grams->low * factor, grams->likely * factor, grams->high * factor};
    }
}

bool is_near(double a, double b) {
    return std::abs(a - b) <= as_it_was * std::abs(b);
}

/// How many times the amounts, and how many pieces come of them.
struct Growth {
    double factor = 1.0;
    std::optional<double> pieces;
};

Growth grown(const Recipe& recipe, double factor) {
    const auto own = recipe.written_for ? recipe.written_for->pieces : recipe.pieces;
    const bool several =
        recipe.pieces && (*recipe.pieces > several_pieces || own.value_or(1.0) > several_pieces);
    return {factor, several ? std::optional(*recipe.pieces * factor) : recipe.pieces};
}

Growth
for_tin(const Recipe& recipe, const TinWanted& wanted, Grams dough, const Knowledge& knowledge) {
    const bool rolls = form_of(recipe) == Form::rolls;
    const std::optional<double> pieces = rolls ? std::optional(1.0) : recipe.pieces;
    const Grams each =
        formula::dough_for(formula::volume(wanted.tin), family_of(recipe, knowledge), knowledge)
            .likely;
    return {each * pieces.value_or(1.0) / dough, pieces};
}

// One bread whose own number of pieces was not known and is wanted again as one is as it was.
bool is_as_written(const Recipe& recipe, const WrittenSize& written) {
    return is_near(written.factor, 1.0) &&
           is_near(recipe.pieces.value_or(1.0), written.pieces.value_or(1.0)) && !recipe.tin;
}

} // namespace

Grams dough_mass(const Recipe& recipe, const Knowledge& knowledge) {
    Grams sum(0.0);
    for (const formula::DoughPart& part : formula::dough_parts(recipe, knowledge)) {
        sum += part.grams;
    }
    return sum;
}

tl::expected<Recipe, Diagnostics>
scale(const Recipe& recipe, const Target& target, const Knowledge& knowledge) {
    const Grams dough = dough_mass(recipe, knowledge);
    const auto* tin = std::get_if<TinWanted>(&target);
    if (!(dough > Grams(0.0)) && (tin != nullptr || std::holds_alternative<DoughWanted>(target))) {
        return tl::make_unexpected(Diagnostics{
            {"dough_unweighed",
             Severity::error,
             "nothing in this dough has a weight, so its size is not known",
             "",
             "Write the weights into the recipe, or scale it by pieces or by a factor."}});
    }
    const Growth growth = std::visit(
        [&](const auto& wanted) -> Growth {
            using Wanted = std::decay_t<decltype(wanted)>;
            if constexpr (std::is_same_v<Wanted, PiecesWanted>) {
                return {wanted.pieces / recipe.pieces.value_or(1.0), wanted.pieces};
            } else if constexpr (std::is_same_v<Wanted, DoughWanted>) {
                return grown(recipe, wanted.dough / dough);
            } else if constexpr (std::is_same_v<Wanted, FactorWanted>) {
                return grown(recipe, wanted.factor);
            } else {
                return for_tin(recipe, wanted, dough, knowledge);
            }
        },
        target);

    Recipe out = recipe;
    for (Ingredient& ingredient : out.ingredients) {
        multiply(ingredient.grams, growth.factor);
        for (Substitute& other : ingredient.substitutes) {
            multiply(other.grams, growth.factor);
        }
    }
    out.pieces = growth.pieces;
    if (tin != nullptr) {
        out.tin = tin->tin;
    }
    WrittenSize written = recipe.written_for.value_or(WrittenSize{1.0, recipe.pieces});
    written.factor *= growth.factor;
    if (is_as_written(out, written)) {
        out.pieces = written.pieces;
        out.written_for = std::nullopt;
    } else {
        out.written_for = written;
    }
    return out;
}

} // namespace loafwright
