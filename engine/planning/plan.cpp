// SPDX-License-Identifier: Apache-2.0
//
// From lengths to a clock. The bread becomes one line of atoms (chain), the day a calendar problem
// (problem_from_bread) that the schedule room solves exactly, and the answer lines of a page
// (drafts, stages). Where there is no answer, the same machinery looks for the sum behind the no
// and for what would work (explain).
#include "engine/planning/plan.hpp"

#include "engine/planning/attempt.hpp"
#include "engine/planning/explain.hpp"
#include "engine/planning/explain_several.hpp"
#include "engine/planning/several.hpp"

namespace loafwright {

PlanOutcome plan(const FittedRecipe& recipe, const Kitchen& kitchen, const Day& day) {
    const planning::Bread bread = planning::bread_of(recipe);
    if (!planning::wish_has_passed(day)) {
        if (auto found = planning::attempt(bread, day)) {
            return *found;
        }
    }
    return planning::explain(bread, kitchen, day);
}

PlanOutcome plan(const std::vector<FittedRecipe>& recipes, const Kitchen& kitchen, const Day& day) {
    if (recipes.size() == 1) {
        return plan(recipes.front(), kitchen, day);
    }
    const planning::Breads breads = planning::breads_of(recipes, kitchen);
    planning::Tried tried;
    if (!planning::wish_has_passed(day)) {
        tried = planning::attempt(breads, day);
        if (tried.plan) {
            return *tried.plan;
        }
    }
    return planning::explain(breads, day, tried);
}

} // namespace loafwright
