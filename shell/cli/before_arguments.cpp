// SPDX-License-Identifier: Apache-2.0
//
// The options of the commands that look at a recipe before the day is planned. Ranges are wide
// enough for a bakery and narrow enough for a slip of the finger to show.
#include "shell/cli/before_arguments.hpp"

#include "shell/cli/recipe_arguments.hpp"
#include "shell/cli/told_numbers.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <array>
#include <vector>

namespace loafwright::cli {

namespace {

constexpr NumberOption pieces_option{"--pieces", "pieces", "12", 0.5, 10000.0};
constexpr NumberOption dough_option{"--dough", "grams", "1200", 20.0, 1000000.0};
constexpr NumberOption factor_option{"--factor", "times the recipe", "1.5", 0.01, 1000.0};
constexpr NumberOption side_option{"--tin", "millimetres", "230x130x70", 20.0, 2000.0};

// "230x130x70"; the sign of multiplication will do as well.
std::vector<std::string> sides_of(const std::string& words) {
    std::vector<std::string> sides(1);
    for (std::size_t at = 0; at < words.size(); ++at) {
        if (words[at] == 'x' || words[at] == 'X') {
            sides.emplace_back();
        } else if (words.compare(at, 2, "×") == 0) {
            sides.emplace_back();
            ++at;
        } else {
            sides.back() += words[at];
        }
    }
    return sides;
}

Target tin_from(const std::string& words, Diagnostics& found) {
    const std::vector<std::string> sides = sides_of(words);
    std::array<double, 3> told{};
    if (sides.size() != told.size()) {
        found.push_back(
            usage(fmt::format("--tin was given '{}', expected LENGTHxWIDTHxHEIGHT", words),
                  "Measure it inside, in millimetres, as in --tin 230x130x70."));
        return FactorWanted{};
    }
    for (std::size_t i = 0; i < told.size(); ++i) {
        told.at(i) = number_told(side_option, sides[i], found).value_or(side_option.low);
    }
    return TinWanted{{Millimetres(told[0]), Millimetres(told[1]), Millimetres(told[2])}};
}

} // namespace

const std::string_view before_help =
    R"(formula: the recipe in percent of its flour, and what is unusual about it
scale: the recipe in another size, by one of
  --pieces N          so many pieces, each as heavy as the recipe's
  --dough GRAMS       so much dough in all
  --factor F          so many times the recipe
  --tin LENGTHxWIDTHxHEIGHT
                      as much as fills a tin of so many millimetres inside
gather: what to buy and have out; several recipes make one list
  --kitchen FILE      your kitchen
formula, scale and gather also take --answer KEY=VALUE and --json.

)";

void add_target(CLI::App& command, TargetWords& words) {
    command.add_option("--pieces", words.pieces);
    command.add_option("--dough", words.dough);
    command.add_option("--factor", words.factor);
    command.add_option("--tin", words.tin);
}

Target target_from(const CLI::App& command, const TargetWords& words, Diagnostics& found) {
    std::vector<std::string> given;
    for (const char* name : {"--pieces", "--dough", "--factor", "--tin"}) {
        if (command.count(name) > 0) {
            given.emplace_back(name);
        }
    }
    if (given.empty()) {
        found.push_back(usage("no size was given, expected --pieces, --dough, --factor or --tin",
                              "Say one of them, as in --pieces 12 or --tin 230x130x70."));
        return FactorWanted{};
    }
    if (given.size() > 1) {
        found.push_back({"said_twice",
                         Severity::error,
                         fmt::format("found {}, expected one of them", fmt::join(given, " and ")),
                         "",
                         "Ask for one size at a time."});
        return FactorWanted{};
    }
    const auto number = [&found](const NumberOption& option, const std::string& told) {
        return number_told(option, told, found).value_or(option.low);
    };
    if (given.front() == "--pieces") {
        return PiecesWanted{number(pieces_option, words.pieces)};
    }
    if (given.front() == "--dough") {
        return DoughWanted{Grams(number(dough_option, words.dough))};
    }
    return given.front() == "--factor" ? Target(FactorWanted{number(factor_option, words.factor)})
                                       : tin_from(words.tin, found);
}

} // namespace loafwright::cli
