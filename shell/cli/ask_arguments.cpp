// SPDX-License-Identifier: Apache-2.0
//
// The options of the two commands that ask the physics alone. Ranges are those of kitchen files
// where there is such a key; the others are wide enough for a bakery and narrow enough for a slip
// of the finger to show.
#include "shell/cli/ask_arguments.hpp"

#include "shell/cli/told_numbers.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <array>
#include <utility>

namespace loafwright::cli {

namespace {

constexpr NumberOption dough_option{"--dough-c", "°C", "25", 0.0, 45.0};
constexpr NumberOption flour_option{"--flour", "grams", "500", 1.0, 100000.0};
constexpr NumberOption water_option{"--water", "grams", "325", 1.0, 100000.0};
constexpr NumberOption flour_c_option{"--flour-c", "°C", "18", -20.0, 45.0};
constexpr NumberOption tap_option{"--tap-c", "°C", "12", 0.0, 40.0};
constexpr NumberOption altitude_option{"--altitude-m", "metres", "300", -430.0, 5500.0};
constexpr NumberOption minutes_option{"MINUTES", "minutes", "90", 5.0, 5760.0};
constexpr NumberOption at_option{"--at-c", "°C", "24", -5.0, 60.0};
constexpr NumberOption here_option{"--here-c", "°C", "19", -5.0, 60.0};
constexpr NumberOption fridge_option{"--fridge-c", "°C", "5", 0.0, 15.0};
constexpr NumberOption grams_option{"--grams", "grams", "900", 20.0, 20000.0};

template <typename Value>
using Named = std::pair<std::string_view, Value>;

constexpr std::array<Named<dough::MixingMethod>, 4> mixings{
    {{"hand", dough::MixingMethod::by_hand},
     {"mixer", dough::MixingMethod::stand_mixer},
     {"stirred", dough::MixingMethod::stirred},
     {"processor", dough::MixingMethod::food_processor}}};
constexpr std::array<Named<dough::YeastMeetsWater>, 3> yeasts{
    {{"fresh", dough::YeastMeetsWater::fresh_in_water},
     {"dry", dough::YeastMeetsWater::dry_in_water},
     {"dry-in-flour", dough::YeastMeetsWater::dry_in_flour}}};

Diagnostic usage(std::string what, std::string do_this) {
    return {"usage", Severity::error, std::move(what), "", std::move(do_this)};
}

bool given(const CLI::App& command, std::string_view name) {
    return command.count(std::string(name)) > 0;
}

/// Reads options of one command and notes every mistake.
class Options {
public:
    Options(const CLI::App& command, Diagnostics& found) : command_(command), found_(found) {}

    std::optional<double> number(const NumberOption& option, const std::string& words) {
        return given(command_, option.name) ? number_told(option, words, found_) : std::nullopt;
    }

    template <typename Quantity>
    std::optional<Quantity> quantity(const NumberOption& option, const std::string& words) {
        const auto told = number(option, words);
        return told ? std::optional(Quantity(*told)) : std::nullopt;
    }

    /// A number that must be there; the option's low end when it is not, or not right.
    double needed(const NumberOption& option, const std::string& words) {
        if (!given(command_, option.name)) {
            found_.push_back(usage(
                fmt::format("{} is missing", option.name),
                fmt::format(
                    "Give it in {}, as in {} {}.", option.unit, option.name, option.example)));
            return option.low;
        }
        return number_told(option, words, found_).value_or(option.low);
    }

    template <typename Value, std::size_t Size>
    std::optional<Value> one_of(std::string_view name,
                                const std::string& words,
                                const std::array<Named<Value>, Size>& known) {
        if (!given(command_, name)) {
            return std::nullopt;
        }
        std::string list;
        for (std::size_t i = 0; i < Size; ++i) {
            if (known.at(i).first == words) {
                return known.at(i).second;
            }
            list += i == 0 ? "" : i + 1 == Size ? " or " : ", ";
            list += known.at(i).first;
        }
        found_.push_back({"value_unknown",
                          Severity::error,
                          fmt::format("{} is '{}', expected {}", name, words, list),
                          "",
                          "Use one of those words."});
        return std::nullopt;
    }

private:
    const CLI::App& command_;
    Diagnostics& found_;
};

Minutes minutes_from(const std::vector<std::string>& words, Diagnostics& found) {
    if (words.size() != 1) {
        found.push_back(usage(
            words.empty() ? std::string("no length of a rise was given")
                          : fmt::format("found {} lengths of a rise, expected one", words.size()),
            "Give it in minutes, as in how-long 90 --at-c 24 --here-c 19."));
        return Minutes(minutes_option.low);
    }
    return Minutes(number_told(minutes_option, words.front(), found).value_or(minutes_option.low));
}

} // namespace

const std::string_view ask_help = R"(water: how warm the water must be
  --dough-c C         how warm the dough is to be
  --flour G --water G how much of each; without them 500 g, and 65 % of the flour
  --room-c C --flour-c C --tap-c C --altitude-m M
                      your kitchen; without them the kitchen file's, else 20 °C, the
                      room's, 12 °C and the sea's
  --mixing HOW        hand, mixer, stirred or processor
  --yeast WHICH       fresh, dry (woken in the water) or dry-in-flour
  --kitchen FILE, --json

how-long: what a rise of so many MINUTES takes elsewhere
  --at-c C            where it takes so long
  --here-c C          where the dough stands now, or
  --fridge-c C        the fridge it goes into
  --grams G           how much dough goes in; without it 900
  --dough-c C         how warm it is then; without it 25
  --leaven            a sourdough
  --json
)";

void add_water(CLI::App& command, AskWords& words) {
    command.add_option("--dough-c", words.dough_c);
    command.add_option("--flour", words.flour);
    command.add_option("--water", words.water);
    command.add_option("--room-c", words.room_c);
    command.add_option("--flour-c", words.flour_c);
    command.add_option("--tap-c", words.tap_c);
    command.add_option("--altitude-m", words.altitude_m);
    command.add_option("--mixing", words.mixing);
    command.add_option("--yeast", words.yeast);
    command.add_option("--kitchen", words.kitchen);
}

void add_how_long(CLI::App& command, AskWords& words) {
    command.add_option("MINUTES", words.minutes);
    command.add_option("--at-c", words.at_c);
    command.add_option("--here-c", words.here_c);
    command.add_option("--fridge-c", words.fridge_c);
    command.add_option("--grams", words.grams);
    command.add_option("--dough-c", words.dough_c);
    command.add_flag("--leaven", words.leaven);
}

WaterArguments water_from(const CLI::App& command, const AskWords& words, Diagnostics& found) {
    Options options(command, found);
    WaterArguments water;
    asking::WaterQuestion& question = water.question;
    question.dough = Celsius(options.needed(dough_option, words.dough_c));
    question.flour = options.quantity<Grams>(flour_option, words.flour);
    question.water = options.quantity<Grams>(water_option, words.water);
    if (given(command, "--room-c")) {
        if (const auto room = room_told(words.room_c, found)) {
            question.room = Celsius(*room);
        }
    }
    question.flour_temperature = options.quantity<Celsius>(flour_c_option, words.flour_c);
    question.tap = options.quantity<Celsius>(tap_option, words.tap_c);
    question.altitude = options.quantity<Metres>(altitude_option, words.altitude_m);
    question.mixing = options.one_of("--mixing", words.mixing, mixings);
    question.yeast = options.one_of("--yeast", words.yeast, yeasts);
    if (given(command, "--kitchen")) {
        water.kitchen = words.kitchen;
    }
    return water;
}

HowLongArguments how_long_from(const CLI::App& command, const AskWords& words, Diagnostics& found) {
    Options options(command, found);
    HowLongArguments how_long;
    asking::RiseQuestion& question = how_long.question;
    question.stated = minutes_from(words.minutes, found);
    question.at = Celsius(options.needed(at_option, words.at_c));
    question.curve = words.leaven ? dough::Curve::leaven_yeast : dough::Curve::gas;
    const auto here = options.number(here_option, words.here_c);
    const auto fridge = options.number(fridge_option, words.fridge_c);
    const auto grams = options.number(grams_option, words.grams);
    const auto dough = options.number(dough_option, words.dough_c);
    const bool in_room = given(command, here_option.name);
    const bool in_fridge = given(command, fridge_option.name);
    if (in_room && in_fridge) {
        found.push_back({"said_twice",
                         Severity::error,
                         "found both --here-c and --fridge-c, expected one of them",
                         "",
                         "Ask for one place at a time."});
    } else if (!in_room && !in_fridge) {
        found.push_back(usage("neither --here-c nor --fridge-c was given, expected one of them",
                              "Say where the dough stands, as in --here-c 19 or --fridge-c 5."));
    }
    if (in_room && !in_fridge) {
        for (const NumberOption& option : {grams_option, dough_option}) {
            if (given(command, option.name)) {
                found.push_back(
                    usage(fmt::format("{} changes nothing beside --here-c", option.name),
                          "Leave it out, or give --fridge-c; in a room the dough is taken to be "
                          "as warm as the room."));
            }
        }
    }
    if (fridge) {
        asking::InFridge place{Celsius(*fridge)};
        place.lump = grams ? Grams(*grams) : place.lump;
        place.dough = dough ? Celsius(*dough) : place.dough;
        question.here = place;
    } else if (here) {
        question.here = asking::InRoom{Celsius(*here)};
    }
    return how_long;
}

} // namespace loafwright::cli
