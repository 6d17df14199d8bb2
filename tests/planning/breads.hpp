// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/plan.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// Fitted breads built by hand, and days to plan them on. All figures are made up.
namespace loafwright::planning {

/// Adds steps one after the other: a recipe step and the fitted step that belongs to it.
class BreadMaker {
public:
    explicit BreadMaker(std::string title);

    struct More {
        Place place = Place::counter;
        bool stretch = false;
        std::optional<std::int64_t> holds;
        std::optional<double> oven;
        std::optional<std::int64_t> heat_up;
        std::optional<std::size_t> during;
        std::optional<double> repeat;
        std::optional<std::string> part;
        std::vector<std::size_t> after;
        std::optional<std::string> cue;
        std::vector<Reminder> reminders;
    };

    /// Returns the step's index.
    std::size_t
    step(StepKind kind, Band<std::int64_t> minutes, const std::string& text, const More& more);
    std::size_t step(StepKind kind, Band<std::int64_t> minutes, const std::string& text);
    FittedRecipe bread(Band<std::int64_t> cut, Band<std::int64_t> best) const;

private:
    FittedRecipe made_;
};

/// Hands 30 to the first rise, rise 65/80/105, hands 10, prove 40/50/70, bake 10 at 230 and 25 at
/// 200, heating 20. Likely 3 h 25 to out of the oven, one hour of cooling, at its best after 1
/// h 50.
FittedRecipe tin_loaf();

/// The same with all that its other ways are worked out from: 7 g of instant yeast on 500 g flour,
/// dough of 847 g at 24 °C in a room of 21.
FittedRecipe tin_loaf_that_can_change();

/// The same with a prove of 8 to 14 hours in the fridge.
FittedRecipe overnight_loaf();

/// A leaven fed twice, a soak, folds, a bench rest, a night in the fridge, lid off: many steps.
FittedRecipe long_sourdough();

/// Mixed, rested ten minutes, baked at 220: sooner shaped than the oven is hot.
FittedRecipe soda_bread();

Instant at(const std::string& text); // RFC 3339
Day day_at(const std::string& now);
Day day_with_sleep(const std::string& now, ClockTime from, ClockTime to, int days = 6);

const Plan& plan_in(const PlanOutcome& outcome);
std::string clock(const Day& day, Instant instant);

/// Every promise of plan.hpp that can be read off a plan; each broken one in words.
std::vector<std::string>
broken_promises(const FittedRecipe& recipe, const Day& day, const Plan& plan);

} // namespace loafwright::planning
