// SPDX-License-Identifier: Apache-2.0
//
// loafwright formula: from a file to percentages.
#include "shell/cli/formula_command.hpp"

#include "engine/formula/analyse.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/wire/wire.hpp"
#include "shell/cli/before_pages.hpp"
#include "shell/cli/recipe_files.hpp"

#include <utility>

namespace loafwright::cli {

tl::expected<CommandAnswer, Diagnostics> formula_command(const FormulaArguments& arguments) {
    const Knowledge knowledge = built_in_knowledge();
    auto readings = readings_of({arguments.file}, arguments.answers, arguments.wanted, knowledge);
    if (!readings) {
        return tl::make_unexpected(std::move(readings.error()));
    }
    const Reading& reading = readings->front();
    auto formula = analyse(reading.recipe, knowledge);
    if (!formula) {
        return tl::make_unexpected(std::move(formula.error()));
    }
    CommandAnswer answer;
    if (arguments.json) {
        answer.text = wire::formula_json(*formula);
    } else {
        const Screen out = screen();
        answer.text = formula_page(reading.recipe.title, *formula, out.columns, out.weight);
        answer.messages = reading.remarks;
    }
    return answer;
}

} // namespace loafwright::cli
