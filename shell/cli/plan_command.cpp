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
#include "shell/cli/bread_files.hpp"
#include "shell/cli/files.hpp"
#include "shell/cli/kitchen_file.hpp"
#include "shell/cli/page_files.hpp"
#include "shell/cli/run.hpp"
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
    if (arguments.room_c) {
        kitchen.room = {RoomPeriod{ClockTime{}, Celsius(*arguments.room_c)}};
        return kitchen;
    }
    // The question about the room is the kitchen's, so its answer is one too, and outranks the
    // file.
    const bool answered = std::any_of(answers.begin(), answers.end(), [](const Answer& answer) {
        return answer.key == breads::room_key;
    });
    if (answered) {
        kitchen.room.clear();
    }
    return breads::kitchen_as_answered(std::move(kitchen), answers);
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
    Diagnostics wrong;
    const std::vector<breads::BreadText> texts =
        bread_texts(arguments.files, arguments.answers, wrong);
    Answers answers = arguments.answers;
    std::string words; // of all recipes: what a calendar knows the bake by
    for (const breads::BreadText& text : texts) {
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

    auto read = breads::read_breads(texts, *kitchen, built_in_knowledge());
    if (!read) {
        return tl::make_unexpected(std::move(read.error()));
    }
    const breads::KnownBreads& known = *read;
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
                                       out.columns) +
                                how_to_take(*impossible, arguments, when->day);
        return answer;
    }
    const Plan& made = std::get<Plan>(outcome);
    const std::vector<Sheet> pages = known.pages(made, when->day, arguments.page);
    const std::string json =
        wire::plan_json(made, known.cautions(), known.questions(), when->day.zone);
    const PageSource source{
        pages,
        json,
        [&](const std::string& path) {
            return bake_calendar(path, made, compose_lines(made, pages), words, when->day);
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
