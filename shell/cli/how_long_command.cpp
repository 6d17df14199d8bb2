// SPDX-License-Identifier: Apache-2.0
//
// loafwright how-long: the question goes to the engine as it stands; nothing here can go wrong.
#include "shell/cli/how_long_command.hpp"

#include "engine/wire/wire.hpp"
#include "shell/cli/paragraphs.hpp"
#include "shell/cli/run.hpp"

namespace loafwright::cli {

CommandAnswer how_long_command(const HowLongArguments& arguments) {
    const asking::RiseAnswer found = asking::rise_elsewhere(arguments.question);
    CommandAnswer answer;
    answer.exit_status = found.minutes ? exit_done : exit_impossible;
    answer.text = arguments.json ? wire::how_long_json(found)
                                 : paragraphs(asking::words_of(found), screen().columns);
    return answer;
}

} // namespace loafwright::cli
