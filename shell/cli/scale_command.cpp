// SPDX-License-Identifier: Apache-2.0
//
// loafwright scale: from a file to the same recipe in another size.
#include "shell/cli/scale_command.hpp"

#include "engine/formula/scale.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/wire/wire.hpp"
#include "shell/cli/recipe_files.hpp"
#include "shell/cli/scale_page.hpp"

#include <utility>

namespace loafwright::cli {

tl::expected<CommandAnswer, Diagnostics> scale_command(const ScaleArguments& arguments) {
    const Knowledge knowledge = built_in_knowledge();
    auto readings = readings_of({arguments.file}, arguments.answers, knowledge);
    if (!readings) {
        return tl::make_unexpected(std::move(readings.error()));
    }
    const Reading& told = readings->front();
    auto recipe = scale(told.recipe, arguments.target, knowledge);
    if (!recipe) {
        return tl::make_unexpected(std::move(recipe.error()));
    }
    Reading scaled = told;
    scaled.recipe = std::move(*recipe);
    CommandAnswer answer;
    if (arguments.json) {
        answer.text = wire::reading_json(scaled);
    } else {
        const Screen out = screen();
        answer.text = scale_page(told, scaled, knowledge, out.columns, out.weight);
        answer.messages = told.remarks;
    }
    return answer;
}

} // namespace loafwright::cli
