// SPDX-License-Identifier: Apache-2.0
//
// loafwright schedule: a problem from a file goes to the scheduler as it stands, with nothing of
// recipes or kitchens between.
#include "shell/cli/schedule_command.hpp"

#include "engine/wire/project_answer.hpp"
#include "engine/wire/project_files.hpp"
#include "engine/wire/schedule_answer.hpp"
#include "engine/wire/schedule_problem.hpp"
#include "shell/cli/files.hpp"
#include "shell/cli/run.hpp"
#include "shell/cli/schedule_page.hpp"

#include <utility>
#include <variant>

namespace loafwright::cli {

namespace {

tl::expected<CommandAnswer, Diagnostics> refused(Diagnostics reasons, const std::string& name) {
    for (Diagnostic& reason : reasons) {
        reason.where = reason.where.empty() ? name : name + " " + reason.where;
    }
    return tl::make_unexpected(std::move(reasons));
}

// The name of the file without its folder and what follows the last point.
std::string id_of(const std::string& file) {
    const std::string name = file.substr(file.find_last_of('/') + 1);
    const std::size_t point = name.rfind('.');
    return point == 0 ? name : name.substr(0, point);
}

tl::expected<CommandAnswer, Diagnostics> project_command(const ScheduleArguments& arguments,
                                                         const std::string& bytes,
                                                         const std::string& name) {
    auto project = arguments.format == ScheduleFormat::psplib
                       ? wire::project_from_psplib(bytes, name)
                       : wire::project_from_rcpspmax(bytes, name);
    if (!project) {
        return tl::make_unexpected(std::move(project.error()));
    }
    auto outcome = schedule::solve_project(*project, arguments.conflicts);
    if (auto* beyond = std::get_if<schedule::OutOfReach>(&outcome)) {
        return refused(std::move(beyond->reasons), name);
    }
    const std::string id = id_of(arguments.file);
    CommandAnswer answer;
    if (const auto* solved = std::get_if<schedule::ProjectSolved>(&outcome)) {
        answer.exit_status = exit_done;
        answer.text =
            arguments.json ? wire::project_json(id, *solved) : project_page(id, *project, *solved);
        return answer;
    }
    answer.exit_status = exit_impossible;
    answer.text = arguments.json ? wire::no_project_json(id) : no_project_page(id);
    return answer;
}

} // namespace

tl::expected<CommandAnswer, Diagnostics> schedule_command(const ScheduleArguments& arguments) {
    const auto bytes = file_bytes(arguments.file);
    if (!bytes) {
        return tl::make_unexpected(bytes.error());
    }
    const std::string name = name_for_messages(arguments.file);
    if (arguments.format != ScheduleFormat::days) {
        return project_command(arguments, *bytes, name);
    }
    auto read = wire::schedule_problem_from_json(*bytes, name);
    if (!read) {
        return tl::make_unexpected(std::move(read.error()));
    }
    const schedule::Problem& problem = read->problem;
    const std::int64_t conflicts = arguments.conflicts.value_or(schedule::usual_conflicts);
    auto outcome = schedule::solve(problem, {}, conflicts);
    CommandAnswer answer;
    answer.messages = std::move(read->warnings);
    if (auto* beyond = std::get_if<schedule::OutOfReach>(&outcome)) {
        return refused(std::move(beyond->reasons), name);
    }
    if (const auto* solved = std::get_if<schedule::Solved>(&outcome)) {
        answer.exit_status = exit_done;
        answer.text = arguments.json ? wire::schedule_json(problem, *solved)
                                     : schedule_page(problem, *solved);
        return answer;
    }
    const schedule::Why why = schedule::why_not(problem, conflicts);
    answer.exit_status = exit_impossible;
    answer.text =
        arguments.json ? wire::no_schedule_json(problem, why) : no_schedule_page(problem, why);
    return answer;
}

} // namespace loafwright::cli
