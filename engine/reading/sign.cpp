// SPDX-License-Identifier: Apache-2.0
//
// How one sees that a wait or a bake is over, where the text does not say: common practice, by the
// kind of dough and by which wait it is (data/cues.toml).
#include "engine/reading/sign.hpp"

#include "engine/knowledge/family.hpp"

#include <string>

namespace loafwright::reading {

void add_usual_cues(Recipe& recipe, const Knowledge& knowledge) {
    const DoughFamily family = family_of(recipe, knowledge);
    bool baked_later = false;
    for (auto step = recipe.steps.rbegin(); step != recipe.steps.rend(); ++step) {
        const bool ends_here = step->kind != StepKind::bake || !baked_later;
        baked_later = baked_later || step->kind == StepKind::bake;
        if (step->cue || !ends_here) {
            continue;
        }
        if (const CueRow* row = cue_for(knowledge, step->kind, family)) {
            step->cue = Cue{std::string(row->text), std::nullopt};
        }
    }
}

} // namespace loafwright::reading
