// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

namespace loafwright::output {

/// The page is what tests/golden/NAME holds; with LOAFWRIGHT_UPDATE_GOLDEN=1 it is written there.
void expect_golden(const std::string& name, const std::string& page);

/// The same for an outline (svg_outline.hpp), each thing within `points`.
void expect_golden_within(const std::string& name, const std::string& outline, double points);

} // namespace loafwright::output
