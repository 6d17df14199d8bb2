// SPDX-License-Identifier: Apache-2.0
//
// How long does the best schedule of 1 to 12 breads take? Two days on a grid of five minutes, one
// oven, one person up to four breads and two above, nine days of each size from fixed seeds. One
// iteration is all nine; `median_ms` and `worst_ms` are processor time of one day, from the last
// iteration.
#include "engine/schedule/check.hpp"
#include "engine/schedule/solve.hpp"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <ctime>
#include <random>
#include <string>
#include <variant>
#include <vector>

namespace loafwright::bench {
namespace {

using namespace schedule;

constexpr int days_of_a_size = 9;

enum class Grid { five_minutes, one_minute };

// The distribution is ours: the library's may differ from one to another.
class Dice {
public:
    explicit Dice(unsigned seed) : engine_(seed) {}
    // low, low + step … high
    std::int64_t roll(std::int64_t low, std::int64_t high, std::int64_t step = 5) {
        const auto sides = static_cast<unsigned long>((high - low) / step + 1);
        return low + step * static_cast<std::int64_t>(engine_() % sides);
    }

private:
    std::mt19937 engine_;
};

Task task(const char* name, TaskKind kind, std::int64_t minutes, bool leave = false) {
    Task made;
    made.name = name;
    made.kind = kind;
    made.minutes = {minutes, minutes, minutes};
    made.leave = leave;
    return made;
}

// Mix, rise, shape, prove, bake, cool; every third with a soaker that joins at the mixing.
Job bread(Dice& dice, std::size_t number) {
    Job job;
    job.name = "bread " + std::to_string(100 + number);
    const bool soaked = number % 3 == 2;
    if (soaked) {
        job.tasks.push_back(task("soaker", TaskKind::hands, 5));
        job.tasks.push_back(task("soak", TaskKind::wait, 60, true));
        job.tasks.back().stretch = Stretch{60, 480};
        job.lags.push_back({0, 1, 0, 10, {}});
        job.tasks.push_back(task("sponge", TaskKind::hands, 5));
        job.tasks.push_back(task("ferment", TaskKind::wait, dice.roll(90, 150)));
        job.lags.push_back({2, 3, 0, 10, {}});
    }
    const std::size_t mix = job.tasks.size();
    job.tasks.push_back(task("mix", TaskKind::hands, dice.roll(10, 20)));
    job.tasks.push_back(task("rise", TaskKind::wait, dice.roll(60, 150)));
    job.tasks.push_back(task("shape", TaskKind::hands, dice.roll(5, 15)));
    job.tasks.push_back(task("prove", TaskKind::wait, dice.roll(40, 80)));
    job.tasks.push_back(task("bake", TaskKind::oven, dice.roll(20, 50)));
    job.tasks.push_back(task("cool", TaskKind::wait, dice.roll(30, 90), true));
    job.tasks[mix + 4].oven = OvenUse{1, static_cast<int>(dice.roll(180, 240, 20))};
    if (soaked) {
        job.lags.push_back({1, mix, 0, 120, {}});
        job.lags.push_back({3, mix, 0, 45, 20});
    }
    job.lags.push_back({mix, mix + 1, 0, 5, {}});
    job.lags.push_back({mix + 1, mix + 2, 0, 40, 20});
    job.lags.push_back({mix + 2, mix + 3, 0, 5, {}});
    job.lags.push_back({mix + 3, mix + 4, 0, 20, 10});
    job.lags.push_back({mix + 4, mix + 5, 0, 0, {}});
    Alternative cold{"prove in the fridge", 1, {}, {}};
    TaskChange prove;
    prove.task = mix + 3;
    prove.changes_stretch = true;
    prove.stretch = Stretch{480, 960};
    prove.fridge = 1;
    prove.leave = true;
    cold.tasks.push_back(prove);
    job.alternatives.push_back(cold);
    job.ready_by = dice.roll(2400, 2640, 60);
    job.ready_from = *job.ready_by - 480;
    return job;
}

Problem day_of(std::size_t breads, unsigned seed) {
    Dice dice(seed);
    Problem problem;
    problem.horizon = 2880;
    for (int p = 0; p < (breads <= 4 ? 1 : 2); ++p) {
        problem.people.push_back({p == 0 ? "A" : "B",
                                  {{0, dice.roll(360, 420), WindowState::asleep},
                                   {1350, dice.roll(1830, 1890), WindowState::asleep},
                                   {2010, dice.roll(2040, 2070), WindowState::away}}});
    }
    problem.oven.slots = 3;
    problem.fridge.slots = 2;
    for (int from = 180; from <= 240; from += 20) {
        problem.oven.heat_up.push_back({from, 20 + (from - 180) / 4});
        for (int to = 180; to <= 240; to += 20) {
            if (from != to) {
                problem.oven.changeover.push_back({from, to, from < to ? 5 : 10});
            }
        }
    }
    problem.rather_not = {{2190, 2220}};
    for (std::size_t b = 0; b < breads; ++b) {
        problem.jobs.push_back(bread(dice, b));
    }
    return problem;
}

void best_schedule(benchmark::State& state, Grid grid) {
    std::vector<Problem> days;
    for (unsigned seed = 1; seed <= days_of_a_size; ++seed) {
        days.push_back(day_of(static_cast<std::size_t>(state.range(0)), seed));
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

BENCHMARK_CAPTURE(best_schedule, five_minutes, Grid::five_minutes)
    ->Arg(1)
    ->Arg(2)
    ->Arg(3)
    ->Arg(4)
    ->Arg(8)
    ->Arg(12)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(best_schedule, one_minute, Grid::one_minute)
    ->Arg(3)
    ->Arg(8)
    ->Arg(12)
    ->Iterations(1)
    ->Unit(benchmark::kMillisecond);

} // namespace
} // namespace loafwright::bench
