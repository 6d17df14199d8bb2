// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/asking/rise.hpp"
#include "engine/asking/water.hpp"
#include "engine/diagnostic/diagnostic.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

// The library names it so.
namespace CLI { // NOLINT(readability-identifier-naming)
class App;
}

namespace loafwright::cli {

struct WaterArguments {
    asking::WaterQuestion question; // what was not said is left to the kitchen
    std::optional<std::string> kitchen;
    bool json = false;
};

struct HowLongArguments {
    asking::RiseQuestion question;
    bool json = false;
};

/// The help for both commands, in the form of the whole help.
extern const std::string_view ask_help;

/// Where CLI11 puts the words of both commands' options. Each command is made once a call.
struct AskWords {
    std::vector<std::string> minutes;
    std::string dough_c;
    std::string flour;
    std::string water;
    std::string room_c;
    std::string flour_c;
    std::string tap_c;
    std::string altitude_m;
    std::string mixing;
    std::string yeast;
    std::string kitchen;
    std::string at_c;
    std::string here_c;
    std::string fridge_c;
    std::string grams;
    bool leaven = false;
};

/// Adds the options of `loafwright water` or `loafwright how-long`; `words` must outlive the
/// command.
void add_water(CLI::App& command, AskWords& words);
void add_how_long(CLI::App& command, AskWords& words);

/// What the words ask for.
///
/// Errors, told in `found` as far as they can be found: usage (no number, none where one is needed,
/// one that changes nothing), value_out_of_range, value_unknown (--mixing, --yeast), said_twice
/// (--here-c and --fridge-c).
WaterArguments water_from(const CLI::App& command, const AskWords& words, Diagnostics& found);
HowLongArguments how_long_from(const CLI::App& command, const AskWords& words, Diagnostics& found);

} // namespace loafwright::cli
