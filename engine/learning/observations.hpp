// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/bake_log.hpp"
#include "engine/knowledge/knowledge.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loafwright::learning {

/// What one line of one bake says of its kind.
///
/// Invariants: extra_deviation >= 0.
struct Observation {
    StepKind kind = StepKind::rise;
    std::string leaven;           // for the dough's waits; empty for the rest
    double log_factor = 0.0;      // real over usual minutes
    double extra_deviation = 0.0; // beyond what bakes differ by
};

/// How long a wait really wanted to be, where the dough was not ready, or past it, at its end.
///
/// A look at its end that saw three quarters or less of the growth wanted: as long as the growth
/// wants at that pace (growth.hpp), but no more than twice, and that reading is off by the eye's
/// 0.3. Signs of a prove too short or too long, where none says the other: a fifth more or less
/// (the step of the published single changes: prove 15 to 20 % longer or shorter), off by 0.15.
/// Both deviations are assumed.
struct WantedWait {
    double minutes = 0.0;
    double extra_deviation = 0.0;
};
WantedWait wanted_wait(const BakeLog& log, const LoggedLine& line, const Knowledge& knowledge);

/// What the log says of the kinds in the table of learning.
///
/// Promises: lines that nobody timed, whose length was the plan's to choose, in the fridge, or in
/// which something happened say nothing.
std::vector<Observation> observations_of(const BakeLog& log, const Knowledge& knowledge);

/// What the thermometer read in the oven less its setting, at this bake; none where nobody measured
/// it while it baked.
std::optional<CelsiusDifference> oven_offset_of(const BakeLog& log);

/// The row of a kind, or null.
const LearningRow* learning_row(const Knowledge& knowledge, StepKind kind);

} // namespace loafwright::learning
