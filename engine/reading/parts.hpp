// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/clause.hpp"
#include "engine/reading/layout.hpp"
#include "engine/recipe/recipe.hpp"

#include <vector>

namespace loafwright::reading {

/// One method for all the lists above it: which of its clauses make the leaven, which the soaker.
///
/// Needs:    clauses_of the layout.
/// Promises: sets `Clause::part` only where a list of amounts belongs to that part, or a clause
/// begins
///           with its name and a colon, and no heading says what the method's own blocks make; a
///           part is made in one go, up to the wait that ends it; the dough's own clauses stay
///           without a part.
void tell_parts(const Layout& layout, std::vector<Clause>& clauses);

/// A leaven and a soaker need not wait for each other: both must be over before the step that takes
/// them.
///
/// Promises: sets `Step::after` where two parts in a row are made before the dough, nowhere else; a
///           step that names a part waits for it, and so does the first of the dough for those that
///           nobody names.
void part_ways(std::vector<Step>& steps);

} // namespace loafwright::reading
