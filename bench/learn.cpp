// SPDX-License-Identifier: Apache-2.0
//
// What does it cost to learn from a thousand bakes, and what does fitting cost with what they
// taught? `copy_logs` and `fit_untaught` are the yardsticks beside them: taking the same logs in
// hand once, and the same recipe in a kitchen of which nothing is known. `find_faults` is one
// answer for three signs and a log.
#include "engine/learning/learn.hpp"

#include "bench/kitchen_logs.hpp"
#include "bench/texts.hpp"
#include "engine/faults/find_faults.hpp"
#include "engine/fitting/fit.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/reading/read.hpp"

#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

namespace loafwright::bench {
namespace {

constexpr std::size_t bakes = 1000;

struct Kitchens {
    Knowledge knowledge = built_in_knowledge();
    Reader reader{knowledge};
    Reading reading = reader.read(checked(file_in_repository("examples/first-loaf.md")));
    std::vector<BakeLog> logs;
    Kitchen untaught;
    Kitchen taught;

    Kitchens() {
        for (std::size_t k = 0; k < bakes; ++k) {
            logs.push_back(slow_bake(k));
        }
        untaught.room = {RoomPeriod{ClockTime{}, Celsius(19.0)}};
        taught = untaught;
        taught.factors = learn(logs, knowledge);
    }

    // A quarter slower is what the thousand bakes say.
    [[nodiscard]] bool is_right() const {
        const KindFactor* rise = learned_factor(taught.factors, StepKind::rise, "yeast");
        return rise != nullptr && std::fabs(std::exp(rise->log_mean) - 1.25) < 0.02;
    }
};

const Kitchens& kitchens() {
    static const Kitchens made;
    return made;
}

void copy_logs(benchmark::State& state) {
    for (auto _ : state) {
        std::vector<BakeLog> copy = kitchens().logs;
        benchmark::DoNotOptimize(copy);
    }
}
BENCHMARK(copy_logs)->Unit(benchmark::kMicrosecond);

void learn_from_logs(benchmark::State& state) {
    if (!kitchens().is_right()) {
        state.SkipWithError("the bakes taught something else");
        return;
    }
    for (auto _ : state) {
        KitchenFactors factors = learn(kitchens().logs, kitchens().knowledge);
        benchmark::DoNotOptimize(factors);
    }
}
BENCHMARK(learn_from_logs)->Unit(benchmark::kMicrosecond);

void fit_untaught(benchmark::State& state) {
    for (auto _ : state) {
        FittedRecipe fitted = fit(kitchens().reading, kitchens().untaught, kitchens().knowledge);
        benchmark::DoNotOptimize(fitted);
    }
}
BENCHMARK(fit_untaught)->Unit(benchmark::kMicrosecond);

void fit_taught(benchmark::State& state) {
    for (auto _ : state) {
        FittedRecipe fitted = fit(kitchens().reading, kitchens().taught, kitchens().knowledge);
        benchmark::DoNotOptimize(fitted);
    }
}
BENCHMARK(fit_taught)->Unit(benchmark::kMicrosecond);

void find_faults_with_log(benchmark::State& state) {
    for (auto _ : state) {
        Findings findings = find_faults({"dense crumb", "burst side", "pale crust"},
                                        &kitchens().logs.front(),
                                        kitchens().knowledge);
        benchmark::DoNotOptimize(findings);
    }
}
BENCHMARK(find_faults_with_log)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace loafwright::bench
