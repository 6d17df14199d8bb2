// SPDX-License-Identifier: Apache-2.0
//
// How long does the best schedule of 1 to 12 breads take? Days of several kinds (day_kinds.hpp),
// one oven, one person up to four breads and two above, nine days of each size from fixed seeds.
// One iteration is all nine; `median_ms` and `worst_ms` are processor time of one day, from the
// last iteration.
#include "bench/day_kinds.hpp"
#include "engine/schedule/check.hpp"
#include "engine/schedule/solve.hpp"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <ctime>
#include <variant>
#include <vector>

namespace loafwright::bench {
namespace {

using namespace schedule;

constexpr unsigned days_of_a_size = 9;

enum class Grid { five_minutes, one_minute };

void best_schedule(benchmark::State& state, DayKind kind, Grid grid) {
    std::vector<Problem> days;
    for (unsigned seed = 1; seed <= days_of_a_size; ++seed) {
        days.push_back(day_of(kind, static_cast<std::size_t>(state.range(0)), seed));
        if (grid == Grid::one_minute) {
            days.back().oven.heat_up.push_back({999, 1}); // no step uses it
        }
    }
    std::vector<double> times;
    int possible = 0;
    int proven = 0;
    for (auto _ : state) {
        times.clear();
        possible = 0;
        proven = 0;
        for (const Problem& day : days) {
            const std::clock_t begin = std::clock();
            const Outcome outcome = solve(day);
            times.push_back(1000.0 * static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC);
            const auto* solved = std::get_if<Solved>(&outcome);
            if (solved != nullptr && !violations(day, solved->schedule).empty()) {
                state.SkipWithError("a schedule breaks a rule");
            }
            possible += solved != nullptr ? 1 : 0;
            proven += solved != nullptr && solved->proof == Proof::best ? 1 : 0;
        }
    }
    std::sort(times.begin(), times.end());
    state.counters["median_ms"] = times[times.size() / 2];
    state.counters["worst_ms"] = times.back();
    state.counters["possible"] = possible;
    state.counters["proven"] = proven;
}

BENCHMARK_CAPTURE(best_schedule, five_minutes, DayKind::roomy, Grid::five_minutes)
    ->Arg(1)
    ->Arg(2)
    ->Arg(3)
    ->Arg(4)
    ->Arg(8)
    ->Arg(12)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(best_schedule, one_minute, DayKind::roomy, Grid::one_minute)
    ->Arg(3)
    ->Arg(8)
    ->Arg(12)
    ->Iterations(1)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(best_schedule, tight, DayKind::tight, Grid::five_minutes)
    ->Arg(3)
    ->Arg(8)
    ->Arg(12)
    ->Iterations(1)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(best_schedule, by_the_minute, DayKind::by_the_minute, Grid::one_minute)
    ->Arg(3)
    ->Arg(8)
    ->Arg(12)
    ->Iterations(1)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(best_schedule, alike, DayKind::alike, Grid::five_minutes)
    ->Arg(3)
    ->Arg(8)
    ->Arg(12)
    ->Iterations(1)
    ->Unit(benchmark::kMillisecond);

} // namespace
} // namespace loafwright::bench
