// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>

namespace loafwright::published {

/// True when the program `units` (Debian package units) is installed.
bool units_is_installed();

/// What `units` makes of `have` in terms of `want`, such as "1 pound" in "g".
///
/// Needs:  expressions without quotation marks.
/// Errors: nothing when it is not installed or does not know one of the two.
std::optional<double> units_says(const std::string& have, const std::string& want);

} // namespace loafwright::published
