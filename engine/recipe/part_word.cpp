// SPDX-License-Identifier: Apache-2.0
#include "engine/recipe/part_word.hpp"

#include "engine/recipe/words.hpp"

namespace loafwright {

namespace {

// Empty where none of them is named.
std::string_view kind_named(std::string_view words) {
    const std::string text = lower_case(words);
    for (const std::string_view kind : {"poolish", "biga", "sponge"}) {
        if (has_word(text, kind)) {
            return kind;
        }
    }
    return {};
}

} // namespace

bool names_a_leaven(std::string_view words) {
    return !kind_named(words).empty() ||
           has_any_word(lower_case(words), {"leaven", "levain", "preferment"});
}

std::string part_word(const Recipe& recipe, std::string_view part) {
    if (part != "leaven") {
        return std::string(part);
    }
    for (const Step& step : recipe.steps) {
        if (step.part == part) {
            if (const std::string_view kind = kind_named(step.text); !kind.empty()) {
                return std::string(kind);
            }
        }
    }
    for (const Ingredient& ingredient : recipe.ingredients) {
        if (ingredient.part != part) { // "all of the poolish"
            if (const std::string_view kind = kind_named(ingredient.text); !kind.empty()) {
                return std::string(kind);
            }
        }
    }
    return std::string(part);
}

std::string preferment_word(const Recipe& recipe, const Step& step) {
    if (step.part) {
        const std::string_view kind = kind_named(*step.part);
        return kind.empty() ? part_word(recipe, "leaven") : std::string(kind);
    }
    const std::string_view kind = kind_named(step.text);
    return kind.empty() ? "leaven" : std::string(kind);
}

} // namespace loafwright
