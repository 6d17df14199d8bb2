// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/fitting/fit.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/quantity/time.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace loafwright {

/// Something short inside a wait or a bake with a time of its own: oven on, a fold, oven down, lid
/// off, turn the tin.
struct Act {
    Instant at;
    std::int64_t after_start_minutes = 0; // from the start of its stage
    std::string text;
    std::optional<std::size_t> step; // index in recipe.steps
    /// The setting that `text` ends with, as planning::words::oven writes it.
    std::optional<Celsius> oven;
};

/// One numbered line of the page.
struct Stage {
    int number = 1;
    std::string bread;
    std::string title; // what the hands do, in the trade's words
    std::string who;   // whose hands, on a day of several people; else empty
    Attention attention = Attention::hands;
    Instant start;
    Band<Instant> end;
    std::optional<Instant> look_from; // waits and bakes: when to begin looking
    /// Of a bake that hands work comes before: how long it is in the oven.
    std::optional<Band<std::int64_t>> oven_minutes;
    /// Where its length comes from, of the step that takes longest: FittedStep's; none for a line
    /// that no step gives a length, such as "Eat".
    std::optional<Basis> basis;
    std::string reason;
    std::optional<Cue> cue;
    std::vector<Act> acts;
    std::vector<Reminder> reminders; // all of them, heaviest first
    std::vector<std::size_t> steps;  // indices in recipe.steps
    std::size_t first_part = 0;      // its own of Plan::parts: [first_part, last_part)
    std::size_t last_part = 0;
    std::size_t bread_index = 0; // in Plan::breads, and the line's number on that bread's own page
    int own_number = 1;
};

/// One of the pieces that a bread was laid end to end in: a step, or a part of a wait between
/// folds.
struct PlanPart {
    Instant start;
    Instant end;
};

struct FreeSpan {
    Instant from;
    Instant to;
};

/// One bake on the clock, or several that share people and an oven.
///
/// Invariants: stages in order of start; eat.low <= eat.likely <= eat.high; the last stage is "Eat"
/// for a bread that is eaten.
struct Plan {
    bool proven = false;
    Instant start;
    Instant out_of_oven; // of the last bake or cook; the end of the last wait or hands step where
                         // nothing is heated
    Instant cut_from;
    Instant best_from;
    Band<Instant> eat;
    std::int64_t total_minutes = 0; // start to cut_from
    std::int64_t hands_on_minutes = 0;
    std::vector<Stage> stages;
    std::vector<PlanPart> parts; // of one bread, in order; what replanning moves
    std::vector<FreeSpan>
        free; // waits of 20 minutes and more in which nothing is asked of the baker
    Diagnostics warnings;
    /// For several breads: each one's own plan, in the order given, with the same times. The stages
    /// above are then those of all of them by the clock, each with its bread's name, and more than
    /// nine; start is the first of all, the other times those of the last. Empty for one bread.
    std::vector<Plan> breads;
};

/// A bread that is to be made otherwise, and the answer that asks for it (fitting/otherwise.hpp).
struct TakenBy {
    std::size_t bread = 0; // in the order given
    Answer answer;
};

/// One change that makes the day possible. Each was planned again and found to hold.
struct WayOut {
    std::string change; // "begin at 13:10", "eat at 15:40 today", "the same dough as rolls"
    Instant eat;
    /// Empty where the bread stays as written and only the day changes. Where `eat` is not the
    /// wish, that is the time to ask for beside it.
    std::vector<TakenBy> taken_by;
};

struct Impossible {
    std::string why; // one sentence with the sum behind it
    std::vector<std::string> reasons;
    std::vector<WayOut> ways_out; // nearest the wish first
};

using PlanOutcome = std::variant<Plan, Impossible>;

/// The best plan there is for this bread on this day, or why there is none.
///
/// A bread is never made otherwise than it was fitted: what would work that way is among the ways
/// out, and whoever takes one fits it so (fitting::made_otherwise) and asks again.
///
/// Needs:    `recipe.steps` not empty; day.now; at most one of day.start and day.eat_by (neither:
/// begin at the next full five minutes). Promises: hands-on work never inside an away, asleep or
/// busy window of the day, and the oven is never hot or heating
///           with nobody awake at home; nothing begins before now; with eat_by the plan begins as
///           late as it can, while the time to eat holds in about four bakes out of five: cooling
///           beyond what cutting needs gives way first; preheating is over at the early end of the
///           last wait before the bake; the same input gives the same plan everywhere.
/// Never:    asks the clock, throws on input.
PlanOutcome plan(const FittedRecipe& recipe, const Kitchen& kitchen, const Day& day);

/// The same for several breads on one day: one pair of hands at a time for each person, the oven at
/// one temperature at a time and with as many breads in it as it has shelves.
///
/// Needs:    as above; `recipes` not empty. One is planned as above.
/// Promises: as above, each bread eaten by the same time in about four bakes out of five, by
/// rehearsing the day with breads that are quicker and slower; the hottest bake goes first where
/// that costs no wish and no more than half an hour; the search is limited by a count, and `proven`
/// is false where it came first.
PlanOutcome plan(const std::vector<FittedRecipe>& recipes, const Kitchen& kitchen, const Day& day);

} // namespace loafwright
