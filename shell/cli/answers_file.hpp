// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/recipe/recipe.hpp"

#include <tl/expected.hpp>

#include <string>

namespace loafwright::cli {

/// Where the answers to a recipe's questions are kept: loaf.answers.toml beside loaf.txt; empty for
/// standard input.
std::string answers_file_of(const std::string& recipe);

/// The answers given in the call, and those kept beside the recipe that the call does not repeat.
///
/// Errors: as for answers_from_toml, and file_unreadable. No such file is no error.
tl::expected<Answers, Diagnostics> all_answers(const std::string& recipe, const Answers& given);

} // namespace loafwright::cli
