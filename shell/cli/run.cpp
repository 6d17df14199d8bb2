// SPDX-License-Identifier: Apache-2.0
//
// From words to a command, and from a command's answer to the two streams. Commands know nothing of
// streams: they return what is to be shown, so that errors are told in one place and in one form.
#include "shell/cli/run.hpp"

#include "engine/wire/wire.hpp"
#include "shell/cli/arguments.hpp"
#include "shell/cli/choose_command.hpp"
#include "shell/cli/formula_command.hpp"
#include "shell/cli/gather_command.hpp"
#include "shell/cli/how_long_command.hpp"
#include "shell/cli/intake_command.hpp"
#include "shell/cli/page_files.hpp"
#include "shell/cli/plan_command.hpp"
#include "shell/cli/read_command.hpp"
#include "shell/cli/scale_command.hpp"
#include "shell/cli/schedule_command.hpp"
#include "shell/cli/terminal.hpp"
#include "shell/cli/water_command.hpp"

#include <algorithm>
#include <exception>
#include <variant>

namespace loafwright::cli {

namespace {

int tell(const Diagnostics& diagnostics, bool as_json) {
    if (as_json) {
        print(wire::error_json(diagnostics));
    } else {
        for (const Diagnostic& diagnostic : diagnostics) {
            print_message(diagnostic);
        }
    }
    const bool ours = std::any_of(diagnostics.begin(), diagnostics.end(), [](const Diagnostic& d) {
        return d.code == "internal" || d.code == "reader_missing";
    });
    return ours ? exit_our_fault : exit_input;
}

bool asks_for_heavy_parts(const Arguments& call) {
    if (const auto* planning = std::get_if<PlanArguments>(&call)) {
        return std::any_of(planning->out.begin(), planning->out.end(), is_drawn);
    }
    return std::holds_alternative<ServeArguments>(call);
}

tl::expected<CommandAnswer, Diagnostics> answer_to(const Arguments& call, const HeavyParts* parts) {
    if (const auto* reading = std::get_if<ReadArguments>(&call)) {
        return read_command(*reading);
    }
    if (const auto* formula = std::get_if<FormulaArguments>(&call)) {
        return formula_command(*formula);
    }
    if (const auto* scaling = std::get_if<ScaleArguments>(&call)) {
        return scale_command(*scaling);
    }
    if (const auto* gathering = std::get_if<GatherArguments>(&call)) {
        return gather_command(*gathering);
    }
    if (const auto* water = std::get_if<WaterArguments>(&call)) {
        return water_command(*water);
    }
    if (const auto* how_long = std::get_if<HowLongArguments>(&call)) {
        return how_long_command(*how_long);
    }
    if (const auto* intake = std::get_if<IntakeArguments>(&call)) {
        return intake_command(*intake);
    }
    if (const auto* signs = std::get_if<FaultsArguments>(&call)) {
        return faults_command(*signs);
    }
    if (const auto* problem = std::get_if<ScheduleArguments>(&call)) {
        return schedule_command(*problem);
    }
    if (const auto* choosing = std::get_if<ChooseArguments>(&call)) {
        return choose_command(*choosing);
    }
    if (const auto* serving = std::get_if<ServeArguments>(&call)) {
        return parts->serve(*serving);
    }
    return plan_command(std::get<PlanArguments>(call), parts);
}

int run_words(const std::vector<std::string>& words, const Program& program, bool as_json) {
    const auto call = arguments_from(words, program.version);
    if (!call) {
        return tell(call.error(), as_json);
    }
    if (const auto* shown = std::get_if<ShowText>(&*call)) {
        return print(shown->text) ? exit_done : exit_our_fault;
    }
    if (program.parts == nullptr && asks_for_heavy_parts(*call)) {
        return tell({become_the_whole_program(words)}, as_json);
    }
    const auto answer = answer_to(*call, program.parts);
    if (!answer) {
        return tell(answer.error(), as_json);
    }
    for (const Diagnostic& message : answer->messages) {
        print_message(message);
    }
    if (!print(answer->text)) {
        return exit_our_fault;
    }
    return answer->exit_status;
}

} // namespace

int run(const std::vector<std::string>& words, const Program& program) {
    const bool as_json = std::find(words.begin(), words.end(), "--json") != words.end();
    try {
        return run_words(words, program, as_json);
    } catch (const std::exception& fault) {
        return tell({{"internal",
                      Severity::error,
                      std::string("something went wrong in the program itself: ") + fault.what(),
                      "",
                      "Tell us what you typed and this line."}},
                    as_json);
    }
}

} // namespace loafwright::cli
