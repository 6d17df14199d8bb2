// SPDX-License-Identifier: Apache-2.0
//
// loafwright schedule: a problem from a file goes to the scheduler as it stands, with nothing of
// recipes or kitchens between.
#include "shell/cli/schedule_command.hpp"

#include "engine/wire/schedule_answer.hpp"
#include "engine/wire/schedule_problem.hpp"
#include "shell/cli/files.hpp"
#include "shell/cli/run.hpp"
#include "shell/cli/schedule_page.hpp"

#include <utility>
#include <variant>

namespace loafwright::cli {

tl::expected<CommandAnswer, Diagnostics> schedule_command(const ScheduleArguments& arguments) {
    const auto bytes = file_bytes(arguments.file);
    if (!bytes) {
        return tl::make_unexpected(bytes.error());
    }
    const std::string name = name_for_messages(arguments.file);
    auto read = wire::schedule_problem_from_json(*bytes, name);
    if (!read) {
        return tl::make_unexpected(std::move(read.error()));
    }
    const schedule::Problem& problem = read->problem;
    auto outcome = schedule::solve(problem, {}, arguments.conflicts);
    CommandAnswer answer;
    answer.messages = std::move(read->warnings);
    if (auto* beyond = std::get_if<schedule::OutOfReach>(&outcome)) {
        for (Diagnostic& reason : beyond->reasons) {
            reason.where = reason.where.empty() ? name : name + " " + reason.where;
        }
        return tl::make_unexpected(std::move(beyond->reasons));
    }
    if (const auto* solved = std::get_if<schedule::Solved>(&outcome)) {
        answer.exit_status = exit_done;
        answer.text = arguments.json ? wire::schedule_json(problem, *solved)
                                     : schedule_page(problem, *solved);
        return answer;
    }
    const schedule::Why why = schedule::why_not(problem, arguments.conflicts);
    answer.exit_status = exit_impossible;
    answer.text =
        arguments.json ? wire::no_schedule_json(problem, why) : no_schedule_page(problem, why);
    return answer;
}

} // namespace loafwright::cli
