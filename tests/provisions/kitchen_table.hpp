// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <optional>
#include <string>

/// Small recipes built by hand.
namespace loafwright::provisions::table {

inline const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

inline Ingredient ingredient(const std::string& text,
                             const std::string& item,
                             std::optional<double> grams = std::nullopt) {
    Ingredient one;
    one.text = text;
    one.item = item;
    if (grams) {
        one.grams = exactly(Grams{*grams});
    }
    return one;
}

inline Step
step(StepKind kind, const std::string& text, std::optional<double> minutes = std::nullopt) {
    Step one;
    one.kind = kind;
    one.text = text;
    if (minutes) {
        one.minutes = TimedBand{exactly(Minutes{*minutes}), Basis::stated};
    }
    return one;
}

} // namespace loafwright::provisions::table
