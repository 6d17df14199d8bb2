// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/reading/layout.hpp"
#include "engine/recipe/recipe.hpp"

#include <string_view>
#include <vector>

namespace loafwright::reading {

/// "until the next morning" tells a time and no sign.
bool tells_only_time(const Layout& layout, const Lexicon& lexicon, TokenRange range);

/// The sign in a part that begins with "until" or "when".
///
/// Promises: at most nine words, without a closing mark; "it has doubled" becomes "doubled".
Cue cue_in(std::string_view text, const std::vector<Token>& tokens, TokenRange range);

/// Gives each step that the text leaves without a cue the usual one for its kind of dough.
///
/// Needs:    the ingredients are read: they tell what kind of dough it is.
/// Promises: every wait has a cue afterwards, and so has the last bake; a bake in several heats
///           shows only at its end whether it is done. What is added has no span: it is ours. A
///           cue of the text stays as it is.
void add_usual_cues(Recipe& recipe, const Knowledge& knowledge);

} // namespace loafwright::reading
