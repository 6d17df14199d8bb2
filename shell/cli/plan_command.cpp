// SPDX-License-Identifier: Apache-2.0
//
// loafwright plan: gathers what the engine needs as values (the text, the kitchen, the day, the
// clock, the zone), calls it, and hands back the page. Every input is looked at before the first is
// complained about.
#include "shell/cli/plan_command.hpp"

#include "engine/fitting/fit.hpp"
#include "engine/fitting/heat.hpp"
#include "engine/kitchen/felt_room.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/planning/plan.hpp"
#include "engine/provisions/gather.hpp"
#include "engine/reading/read.hpp"
#include "engine/sheet/shared_page.hpp"
#include "engine/wire/wire.hpp"
#include "shell/cli/answers_file.hpp"
#include "shell/cli/bake_calendar.hpp"
#include "shell/cli/files.hpp"
#include "shell/cli/kitchen_file.hpp"
#include "shell/cli/page_files.hpp"
#include "shell/cli/run.hpp"
#include "shell/cli/told_numbers.hpp"
#include "shell/output/write_file.hpp"
#include "shell/settings/settings.hpp"

#include <algorithm>
#include <chrono>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace loafwright::cli {

namespace {

constexpr std::string_view room_key = "room-c";

Instant system_now() {
    const auto since = std::chrono::system_clock::now().time_since_epoch();
    return Instant{std::chrono::duration_cast<std::chrono::seconds>(since).count()};
}

void add(Diagnostics& all, Diagnostics more) {
    std::move(more.begin(), more.end(), std::back_inserter(all));
}

/// A named zone, or the one found, for the time around `moment`.
struct ChosenZone {
    Zone zone;
    bool is_told = false;
    std::optional<Diagnostic> warning;
};

tl::expected<ChosenZone, Diagnostic> zone_for(const PlanArguments& arguments, Instant moment) {
    if (arguments.zone) {
        auto zone = settings::zone_named(*arguments.zone, moment);
        if (!zone) {
            return tl::make_unexpected(std::move(zone.error()));
        }
        return ChosenZone{std::move(*zone), true, std::nullopt};
    }
    settings::FoundZone found = settings::zone_found(moment);
    return ChosenZone{std::move(found.zone), false, std::move(found.warning)};
}

/// The clock, the zone and the day together: each needs the one before it.
struct When {
    Day day;
    Diagnostics messages;
};

tl::expected<When, Diagnostics> when_from(const PlanArguments& arguments) {
    Diagnostics wrong;
    Instant now = system_now();
    auto zone = zone_for(arguments, now);
    if (!zone) {
        return tl::make_unexpected(Diagnostics{std::move(zone.error())});
    }
    if (arguments.now) {
        if (const auto exact = parse_rfc3339(*arguments.now)) {
            now = *exact;
        } else if (const auto told = settings::time_from_words(*arguments.now, zone->zone, now)) {
            now = *told;
        } else {
            return tl::make_unexpected(Diagnostics{told.error()});
        }
        // Another time may fall under other clock changes.
        zone = zone_for(arguments, now);
        if (!zone) {
            return tl::make_unexpected(Diagnostics{std::move(zone.error())});
        }
    }
    When when;
    when.day.zone = zone->zone;
    when.day.now = now;
    bool zone_from_file = false;
    if (arguments.day) {
        auto bytes = file_bytes(*arguments.day);
        if (!bytes) {
            return tl::make_unexpected(std::move(bytes.error()));
        }
        auto file = settings::day_from_toml(
            *bytes, name_for_messages(*arguments.day), zone->zone, zone->is_told, now);
        if (!file) {
            return tl::make_unexpected(std::move(file.error()));
        }
        zone_from_file = file->day.zone.name != zone->zone.name;
        when.day = std::move(file->day);
        when.day.now = now;
        add(when.messages, std::move(file->remarks));
    }
    if (zone->warning && !zone_from_file) {
        when.messages.push_back(*zone->warning);
    }
    const auto time = [&](const std::optional<std::string>& words) -> std::optional<Instant> {
        if (!words) {
            return std::nullopt;
        }
        auto told = settings::time_from_words(*words, when.day.zone, now);
        if (!told) {
            wrong.push_back(std::move(told.error()));
            return std::nullopt;
        }
        return *told;
    };
    const auto start = time(arguments.start);
    const auto eat_by = time(arguments.eat_by);
    if (start || eat_by) {
        when.day.start = start;
        when.day.eat_by = eat_by;
    }
    // Within the minute that runs, now is now; an earlier start is an honest no with ways out.
    if (when.day.start && when.day.start->seconds < now.seconds &&
        when.day.start->seconds + 60 > now.seconds) {
        when.day.start = now;
    }
    if (!wrong.empty()) {
        return tl::make_unexpected(std::move(wrong));
    }
    return when;
}

tl::expected<Kitchen, Diagnostics> kitchen_from(const PlanArguments& arguments,
                                                const Answers& answers) {
    auto read = kitchen_in(arguments.kitchen);
    if (!read) {
        return tl::make_unexpected(std::move(read.error()));
    }
    Kitchen kitchen = std::move(*read);
    // The question about the room is the kitchen's, so its answer is one too.
    std::optional<double> room = arguments.room_c;
    for (const Answer& answer : answers) {
        if (answer.key == room_key && !room) {
            const auto felt = felt_temperature(answer.value);
            room = felt ? felt->degrees() : fitting::first_number(answer.value);
            if (!room || *room > 45.0) {
                return tl::make_unexpected(
                    Diagnostics{{"answer_unreadable",
                                 Severity::error,
                                 "room-c was answered '" + answer.value +
                                     "', expected a number of °C up to 45, or " + felt_words(),
                                 "",
                                 "Write it as in --answer room-c=19 or room-c=jumper."}});
            }
        }
    }
    if (room) {
        kitchen.room = {RoomPeriod{ClockTime{}, Celsius(*room)}};
    }
    return kitchen;
}

/// A recipe's text, and what is answered already in the call and beside it.
struct BreadText {
    std::string name;
    CheckedText text;
    Answers answers;
};

std::vector<BreadText> texts_from(const PlanArguments& arguments, Diagnostics& wrong) {
    std::vector<BreadText> texts;
    for (const std::string& file : arguments.files) {
        const std::string name = name_for_messages(file);
        auto answers = all_answers(file, arguments.answers);
        if (!answers) {
            add(wrong, std::move(answers.error()));
        }
        auto bytes = file_bytes(file);
        if (!bytes) {
            add(wrong, std::move(bytes.error()));
            continue;
        }
        auto text = check_text(std::move(*bytes), name);
        if (!text) {
            add(wrong, std::move(text.error()));
        } else if (answers) {
            texts.push_back({name, std::move(*text), std::move(*answers)});
        }
    }
    return texts;
}

Answers without_room(const Answers& answers) {
    Answers others;
    std::copy_if(answers.begin(),
                 answers.end(),
                 std::back_inserter(others),
                 [](const Answer& answer) { return answer.key != room_key; });
    return others;
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

/// Everything that is known about the breads before the day is looked at, in one order.
struct Known {
    std::vector<FittedRecipe> fitted;
    std::vector<Provisions> provisions;
    Diagnostics remarks;

    void add_bread(const Reading& reading, const Kitchen& kitchen, const Knowledge& knowledge) {
        fitted.push_back(fit(reading, kitchen, knowledge));
        provisions.push_back(gather(reading.recipe, kitchen, knowledge));
        add(remarks, reading.remarks);
    }

    /// Of all breads, each once.
    [[nodiscard]] std::vector<Question> questions() const {
        std::vector<Question> all;
        for (const FittedRecipe& bread : fitted) {
            for (const Question& question : bread.questions) {
                const bool known =
                    std::any_of(all.begin(), all.end(), [&question](const Question& other) {
                        return other.key == question.key && other.ask == question.ask;
                    });
                if (!known) {
                    all.push_back(question);
                }
            }
        }
        return all;
    }

    [[nodiscard]] Provisions cautions() const {
        Provisions all = provisions.front();
        for (std::size_t b = 1; b < provisions.size(); ++b) {
            for (const Caution& caution : provisions[b].cautions) {
                const bool known = std::any_of(
                    all.cautions.begin(), all.cautions.end(), [&caution](const Caution& other) {
                        return other.code == caution.code;
                    });
                if (!known) {
                    all.cautions.push_back(caution);
                }
            }
        }
        return all;
    }

    [[nodiscard]] std::vector<Sheet>
    pages(const Plan& plan, const Day& day, const SheetOptions& options) const {
        if (plan.breads.empty()) {
            return {compose(plan, fitted.front(), provisions.front(), day, options)};
        }
        return compose(plan, fitted, provisions, day, options);
    }
};

} // namespace

tl::expected<CommandAnswer, Diagnostics> plan_command(const PlanArguments& arguments) {
    Diagnostics wrong;
    const std::vector<BreadText> texts = texts_from(arguments, wrong);
    Answers answers = arguments.answers;
    std::string words; // of all recipes: what a calendar knows the bake by
    for (const BreadText& text : texts) {
        words += text.text.view();
        answers.insert(answers.end(), text.answers.begin(), text.answers.end());
    }
    auto kitchen = kitchen_from(arguments, answers);
    auto when = when_from(arguments);
    if (!kitchen) {
        add(wrong, std::move(kitchen.error()));
    }
    if (!when) {
        add(wrong, std::move(when.error()));
    }
    if (!wrong.empty()) {
        return tl::make_unexpected(std::move(wrong));
    }

    const Knowledge knowledge = built_in_knowledge();
    Known known;
    for (const BreadText& text : texts) {
        const Reading reading = read(text.text, knowledge, without_room(text.answers));
        if (reading.recipe.steps.empty()) {
            wrong.push_back({"no_recipe_found",
                             Severity::error,
                             "no step of a bread recipe could be read, expected sentences such as "
                             "\"knead for ten minutes\"",
                             text.name,
                             "Check that the file holds the method and not only the ingredients."});
            continue;
        }
        known.add_bread(reading, *kitchen, knowledge);
    }
    if (!wrong.empty()) {
        return tl::make_unexpected(std::move(wrong));
    }
    const PlanOutcome outcome = plan(known.fitted, *kitchen, when->day);

    CommandAnswer answer;
    answer.messages = when->messages;
    add(answer.messages, known.remarks);
    const Screen out = screen();
    if (const auto* impossible = std::get_if<Impossible>(&outcome)) {
        answer.exit_status = exit_impossible;
        answer.text = arguments.json
                          ? wire::impossible_json(*impossible, known.questions(), when->day.zone)
                          : in_letters(compose_refusal(*impossible, when->day, arguments.page),
                                       arguments.linear,
                                       out.columns);
        return answer;
    }
    const Plan& made = std::get<Plan>(outcome);
    const std::vector<Sheet> pages = known.pages(made, when->day, arguments.page);
    const std::string json =
        wire::plan_json(made, known.cautions(), known.questions(), when->day.zone);
    const PageSource source{pages,
                            json,
                            [&](const std::string& path) {
                                return bake_calendar(
                                    path, made, compose_lines(made, pages), words, when->day);
                            },
                            arguments.linear,
                            {arguments.paper, arguments.print, "", made.start, "Lato", 150.0}};
    if (auto wrong_files = write_files(arguments, source, answer.messages)) {
        return tl::make_unexpected(std::move(*wrong_files));
    }
    answer.text =
        arguments.json ? json : in_letters(pages, arguments.linear, out.columns, out.weight);
    return answer;
}

} // namespace loafwright::cli
