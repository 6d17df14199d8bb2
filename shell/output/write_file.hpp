// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace loafwright::output {

/// Writes the bytes to the file, whole or not at all.
///
/// Promises: whoever opens `path` sees the old file or the new one, also after a power cut; a file
/// that was there keeps
///           its permissions; a link is followed; a device or pipe is written to as it is.
/// Errors:   `unwritable`, with the system's words; nothing is left behind then.
std::optional<Diagnostic> write_file(const std::string& path, std::string_view bytes);

} // namespace loafwright::output
