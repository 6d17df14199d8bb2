// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/kitchen/kitchen.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>

namespace loafwright::cli {

/// The kitchen that a file describes; the usual one without a file.
///
/// Errors: as for file_bytes and kitchen_from_toml.
tl::expected<Kitchen, Diagnostics> kitchen_in(const std::optional<std::string>& file);

} // namespace loafwright::cli
