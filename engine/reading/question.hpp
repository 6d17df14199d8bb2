// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/reading/ingredient.hpp"
#include "engine/reading/layout.hpp"
#include "engine/recipe/recipe.hpp"

#include <string>
#include <vector>

namespace loafwright::reading {

/// Finds what the text leaves open, takes the answers given, and asks the rest.
///
/// Promises: keys are stable for the same text; a question is asked once; an answer to a question
/// that is not asked and one that
///           cannot be understood become remarks; steps learn which question is open on them.
void ask_and_answer(const Knowledge& knowledge,
                    const Layout& layout,
                    const std::vector<FoundIngredient>& found,
                    const std::vector<std::string>& kinds_of_bread,
                    const Answers& answers,
                    Reading& reading);

} // namespace loafwright::reading
