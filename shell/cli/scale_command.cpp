// SPDX-License-Identifier: Apache-2.0
//
// loafwright scale: from a file to the same recipe in another size or with another yeast.
#include "shell/cli/scale_command.hpp"

#include "engine/breads/wanted.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/wire/wire.hpp"
#include "shell/cli/files.hpp"
#include "shell/cli/recipe_files.hpp"
#include "shell/cli/scale_page.hpp"

#include <utility>

namespace loafwright::cli {

tl::expected<CommandAnswer, Diagnostics> scale_command(const ScaleArguments& arguments) {
    const Knowledge knowledge = built_in_knowledge();
    auto readings = readings_of({arguments.file}, arguments.answers, {}, knowledge);
    if (!readings) {
        return tl::make_unexpected(std::move(readings.error()));
    }
    const Reading& told = readings->front();
    auto wanted = breads::as_wanted(told, arguments.wanted, knowledge);
    if (!wanted) {
        for (Diagnostic& fault : wanted.error()) {
            fault.where = name_for_messages(arguments.file);
        }
        return tl::make_unexpected(std::move(wanted.error()));
    }
    const Reading& scaled = *wanted;
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
