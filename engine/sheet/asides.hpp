// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/recipe/recipe.hpp"
#include "engine/sheet/compose.hpp"
#include "engine/sheet/options.hpp"

#include <string>
#include <vector>

/// What stands beside the stages: questions, warnings, what is normal.
namespace loafwright::sheet {

/// "How hot is a hot oven? Used: 220 °C."
std::string question_line(const Question& question, const SheetOptions& options);

/// What is the matter and what to do about it, as sentences.
std::string warning_line(const Diagnostic& warning, const SheetOptions& options);

/// Gives each line the first thing that the steps of its stage have to say (`normal`, one text a
/// step) and that no line before has said. Of what the hands do the last: kneading says more than
/// the weighing before it.
void add_what_is_normal(std::vector<SheetStage>& lines,
                        const std::vector<Stage>& stages,
                        const std::vector<std::string>& normal);

} // namespace loafwright::sheet
