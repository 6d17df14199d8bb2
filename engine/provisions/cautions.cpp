// SPDX-License-Identifier: Apache-2.0
//
// Which warnings a recipe calls for. The conditions stand in the rows of the table (CautionRow says
// what they mean); this file only looks whether a recipe and a kitchen meet them.

#include "engine/provisions/cautions.hpp"

#include "engine/provisions/words.hpp"

#include <algorithm>
#include <optional>
#include <string_view>

namespace loafwright::provisions {
namespace {

struct Texts {
    std::vector<Words> ingredients; // as written, and the item's name behind it
    std::vector<const IngredientRow*> rows;
    std::vector<Words> steps;
};

Texts texts_of(const Recipe& recipe, const Knowledge& knowledge) {
    Texts texts;
    for (const Ingredient& ingredient : recipe.ingredients) {
        texts.ingredients.push_back(words_of(ingredient.text + "; " + ingredient.item));
        texts.rows.push_back(row_of(knowledge, ingredient));
    }
    for (const Step& step : recipe.steps) {
        texts.steps.push_back(words_of(step.text));
    }
    return texts;
}

bool has_role(const Texts& texts, const std::vector<std::string_view>& roles) {
    return std::any_of(texts.rows.begin(), texts.rows.end(), [&](const IngredientRow* row) {
        return row != nullptr && std::find(roles.begin(), roles.end(), row->role) != roles.end();
    });
}

bool any_says(const std::vector<Words>& all, const std::vector<std::string_view>& phrases) {
    return std::any_of(
        all.begin(), all.end(), [&](const Words& words) { return says_any(words, phrases); });
}

bool asks_for_words(const CautionRow& row) {
    return !row.any_item.empty() || !row.any_role.empty() || !row.any_word.empty();
}

bool is_wait(const Step& step) {
    return attention_of(step.kind) == Attention::wait && step.kind != StepKind::cool;
}

bool has_step(const Recipe& recipe, StepKind kind) {
    return std::any_of(recipe.steps.begin(), recipe.steps.end(), [&](const Step& step) {
        return step.kind == kind;
    });
}

// The first wait that the row means, if it asks for one.
const Step* wait_meant(const CautionRow& row, const Recipe& recipe) {
    const bool one_kind = row.stage && attention_of(*row.stage) == Attention::wait;
    for (const Step& step : recipe.steps) {
        const bool there = row.place ? step.place == *row.place : step.place != Place::fridge;
        const bool long_enough =
            !row.longer_than || (step.minutes && step.minutes->minutes.likely > *row.longer_than);
        if (is_wait(step) && there && long_enough && (!one_kind || step.kind == *row.stage)) {
            return &step;
        }
    }
    return nullptr;
}

bool has_heat_above(const Recipe& recipe, Celsius limit) {
    return std::any_of(recipe.steps.begin(), recipe.steps.end(), [&](const Step& step) {
        return step.temperature && step.temperature->high > limit;
    });
}

bool room_is_above(const Kitchen& kitchen, Celsius limit) {
    return std::any_of(kitchen.room.begin(), kitchen.room.end(), [&](const RoomPeriod& period) {
        return period.temperature > limit;
    });
}

// Where to show it: at the wait that called for it, else at the stage of the row where there is
// one, else, for something to mind with the hands, at the first work of the recipe.
std::optional<StepKind> shown_at(const CautionRow& row, const Step* wait, const Recipe& recipe) {
    if (row.stage && has_step(recipe, *row.stage)) {
        return row.stage;
    }
    if (wait != nullptr) {
        return wait->kind;
    }
    if (row.stage && attention_of(*row.stage) == Attention::hands) {
        for (const Step& step : recipe.steps) {
            if (attention_of(step.kind) == Attention::hands) {
                return step.kind;
            }
        }
    }
    return std::nullopt;
}

} // namespace

std::vector<Caution>
cautions_for(const Recipe& recipe, const Kitchen& kitchen, const Knowledge& knowledge) {
    const Texts texts = texts_of(recipe, knowledge);
    std::vector<const CautionRow*> met;
    std::vector<const Step*> waits;
    for (const CautionRow& row : knowledge.cautions) {
        if (asks_for_words(row) && !has_role(texts, row.any_role) &&
            !any_says(texts.ingredients, row.any_item) && !any_says(texts.steps, row.any_word)) {
            continue;
        }
        const bool asks_for_wait = row.place || row.longer_than;
        const Step* wait = asks_for_wait ? wait_meant(row, recipe) : nullptr;
        if (asks_for_wait && wait == nullptr) {
            continue;
        }
        if (row.hotter_than && !has_heat_above(recipe, *row.hotter_than)) {
            continue;
        }
        if (row.room_above && !room_is_above(kitchen, *row.room_above)) {
            continue;
        }
        const bool asks_for_stage = !asks_for_words(row) && !asks_for_wait && !row.hotter_than;
        if (asks_for_stage && !(row.stage && has_step(recipe, *row.stage))) {
            continue;
        }
        met.push_back(&row);
        waits.push_back(wait);
    }

    std::vector<std::size_t> order(met.size());
    for (std::size_t index = 0; index < order.size(); ++index) {
        order[index] = index;
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return met[a]->weight > met[b]->weight;
    });
    std::vector<Caution> cautions;
    cautions.reserve(order.size());
    for (const std::size_t index : order) {
        const CautionRow& row = *met[index];
        cautions.push_back(Caution{std::string(row.code),
                                   std::string(row.text),
                                   std::string(row.source),
                                   shown_at(row, waits[index], recipe),
                                   row.weight});
    }
    return cautions;
}

} // namespace loafwright::provisions
