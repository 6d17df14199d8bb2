// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/intake/taken_in.hpp"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace loafwright::cli {

/// What stands in a file of any kind: text, a web page, a PDF or a photo. A folder is one recipe in
/// several photos, in the order of their names; several paths are so too.
///
/// Promises: how far it is shows on standard error while that is a terminal.
/// Errors:   those of files and of intake::take_in; file_missing for a folder without photos.
tl::expected<intake::TakenIn, Diagnostics> taken_in(const std::vector<std::string>& paths);

/// The words that may have been read wrongly, as remarks on the text.
Diagnostics unsure_words(const intake::TakenIn& taken, const std::string& name);

} // namespace loafwright::cli
