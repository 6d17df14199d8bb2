// SPDX-License-Identifier: Apache-2.0
//
// How long does the simulation of one bake take, and how does it stand beside a general solver?
// Each case is the time of the core to 95 °C for one loaf: ours on its 24 cells, CVODE of SUNDIALS
// on the same cells and equations at a relative tolerance of 1e-4, and what both are off from CVODE
// at 1e-10, in percent. A case whose answer is off by more than 0.2 % fails.
#include "engine/dough/bake.hpp"

#include "engine/dough/bake_transfer.hpp"
#include "engine/dough/cool.hpp"
#include "tests/dough/cvode_bake.hpp"

#include <benchmark/benchmark.h>

#include <cmath>
#include <limits>

namespace loafwright::bench {
namespace {

using namespace loafwright::dough;

Bake bake_of(Form form) {
    Bake bake;
    switch (form) {
    case Form::roll:
        bake.loaf = usual_loaf(form, Grams(70.0));
        bake.settings = {{Celsius(220.0), Minutes(15.0)}};
        break;
    case Form::baguette:
        bake.loaf = usual_loaf(form, Grams(330.0));
        bake.settings = {{Celsius(240.0), Minutes(22.0)}};
        break;
    case Form::round_loaf:
        bake.loaf = usual_loaf(form, Grams(1000.0));
        bake.settings = {{Celsius(230.0), Minutes(40.0)}};
        break;
    default:
        bake.loaf = usual_loaf(Form::tin_loaf, Grams(900.0));
        bake.settings = {{Celsius(220.0), Minutes(35.0)}};
        break;
    }
    return bake;
}

CvodeBake cvode_bake_of(const Bake& bake) {
    CvodeBake made;
    made.cells = production_cells;
    made.exponent =
        stand_in(bake.loaf.baked, std::numeric_limits<double>::infinity(), 0.1).exponent;
    made.half_m = smallest_half(bake.loaf.baked).count();
    made.density_kg_m3 = risen_density(bake.loaf).count();
    made.oven_c = bake.settings.front().temperature.degrees();
    return made;
}

constexpr Form forms[] = {Form::tin_loaf, Form::round_loaf, Form::baguette, Form::roll};

double off_percent(double minutes, const Bake& bake) {
    return 100.0 *
           (minutes / bake_by_cvode(cvode_bake_of(bake), 0.0, 95.0, 1e-10).core_minutes - 1.0);
}

void whole_bake(benchmark::State& state) {
    const Bake bake = bake_of(forms[state.range(0)]);
    for (auto _ : state) {
        benchmark::DoNotOptimize(simulate_bake(bake));
    }
}

void core_time(benchmark::State& state) {
    const Bake bake = bake_of(forms[state.range(0)]);
    double minutes = 0.0;
    for (auto _ : state) {
        minutes = time_to_core(bake, Celsius(95.0)).value_or(Minutes(0.0)).count();
        benchmark::DoNotOptimize(minutes);
    }
    const double off = off_percent(minutes, bake);
    state.counters["off_percent"] = off;
    if (std::abs(off) > 0.2) {
        state.SkipWithError("off by more than 0.2 % from CVODE at 1e-10");
    }
}

void core_time_by_cvode(benchmark::State& state) {
    const Bake bake = bake_of(forms[state.range(0)]);
    const CvodeBake same = cvode_bake_of(bake);
    CvodeCourse course;
    for (auto _ : state) {
        course = bake_by_cvode(same, 0.0, 95.0, 1e-4);
        benchmark::DoNotOptimize(course);
    }
    state.counters["off_percent"] = off_percent(course.core_minutes, bake);
    state.counters["steps"] = static_cast<double>(course.steps);
}

void transfer(benchmark::State& state) {
    const Bake stated = bake_of(Form::tin_loaf);
    Bake here = stated;
    here.loaf = usual_loaf(Form::tin_loaf, Grams(450.0));
    for (auto _ : state) {
        benchmark::DoNotOptimize(transferred_bake(stated, here));
    }
}

void cool_down(benchmark::State& state) {
    const BakedLoaf baked = simulate_bake(bake_of(Form::tin_loaf)).end;
    for (auto _ : state) {
        benchmark::DoNotOptimize(cooling(baked, Celsius(20.0), Standing::rack));
    }
}

BENCHMARK(whole_bake)->DenseRange(0, 3)->Unit(benchmark::kMillisecond);
BENCHMARK(core_time)->DenseRange(0, 3)->Unit(benchmark::kMillisecond);
BENCHMARK(core_time_by_cvode)->DenseRange(0, 3)->Unit(benchmark::kMillisecond);
BENCHMARK(transfer)->Unit(benchmark::kMillisecond);
BENCHMARK(cool_down)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace loafwright::bench
