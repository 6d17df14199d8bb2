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

constexpr NumberOption size_option(std::string_view name,
                                   std::string_view unit,
                                   std::string_view example,
                                   breads::SizeRange range) {
    return {name, unit, example, range.low, range.high};
}
constexpr NumberOption pieces_option =
    size_option("--pieces", "pieces", "12", breads::pieces_range);
constexpr NumberOption dough_option =
    size_option("--dough", "grams", "1200", breads::dough_grams_range);
constexpr NumberOption factor_option =
    size_option("--factor", "times the recipe", "1.5", breads::factor_range);
constexpr NumberOption side_option =
    size_option("--tin", "millimetres", "230x130x70", breads::tin_side_mm_range);

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

std::optional<Target>
size_from(const CLI::App& command, const WantedWords& words, Diagnostics& found) {
    std::vector<std::string> given;
    for (const char* name : {"--pieces", "--dough", "--factor", "--tin"}) {
        if (command.count(name) > 0) {
            given.emplace_back(name);
        }
    }
    if (given.empty()) {
        return std::nullopt;
    }
    if (given.size() > 1) {
        found.push_back({"said_twice",
                         Severity::error,
                         fmt::format("found {}, expected one of them", fmt::join(given, " and ")),
                         "",
                         "Ask for one size at a time."});
        return std::nullopt;
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

std::optional<RaisedBy>
yeast_from(const CLI::App& command, const std::string& told, Diagnostics& found) {
    if (command.count("--yeast") == 0) {
        return std::nullopt;
    }
    const auto yeast = raised_by_named(told);
    if (!yeast) {
        std::string names;
        for (const RaisedBy one : all_raised_by) {
            names += (names.empty()                 ? ""
                      : one == all_raised_by.back() ? " or "
                                                    : ", ") +
                     std::string(name_of(one));
        }
        found.push_back(usage(fmt::format("--yeast was given '{}', expected {}", told, names),
                              "Say which you have, as in --yeast instant."));
    }
    return yeast;
}

} // namespace

const std::string_view before_help =
    R"(formula: the recipe in percent of its flour, and what is unusual about it
scale: the recipe in another size or with another yeast
gather: what to buy and have out; several recipes make one list
  --kitchen FILE      your kitchen
plan, choose, formula, scale and gather take one recipe in another size or with another yeast:
  --pieces N          so many pieces, each as heavy as the recipe's
  --dough GRAMS       so much dough in all
  --factor F          so many times the recipe
  --tin LENGTHxWIDTHxHEIGHT
                      as much as fills a tin of so many millimetres inside
  --yeast YEAST       fresh, active_dry, instant or leaven: with the time that this costs
formula, scale and gather also take --answer KEY=VALUE and --json.

)";

void add_wanted(CLI::App& command, WantedWords& words) {
    command.add_option("--pieces", words.pieces);
    command.add_option("--dough", words.dough);
    command.add_option("--factor", words.factor);
    command.add_option("--tin", words.tin);
    command.add_option("--yeast", words.yeast);
}

breads::Wanted wanted_from(const CLI::App& command,
                           const WantedWords& words,
                           const std::vector<std::string>& files,
                           Diagnostics& found) {
    breads::Wanted wanted{size_from(command, words, found),
                          yeast_from(command, words.yeast, found)};
    if (files.size() > 1 && (wanted.size || wanted.yeast)) {
        found.push_back({"one_bread_at_a_time",
                         Severity::error,
                         fmt::format("found {} recipes beside another size or yeast, which is for "
                                     "one of them",
                                     files.size()),
                         "",
                         "Ask for it with one recipe at a time."});
    }
    return wanted;
}

} // namespace loafwright::cli
