// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/plan.hpp"
#include "engine/provisions/gather.hpp"
#include "engine/sheet/day_line.hpp"
#include "engine/sheet/options.hpp"

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
    // On a shared page only: whose line it is, and what else it says.
    std::string bread; // "Soft rolls"
    std::string also;  // "then first rise, look from 14:30"
    std::vector<SheetAct> acts;
    std::string
        cue; // "ready when doubled, about 14:50, by 15:15 at the latest"; empty where there is none
    bool cue_is_ours = false;
    std::vector<std::string> reminders; // three at most
    std::string normal; // on a first bake's page, what is normal here although it may worry one
};

/// The title with its bread in front on a shared page: "Soft rolls: bake".
std::string full_title(const SheetStage& stage);

/// A time that stands out of the words that lead to it.
struct SaidTime {
    std::string words;
    std::string time;
};
/// "eat at 18:30".
std::string said(const SaidTime& when);

/// A page of one bread, or the clock that several breads share, whose own pages follow.
enum class SheetKind { bread, shared_clock };

/// What stands on the page, without saying how it is drawn. Every string is ready to print.
struct Sheet {
    SheetKind kind = SheetKind::bread;
    std::string title;
    SaidTime eat;                   // "eat on Sat 28 Nov at", "18:30"
    SaidTime begin;                 // "Begin Sat 28 Nov,", "13:00"
    std::string free;               // "40 minutes of your hands; you are free 13:30 to 14:35."
    std::vector<std::string> weigh; // "500 g strong white flour"
    std::vector<std::string> ready; // "2 lb tin", "rack"
    std::vector<std::string> ahead; // before stage 1: "09:00, 1 h before you begin: butter out…"
    std::vector<SheetStage> stages;
    std::vector<std::string> notes; // what happens if it is slow; what was assumed
    std::vector<std::string> warnings;
    std::vector<std::string> cautions;  // three at most
    std::vector<std::string> questions; // "How warm is your kitchen? Used: 21 °C."
    DayLine day_line;
};

/// "Begin 13:00. 40 minutes of your hands; you are free 13:30 to 14:35."
std::string opening(const Sheet& sheet);

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
Refusal
compose_refusal(const Impossible& impossible, const Day& day, const SheetOptions& options = {});

} // namespace loafwright
