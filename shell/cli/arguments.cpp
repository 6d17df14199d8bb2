// SPDX-License-Identifier: Apache-2.0
//
// The command line. CLI11 takes the words apart; what it complains about is said again in our own
// words, so that a wrong call reads like any other wrong input. The help is written by hand: it is
// the first page anyone sees.
#include "shell/cli/arguments.hpp"

#include "engine/faults/network.hpp"
#include "shell/cli/page_files.hpp"
#include "shell/cli/recipe_arguments.hpp"
#include "shell/cli/told_numbers.hpp"
#include "shell/settings/settings.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace loafwright::cli {

namespace {

// The help down to the commands that need no recipe, and its end.
constexpr std::string_view help = R"(A bread recipe in, a page to follow by the clock out.

  loafwright plan FILE… [--start TIME | --eat-by TIME] [options]
  loafwright choose FILE… [--start TIME | --eat-by TIME] [options]
  loafwright read FILE [options]
  loafwright formula FILE [options]
  loafwright scale FILE [--pieces N | --dough GRAMS | --factor F | --tin LENGTHxWIDTHxHEIGHT]
                        [--yeast YEAST]
  loafwright gather FILE… [options]
  loafwright water --dough-c C [options]
  loafwright how-long MINUTES --at-c C (--here-c C | --fridge-c C) [options]
  loafwright intake FILE… [--text]
  loafwright faults (--symptom TEXT)… [--log FILE]
  loafwright serve [--listen HOST:PORT] [--data DIR|postgresql://…]
  loafwright --version

FILE holds the recipe: a text, a web page, a PDF or a photo; - reads it from standard input.
A folder with photos is one recipe, its pages in the order of their names.

plan: the page for today; several recipes share one clock, then a page each
  --start TIME        begin then; without it and without --eat-by, now
  --eat-by TIME       be ready to eat by then, beginning as late as that allows
  --kitchen FILE      your kitchen (TOML): how warm, which oven, what tins
  --day FILE          your day (TOML): when you are out, asleep or busy
  --room-c C          how warm the kitchen is, in °C; or jumper, shirtsleeves, hot
  --zone ZONE         time zone, such as Europe/London
  --answer KEY=VALUE  answer a question that the recipe leaves open; may be repeated.
                      make-it=rolls and its like take a way out that an impossible day was
                      answered with.
                      Answers kept beside FILE.txt in FILE.answers.toml, as in
                      oven-c = 220, are taken too
  --out FILE          write the page to FILE.pdf, .svg, .png or .txt, the plan for a calendar
                      to FILE.ics or as JSON to FILE.json; may be repeated
  --paper PAPER       a4 or letter; without it, a4
  --address URL       where this page can be opened: a short code in its corner leads there
  --large-print       nothing small, on two pages where need be
  --clock 12          times with am and pm; 24 is usual
  --temperature F     degrees Fahrenheit on the page; C is usual
  --weight OZ         pounds and ounces on the page; G is usual
  --one-hand          fewer words, for a page that is read while the other hand works
  --first-bake        also what is normal at each stage, for somebody new to it
  --linear            one fact a line in full sentences, to be read aloud
  --now TIME          plan as if it were that time
  --pieces, --dough, --factor, --tin, --yeast
                      another size or another yeast, as below
  --json              the plan as JSON instead of the page

choose: which of these breads suits the day and you, and why
  --start, --eat-by, --kitchen, --day, --room-c, --zone, --answer, --now
                      as above
  --json              as JSON

read: what was understood
  --answer KEY=VALUE  as above
  --why               where each length comes from, and which words it was read from
  --json              as JSON

)";

constexpr std::string_view help_end = R"(
faults: what may be behind the signs on a bread, and one change to try next
  --symptom TEXT      what you saw, in a few words; may be repeated
  --log FILE          the log of the bake (JSON), which speaks for and against
  --json

serve: the pages to plan and bake with, from a phone on the worktop
  --listen HOST:PORT  127.0.0.1:8424 unless given; 0.0.0.0:8424 for the whole house, with a token
  --data DIR          where recipes and bakes are kept; or a PostgreSQL by its address
  --quiet             no line for each request

TIME is 13:00, "tomorrow 07:30", "sat 13:00" or 2026-11-28T13:00:00+00:00.
Exit status: 0 done, 1 it cannot be done, 2 the input is wrong, 3 our fault.
)";

constexpr std::string_view commands =
    "plan, choose, read, formula, scale, gather, water, how-long, intake, faults or serve";
constexpr std::string_view see_help = "loafwright --help lists what there is.";

/// Where CLI11 puts what it finds.
struct Found {
    std::vector<std::string> files;
    std::vector<std::string> answers;
    DayWords day;
    std::vector<std::string> out;
    std::vector<std::string> symptoms;
    std::string log;
    std::string clock;
    std::string temperature;
    std::string weight;
    bool one_hand = false;
    bool first_bake = false;
    bool linear = false;
    std::string paper;
    std::string address;
    bool large_print = false;
    bool why = false;
    bool text = false;
    bool json = false;
    bool help = false;
    bool version = false;
};

void add_everywhere(CLI::App& command, Found& found) {
    command.set_help_flag();
    command.add_flag("--help,-h", found.help);
    command.add_flag("--json", found.json);
}

// What the commands have in common that begin with a recipe.
void add_shared(CLI::App& command, Found& found) {
    add_everywhere(command, found);
    command.add_option("FILE", found.files);
    command.add_option("--answer", found.answers)->allow_extra_args(false);
}

ReadArguments read_from(const Found& found, Diagnostics& wrong) {
    ReadArguments read;
    read.file = one_file(found.files, wrong);
    read.answers = answers_from(found.answers, wrong);
    read.why = found.why;
    read.json = found.json;
    return read;
}

FormulaArguments formula_from(const CLI::App& command,
                              const Found& found,
                              const WantedWords& words,
                              Diagnostics& wrong) {
    FormulaArguments formula;
    formula.file = one_file(found.files, wrong);
    formula.answers = answers_from(found.answers, wrong);
    formula.wanted = wanted_from(command, words, {}, wrong);
    formula.json = found.json;
    return formula;
}

ScaleArguments scale_from(const CLI::App& command,
                          const Found& found,
                          const WantedWords& words,
                          Diagnostics& wrong) {
    ScaleArguments scale;
    scale.file = one_file(found.files, wrong);
    scale.answers = answers_from(found.answers, wrong);
    const std::size_t others = wrong.size();
    scale.wanted = wanted_from(command, words, {}, wrong);
    if (wrong.size() == others && !scale.wanted.size && !scale.wanted.yeast) {
        wrong.push_back(
            usage("no size was given, expected --pieces, --dough, --factor or --tin, or a --yeast",
                  "Say one of them, as in --pieces 12 or --tin 230x130x70."));
    }
    scale.json = found.json;
    return scale;
}

GatherArguments gather_from(const CLI::App& command,
                            const Found& found,
                            const WantedWords& words,
                            Diagnostics& wrong) {
    GatherArguments gather;
    gather.files = files_of_a_day(found.files, wrong);
    if (command.count("--kitchen") > 0) {
        gather.kitchen = found.day.kitchen;
    }
    gather.answers = answers_from(found.answers, wrong);
    gather.wanted = wanted_from(command, words, gather.files, wrong);
    gather.json = found.json;
    return gather;
}

std::string small_letters(std::string word) {
    for (char& c : word) {
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return word;
}

// One of two words for an option of the page; true for the second.
bool is_second(const CLI::App& command,
               const char* option,
               const std::string& told,
               std::string_view first,
               std::string_view second,
               Diagnostics& found) {
    const std::string word = small_letters(told);
    if (command.count(option) > 0 && word != first && word != second) {
        found.push_back(
            usage(fmt::format("{} was given '{}', expected {} or {}", option, told, first, second),
                  fmt::format("Write it as in {} {}.", option, second)));
    }
    return word == second;
}

SheetOptions page_from(const CLI::App& command, const Found& found, Diagnostics& wrong) {
    SheetOptions page;
    if (is_second(command, "--clock", found.clock, "24", "12", wrong)) {
        page.clock = ClockForm::hours_12;
    }
    if (is_second(command, "--temperature", found.temperature, "c", "f", wrong)) {
        page.temperature = TemperatureScale::fahrenheit;
    }
    if (is_second(command, "--weight", found.weight, "g", "oz", wrong)) {
        page.weight = WeightUnit::ounces;
    }
    if (found.one_hand) {
        page.wording = Wording::few;
    }
    if (found.first_bake) {
        page.practice = Practice::first_bake;
    }
    return page;
}

ChooseArguments choose_from(const CLI::App& command,
                            const Found& found,
                            const WantedWords& words,
                            Diagnostics& wrong) {
    ChooseArguments choose;
    static_cast<DayArguments&>(choose) = day_from(command, found.day, wrong);
    choose.files = files_of_a_day(found.files, wrong);
    choose.answers = answers_from(found.answers, wrong);
    choose.wanted = wanted_from(command, words, choose.files, wrong);
    choose.json = found.json;
    return choose;
}

PlanArguments plan_from(const CLI::App& command,
                        const Found& found,
                        const WantedWords& words,
                        Diagnostics& wrong) {
    PlanArguments plan;
    static_cast<DayArguments&>(plan) = day_from(command, found.day, wrong);
    plan.files = files_of_a_day(found.files, wrong);
    plan.answers = answers_from(found.answers, wrong);
    plan.wanted = wanted_from(command, words, plan.files, wrong);
    plan.page = page_from(command, found, wrong);
    plan.linear = found.linear;
    plan.out = found.out;
    plan.json = found.json;
    for (const std::string& path : plan.out) {
        if (!has_page_ending(path)) {
            wrong.push_back(usage(fmt::format("--out cannot write '{}'", path),
                                  fmt::format("Name a file that ends in {}.", page_endings)));
        }
    }
    plan.address = found.address;
    if (command.count("--address") > 0 && !is_web_address(plan.address)) {
        wrong.push_back(
            usage(fmt::format("--address was given '{}', expected a web address", plan.address),
                  "Write it whole, as in --address https://loaf.example/page."));
    } else if (plan.address.size() > most_address_letters) {
        wrong.push_back(usage(fmt::format("--address has {} letters, expected at most {}",
                                          plan.address.size(),
                                          most_address_letters),
                              "Use a shorter address: the code has to fit beside the title."));
    }
    plan.print = found.large_print ? output::Print::large : output::Print::usual;
    if (found.paper == "letter") {
        plan.paper = output::Paper::letter;
    } else if (command.count("--paper") > 0 && found.paper != "a4") {
        wrong.push_back(
            usage(fmt::format("--paper was given '{}', expected a4 or letter", found.paper),
                  "Say which paper the printer holds."));
    }
    return plan;
}

FaultsArguments faults_from(const CLI::App& command, const Found& found, Diagnostics& wrong) {
    FaultsArguments faults;
    faults.symptoms = found.symptoms;
    faults.log = command.count("--log") > 0 ? std::optional(found.log) : std::nullopt;
    if (faults.symptoms.empty() && !faults.log) {
        wrong.push_back(usage("neither --symptom nor --log was given",
                              "Say what you saw, as in --symptom \"pale crust\"."));
    }
    if (faults.symptoms.size() > faults::most_seen) {
        wrong.push_back({"value_out_of_range",
                         Severity::error,
                         fmt::format("found {} signs, expected at most {}",
                                     faults.symptoms.size(),
                                     faults::most_seen),
                         "--symptom",
                         "Name those that matter most."});
    }
    return faults;
}

// Our words for what CLI11 found wrong.
Diagnostic reworded(const CLI::ParseError& fault, const CLI::App& app) {
    if (dynamic_cast<const CLI::ExtrasError*>(&fault) != nullptr) {
        const std::vector<std::string> extra = app.remaining(true);
        const std::string word = extra.empty() ? std::string() : extra.front();
        const bool first = app.get_subcommands().empty();
        if (first && settings::looks_like_a_time(word)) {
            return quote_it(word);
        }
        return usage(first ? fmt::format("'{}' is no command, expected {}", word, commands)
                           : fmt::format("'{}' was not expected here", word),
                     std::string(see_help));
    }
    std::string what = fault.what();
    if (dynamic_cast<const CLI::ArgumentMismatch*>(&fault) != nullptr) {
        const std::size_t colon = what.find(':');
        return usage(fmt::format("{} needs a value", what.substr(0, colon)), std::string(see_help));
    }
    return usage(what, std::string(see_help));
}

} // namespace

tl::expected<Arguments, Diagnostics> arguments_from(const std::vector<std::string>& words,
                                                    std::string_view version) {
    Found found;
    CLI::App app;
    app.set_help_flag();
    app.add_flag("--help,-h", found.help);
    app.add_flag("--version", found.version);
    app.add_flag("--json", found.json);

    CLI::App* read = app.add_subcommand("read");
    add_shared(*read, found);
    read->add_flag("--why", found.why);

    WantedWords otherwise;
    CLI::App* formula = app.add_subcommand("formula");
    add_shared(*formula, found);
    add_wanted(*formula, otherwise);
    CLI::App* scale = app.add_subcommand("scale");
    add_shared(*scale, found);
    add_wanted(*scale, otherwise);
    CLI::App* gather = app.add_subcommand("gather");
    add_shared(*gather, found);
    add_wanted(*gather, otherwise);
    gather->add_option("--kitchen", found.day.kitchen);

    CLI::App* plan = app.add_subcommand("plan");
    add_shared(*plan, found);
    add_wanted(*plan, otherwise);
    add_day(*plan, found.day);
    plan->add_option("--out", found.out)->allow_extra_args(false);
    plan->add_option("--clock", found.clock);
    plan->add_option("--temperature", found.temperature);
    plan->add_option("--weight", found.weight);
    plan->add_flag("--one-hand", found.one_hand);
    plan->add_flag("--first-bake", found.first_bake);
    plan->add_flag("--linear", found.linear);
    plan->add_option("--paper", found.paper);
    plan->add_option("--address", found.address);
    plan->add_flag("--large-print", found.large_print);

    CLI::App* choose = app.add_subcommand("choose");
    add_shared(*choose, found);
    add_wanted(*choose, otherwise);
    add_day(*choose, found.day);

    AskWords ask;
    CLI::App* water = app.add_subcommand("water");
    add_everywhere(*water, found);
    add_water(*water, ask);
    CLI::App* how_long = app.add_subcommand("how-long");
    add_everywhere(*how_long, found);
    add_how_long(*how_long, ask);
    CLI::App* intake = app.add_subcommand("intake");
    add_everywhere(*intake, found);
    intake->add_option("FILE", found.files);
    intake->add_flag("--text", found.text);
    CLI::App* faults = app.add_subcommand("faults");
    add_everywhere(*faults, found);
    faults->add_option("--symptom", found.symptoms)->allow_extra_args(false);
    faults->add_option("--log", found.log);
    ScheduleWords bare;
    CLI::App* schedule = app.add_subcommand("schedule");
    add_everywhere(*schedule, found);
    add_schedule(*schedule, bare);
    ServeWords open;
    CLI::App* serve = app.add_subcommand("serve");
    serve->add_flag("--json", found.json);
    add_serve(*serve, open);

    try {
        // CLI11 takes a vector from its end.
        app.parse(std::vector<std::string>(words.rbegin(), words.rend()));
    } catch (const CLI::ParseError& fault) {
        return tl::make_unexpected(Diagnostics{reworded(fault, app)});
    }
    if (found.version) {
        return ShowText{fmt::format("loafwright {}\n", version)};
    }
    if (found.help) {
        return ShowText{
            fmt::format("{}{}{}{}{}", help, before_help, ask_help, intake_help, help_end)};
    }
    if (app.get_subcommands().empty()) {
        return tl::make_unexpected(Diagnostics{usage(
            fmt::format("no command was given, expected {}", commands), std::string(see_help))});
    }
    Diagnostics wrong;
    if (*water || *how_long || *faults || *schedule || *serve) {
        const auto as_asked = [&found](auto asked) {
            asked.json = found.json;
            return Arguments(std::move(asked));
        };
        Arguments arguments = *water      ? as_asked(water_from(*water, ask, wrong))
                              : *how_long ? as_asked(how_long_from(*how_long, ask, wrong))
                              : *faults   ? as_asked(faults_from(*faults, found, wrong))
                              : *schedule ? as_asked(schedule_from(*schedule, bare, wrong))
                                          : as_asked(serve_from(open, wrong));
        if (!wrong.empty()) {
            return tl::make_unexpected(std::move(wrong));
        }
        return arguments;
    }
    if (found.files.empty()) {
        return tl::make_unexpected(Diagnostics{
            usage("no recipe was named", "Name a file with the recipe, or - for standard input.")});
    }
    if (*intake) {
        return IntakeArguments{std::move(found.files), found.text, found.json};
    }
    Arguments arguments = *read      ? Arguments(read_from(found, wrong))
                          : *formula ? Arguments(formula_from(*formula, found, otherwise, wrong))
                          : *scale   ? Arguments(scale_from(*scale, found, otherwise, wrong))
                          : *gather  ? Arguments(gather_from(*gather, found, otherwise, wrong))
                          : *choose  ? Arguments(choose_from(*choose, found, otherwise, wrong))
                                     : Arguments(plan_from(*plan, found, otherwise, wrong));
    if (!wrong.empty()) {
        return tl::make_unexpected(std::move(wrong));
    }
    return arguments;
}

} // namespace loafwright::cli
