// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/breads/wanted.hpp"
#include "engine/diagnostic/diagnostic.hpp"
#include "engine/recipe/recipe.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

// The library names it so.
namespace CLI { // NOLINT(readability-identifier-naming)
class App;
}

namespace loafwright::cli {

struct FormulaArguments {
    std::string file; // "-" is standard input
    Answers answers;
    breads::Wanted wanted;
    bool json = false;
};

struct ScaleArguments {
    std::string file; // "-" is standard input
    Answers answers;
    breads::Wanted wanted; // a size, a yeast or both
    bool json = false;
};

struct GatherArguments {
    std::vector<std::string> files; // one a bread
    std::optional<std::string> kitchen;
    Answers answers;
    breads::Wanted wanted; // of one bread
    bool json = false;
};

/// The help for these commands, in the form of the whole help.
extern const std::string_view before_help;

/// Where CLI11 puts the words of the wish for another size or yeast.
struct WantedWords {
    std::string pieces;
    std::string dough;
    std::string factor;
    std::string tin;
    std::string yeast;
};

/// Adds --pieces, --dough, --factor, --tin and --yeast; `words` must outlive the command.
void add_wanted(CLI::App& command, WantedWords& words);

/// What the words ask for; nothing where they ask for nothing.
///
/// Errors, told in `found`: usage (no number, a tin that is not three lengths, a yeast without that
/// name), value_out_of_range, said_twice (two sizes), one_bread_at_a_time (a wish, and more than
/// one of `files`).
breads::Wanted wanted_from(const CLI::App& command,
                           const WantedWords& words,
                           const std::vector<std::string>& files,
                           Diagnostics& found);

} // namespace loafwright::cli
