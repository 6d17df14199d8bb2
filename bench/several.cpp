// SPDX-License-Identifier: Apache-2.0
//
// How long does a day with several breads take to plan, to plan again after a slip, and to refuse
// with its ways out? The breads are the same loaf, its lengths moved by a few minutes so that no
// two are alike; one person, one oven of two shelves, asleep from 22:30 to 06:30. The growth is
// shown by the number of breads; `one_bread` is the yardstick.
#include "engine/following/replan.hpp"
#include "engine/planning/plan.hpp"

#include <benchmark/benchmark.h>

#include <string>
#include <variant>
#include <vector>

namespace loafwright::bench {
namespace {

void add(FittedRecipe& bread,
         StepKind kind,
         Band<std::int64_t> minutes,
         std::optional<double> oven = std::nullopt) {
    Step step;
    step.kind = kind;
    step.text = "step";
    FittedStep fitted;
    fitted.step = bread.recipe.steps.size();
    fitted.kind = kind;
    fitted.attention = attention_of(kind);
    fitted.minutes = minutes;
    fitted.reason = "made up";
    if (kind == StepKind::rise || kind == StepKind::prove) {
        fitted.holds_minutes = 30;
    }
    if (oven) {
        fitted.oven = Celsius(*oven);
        fitted.heat_up_minutes = 20;
    }
    bread.recipe.steps.push_back(step);
    bread.steps.push_back(fitted);
}

FittedRecipe loaf(std::int64_t number) {
    FittedRecipe bread;
    bread.recipe.title = "Loaf " + std::to_string(number);
    const std::int64_t more = 5 * (number % 5);
    add(bread, StepKind::knead, {20, 25, 30});
    add(bread, StepKind::rise, {60 + more, 80 + more, 105 + more});
    add(bread, StepKind::shape, {8, 10, 12});
    add(bread, StepKind::prove, {40, 50, 65});
    add(bread, StepKind::bake, {35, 35, 40}, number % 3 == 0 ? 200.0 : 220.0);
    add(bread, StepKind::cool, {60, 60, 60});
    bread.cut_after_minutes = {60, 60, 60};
    bread.best_after_minutes = {60, 90, 120};
    return bread;
}

std::vector<FittedRecipe> loaves(std::int64_t count) {
    std::vector<FittedRecipe> breads;
    for (std::int64_t n = 0; n < count; ++n) {
        breads.push_back(loaf(n));
    }
    return breads;
}

Kitchen the_kitchen() {
    Kitchen kitchen;
    kitchen.oven.shelves = 2;
    return kitchen;
}

Day the_day(std::int64_t eat_after_hours) {
    Day day;
    // Saturday 28 November 2026, 07:00 UTC.
    day.now = Instant{1795849200};
    day.eat_by = later_by_minutes(day.now, 60 * eat_after_hours);
    day.sleep_known = true;
    const Instant bed = later_by_minutes(day.now, 15 * 60 + 30);
    for (std::int64_t night = -1; night < 4; ++night) {
        const Instant from = later_by_minutes(bed, 1440 * night);
        day.windows.push_back({0, Presence::asleep, from, later_by_minutes(from, 8 * 60)});
    }
    return day;
}

void plan_breads(benchmark::State& state) {
    const std::vector<FittedRecipe> breads = loaves(state.range(0));
    const Day day = the_day(state.range(0) > 4 ? 36 : 12);
    bool best = true;
    for (auto _ : state) {
        const PlanOutcome outcome = plan(breads, the_kitchen(), day);
        if (!std::holds_alternative<Plan>(outcome)) {
            state.SkipWithError("no plan");
            return;
        }
        best = best && std::get<Plan>(outcome).proven;
    }
    state.counters["best"] = best ? 1 : 0;
}
BENCHMARK(plan_breads)
    ->Arg(1)
    ->Arg(2)
    ->Arg(3)
    ->Arg(4)
    ->Arg(8)
    ->Arg(12)
    ->Unit(benchmark::kMillisecond);

// The first rise of the first bread takes twenty minutes longer.
void replan_breads(benchmark::State& state) {
    const std::vector<FittedRecipe> breads = loaves(state.range(0));
    const Day day = the_day(state.range(0) > 4 ? 36 : 12);
    const PlanOutcome outcome = plan(breads, the_kitchen(), day);
    if (!std::holds_alternative<Plan>(outcome)) {
        state.SkipWithError("no plan");
        return;
    }
    const Plan& made = std::get<Plan>(outcome);
    const Plan& first = made.breads.empty() ? made : made.breads.front();
    std::vector<Event> events;
    for (std::size_t b = 0; b < breads.size(); ++b) {
        const Plan& bread = made.breads.empty() ? made : made.breads[b];
        for (const Stage& line : bread.stages) {
            if (line.end.likely <= first.stages[1].end.likely && !(b == 0 && line.number > 1)) {
                Event done;
                done.id = std::to_string(b) + ":" + std::to_string(line.number);
                done.at = line.end.likely;
                done.bread = b;
                done.stage = line.number;
                events.push_back(done);
            }
        }
    }
    const Knowledge knowledge = built_in_knowledge();
    Event slow;
    slow.id = "slow";
    slow.at = first.stages[1].end.likely;
    slow.kind = EventKind::not_ready;
    slow.stage = 2;
    slow.until = later_by_minutes(slow.at, 20);
    events.push_back(slow);
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            replan(made, breads, the_kitchen(), day, events, slow.at, knowledge));
    }
}
BENCHMARK(replan_breads)
    ->Arg(1)
    ->Arg(2)
    ->Arg(3)
    ->Arg(4)
    ->Arg(8)
    ->Arg(12)
    ->Unit(benchmark::kMillisecond);

// Too soon for all of them: the reasons and up to four ways out, each planned again.
void refuse_breads(benchmark::State& state) {
    const std::vector<FittedRecipe> breads = loaves(state.range(0));
    const Day day = the_day(5);
    for (auto _ : state) {
        const PlanOutcome outcome = plan(breads, the_kitchen(), day);
        if (!std::holds_alternative<Impossible>(outcome)) {
            state.SkipWithError("possible");
            return;
        }
    }
}
BENCHMARK(refuse_breads)->Arg(2)->Arg(3)->Arg(4)->Arg(8)->Arg(12)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace loafwright::bench

BENCHMARK_MAIN();
