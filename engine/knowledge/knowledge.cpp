// SPDX-License-Identifier: Apache-2.0
//
// Looking things up in a Knowledge. The tables are short and a look-up happens a few dozen times a
// recipe, so each is one walk over its table.

#include "engine/knowledge/knowledge.hpp"

#include "engine/recipe/words.hpp"

#include <string_view>

namespace loafwright {
namespace {

// How closely a row that may leave its family or place open fits; below nought: not at all. A named
// place says more about a length than a named family does: a night in the fridge is long for every
// dough, so the place decides between two rows that each name one of them.
template <typename Value, typename Wanted>
int closeness(const Value& named, const Wanted& wanted, int worth) {
    if (!named) {
        return 0;
    }
    return *named == wanted ? worth : -10;
}

// The row of the kind that names the family, else the one that names none, else null.
template <typename Row>
const Row* row_for(const std::vector<Row>& rows, StepKind kind, DoughFamily family) {
    const Row* best = nullptr;
    for (const Row& row : rows) {
        if (row.kind != kind) {
            continue;
        }
        if (row.family == family) {
            return &row;
        }
        if (!row.family && best == nullptr) {
            best = &row;
        }
    }
    return best;
}

} // namespace

const StageDefaultRow*
stage_default(const Knowledge& knowledge, StepKind kind, DoughFamily family, Place place) {
    const StageDefaultRow* best = nullptr;
    int best_fit = -1;
    for (const StageDefaultRow& row : knowledge.stage_defaults) {
        if (row.kind != kind) {
            continue;
        }
        const int fit = closeness(row.family, family, 1) + closeness(row.place, place, 2);
        if (fit > best_fit) {
            best = &row;
            best_fit = fit;
        }
    }
    return best;
}

const CueRow* cue_for(const Knowledge& knowledge, StepKind kind, DoughFamily family) {
    return row_for(knowledge.cues, kind, family);
}

const NormalRow* normal_at(const Knowledge& knowledge, StepKind kind, DoughFamily family) {
    return row_for(knowledge.normal, kind, family);
}

const FormulaRangeRow*
usual_formula(const Knowledge& knowledge, std::string_view title, DoughFamily family) {
    const FormulaRangeRow* of_family = nullptr;
    for (const FormulaRangeRow& row : knowledge.formula_ranges) {
        for (const std::string_view word : row.any_word) {
            if (has_word(title, word)) {
                return &row;
            }
        }
        if (row.family == family) {
            of_family = &row;
        }
    }
    return of_family;
}

const TinFillRow* tin_fill_for(const Knowledge& knowledge, DoughFamily family) {
    for (const TinFillRow& row : knowledge.tin_fill) {
        if (row.family == family) {
            return &row;
        }
    }
    return nullptr;
}

const IngredientRow* ingredient_named(const Knowledge& knowledge, std::string_view item) {
    for (const IngredientRow& row : knowledge.ingredients) {
        if (row.item == item) {
            return &row;
        }
    }
    return nullptr;
}

const IngredientRow* row_of(const Knowledge& knowledge, const Ingredient& ingredient) {
    const std::string& name = ingredient.known_as.empty() ? ingredient.item : ingredient.known_as;
    return ingredient_named(knowledge, name);
}

} // namespace loafwright
