// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace loafwright::cli {

/// What each file says, with the answers beside it and those of the call.
///
/// Errors: those of files, of check_text and of answers, of all files.
tl::expected<std::vector<Reading>, Diagnostics> readings_of(const std::vector<std::string>& files,
                                                            const Answers& answers,
                                                            const Knowledge& knowledge);

} // namespace loafwright::cli
