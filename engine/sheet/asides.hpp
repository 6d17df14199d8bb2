// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/recipe/recipe.hpp"
#include "engine/sheet/options.hpp"

#include <string>

/// What stands beside the stages: questions and warnings.
namespace loafwright::sheet {

/// "How hot is a hot oven? Used: 220 °C."
std::string question_line(const Question& question, const SheetOptions& options);

/// What is the matter and what to do about it, as sentences.
std::string warning_line(const Diagnostic& warning, const SheetOptions& options);

} // namespace loafwright::sheet
