// SPDX-License-Identifier: Apache-2.0
//
// loafwright read: the shortest way through the program, from a file to what was understood of it.
#include "shell/cli/read_command.hpp"

#include "engine/knowledge/knowledge.hpp"
#include "engine/wire/wire.hpp"
#include "shell/cli/read_page.hpp"
#include "shell/cli/recipe_files.hpp"

#include <utility>

namespace loafwright::cli {

tl::expected<CommandAnswer, Diagnostics> read_command(const ReadArguments& arguments) {
    auto readings = readings_of({arguments.file}, arguments.answers, {}, built_in_knowledge());
    if (!readings) {
        return tl::make_unexpected(std::move(readings.error()));
    }
    const Reading& reading = readings->front();
    CommandAnswer answer;
    if (arguments.json) {
        answer.text = wire::reading_json(reading);
    } else {
        const Screen out = screen();
        answer.text =
            read_page(reading, out.columns, out.weight, arguments.why ? Why::shown : Why::left_out);
        answer.messages = reading.remarks;
    }
    return answer;
}

} // namespace loafwright::cli
