// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/sheet/compose.hpp"

#include <cstddef>
#include <string>

namespace loafwright::output {

/// How wide the page is, and whether the terminal may show weight.
enum class Weight { plain, bold };

/// The page as plain text in UTF-8, no line wider than `columns` (40 at least), one newline at the
/// end.
std::string text_page(const Sheet& sheet, std::size_t columns, Weight weight);
std::string text_page(const Refusal& refusal, std::size_t columns);

} // namespace loafwright::output
