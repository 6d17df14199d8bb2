// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"
#include "shell/output/text_page.hpp"

#include <cstddef>
#include <string>

namespace loafwright::cli {

/// What to weigh for another size, rounded as a kitchen weighs; then what the dough comes to, and
/// which times are others for it.
///
/// Promises: no line wider than `columns` (40 at least).
std::string scale_page(const Reading& told,
                       const Reading& scaled,
                       const Knowledge& knowledge,
                       std::size_t columns,
                       output::Weight weight);

} // namespace loafwright::cli
