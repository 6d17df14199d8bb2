// SPDX-License-Identifier: Apache-2.0
//
// loafwright water: a kitchen file, when there is one, and the question go to the engine; its words
// come back.
#include "shell/cli/water_command.hpp"

#include "engine/wire/wire.hpp"
#include "shell/cli/kitchen_file.hpp"
#include "shell/cli/paragraphs.hpp"
#include "shell/cli/run.hpp"

#include <utility>

namespace loafwright::cli {

tl::expected<CommandAnswer, Diagnostics> water_command(const WaterArguments& arguments) {
    const auto kitchen = kitchen_in(arguments.kitchen);
    if (!kitchen) {
        return tl::make_unexpected(kitchen.error());
    }
    const asking::WaterAnswer found = asking::water_for(arguments.question, *kitchen);
    CommandAnswer answer;
    answer.exit_status = asking::can_be(found) ? exit_done : exit_impossible;
    answer.text = arguments.json ? wire::water_json(found)
                                 : paragraphs(asking::words_of(found), screen().columns);
    return answer;
}

} // namespace loafwright::cli
