// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/read.hpp"

#include <cstddef>
#include <string>
#include <string_view>

namespace loafwright::bench {

/// The bytes of a file of the repository, named from its root.
///
/// Errors: ends the program when there is no such file; a benchmark of nothing would look fast.
std::string file_in_repository(std::string_view path);

/// The paragraphs of `text`, over and over, as many whole ones as fit into `size` bytes.
std::string repeated_to(std::string_view text, std::size_t size);

/// The text, ready to be read.
///
/// Errors: ends the program when it is refused.
CheckedText checked(std::string text);

} // namespace loafwright::bench
