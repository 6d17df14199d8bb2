// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/plan.hpp"
#include "engine/provisions/gather.hpp"
#include "engine/sheet/day_line.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loafwright {

/// A line inside a stage with a box of its own.
struct SheetAct {
    std::string time; // "15:15", or "+ 10" inside a bake, counted from its start
    std::string text;
};

/// One numbered line and what stands under it.
struct SheetStage {
    int number = 1;
    std::string time; // "13:00"; with the day in front when it changes: "Sun 07:30"
    std::string title;
    std::string length; // "30 min", "look from 14:35", "1 h at least"; empty for the last line
    bool box = true;    // to tick; the last line has none
    std::vector<SheetAct> acts;
    std::string
        cue; // "ready when doubled, about 14:50, by 15:15 at the latest"; empty where there is none
    bool cue_is_ours = false;
    std::vector<std::string> reminders; // three at most
};

/// What stands on the page, without saying how it is drawn. Every string is ready to print.
struct Sheet {
    std::string title;
    std::string eat;     // "eat at 18:30"
    std::string opening; // "Begin 13:00. 40 minutes of your hands; you are free 13:30 to 14:35."
    std::vector<std::string> weigh; // "500 g strong white flour"
    std::vector<std::string> ready; // "2 lb tin", "rack"
    std::vector<SheetStage> stages;
    std::vector<std::string> notes; // before the start; if it is slow; what was assumed
    std::size_t ahead = 0;          // the first so many notes say what to do before the start
    std::vector<std::string> warnings;
    std::vector<std::string> cautions;  // three at most
    std::vector<std::string> questions; // "How warm is your kitchen? Used: 21 °C."
    DayLine day_line;
};

struct SheetOptions {
    std::size_t reminders_a_stage = 3;
    std::size_t cautions = 3;
    std::size_t questions = 3; // in sight; the rest are counted
};

Sheet compose(const Plan& plan,
              const FittedRecipe& recipe,
              const Provisions& provisions,
              const Day& day,
              const SheetOptions& options);

/// The page for a day that cannot be: the answer first, then what would work.
struct Refusal {
    std::string why;
    std::vector<std::string> reasons;
    std::vector<std::string> ways_out;
};
Refusal compose_refusal(const Impossible& impossible, const Day& day);

} // namespace loafwright
