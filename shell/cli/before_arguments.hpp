// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/formula/scale.hpp"
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
    bool json = false;
};

struct ScaleArguments {
    std::string file; // "-" is standard input
    Target target = FactorWanted{1.0};
    Answers answers;
    bool json = false;
};

struct GatherArguments {
    std::vector<std::string> files; // one a bread
    std::optional<std::string> kitchen;
    Answers answers;
    bool json = false;
};

/// The help for these commands, in the form of the whole help.
extern const std::string_view before_help;

/// Where CLI11 puts the words of the target's options.
struct TargetWords {
    std::string pieces;
    std::string dough;
    std::string factor;
    std::string tin;
};

/// Adds the options of `loafwright scale`; `words` must outlive the command.
void add_target(CLI::App& command, TargetWords& words);

/// What the words ask for.
///
/// Errors, told in `found`: usage (no target, no number, a tin that is not three lengths),
/// value_out_of_range, said_twice (two targets).
Target target_from(const CLI::App& command, const TargetWords& words, Diagnostics& found);

} // namespace loafwright::cli
