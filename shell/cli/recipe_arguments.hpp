// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/recipe/recipe.hpp"

#include <string>
#include <vector>

namespace loafwright::cli {

/// A call that could not be understood.
Diagnostic usage(std::string what, std::string do_this);

/// What to say of a word that looks like a time where a file was expected.
Diagnostic quote_it(const std::string& word);

/// The answers among "KEY=VALUE" words. Errors, told in `found`: usage.
Answers answers_from(const std::vector<std::string>& words, Diagnostics& found);

/// The one recipe that a command takes; empty when there is none. Errors, told in `found`: usage (a
/// file that looks like a time), one_bread_at_a_time.
std::string one_file(const std::vector<std::string>& files, Diagnostics& found);

/// The recipes of one day. Errors, told in `found`: usage (a file that looks like a time),
/// too_many_breads.
std::vector<std::string> files_of_a_day(const std::vector<std::string>& files, Diagnostics& found);

} // namespace loafwright::cli
