// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

namespace loafwright::server {

/// examples/first-loaf.md as it was when the program was built: something to try.
std::string_view example_recipe();

} // namespace loafwright::server
