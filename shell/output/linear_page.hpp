// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/sheet/compose.hpp"

#include <string>

namespace loafwright::output {

/// The page to be heard: for a screen reader or a voice, in UTF-8.
///
/// Promises: one fact a line, each a sentence that makes sense without the lines around it being
///           seen; no columns, boxes or rules; everything that the page says, in its order; units
///           of ours in full words.
std::string linear_page(const Sheet& sheet);
std::string linear_page(const Refusal& refusal);

} // namespace loafwright::output
