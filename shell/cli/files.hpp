// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <string>
#include <string_view>

namespace loafwright::cli {

/// The bytes of a file, or of standard input for "-".
///
/// Promises: stops reading one byte past the longest that is taken, a text unless told otherwise,
/// so that a huge or endless file costs little and
///           still shows as too long.
/// Errors:   file_missing (also for a folder), file_unreadable.
tl::expected<std::string, Diagnostics> file_bytes(const std::string& path);

/// How many bytes a file that begins so may have.
using LongestByStart = std::size_t (*)(std::string_view begun);

/// The same with a limit that depends on what kind of file it is.
tl::expected<std::string, Diagnostics> file_bytes(const std::string& path, LongestByStart longest);

/// How a file is called in messages: its path, "standard input" for "-".
std::string name_for_messages(const std::string& path);

} // namespace loafwright::cli
