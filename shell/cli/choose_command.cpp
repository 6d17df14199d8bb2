// SPDX-License-Identifier: Apache-2.0
//
// loafwright choose: the breads, the kitchen and the day go to the engine; its choices come back,
// one paragraph each.
#include "shell/cli/choose_command.hpp"

#include "engine/breads/known_breads.hpp"
#include "engine/choosing/choose.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/wire/wire.hpp"
#include "shell/cli/day_of_call.hpp"
#include "shell/cli/run.hpp"
#include "shell/output/text_lines.hpp"

#include <algorithm>
#include <numeric>
#include <string_view>
#include <utility>
#include <vector>

namespace loafwright::cli {

namespace {

constexpr std::size_t widest = 80;
constexpr std::string_view indent = "    ";

std::string_view words_of(Suits suits) {
    switch (suits) {
    case Suits::first:
        return "for a first bake";
    case Suits::second:
        return "for a second or third bake";
    case Suits::later:
        break;
    }
    return "for later, with some practice";
}

void add_line(std::string& text, std::string_view line, std::size_t columns) {
    for (const std::string& row : output::wrapped(line, columns - indent.size())) {
        text += std::string(indent) + row + "\n";
    }
}

std::string page_of(const std::vector<Choice>& choices) {
    const std::size_t columns = std::clamp<std::size_t>(screen().columns, 40, widest);
    std::string text;
    for (const Choice& choice : choices) {
        text += text.empty() ? "" : "\n";
        const std::string title = output::printable(
            choice.title.empty() ? std::string("A bread without a title") : choice.title);
        for (const std::string& row :
             output::wrapped(title + ": " + std::string(words_of(choice.suits)) +
                                 (choice.fits_today ? "" : ", not today"),
                             columns)) {
            text += row + "\n";
        }
        for (const std::string& because : choice.because) {
            add_line(text, output::printable(because), columns);
        }
    }
    return text;
}

} // namespace

tl::expected<CommandAnswer, Diagnostics> choose_command(const ChooseArguments& arguments) {
    const auto call =
        breads_of_call(arguments.files, arguments.answers, arguments.wanted, arguments);
    if (!call) {
        return tl::make_unexpected(call.error());
    }
    const Knowledge knowledge = built_in_knowledge();
    const auto known = breads::read_breads(call->texts, call->kitchen, knowledge);
    if (!known) {
        return tl::make_unexpected(known.error());
    }
    const std::vector<Choice> choices =
        choose(known->fitted, call->kitchen, call->when.day, knowledge);
    CommandAnswer answer;
    answer.messages = call->when.messages;
    const bool any = std::any_of(
        choices.begin(), choices.end(), [](const Choice& choice) { return choice.fits_today; });
    answer.exit_status = any ? exit_done : exit_impossible;
    if (arguments.json) {
        std::vector<std::size_t> places(choices.size());
        std::iota(places.begin(), places.end(), 0U);
        answer.text = wire::choices_json({choices, places, {}}, call->when.day.zone);
    } else {
        answer.text = page_of(choices);
    }
    return answer;
}

} // namespace loafwright::cli
