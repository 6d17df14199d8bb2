// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/clause.hpp"

#include <vector>

namespace loafwright::reading {

/// What one clause takes from those before it: what "it" is, and which bread is spoken of.
///
/// Promises: a clause without a noun of its own has the dough, sponge or yeast of the clause before
///           it in its sentence; another bread lasts to the end of its sentence, over a semicolon
///           and behind a label of its own, or to the end of the paragraph that it opens; where
///           every bake is of some other bread, the first of those is the bread that is read.
void link_clauses(const std::vector<Token>& tokens, std::vector<Clause>& clauses);

} // namespace loafwright::reading
