// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace loafwright::cli {

/// Each paragraph broken into lines of at most `columns`, one newline after each line.
std::string paragraphs(const std::vector<std::string>& say, std::size_t columns);

} // namespace loafwright::cli
