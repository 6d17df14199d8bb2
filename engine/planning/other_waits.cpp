// SPDX-License-Identifier: Apache-2.0
#include "engine/planning/other_waits.hpp"

#include "engine/planning/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace loafwright::planning {

namespace {

using fitting::OptionKind;
using fitting::WaitOption;

const WaitOption* option_of(const FittedStep& step, OptionKind kind) {
    const auto found =
        std::find_if(step.options.begin(), step.options.end(), [kind](const WaitOption& option) {
            return option.kind == kind;
        });
    return found == step.options.end() ? nullptr : &*found;
}

void take(FittedStep& step, const WaitOption& option) {
    step.place = option.place;
    step.minutes = option.minutes;
    step.basis = Basis::computed;
    step.reason = option.effect;
    // A night's ends are how long it may be left.
    step.stretch = option.kind == OptionKind::fridge;
}

std::string name_of_wait(StepKind kind) {
    return kind == StepKind::prove     ? "the prove"
           : kind == StepKind::ferment ? "the leaven"
                                       : "the first rise";
}

std::optional<OtherWaits> in_the_warm_spot(const FittedRecipe& recipe) {
    OtherWaits other{recipe, ""};
    std::size_t moved = 0;
    std::string what;
    for (FittedStep& step : other.recipe.steps) {
        if (const WaitOption* option = option_of(step, OptionKind::warm_spot)) {
            what = name_of_wait(step.kind);
            const WaitOption taken = *option;
            take(step, taken);
            ++moved;
        }
    }
    if (moved == 0) {
        return std::nullopt;
    }
    other.change = fmt::format("{} in your warm spot", moved > 1 ? "the rises" : what);
    return other;
}

std::optional<OtherWaits> through_the_night(const FittedRecipe& recipe) {
    OtherWaits other{recipe, ""};
    const auto bake = std::find_if(
        other.recipe.steps.begin(), other.recipe.steps.end(), [](const FittedStep& step) {
            return step.kind == StepKind::bake || step.kind == StepKind::cook;
        });
    for (auto step = bake; step != other.recipe.steps.begin();) {
        --step;
        const bool rises = step->kind == StepKind::rise || step->kind == StepKind::prove;
        if (!rises) {
            continue;
        }
        const WaitOption* option = option_of(*step, OptionKind::fridge);
        if (option == nullptr || option->yeast) {
            return std::nullopt;
        }
        const WaitOption taken = *option;
        take(*step, taken);
        other.change = fmt::format("a night in the fridge for {}", name_of_wait(step->kind));
        if (!taken.change.empty()) {
            other.change += ": " + taken.change;
        }
        return other;
    }
    return std::nullopt;
}

} // namespace

std::vector<OtherWaits> other_waits_of(const FittedRecipe& recipe) {
    std::vector<OtherWaits> all;
    if (auto warm = in_the_warm_spot(recipe)) {
        all.push_back(std::move(*warm));
    }
    if (auto night = through_the_night(recipe)) {
        all.push_back(std::move(*night));
    }
    return all;
}

} // namespace loafwright::planning
