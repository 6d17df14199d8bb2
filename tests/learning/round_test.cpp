// SPDX-License-Identifier: Apache-2.0
//
// From a finished bake to the next plan: fitted, planned, baked slower than planned, logged,
// learned from, and fitted again, five times over.
#include "engine/learning/learn.hpp"
#include "tests/fitting/recipes.hpp"
#include "tests/planning/breads.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

namespace loafwright {
namespace {

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

const FittedStep& first(const FittedRecipe& recipe, StepKind kind) {
    return *std::find_if(recipe.steps.begin(), recipe.steps.end(), [kind](const FittedStep& step) {
        return step.kind == kind;
    });
}

// Every line is begun on time and ticked when it is over; the dough takes `factor` times as long as
// it would in a kitchen like any other.
BakeLog baked(const FittedRecipe& loaf, double factor) {
    Day day = planning::day_at("2026-11-28T07:00:00Z");
    day.start = planning::at("2026-11-28T08:00:00Z");
    const Plan plan = planning::plan_in(loafwright::plan(loaf, Kitchen{}, day));
    const BakeLog as_planned = bake_logs(plan, {loaf}, {}, known()).front();
    std::vector<Event> events(1);
    events[0].id = "begin";
    events[0].at = plan.start;
    events[0].kind = EventKind::begun;
    Instant clock = plan.start;
    for (const LoggedLine& line : as_planned.lines) {
        const bool dough = line.kind == StepKind::rise || line.kind == StepKind::prove;
        clock = later_by_minutes(clock, std::llround(line.usual_minutes * (dough ? factor : 1.0)));
        Event done;
        done.id = "done-" + std::to_string(line.stage);
        done.at = clock;
        done.kind = EventKind::done;
        done.stage = line.stage;
        events.push_back(done);
    }
    return bake_logs(plan, {loaf}, events, known()).front();
}

TEST(round, the_next_plan_knows_what_the_last_bakes_took_and_does_not_run_away) {
    constexpr double factor = 1.3;
    const Reading text = tin_loaf();
    Kitchen kitchen = kitchen_at(21.0);
    const auto usual_prove = first(fit(text, kitchen, known()), StepKind::prove).minutes.likely;
    std::vector<BakeLog> logs;
    for (int bake = 0; bake < 6; ++bake) {
        const FittedRecipe loaf = fit(text, kitchen, known());
        logs.push_back(baked(loaf, factor));
        kitchen.factors = learn(logs, known());
    }
    const FittedRecipe taught = fit(text, kitchen, known());
    const FittedStep& prove = first(taught, StepKind::prove);
    EXPECT_EQ(prove.basis, Basis::learned);
    EXPECT_NEAR(
        static_cast<double>(prove.minutes.likely), factor * static_cast<double>(usual_prove), 3.0);
    EXPECT_LE(prove.minutes.low, prove.minutes.likely);
    const KindFactor* learned = learned_factor(kitchen.factors, StepKind::prove, "yeast");
    ASSERT_NE(learned, nullptr);
    EXPECT_EQ(learned->bakes, 6U);
    EXPECT_NEAR(std::exp(learned->log_mean), factor, 0.05);
}

} // namespace
} // namespace loafwright
