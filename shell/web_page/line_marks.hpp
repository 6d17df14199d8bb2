// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace loafwright::web_page {

/// The line without the bullet or empty box in front of it.
std::string without_bullet(std::string_view line);

/// The line without "Step 3:", "3." or "3)" in front of it; empty when it says nothing else.
std::string without_step_number(std::string line);

/// The words without a colon at their end.
std::string without_colon(std::string words);

/// True for a short line that only names what follows: "For the sponge:".
bool is_part_name(std::string_view line);

/// The steps of a line in which they are counted: "1. Mix. 2. Bake." is two. Else the line itself.
/// Numbers in front of them are gone.
std::vector<std::string> numbered_steps(const std::string& line);

} // namespace loafwright::web_page
