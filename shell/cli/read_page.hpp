// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/recipe/recipe.hpp"
#include "shell/output/text_page.hpp"

#include <cstddef>
#include <string>

namespace loafwright::cli {

/// Whether each step says where its length comes from and which bytes it was read from.
enum class Why { left_out, shown };

/// What was understood, in the margin of the recipe's own words; then what was not used and why;
/// then the questions.
///
/// Promises: no line wider than `columns` (40 at least).
std::string read_page(const Reading& reading, std::size_t columns, output::Weight weight, Why why);

} // namespace loafwright::cli
