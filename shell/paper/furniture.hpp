// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/paper/seen.hpp"

#include <vector>

namespace loafwright::paper {

/// Takes away what belongs to the page and not to the recipe: page numbers, heads and feet that
/// stand on every page, the address and the hour that a browser prints.
///
/// Promises: only lines in the upper and lower eighth of a page are taken.
void take_furniture_away(std::vector<SeenPage>& pages);

} // namespace loafwright::paper
