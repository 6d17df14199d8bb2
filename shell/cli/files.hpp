// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <tl/expected.hpp>

#include <string>

namespace loafwright::cli {

/// The bytes of a file, or of standard input for "-".
///
/// Promises: stops reading one byte past the longest text that is read, so that a huge or endless
/// file costs little and
///           still shows as too long.
/// Errors:   file_missing (also for a folder), file_unreadable.
tl::expected<std::string, Diagnostics> file_bytes(const std::string& path);

/// How a file is called in messages: its path, "standard input" for "-".
std::string name_for_messages(const std::string& path);

} // namespace loafwright::cli
