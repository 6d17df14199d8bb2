// SPDX-License-Identifier: Apache-2.0
#include "engine/choosing/demands.hpp"

#include "engine/fitting/words.hpp"
#include "engine/formula/analyse.hpp"
#include "engine/knowledge/family.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <optional>
#include <set>

namespace loafwright::choosing {

namespace {

// Where a beginner's hands begin to notice (common practice; the figures are assumed).
constexpr double sticky_percent = 72.0;
constexpr double very_wet_percent = 80.0;
constexpr double mostly_rye = 0.5;
constexpr std::int64_t long_day_minutes = 10 * 60;
constexpr std::int64_t short_window_minutes = 10;
constexpr std::size_t many_stages = 8;

bool any_of_words(const std::string& text, const std::vector<std::string_view>& words) {
    return std::any_of(
        words.begin(), words.end(), [&](std::string_view word) { return has_word(text, word); });
}

bool holds(const SkillRow& row, const FittedRecipe& recipe) {
    if (row.family && *row.family != recipe.family) {
        return false;
    }
    bool called_for = !row.kind && row.any_word.empty();
    for (const Step& step : recipe.recipe.steps) {
        if (step.optional) {
            continue;
        }
        const std::string text = lower_case(step.text);
        if (any_of_words(text, row.unless_word)) {
            return false;
        }
        called_for = called_for || ((!row.kind || *row.kind == step.kind) &&
                                    (row.any_word.empty() || any_of_words(text, row.any_word)));
    }
    return called_for;
}

void add_dough(std::vector<Demand>& demands,
               const FittedRecipe& recipe,
               const Knowledge& knowledge) {
    if (const auto formula = analyse(recipe.recipe, knowledge)) {
        const double water = formula->total_hydration.count();
        if (water >= sticky_percent) {
            demands.push_back(
                {water >= very_wet_percent ? 2 : 1,
                 fmt::format("{:.0f} % water: a sticky dough; wet hands and a scraper.", water)});
        }
    }
    if (makeup_of(recipe.recipe, knowledge).rye_share >= mostly_rye) {
        demands.push_back({1, "Mostly rye: a paste more than a dough, and no kneading helps it."});
    }
}

// The wait after which the next step must come soonest.
void add_shortest_window(std::vector<Demand>& demands, const FittedRecipe& recipe) {
    const FittedStep* shortest = nullptr;
    for (const FittedStep& step : recipe.steps) {
        const bool rises = step.kind == StepKind::rise || step.kind == StepKind::prove ||
                           step.kind == StepKind::ferment;
        if (rises && step.holds_minutes &&
            (shortest == nullptr || *step.holds_minutes < *shortest->holds_minutes)) {
            shortest = &step;
        }
    }
    if (shortest != nullptr && *shortest->holds_minutes <= short_window_minutes) {
        demands.push_back({1,
                           fmt::format("Once it has {} it waits for you {} at most.",
                                       shortest->kind == StepKind::prove ? "proved" : "risen",
                                       fitting::duration_text(*shortest->holds_minutes))});
    }
}

} // namespace

std::size_t doughs_in(const FittedRecipe& recipe) {
    std::set<std::string> parts;
    for (const Step& step : recipe.recipe.steps) {
        const bool is_dough = step.kind == StepKind::ferment || step.kind == StepKind::rise ||
                              step.kind == StepKind::knead;
        if (is_dough && !step.optional) {
            parts.insert(step.part.value_or(step.kind == StepKind::ferment ? "sponge" : ""));
        }
    }
    parts.erase("");
    return parts.size() + 1;
}

std::vector<Demand>
demands_of(const FittedRecipe& recipe, const Plan& plan, const Knowledge& knowledge) {
    std::vector<Demand> demands;
    for (const SkillRow& row : knowledge.skills) {
        if (holds(row, recipe)) {
            demands.push_back({row.demand, std::string(row.says)});
        }
    }
    const std::size_t doughs = doughs_in(recipe);
    if (doughs > 1) {
        demands.push_back({1,
                           doughs == 2 ? "Two doughs: the first stands before the second is mixed."
                                       : fmt::format("{} doughs, one after the other.", doughs)});
    }
    if (plan.total_minutes > long_day_minutes) {
        demands.push_back({1,
                           fmt::format("It takes {}, with a night in it.",
                                       fitting::duration_text((plan.total_minutes + 2) / 5 * 5))});
    }
    add_dough(demands, recipe, knowledge);
    add_shortest_window(demands, recipe);
    const auto stages = static_cast<std::size_t>(
        std::count_if(plan.stages.begin(), plan.stages.end(), [](const Stage& stage) {
            return stage.attention != Attention::none;
        }));
    if (stages >= many_stages) {
        demands.push_back(
            {1, fmt::format("{} stages: many places where something can go astray.", stages)});
    }
    std::stable_sort(demands.begin(), demands.end(), [](const Demand& a, const Demand& b) {
        return a.weight > b.weight;
    });
    return demands;
}

} // namespace loafwright::choosing
