// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/fit.hpp"
#include "engine/following/event.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/planning/plan.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loafwright {

/// How far a dough had grown, and when somebody looked.
struct LoggedGrowth {
    Instant at;
    Growth growth = Growth::little;
};

struct LoggedTemperature {
    Instant at;
    Measured measured = Measured::dough;
    Celsius celsius;
};

/// One line of the page: as it was planned, and as it went.
///
/// Invariants: 0 <= minutes.low <= minutes.likely <= minutes.high; begun <= done where both are
/// known.
struct LoggedLine {
    int stage = 1; // its number on the bread's own page
    std::string title;
    StepKind kind = StepKind::mix; // of the longest step in it
    Place place = Place::counter;
    Attention attention = Attention::hands;
    Band<std::int64_t> minutes; // as fitted, all its steps together
    Basis basis = Basis::assumed;
    /// The likely minutes before anything was learned of the kitchen.
    double usual_minutes = 0.0;
    /// Its length was for the plan to choose: it tells nothing of the dough.
    bool chosen = false;
    std::optional<Instant> begun;
    std::optional<Instant> done;
    /// Somebody told both its begin and its end; else at least one of them is the plan's.
    bool timed = false;
    std::optional<Celsius> stands;       // where its dough was planned to stand
    std::optional<Celsius> setting;      // of the oven, conventional heat
    std::optional<double> wanted_growth; // by the end, as a share of the volume at the begin
    std::optional<LoggedGrowth> grown;   // the last look
    std::vector<LoggedTemperature> temperatures;
    std::vector<Trouble> troubles;
};

/// What the recipe weighs on its flour, in per cent; none where its weights do not say.
struct DoughPercents {
    std::optional<double> water; // of liquids, eggs, butter… by their rows
    std::optional<double> salt;
    std::optional<double> sugar;
    std::optional<double> fat;
    std::optional<double> yeast; // counted as fresh
};

/// What really happened at the bake of one bread.
struct BakeLog {
    std::string bread;
    DoughFamily family = DoughFamily::lean;
    std::string leaven; // the row of the ingredient that raises it, "yeast", or empty
    DoughPercents dough;
    std::vector<LoggedLine> lines; // those with a box, in order
    Told told;
    std::vector<std::string> notes;
};

/// The real minutes of a line; none where one of its ends is not known.
std::optional<std::int64_t> real_minutes(const LoggedLine& line);

/// The line of this kind that took longest by the plan, or null.
const LoggedLine* line_of(const BakeLog& log, StepKind kind);

/// The logs of a bake, one for each bread, in the plan's order.
///
/// Needs:    `plan` was made of `recipes`, in their order; as it was planned, not as the bake moved
///           it.
/// Promises: a fold: the order of the events does not matter, a retry counts once, what was taken
///           back never happened. A line that nobody told of has no times, or the plan's where
///           later lines were told of, and is not `timed`. Of several answers to one question the
///           last one stands; symptoms and changes are gathered, each once.
/// Never:    reads a clock, throws on input.
std::vector<BakeLog> bake_logs(const Plan& plan,
                               const std::vector<FittedRecipe>& recipes,
                               const std::vector<Event>& events,
                               const Knowledge& knowledge);

} // namespace loafwright
