// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/breads/wanted.hpp"
#include "engine/diagnostic/diagnostic.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace loafwright::cli {

/// What each file says, with the answers beside it and those of the call, in the size and with the
/// yeast that are wanted.
///
/// Errors: those of files, of check_text and of answers, of all files; those of as_wanted.
tl::expected<std::vector<Reading>, Diagnostics> readings_of(const std::vector<std::string>& files,
                                                            const Answers& answers,
                                                            const breads::Wanted& wanted,
                                                            const Knowledge& knowledge);

} // namespace loafwright::cli
