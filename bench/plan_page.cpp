// SPDX-License-Identifier: Apache-2.0
//
// How long does it take from the text of a recipe to its page inside one process, and which part
// takes it? `page` is the whole way for examples/first-loaf.md with the tables built beforehand;
// the others are each part by itself, on what the part before it hands over.
#include "bench/texts.hpp"
#include "engine/fitting/fit.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/planning/plan.hpp"
#include "engine/provisions/gather.hpp"
#include "engine/reading/read.hpp"
#include "engine/sheet/compose.hpp"
#include "shell/output/text_page.hpp"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <optional>
#include <string>
#include <variant>

namespace loafwright::bench {
namespace {

constexpr std::size_t columns = 80;

Day the_day() {
    Day day;
    // Wednesday 25 November 2026, 09:00 UTC; begin the next day at ten.
    day.now = Instant{1795597200};
    day.start = later_by_minutes(day.now, 25 * 60);
    return day;
}

// The way to the page, each stop kept.
struct Way {
    Knowledge knowledge = built_in_knowledge();
    Reader reader{knowledge};
    CheckedText text = checked(file_in_repository("examples/first-loaf.md"));
    Kitchen kitchen;
    Day day = the_day();
    Reading reading = reader.read(text);
    FittedRecipe fitted = fit(reading, kitchen, knowledge);
    Provisions provisions = gather(reading.recipe, kitchen, knowledge);
    PlanOutcome outcome = plan(fitted, kitchen, day);
    std::optional<Sheet> sheet;

    Way() {
        if (const auto* made = std::get_if<Plan>(&outcome)) {
            sheet = compose(*made, fitted, provisions, day, SheetOptions{});
        }
    }

    // A page that begins at ten and has its bake on it.
    [[nodiscard]] bool is_right() const {
        if (!sheet) {
            return false;
        }
        const std::string page = output::text_page(*sheet, columns, output::Weight::plain);
        return page.find("10:00") != std::string::npos && page.find("oven") != std::string::npos;
    }
};

template <typename Part>
void measure(benchmark::State& state, Part part) {
    static const Way way;
    if (!way.is_right()) {
        state.SkipWithError("the page is not the one expected");
        return;
    }
    for (auto _ : state) {
        benchmark::DoNotOptimize(part(way));
    }
}

std::string page_of(const Way& way) {
    const Reading reading = way.reader.read(way.text);
    const FittedRecipe fitted = fit(reading, way.kitchen, way.knowledge);
    const Provisions provisions = gather(reading.recipe, way.kitchen, way.knowledge);
    const PlanOutcome outcome = plan(fitted, way.kitchen, way.day);
    const Sheet sheet =
        compose(std::get<Plan>(outcome), fitted, provisions, way.day, SheetOptions{});
    return output::text_page(sheet, columns, output::Weight::plain);
}

void page(benchmark::State& state) {
    measure(state, page_of);
}
BENCHMARK(page)->Unit(benchmark::kMicrosecond);

void part_tables(benchmark::State& state) {
    measure(state, [](const Way&) { return built_in_knowledge(); });
}
BENCHMARK(part_tables)->Unit(benchmark::kMicrosecond);

void part_read(benchmark::State& state) {
    measure(state, [](const Way& way) { return way.reader.read(way.text); });
}
BENCHMARK(part_read)->Unit(benchmark::kMicrosecond);

void part_fit(benchmark::State& state) {
    measure(state, [](const Way& way) { return fit(way.reading, way.kitchen, way.knowledge); });
}
BENCHMARK(part_fit)->Unit(benchmark::kMicrosecond);

// Another room, height and tin: every wait and the bake are carried over.
Kitchen a_kitchen_of_its_own() {
    Kitchen kitchen;
    kitchen.room = {RoomPeriod{ClockTime{0, 0}, Celsius(17.0)}};
    kitchen.altitude = Metres(1600.0);
    kitchen.tins = {Tin{"long tin", Millimetres(300.0), Millimetres(90.0), Millimetres(80.0)}};
    return kitchen;
}

void part_fit_elsewhere(benchmark::State& state) {
    static const Kitchen kitchen = a_kitchen_of_its_own();
    measure(state, [](const Way& way) { return fit(way.reading, kitchen, way.knowledge); });
}
BENCHMARK(part_fit_elsewhere)->Unit(benchmark::kMicrosecond);

void part_gather(benchmark::State& state) {
    measure(state,
            [](const Way& way) { return gather(way.reading.recipe, way.kitchen, way.knowledge); });
}
BENCHMARK(part_gather)->Unit(benchmark::kMicrosecond);

void part_plan(benchmark::State& state) {
    measure(state, [](const Way& way) { return plan(way.fitted, way.kitchen, way.day); });
}
BENCHMARK(part_plan)->Unit(benchmark::kMicrosecond);

// A leaven and a soaker beside each other, then the dough that takes both.
void part_plan_branching(benchmark::State& state) {
    static const Way way;
    static const Reading reading =
        way.reader.read(checked(file_in_repository("bench/branching.md")));
    static const FittedRecipe fitted = fit(reading, way.kitchen, way.knowledge);
    const auto joins = [](const Step& step) { return step.after.size() > 1; };
    if (std::none_of(reading.recipe.steps.begin(), reading.recipe.steps.end(), joins)) {
        state.SkipWithError("nothing comes together");
        return;
    }
    for (auto _ : state) {
        benchmark::DoNotOptimize(plan(fitted, way.kitchen, way.day));
    }
}
BENCHMARK(part_plan_branching)->Unit(benchmark::kMicrosecond);

void part_compose(benchmark::State& state) {
    measure(state, [](const Way& way) {
        return compose(
            std::get<Plan>(way.outcome), way.fitted, way.provisions, way.day, SheetOptions{});
    });
}
BENCHMARK(part_compose)->Unit(benchmark::kMicrosecond);

void part_text(benchmark::State& state) {
    measure(state, [](const Way& way) {
        return output::text_page(*way.sheet, columns, output::Weight::plain);
    });
}
BENCHMARK(part_text)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace loafwright::bench
