// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/recipe/recipe.hpp"
#include "engine/sheet/options.hpp"
#include "shell/cli/ask_arguments.hpp"
#include "shell/cli/before_arguments.hpp"
#include "shell/cli/day_arguments.hpp"
#include "shell/cli/faults_command.hpp"
#include "shell/cli/intake_command.hpp"
#include "shell/cli/schedule_arguments.hpp"
#include "shell/cli/serve_arguments.hpp"
#include "shell/output/page_options.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loafwright::cli {

/// --help and --version: text to print, nothing to do.
struct ShowText {
    std::string text;
};

struct ReadArguments {
    std::string file; // "-" is standard input
    Answers answers;
    bool why = false;
    bool json = false;
};

struct ChooseArguments : DayArguments {
    std::vector<std::string> files; // one a bread; at most breads::most_breads
    Answers answers;
    breads::Wanted wanted; // of one bread
    bool json = false;
};

struct PlanArguments : DayArguments {
    std::vector<std::string> files; // one a bread; at most breads::most_breads
    Answers answers;
    breads::Wanted wanted;        // of one bread
    SheetOptions page;            // how it speaks
    bool linear = false;          // to be heard: one fact a line
    std::vector<std::string> out; // each has_page_ending
    output::Paper paper = output::Paper::a4;
    output::Print print = output::Print::usual;
    std::string address; // is_web_address, or empty
    bool json = false;
};

using Arguments = std::variant<ShowText,
                               ReadArguments,
                               PlanArguments,
                               ChooseArguments,
                               FormulaArguments,
                               ScaleArguments,
                               GatherArguments,
                               WaterArguments,
                               HowLongArguments,
                               FaultsArguments,
                               IntakeArguments,
                               ScheduleArguments,
                               ServeArguments>;

/// What the words on the command line ask for.
///
/// Errors: usage (unknown words, missing or unreadable values, a file that looks like a time, an
/// ending that --out cannot
///         write), both_start_and_eat_by, one_bread_at_a_time (read, formula, scale),
///         too_many_breads (plan, gather), value_out_of_range (--room-c), those of
///         before_arguments.hpp, ask_arguments.hpp and schedule_arguments.hpp; all that can be
///         found.
tl::expected<Arguments, Diagnostics> arguments_from(const std::vector<std::string>& words,
                                                    std::string_view version);

} // namespace loafwright::cli
