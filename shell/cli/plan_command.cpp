// SPDX-License-Identifier: Apache-2.0
//
// loafwright plan: gathers what the engine needs as values (the text, the kitchen, the day, the
// clock, the zone), calls it, and hands back the page. Every input is looked at before the first is
// complained about.
#include "shell/cli/plan_command.hpp"

#include "engine/breads/known_breads.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/planning/plan.hpp"
#include "engine/sheet/shared_page.hpp"
#include "engine/wire/wire.hpp"
#include "shell/cli/answers_file.hpp"
#include "shell/cli/bake_calendar.hpp"
#include "shell/cli/day_of_call.hpp"
#include "shell/cli/page_files.hpp"
#include "shell/cli/run.hpp"
#include "shell/output/write_file.hpp"

#include <algorithm>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace loafwright::cli {

namespace {

void add(Diagnostics& all, Diagnostics more) {
    std::move(more.begin(), more.end(), std::back_inserter(all));
}

// All files are made before the first is written, so that a fault leaves none behind; what two of
// them say alike is said once.
std::optional<Diagnostics>
write_files(const PlanArguments& arguments, const PageSource& source, Diagnostics& messages) {
    std::vector<std::string> files;
    for (const std::string& path : arguments.out) {
        auto file = page_file(path, source);
        if (!file) {
            return Diagnostics{std::move(file.error())};
        }
        files.push_back(std::move(file->bytes));
        for (Diagnostic& message : file->messages) {
            const bool said =
                std::any_of(messages.begin(), messages.end(), [&message](const Diagnostic& other) {
                    return other.code == message.code && other.what == message.what;
                });
            if (!said) {
                messages.push_back(std::move(message));
            }
        }
    }
    for (std::size_t i = 0; i < files.size(); ++i) {
        if (auto fault = output::write_file(arguments.out[i], files[i])) {
            return Diagnostics{std::move(*fault)};
        }
    }
    return std::nullopt;
}

// A moment of the next days as the call takes it.
std::string as_option(const Day& day, Instant moment) {
    const std::int64_t days = days_from_civil(civil_of(day.zone, moment).date) -
                              days_from_civil(civil_of(day.zone, day.now).date);
    const std::string clock = clock_text(day.zone, moment);
    if (days < 2) {
        return days < 1 ? clock : "\"tomorrow " + clock + "\"";
    }
    const std::string date = day_text(day.zone, moment); // "Sat 28 Nov"
    std::string weekday = date.substr(0, 3);
    weekday.front() = static_cast<char>(weekday.front() - 'A' + 'a');
    return "\"" + weekday + " " + clock + "\"";
}

// How the ways out that make a bread otherwise are asked for: in the call where it holds for every
// bread, else beside that bread's recipe.
std::string
how_to_take(const Impossible& impossible, const PlanArguments& arguments, const Day& day) {
    std::string lines;
    for (const WayOut& way : impossible.ways_out) {
        if (way.taken_by.empty()) {
            continue;
        }
        const bool every_bread = way.taken_by.size() == arguments.files.size();
        std::string options;
        if (every_bread) {
            const Answer& answer = way.taken_by.front().answer;
            options = "--answer " + answer.key + "=" + answer.value;
        }
        if (day.eat_by && way.eat != *day.eat_by) {
            options += (options.empty() ? "" : " ") + ("--eat-by " + as_option(day, way.eat));
        }
        for (const TakenBy& taken : way.taken_by) {
            const std::string kept = answers_file_of(arguments.files[taken.bread]);
            if (!every_bread && !kept.empty()) {
                options += (options.empty() ? "" : ", and ") + taken.answer.key + " = \"" +
                           taken.answer.value + "\" in " + kept;
            }
        }
        lines += arguments.linear ? "To have it so, add to the call: " + options + ".\n"
                                  : "  " + options + "\n";
    }
    const bool headed = !lines.empty() && !arguments.linear;
    return headed ? "To have the bread made so, add to the call:\n" + lines : lines;
}

} // namespace

tl::expected<CommandAnswer, Diagnostics> plan_command(const PlanArguments& arguments,
                                                      const HeavyParts* parts) {
    const auto call =
        breads_of_call(arguments.files, arguments.answers, arguments.wanted, arguments);
    if (!call) {
        return tl::make_unexpected(call.error());
    }
    std::string words; // of all recipes: what a calendar knows the bake by
    for (const breads::BreadText& text : call->texts) {
        words += text.text.view();
    }
    const Kitchen& kitchen = call->kitchen;
    const When& when = call->when;

    auto read = breads::read_breads(call->texts, kitchen, built_in_knowledge());
    if (!read) {
        return tl::make_unexpected(std::move(read.error()));
    }
    const breads::KnownBreads& known = *read;
    const PlanOutcome outcome = plan(known.fitted, kitchen, when.day);

    CommandAnswer answer;
    answer.messages = when.messages;
    add(answer.messages, known.remarks);
    const Screen out = screen();
    if (const auto* impossible = std::get_if<Impossible>(&outcome)) {
        answer.exit_status = exit_impossible;
        answer.text = arguments.json
                          ? wire::impossible_json(*impossible, known.questions(), when.day.zone)
                          : in_letters(compose_refusal(*impossible, when.day, arguments.page),
                                       arguments.linear,
                                       out.columns) +
                                how_to_take(*impossible, arguments, when.day);
        return answer;
    }
    const Plan& made = std::get<Plan>(outcome);
    const std::vector<Sheet> pages = known.pages(made, when.day, arguments.page);
    const std::string json =
        wire::plan_json(made, known.cautions(), known.questions(), when.day.zone);
    const PageSource source{
        pages,
        json,
        [&](const std::string& path) {
            return bake_calendar(path, made, compose_lines(made, pages), words, when.day);
        },
        arguments.linear,
        {arguments.paper, arguments.print, arguments.address, made.start, "Lato", 150.0},
        parts};
    if (auto wrong_files = write_files(arguments, source, answer.messages)) {
        return tl::make_unexpected(std::move(*wrong_files));
    }
    answer.text =
        arguments.json ? json : in_letters(pages, arguments.linear, out.columns, out.weight);
    return answer;
}

} // namespace loafwright::cli
