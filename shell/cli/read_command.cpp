// SPDX-License-Identifier: Apache-2.0
//
// loafwright read: the shortest way through the program, from a file to what was understood of it.
#include "shell/cli/read_command.hpp"

#include "engine/knowledge/knowledge.hpp"
#include "engine/reading/read.hpp"
#include "engine/wire/wire.hpp"
#include "shell/cli/answers_file.hpp"
#include "shell/cli/files.hpp"
#include "shell/cli/read_page.hpp"

#include <utility>

namespace loafwright::cli {

tl::expected<CommandAnswer, Diagnostics> read_command(const ReadArguments& arguments) {
    const auto answers = all_answers(arguments.file, arguments.answers);
    if (!answers) {
        return tl::make_unexpected(answers.error());
    }
    auto bytes = file_bytes(arguments.file);
    if (!bytes) {
        return tl::make_unexpected(std::move(bytes.error()));
    }
    auto text = check_text(std::move(*bytes), name_for_messages(arguments.file));
    if (!text) {
        return tl::make_unexpected(std::move(text.error()));
    }
    const Reading reading = read(*text, built_in_knowledge(), *answers);
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
